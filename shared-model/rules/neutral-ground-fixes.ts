import type { Fix } from "../answers/finding.ts";
import type { DeviceFamily } from "../catalog/device-type.ts";
import { getDeviceType } from "../catalog/device-types.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Enclosure, Jumper, Panel, Splice } from "../model/enclosure.ts";
import { type EndKey, otherSide, parseEnd } from "../model/ids.ts";
import type { At } from "../model/place.ts";
import type { Installation, StateName } from "../model/project.ts";
import { findEndFacts, nameOfEnd } from "../queries/end-facts.ts";
import { inOrder } from "../queries/in-order.ts";
import { landedAt, membersOf } from "../queries/landings.ts";
import type { PathStep, Section } from "../solver/section.ts";
import { fixBy } from "./fix-parts.ts";
import { isCure } from "./fix-trial.ts";
import { titled } from "./line-load-fixes.ts";
import { MakeUpPlan } from "./make-up-plan.ts";
import { nameOfSide } from "./path-words.ts";
import { nameOfStep } from "./section-parts.ts";

const wording = catalogue({
  removeBond: (jumper: Part, panel: Part) => `Remove jumper ${jumper} between the bars of ${panel}`,
  moveToGrounds: (name: Part, splice: Part) => `Move ${name} to the grounds in ${splice}`,
  remove: (jumper: Part, from: Part, to: Part) => `Remove ${jumper} between ${from} and ${to}`,
  toGroundBar: (end: Part, panel: Part) => `Move ${end} to the ground bar of ${panel}`,
  toNeutralBar: (end: Part, panel: Part) => `Move ${end} to the neutral bar of ${panel}`,
});

/** Takes a jumper between the bars of a panel out. */
export function withoutPanelJumperFix(panel: Panel, jumper: Jumper | undefined, state: StateName): Fix | undefined {
  if (jumper === undefined) return undefined;
  const items = [{ kind: "jumper", id: jumper.id }];
  return fixBy(wording.removeBond(jumper.name, panel.name), "remove-items", { state, items });
}

/** Moves an end to the first free hole of the first bar of a kind. */
export function toBarFix(
  installation: Installation,
  panel: Panel,
  end: EndKey,
  kind: "neutral" | "ground",
  state: StateName,
): Fix | undefined {
  for (const bar of inOrder(panel.devices)) {
    const type = getDeviceType(bar.type);
    const [terminal] = type.terminals;
    if (type.family !== `${kind}-bar` || terminal === undefined) continue;
    const taken = new Set(landedAt(panel, bar.id, terminal.name).map(({ hole }) => hole));
    const hole = [...Array(terminal.holes).keys()].map((index) => index + 1).find((one) => !taken.has(one));
    if (hole === undefined) continue;
    const at = { kind: "terminal", device: bar.id, terminal: terminal.name, hole };
    const title = (kind === "neutral" ? wording.toNeutralBar : wording.toGroundBar)(
      nameOfEnd(installation, panel, end),
      panel.name,
    );
    return fixBy(title, "land-end", { state, enclosure: panel.id, end, at });
  }
  return undefined;
}

/** What kind of part an end is landed on; undefined when it is on none. */
export function familyAt(panel: Panel, end: EndKey): DeviceFamily | undefined {
  const at = panel.places[end]?.at;
  const device = at?.kind === "terminal" ? panel.devices[at.device] : undefined;
  return device === undefined ? undefined : getDeviceType(device.type).family;
}

/** Whether the other end of its cable is in a panel: a feeder. */
export function isFromPanel(installation: Installation, end: EndKey): boolean {
  const parsed = parseEnd(end);
  const far = parsed?.of === "cable" ? installation.cables[parsed.cable]?.sides[otherSide(parsed.side)] : undefined;
  return far !== undefined && "enclosure" in far && installation.enclosures[far.enclosure]?.kind === "panel";
}

/**
 * A ground pigtail with its other end on the neutral goes to the grounds of the box; a jumper that grounds nothing, or that
 * its colour keeps from the grounds, is taken out.
 */
export function partFix(section: Section, by: PathStep, state: StateName): Fix | undefined {
  const enclosure = by.kind === "jumper" ? section.installation.enclosures[by.enclosure] : undefined;
  if (by.kind !== "jumper" || enclosure === undefined) return undefined;
  const at = enclosure.places[by.from]?.at;
  const isMadeForGround = findEndFacts(section.installation, enclosure, by.from)?.grounding === true;
  const isPigtail = isMadeForGround && (at?.kind === "bond" || at?.kind === "terminal");
  for (const splice of isPigtail ? groundSplices(section, enclosure) : []) {
    const plan = new MakeUpPlan(section.installation, enclosure, state).join(by.to, splice.id);
    const name = nameOfEnd(section.installation, enclosure, by.to);
    const fix = plan.fix((words) => titled(wording.moveToGrounds(name, splice.name), words));
    const isAlone = Object.values(enclosure.places).filter((place) => samePlace(place.at, at)).length === 1;
    if (isAlone && fix !== undefined && isCure(section, fix)) return fix;
  }
  return withoutJumper(section, by, state);
}

const samePlace = (one: At, other: At | undefined): boolean =>
  one.kind === other?.kind &&
  (one.kind !== "terminal" ||
    (other.kind === "terminal" && one.device === other.device && one.terminal === other.terminal));

/** Splices that hold grounds of cables and nothing else of them. */
const groundSplices = ({ installation }: Section, enclosure: Enclosure): readonly Splice[] =>
  inOrder(enclosure.splices).filter(({ id }) => {
    const ends = membersOf(enclosure, id).map((end) => findEndFacts(installation, enclosure, end));
    const ofCables = ends.filter((facts) => facts?.parsed.of === "cable");
    return ofCables.length > 0 && ofCables.every((facts) => facts?.grounding === true);
  });

/** A jumper alone can be taken out; a conductor that joins the two has its other end to be thought of. */
export function withoutJumper(section: Section, by: PathStep, state: StateName): Fix | undefined {
  const enclosure = by.kind === "jumper" ? section.installation.enclosures[by.enclosure] : undefined;
  if (by.kind !== "jumper" || enclosure === undefined) return undefined;
  const plan = new MakeUpPlan(section.installation, enclosure, state).remove(by.jumper);
  const across = [nameOfSide(section, by, "from"), nameOfSide(section, by, "to")] as const;
  const fix = plan.fix((words) => titled(wording.remove(nameOfStep(section, by), ...across), words));
  return fix !== undefined && isCure(section, fix) ? fix : undefined;
}
