import type { Fix } from "../answers/finding.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import { type EndKey, parseEnd } from "../model/ids.ts";
import type { StateName } from "../model/project.ts";
import { farEnd, nameOfEnd } from "../queries/end-facts.ts";
import { landedAt, membersOf } from "../queries/landings.ts";
import type { Section, Spot } from "../solver/section.ts";
import { isCure } from "./fix-trial.ts";
import { bring, exchangeFix, type Pole, terminalOf, titled } from "./line-load-fixes.ts";
import { MakeUpPlan } from "./make-up-plan.ts";
import { listed } from "./rule-parts.ts";
import { hotOf, type LineLoadDevice, lastCableStep, neutralOf } from "./section-parts.ts";

const wording = catalogue({
  move: (ends: Part, device: Part) => `Move ${ends} to LINE of ${device}, what it feeds stays on LOAD`,
});

/** What lies on the two sides of one pole of a device that is fed on LOAD. */
export interface PoleSides {
  readonly pole: Pole;
  /** Ends on its LINE terminal and on its LOAD terminal. */
  readonly onLine: readonly EndKey[];
  readonly onLoad: readonly EndKey[];
  readonly load: Spot | undefined;
  /** The end of a cable by which the supply comes to LOAD, in the box of the device. */
  readonly supply: EndKey | undefined;
  /** Names of what is joined to LOAD in that box beside the supply: "C2 WH". */
  readonly fed: readonly string[];
}

/** Both sides of one pole; the ends in a splice that is pigtailed to LOAD are on LOAD. */
export function sidesOf(section: Section, found: LineLoadDevice, pole: Pole): PoleSides {
  const { device, enclosure, loadHot } = found;
  const line = terminalOf(device, "LINE", pole);
  const load = terminalOf(device, "LOAD", pole);
  const at = (terminal: typeof line): readonly EndKey[] =>
    terminal === undefined ? [] : landedAt(enclosure, device.id, terminal).map(({ end }) => end);
  const spot: Spot = pole === "hot" || load === undefined ? loadHot : { device: device.id, node: load };
  const way = section.wayFrom(pole === "hot" ? "ungrounded" : "grounded", spot, device.id);
  const supply = lastCableStep(way, "toEnclosure", enclosure.id)?.to;
  const onLoad = at(load);
  const joined = new Set<EndKey>(onLoad);
  for (const end of joined) {
    const place = parseEnd(end)?.of === "jumper" ? enclosure.places[farEnd(end)]?.at : undefined;
    if (place?.kind === "splice") for (const member of membersOf(enclosure, place.splice)) joined.add(member);
  }
  const fed = [...joined].filter((end) => end !== supply && parseEnd(end)?.of === "cable").sort();
  return {
    pole,
    onLine: at(line),
    onLoad,
    load: load === undefined ? undefined : spot,
    supply,
    fed: fed.map((end) => nameOfEnd(section.installation, enclosure, end)),
  };
}

/** Nothing lies on LINE for any of these poles: then there is nothing to exchange. */
export const isLineEmpty = (sides: readonly PoleSides[]): boolean => sides.every(({ onLine }) => onLine.length === 0);

/** Where something lies on LINE, LINE and LOAD are exchanged; else the supply alone goes to LINE, and what is fed stays. */
export function toLineFix(
  section: Section,
  found: LineLoadDevice,
  sides: readonly PoleSides[],
  state: StateName,
): Fix | undefined {
  const poles = sides.map(({ pole }) => pole);
  if (!isLineEmpty(sides) || sides.every(({ fed }) => fed.length === 0))
    return exchangeFix(section, found, poles, state);
  const { device, enclosure } = found;
  const plan = new MakeUpPlan(section.installation, enclosure, state);
  const moved: string[] = [];
  for (const { pole, supply } of sides) {
    if (supply === undefined || !bring(plan, enclosure, device, supply, "LINE", pole)) return undefined;
    moved.push(nameOfEnd(section.installation, enclosure, supply));
  }
  const title = wording.move(listed(moved), device.name);
  const fix = plan.fix((words) => titled(title, words));
  return fix !== undefined && isCure(section, fix) ? fix : undefined;
}

/** Outlets that hang on LOAD together with the supply: they would be behind the device if the supply were on LINE. */
export const outletsFedBeside = (
  section: Section,
  found: LineLoadDevice,
  sides: readonly PoleSides[],
): readonly string[] =>
  !isLineEmpty(sides)
    ? []
    : section
        .outlets()
        .filter((standing) =>
          sides.some(({ pole, load, fed }) => {
            const spot: Spot = pole === "hot" ? hotOf(standing) : neutralOf(standing);
            return load !== undefined && fed.length > 0 && found.open.areJoined(load, spot);
          }),
        )
        .map(({ outlet }) => outlet.key);
