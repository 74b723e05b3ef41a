import type { Fix } from "../answers/finding.ts";
import { findConnector } from "../catalog/connectors.ts";
import type { Device } from "../model/device.ts";
import type { Box } from "../model/enclosure.ts";
import { type EndKey, parseEnd, type SpliceId, type TerminalName } from "../model/ids.ts";
import type { At } from "../model/place.ts";
import type { Installation, StateName } from "../model/project.ts";
import { type SpliceMember, takes } from "../queries/connector-takes.ts";
import { farEnd, getEndFacts, nameOfEnd } from "../queries/end-facts.ts";
import { landedAt, landingsOf, membersOf } from "../queries/landings.ts";
import { findTerminal } from "../queries/terminals-of.ts";
import { isThicker, thickestOf, type WireSize } from "../units/wire-size.ts";
import { wording } from "./ground-fixes-words.ts";
import type { GroundGroup } from "./grounds.ts";
import { type JumperMake, MakeUpPlan } from "./make-up-plan.ts";

/**
 * A pigtail from the grounds to the screw or clip of a metal box. `leading` are the groups that lead to ground. Where
 * something else touches them or the metal, joining them would spread it: then there is none.
 */
export function bondFix(
  installation: Installation,
  box: Box,
  state: StateName,
  leading: readonly GroundGroup[],
  bondIsClean: boolean,
): Fix | undefined {
  if (!bondIsClean) return undefined;
  const { bonded } = landingsOf(box);
  const hanging = bonded.find((end) => isHanging(box, end));
  // A second conductor under the screw would be another fault.
  if (bonded.length > (hanging === undefined ? 0 : 1)) return undefined;
  return bringTo(installation, box, state, leading, {
    at: { kind: "bond" },
    name: wording.groundScrew(box.name),
    hanging,
  });
}

/** A pigtail from the grounds to the green screw of a device. */
export function groundDeviceFix(
  installation: Installation,
  box: Box,
  state: StateName,
  leading: readonly GroundGroup[],
  device: Device,
  terminal: TerminalName,
): Fix | undefined {
  const landed = landedAt(box, device.id, terminal);
  const hanging = landed.map(({ end }) => end).find((end) => isHanging(box, end));
  // A second conductor under the screw would be another fault.
  if (landed.length > (hanging === undefined ? 0 : 1)) return undefined;
  const at: At = { kind: "terminal", device: device.id, terminal, hole: 1 };
  const { thickest } = findTerminal(device, terminal) ?? {};
  return bringTo(installation, box, state, leading, {
    at,
    name: wording.groundScrew(device.name),
    hanging,
    thickest,
  });
}

interface Target {
  readonly at: At;
  readonly name: string;
  /** A jumper that is there already, with its other end on nothing. */
  readonly hanging: EndKey | undefined;
  readonly thickest?: WireSize | undefined;
}

function bringTo(
  installation: Installation,
  box: Box,
  state: StateName,
  leading: readonly GroundGroup[],
  { at, name, hanging, thickest }: Target,
): Fix | undefined {
  const usable = leading.filter(({ clean }) => clean);
  const group = usable.find(({ splices }) => splices.length > 0) ?? usable.find(({ free }) => !free) ?? usable[0];
  if (group === undefined) return undefined;
  const make = groundMake(installation, box, group);
  if (thickest !== undefined && isThicker(make.awg, thickest)) return undefined;
  const plan = new MakeUpPlan(installation, box, state);
  const [first] = group.ends;
  if (group.free && first !== undefined) {
    const ground = nameOfEnd(installation, box, first);
    if (hanging !== undefined) {
      plan.splice([first, farEnd(hanging)]);
      return plan.fix(() => wording.spliceWithPigtail(ground, name));
    }
    return plan.land(first, at).fix(() => wording.land(ground, name));
  }
  const from = attachTo(installation, box, plan, group, make);
  if (from === undefined) return undefined;
  const source = from.name;
  if (hanging !== undefined) {
    if (from.at.kind === "splice") plan.join(farEnd(hanging), from.at.splice);
    else plan.land(farEnd(hanging), from.at);
    return plan.fix((more) => wording.joinPigtail(name, source, withWords(more)));
  }
  plan.jumper(from.at, at, make);
  return plan.fix((more) => wording.bringPigtail(source, name, withWords(more)));
}

const withWords = (words: string): string => (words === "" ? "" : `; ${words}`);

/** Joins the groups of a box: an end on nothing into the splice, a link between splices. The first group stays where it is. */
export function joinGroupsFix(
  installation: Installation,
  box: Box,
  state: StateName,
  groups: readonly GroundGroup[],
): Fix | undefined {
  const [main, ...others] = [...groups].sort(
    (a, b) => Number(b.splices.length > 0) - Number(a.splices.length > 0) || Number(a.free) - Number(b.free),
  );
  if (main === undefined || others.length === 0 || !groups.every(({ clean }) => clean)) return undefined;
  const plan = new MakeUpPlan(installation, box, state);
  const make = groundMake(installation, box, ...groups);
  const [alone] = main.ends;
  const freeEnds = others.flatMap(({ free, ends }) => (free ? ends.slice(0, 1) : []));
  const rest = others.filter(({ free }) => !free);
  if (main.free && alone !== undefined) {
    // The fullest group comes first, so all of them are single ends on nothing.
    plan.splice([alone, ...freeEnds]);
    return plan.fix(() => wording.spliceTogether(namesOf(installation, box, [alone, ...freeEnds])));
  }
  const from = attachTo(installation, box, plan, main, make);
  if (from === undefined) return undefined;
  for (const end of freeEnds) {
    if (from.at.kind === "splice") plan.join(end, from.at.splice);
    else plan.land(end, from.at);
  }
  for (const group of rest) {
    const to = attachTo(installation, box, plan, group, make);
    if (to === undefined) return undefined;
    plan.jumper(from.at, to.at, make);
  }
  const joined = [
    ...(freeEnds.length > 0 ? [namesOf(installation, box, freeEnds)] : []),
    ...rest.map((one) => nameOfGroup(installation, box, one)),
  ];
  return plan.fix((more) => wording.join(joined.join(wording.and), from.name, withWords(more)));
}

