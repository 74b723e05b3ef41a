import type { Fix } from "../../answers/finding.ts";
import { getDeviceType } from "../../catalog/device-types.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import type { EnclosureId, TerminalName } from "../../model/ids.ts";
import type { StateName } from "../../model/project.ts";
import { landedAt } from "../../queries/landings.ts";
import type { PathStep, Section } from "../../solver/section.ts";
import { isHarmless, sectionsAfter } from "../fix-trial.ts";
import { titled } from "../line-load-fixes.ts";
import { isCurrentCarrying } from "../line-side-fix.ts";
import { MakeUpPlan } from "../make-up-plan.ts";
import { OWN_CHECK } from "../own-check.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";
import { isFedRightWay, type LineLoadDevice, lineLoadDevices, marksOnWay } from "../section-parts.ts";
import { listedShort, tripsOf } from "../trip-parts.ts";

const messages = templates({
  switched:
    "{switch} can turn off the supply of {device} in {box}: then {dead} {is} dead, {device} no longer tests itself, and its lamp and RESET say nothing. Feed LINE of {device} from before {switch}, and leave {switch} to what it is for.",
});

const wording = catalogue({
  feed: (device: Part, handle: Part) => `Feed ${device} from before ${handle}`,
  is: (count: number) => (count < 2 ? "is" : "are"),
  whatItFeeds: "what it feeds",
});

/** With its own contacts open, the hot on LINE comes and goes with a switch. */
export const gfciSwitchedSupply = defineRule({
  id: "gfci-switched-supply",
  status: "stable",
  scope: "section",
  severity: "caution",
  summary: "A ground-fault device should be fed all the time, not through a wall switch.",
  why: "With its hot switched off there is nothing to protect. But devices of today test themselves only while they are fed, some must be reset after every loss of supply, and a person who finds the outlet dead presses RESET in vain. It commonly comes about when a receptacle that a switch controlled is replaced by a ground-fault one. A disconnect is not a switch here.",
  messages,
  sections: everyEdition(OWN_CHECK, "own-rule"),
  check({ section, state, report }) {
    // Past the bound nothing is known to be there in every setting; that is told for the section.
    if (section.bounded) return;
    for (const found of lineLoadDevices(section)) {
      const { device, enclosure, lineHot, open, lineLive } = found;
      if (!lineLive || !isFedRightWay(found) || open.isAlwaysLive(lineHot)) continue;
      const way = section.wayFrom("ungrounded", lineHot);
      const switches = switchesOn(section, way);
      const dead = tripsOf(section)
        .filter((one) => one.device.id === device.id)
        .flatMap(({ outlets }) => outlets.map(({ outlet }) => outlet.name));
      report({
        subjects: [subject("device", device)],
        message: fillIn(messages.switched, {
          switch: listed(switches.map(({ device: one }) => one.name)),
          device: device.name,
          box: enclosure.name,
          dead: dead.length === 0 ? wording.whatItFeeds : listedShort(dead),
          is: wording.is(dead.length),
        }),
        data: { switches: switches.map(({ device: one }) => one.name).join(" ") },
        ...basisOf(marksOn(device, "type"), marksOnWay(section, way)),
        ...(state === "proposed" && switches.length === 1 && { offers: offersAt(section, found, switches[0], state) }),
      });
    }
  },
});

interface OnWay {
  readonly device: Device;
  readonly enclosure: EnclosureId;
  readonly step: Extract<PathStep, { readonly kind: "device" }>;
}

/** Switches, dimmers and timers that a way passes, each once. */
function switchesOn(section: Section, way: readonly PathStep[] | undefined): readonly OnWay[] {
  const found = new Map<string, OnWay>();
  for (const step of way ?? []) {
    if (step.kind !== "device") continue;
    const device = section.installation.enclosures[step.enclosure]?.devices[step.device];
    if (device === undefined || found.has(device.id)) continue;
    const type = getDeviceType(device.type);
    const isSwitched = type.paths.some(
      ({ a, b, when }) =>
        ((a === step.from && b === step.to) || (b === step.from && a === step.to)) &&
        type.positions.some((position) => position === when),
    );
    if (isSwitched && type.family !== "disconnect") found.set(device.id, { device, enclosure: step.enclosure, step });
  }
  return [...found.values()];
}

/**
 * What is on the far side of the switch, alone, brought to the splice that feeds the switch: then its supply is there all
 * the time. The switch keeps its feed and controls nothing.
 */
function offersAt(
  section: Section,
  { device, lineHot }: LineLoadDevice,
  found: OnWay | undefined,
  state: StateName,
): readonly Fix[] {
  const enclosure = found && section.installation.enclosures[found.enclosure];
  if (found === undefined || enclosure === undefined) return [];
  const { step } = found;
  const [feed, ...moreFeeds] = landedAt(enclosure, found.device.id, step.from as TerminalName);
  const [out, ...moreOut] = landedAt(enclosure, found.device.id, step.to as TerminalName);
  if (feed === undefined || out === undefined || moreFeeds.length + moreOut.length > 0) return [];
  if (!isCurrentCarrying(section.installation, enclosure, out.end)) return [];
  const before = section.wayFrom("ungrounded", { device: found.device.id, node: step.from });
  const last = before?.findLast((one) => one.kind === "jumper" && one.enclosure === enclosure.id);
  const at = last?.kind === "jumper" ? enclosure.places[last.from]?.at : undefined;
  const plan = new MakeUpPlan(section.installation, enclosure, state);
  if (at?.kind === "splice") plan.join(out.end, at.splice);
  else plan.join(out.end, plan.pigtail(found.device.id, step.from as TerminalName));
  const title = wording.feed(device.name, found.device.name);
  const fix = plan.fix((words) => titled(title, words));
  if (fix === undefined || !isHarmless(section, fix)) return [];
  const after = sectionsAfter(section, fix).find((one) => one.enclosureOf(device.id) !== undefined);
  return after?.contactsOpen(device.id).isAlwaysLive(lineHot) === true ? [fix] : [];
}
