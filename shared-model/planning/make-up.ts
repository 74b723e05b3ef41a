import type { CommandCall } from "../answers/command-call.ts";
import type { LeftOnLine, RoomWay } from "../answers/make-up.ts";
import type { MakeUpIntent, Replacing } from "../answers/make-up-intent.ts";
import { runCommand } from "../commands/run-command.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Box, Enclosure } from "../model/enclosure.ts";
import type { CableId, DeviceId, EnclosureId, EndKey, OutletKey } from "../model/ids.ts";
import type { Place } from "../model/place.ts";
import type { Project, StateName } from "../model/project.ts";
import { cablesInto } from "../queries/cables-into.ts";
import { farEnd, findEndFacts } from "../queries/end-facts.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { nameOfReplacement } from "../queries/replacement-name.ts";
import { makeFresh } from "../rules/fix-parts.ts";
import type { Section } from "../solver/section.ts";
import { sectionOf } from "../solver/sections.ts";
import { roomFix } from "./fit-room.ts";
import { groupsOfIntent } from "./groups-of-intent.ts";
import { groundKeysOf, type JointGroup, type Planned, planned, refused } from "./joint-group.ts";
import type { JointPlan } from "./joint-plan.ts";
import { leastSizes } from "./least-sizes.ts";
import { leftCalls } from "./left-on-line.ts";
import { makeUpCalls } from "./make-up-calls.ts";
import { planJoints } from "./plan-joints.ts";
import { started, withFirst } from "./start-proposed.ts";
import { type TriedMakeUp, tryMakeUp } from "./try-make-up.ts";

const wording = catalogue({
  aPanel: (name: Part) => `${name} is a panel: a make-up is of a box.`,
  makeUp: (box: Part) => `Make up ${box}`,
  noBox: "There is no such box.",
  noDevice: (box: Part, device: Part) => `${box} has no device "${device}". Name one that is in it.`,
});

/** A make-up that may be offered: one step, how it lands, and what it would bring. */
export interface MakeUpProposal extends TriedMakeUp {
  /** The box as it was. */
  readonly before: Box;
  /** The document as it was, proposed started where the make-up starts it. */
  readonly started: Project;
  /** By the id of the new device. */
  readonly replaced: ReadonlyMap<DeviceId, DeviceId>;
  readonly groups: readonly JointGroup[];
  readonly plan: JointPlan;
  /** Words for what is done to the box itself so that it holds what is in it; absent where nothing is. */
  readonly room?: string;
  /** All ways to give it that room. */
  readonly rooms: readonly RoomWay[];
}

export interface MakeUpWishes {
  /** Cables that are left on LINE on purpose, with who decided so: kept with the outlets beyond them. */
  readonly left?: readonly LeftOnLine[];
  /** Title of the way to give the box the room that it needs, false to leave it as it is; absent: the least work. */
  readonly room?: string | false;
}

/**
 * Generates the make-up of a box from what it is to do, with the fewest moves from what is there, tries it on a copy, and
 * refuses it with the reason where it cannot be done or would bring a danger or a violation. Proposed is started where it
 * was not, and there the box gets the room that it needs.
 */
export function makeUp(
  document: Project,
  state: StateName,
  id: EnclosureId,
  intent: MakeUpIntent,
  { left = [], room: wantedRoom }: MakeUpWishes = {},
): Planned<MakeUpProposal> {
  const { project, first } = started(document, state);
  const before = getInstallation(project, state).enclosures[id];
  if (before?.kind !== "box")
    return refused("not-a-box", before === undefined ? wording.noBox : wording.aPanel(before.name));
  const staged = replaceDevices(project, state, before, intent.replace);
  if (!staged.ok) return staged;
  const { project: copy, calls: replacing, replaced } = staged.value;
  const installation = getInstallation(copy, state);
  const box = installation.enclosures[id] as Box;
  const section = sectionOf(installation, id);
  if (section === undefined) throw new Error("A box is in a section.");
  const hots = supplyEnds(installation, box, intent);
  const grounded = hasGround(installation, box, section, intent.supply.cable);
  const intended = groupsOfIntent(installation, box, intent, leastSizes(copy, section, hots), grounded);
  if (!intended.ok) return intended;
  const { groups, spare, guard, reidentified } = intended.value;
  const plan = planJoints(installation, asItWas(before, box), groups, spare, intent.style);
  if (!plan.ok) return plan;
  const calls = [
    ...replacing,
    ...makeUpCalls(box, state, plan.value),
    ...marks(copy, state, box, reidentified),
    ...recordIntent(copy, state, id, intent),
    ...leftCalls(project, state, id, left),
  ];
  const room = roomFix(project, state, before, calls, wantedRoom);
  const tried = tryMakeUp({
    project,
    state,
    box: before,
    title: wording.makeUp(before.name),
    calls: [...calls, ...room.calls],
    groups,
    replaced,
    guard,
    mustProtect: (after) => protectedOutlets(after, state, box, intent),
  });
  if (!tried.ok) return { ok: false, refusal: { ...tried.refusal, rooms: room.ways } };
  return planned({
    ...tried.value,
    call: withFirst(first, tried.value.call),
    before,
    started: project,
    replaced,
    groups,
    plan: plan.value,
    ...(room.words !== undefined && { room: room.words }),
    rooms: room.ways,
  });
}