const namesOf = (installation: Installation, box: Box, ends: readonly EndKey[]): string =>
  ends.map((end) => nameOfEnd(installation, box, end)).join(", ");

const nameOfGroup = (installation: Installation, box: Box, { splices, ends, bond }: GroundGroup): string =>
  splices[0] !== undefined
    ? (box.splices[splices[0]]?.name ?? splices[0])
    : bond
      ? wording.groundScrew(box.name)
      : namesOf(installation, box, ends);

/**
 * Where a jumper can be attached to a group that is more than one end on nothing; a pigtailed splice is made where there is
 * none, and where the ground arrives at a screw that holds another conductor: what was attached behind it would hang on it.
 */
function attachTo(
  installation: Installation,
  box: Box,
  plan: MakeUpPlan,
  group: GroundGroup,
  make: JumperMake,
): { readonly at: At; readonly name: string } | undefined {
  const shared = group.terminals.find(({ device, terminal }) => landedAt(box, device, terminal).length > 1);
  const splice = shared === undefined ? roomiest(installation, box, group.splices, make) : undefined;
  if (splice !== undefined) return { at: { kind: "splice", splice }, name: box.splices[splice]?.name ?? splice };
  if (group.bond && shared === undefined) return { at: ontoBond(plan, box, make), name: wording.groundScrew(box.name) };
  const terminal = shared ?? group.terminals[0];
  if (terminal === undefined) return undefined;
  const made = plan.pigtail(terminal.device, terminal.terminal);
  return { at: { kind: "splice", splice: made }, name: namesOf(installation, box, group.ends) };
}

/** The ground screw or clip itself while nothing is on it; else a splice of what is, with one pigtail back to it. */
function ontoBond(plan: MakeUpPlan, box: Box, make: JumperMake): At {
  const { bonded } = landingsOf(box);
  if (bonded.length === 0) return { kind: "bond" };
  return { kind: "splice", splice: plan.pigtailBond(bonded, make) };
}

/**
 * One conductor on the ground screw or clip of a box: a pigtail that comes from a splice stays, and the others go into
 * that splice; where there is none, all go into a new one with one pigtail.
 */
export function oneAtBondFix(
  installation: Installation,
  box: Box,
  state: StateName,
  landed: readonly EndKey[],
): Fix | undefined {
  const plan = new MakeUpPlan(installation, box, state);
  const spliceOf = (end: EndKey): SpliceId | undefined => {
    const far = parseEnd(end)?.of === "jumper" ? box.places[farEnd(end)]?.at : undefined;
    return far?.kind === "splice" ? far.splice : undefined;
  };
  const stays = landed.find((end) => spliceOf(end) !== undefined);
  const splice = stays === undefined ? undefined : spliceOf(stays);
  if (stays === undefined || splice === undefined) {
    const awg = thickestOf(landed.map((end) => getEndFacts(installation, box, end).awg)) ?? "12";
    plan.pigtailBond(landed, { awg, colour: "bare" });
    return plan.fix(() => wording.spliceGrounds(box.name));
  }
  const others = landed.filter((end) => end !== stays);
  const again = others.flatMap((end) => (spliceOf(end) === splice ? (parseEnd(end) ?? []) : []));
  for (const end of others) if (spliceOf(end) !== splice) plan.join(end, splice);
  for (const parsed of again) if (parsed.of === "jumper") plan.remove(parsed.jumper);
  const name = box.splices[splice]?.name ?? splice;
  return plan.fix((more) => wording.leaveOne(box.name, name, withWords(more)));
}

/** A splice whose connector takes one more as it is; else the one with the fewest. */
function roomiest(
  installation: Installation,
  box: Box,
  splices: readonly SpliceId[],
  make: JumperMake,
): SpliceId | undefined {
  const more: SpliceMember = { awg: make.awg, material: "copper", stranded: false, grounding: true };
  const setOf = (splice: SpliceId): readonly SpliceMember[] => [
    ...membersOf(box, splice).map((end) => getEndFacts(installation, box, end)),
    more,
  ];
  const hasRoom = (splice: SpliceId): boolean => {
    const connector = findConnector(box.splices[splice]?.connector ?? "unknown");
    return connector !== undefined && takes(connector, setOf(splice));
  };
  return splices.find(hasRoom) ?? [...splices].sort((a, b) => setOf(a).length - setOf(b).length)[0];
}

/** Bare copper as thick as the thickest ground, 14 AWG at least: no screw takes less. */
function groundMake(installation: Installation, box: Box, ...groups: readonly GroundGroup[]): JumperMake {
  const sizes = groups.flatMap(({ ends }) => ends).map((end) => getEndFacts(installation, box, end).awg);
  const thickest = thickestOf(sizes) ?? "12";
  return { awg: isThicker("14", thickest) ? "14" : thickest, colour: "bare" };
}

function isHanging(box: Box, end: EndKey): boolean {
  if (parseEnd(end)?.of !== "jumper") return false;
  const far = box.places[farEnd(end)]?.at.kind;
  return far === "capped" || far === "loose";
}