export interface Staged {
  readonly project: Project;
  readonly calls: readonly CommandCall[];
  /** By the id of the new device. */
  readonly replaced: ReadonlyMap<DeviceId, DeviceId>;
}

/** Puts other devices in place on a copy, so that what follows can see their terminals. */
export function replaceDevices(
  project: Project,
  state: StateName,
  box: Box,
  replace: readonly Replacing[],
): Planned<Staged> {
  const fresh = makeFresh(box);
  const taken = new Set(
    Object.values(getInstallation(project, state).enclosures).flatMap(({ devices }) =>
      Object.values(devices).map(({ name }) => name),
    ),
  );
  const calls: CommandCall[] = [];
  const replaced = new Map<DeviceId, DeviceId>();
  let copy = project;
  for (const [index, { device, type, name }] of replace.entries()) {
    const old = box.devices[device];
    if (old === undefined)
      return refused("no-such-device", wording.noDevice(box.name, device), `/replace/${index}/device`);
    const id = fresh("d").id as DeviceId;
    const called = name ?? nameOfReplacement(old.name, taken);
    taken.add(called);
    const call = { command: "replace-device", args: { state, device, id, type, name: called } };
    const done = runCommand(copy, call);
    if (!done.ok) return refused(done.refusal.code, done.refusal.message, `/replace/${index}`);
    copy = done.project;
    calls.push(call);
    replaced.set(id, device);
  }
  return planned({ project: copy, calls, replaced });
}

/** The box with its new devices and every conductor still where it was: moves are counted from there. */
export function asItWas(before: Enclosure, now: Box): Box {
  const places: Record<EndKey, Place> = { ...now.places };
  for (const [end, place] of Object.entries(before.places) as [EndKey, Place][])
    if (place.at.kind === "terminal" && !(place.at.device in now.devices)) places[end] = place;
  return { ...now, places };
}

const supplyEnds = (
  installation: Parameters<typeof groupsOfIntent>[0],
  box: Box,
  { supply }: MakeUpIntent,
): readonly EndKey[] =>
  cablesInto(installation.cables, box.id)
    .filter(({ cable }) => cable.id === supply.cable)
    .flatMap(({ cable, side }) => Object.keys(cable.conductors).map((key) => `${cable.id}.${key}.${side}` as EndKey));

/** Whether an equipment ground arrives: with the supply, by its armour, or by another cable that brings one. */
export function hasGround(
  installation: Parameters<typeof groupsOfIntent>[0],
  box: Box,
  section: Section,
  supply: CableId,
): boolean {
  return cablesInto(installation.cables, box.id).some(({ cable, side }) => {
    const keys = groundKeysOf(cable);
    if (cable.id === supply)
      return keys.length > 0 || cable.construction === "armoured-bonded" || cable.construction === "raceway";
    return keys.some((key) => section.roleOfEnd(`${cable.id}.${key}.${side}` as EndKey) === "ground");
  });
}

/** A white that carries a hot is re-identified at both of its ends. */
function marks(project: Project, state: StateName, box: Box, ends: readonly EndKey[]): readonly CommandCall[] {
  const installation = getInstallation(project, state);
  return ends.flatMap((end) => {
    const far = farEnd(end);
    const other = Object.values(installation.enclosures).find(({ places }) => far in places);
    return [
      { enclosure: box as Enclosure, id: end },
      ...(other === undefined ? [] : [{ enclosure: other, id: far }]),
    ].flatMap(({ enclosure, id }) => {
      const made = findEndFacts(installation, enclosure, id);
      if (made === undefined || enclosure.places[id]?.markedAs !== undefined) return [];
      const target = { kind: "end", enclosure: enclosure.id, id };
      return [{ command: "set-property", args: { state, target, field: "markedAs", value: "black" } }];
    });
  });
}

/** A cable that is left on LINE on purpose is remembered, beside those that are protected. */
function recordIntent(
  project: Project,
  state: StateName,
  id: EnclosureId,
  intent: MakeUpIntent,
): readonly CommandCall[] {
  const uses = [...intent.downstream, ...intent.switched, ...intent.loops, ...intent.travellers];
  const was = getInstallation(project, state).intent.boxes[id];
  const protect = Object.fromEntries(uses.map(({ cable, protect: is }) => [cable, is]));
  const said = { supply: intent.supply.cable, ...(uses.length > 0 && { protect }) };
  if (JSON.stringify(was) === JSON.stringify(said)) return [];
  return [{ command: "set-box-intent", args: { state, enclosure: id, intent: said } }];
}

/** Outlets that are fed over the cables to be protected. */
function protectedOutlets(after: Project, state: StateName, box: Box, intent: MakeUpIntent): readonly OutletKey[] {
  const section = sectionOf(getInstallation(after, state), box.id);
  const uses: readonly { cable: CableId; protect: boolean }[] = [...intent.downstream, ...intent.switched];
  const cables = new Set(uses.filter(({ protect }) => protect).map(({ cable }) => cable));
  if (section === undefined || cables.size === 0) return [];
  return section.outlets().flatMap(({ outlet, live }) => {
    const way = live ? section.wayFrom("ungrounded", { device: outlet.device.id, node: outlet.hot }) : undefined;
    const isBehind = way?.some(
      (step) => step.kind === "cable" && cables.has(step.cable) && step.fromEnclosure === box.id,
    );
    return isBehind === true ? [outlet.key] : [];
  });
}
