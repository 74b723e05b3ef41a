import type { Draft } from "immer";
import { findDeviceType } from "../catalog/device-types.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Device } from "../model/device.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { OutletKey } from "../model/ids.ts";
import { parseOutlet } from "../model/ids.ts";
import type { Installation, Project, StateName } from "../model/project.ts";
import { findDevice } from "../queries/find-item.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { outletsOf } from "../queries/outlets-of.ts";
import { findTerminal } from "../queries/terminals-of.ts";
import type { Property } from "./catalog/properties.ts";
import type { PropertyTarget, PropertyValue } from "./command-args.ts";
import { type Refusal, refusal } from "./define-command.ts";
import { gone } from "./item-words.ts";
import { draftInstallation, written } from "./move-ends.ts";

const wording = catalogue({
  blank: (field: Part) => `${field} cannot be blank. Write something.`,
  bond: (box: Part) =>
    `Conductors are on the bond point of ${box}, which a nonmetallic box does not have. Lift them first.`,
  hole: (hole: Part, device: Part, terminal: Part) =>
    `A conductor is in hole ${hole} of ${device} ${terminal}, which it would not have. Move that conductor first.`,
  legs: (device: Part, poles: Part) =>
    `${device} has ${poles === 1 ? "one pole" : `${poles} poles`}: pick a leg for each.`,
  noSpace: (panel: Part, spaces: Part) => `${panel} has ${spaces} spaces. Pick one of them.`,
  spaceInUse: (panel: Part, space: Part) =>
    `A breaker of ${panel} is in space ${space}. Move it first, or keep that many spaces.`,
  tie: (breaker: Part, panel: Part) => `${breaker} can be tied to another breaker of ${panel} only. Pick one of those.`,
});

/** Why a value that its field takes does not go with the rest of the drawing. */
export function wouldBreak(
  project: Project,
  state: StateName,
  target: PropertyTarget,
  property: Property,
  value: PropertyValue,
): Refusal | undefined {
  if (target.kind === "enclosure") {
    const enclosure = written(getInstallation(project, state).enclosures[target.id]);
    return wouldBreakEnclosure(project, enclosure, property.field, value);
  }
  if (target.kind === "device") {
    const { enclosure, device } = written(findDevice(getInstallation(project, state), target.id));
    return wouldBreakDevice(enclosure, device, property.field, value);
  }
  const blank = property.takes.kind === "text" && typeof value === "string" && value.trim() === "";
  if (blank && (property.field === "title" || property.field === "wording"))
    return refusal("value-required", wording.blank(property.label));
  return undefined;
}

function wouldBreakEnclosure(
  project: Project,
  enclosure: Enclosure,
  field: string,
  value: PropertyValue,
): Refusal | undefined {
  if (field === "roomId" && value !== null && !(String(value) in project.rooms))
    return refusal("unknown-room", gone.roomChosen);
  if (field === "material" && value === "nonmetallic" && hasBond(enclosure))
    return refusal("no-metal-to-bond", wording.bond(enclosure.name));
  if (field !== "spaces") return undefined;
  const highest = Math.max(0, ...Object.values(enclosure.devices).map((device) => device.slot ?? 0));
  if (Number(value) >= highest) return undefined;
  return refusal("space-in-use", wording.spaceInUse(enclosure.name, highest));
}

const hasBond = (enclosure: Enclosure): boolean =>
  Object.values(enclosure.places).some((place) => place.at.kind === "bond");

function wouldBreakDevice(
  enclosure: Enclosure,
  device: Device,
  field: string,
  value: PropertyValue,
): Refusal | undefined {
  if (field === "entryKind") return losesHole(enclosure, device, value);
  if (field === "slot" && enclosure.kind === "panel" && Number(value ?? 0) > enclosure.spaces)
    return refusal("no-such-space", wording.noSpace(enclosure.name, enclosure.spaces));
  if (field === "legs" && Array.isArray(value)) {
    const poles = legCount(device);
    if (value.length === poles) return undefined;
    return refusal("wrong-leg-count", wording.legs(device.name, poles));
  }
  if (field === "tiedTo" && value !== null && !isTieable(enclosure, device, String(value)))
    return refusal("unknown-device", wording.tie(device.name, enclosure.name));
  return undefined;
}

const legCount = (device: Device): number =>
  new Set(
    findDeviceType(device.type)
      ?.paths.flatMap(({ a, b }) => [a, b])
      .filter((node) => node.startsWith("@leg")),
  ).size;

function isTieable(enclosure: Enclosure, device: Device, id: string): boolean {
  const other = Object.values(enclosure.devices).find((one) => one.id === id);
  return other !== undefined && other.id !== device.id && legCount(other) > 0;
}

/** A clamp plate has a second hole; a conductor in it needs another place before the plate can go. */
function losesHole(enclosure: Enclosure, device: Device, value: PropertyValue): Refusal | undefined {
  const { entryKind: _was, ...rest } = device;
  const changed: Device = value === null ? rest : { ...rest, entryKind: value as NonNullable<Device["entryKind"]> };
  for (const { at } of Object.values(enclosure.places)) {
    if (at.kind !== "terminal" || at.device !== device.id) continue;
    const terminal = findTerminal(changed, at.terminal);
    if (terminal === undefined || at.hole > terminal.holes)
      return refusal("hole-in-use", wording.hole(at.hole, device.name, at.terminal));
  }
  return undefined;
}

/** Breaking a tab off makes two outlets of one: what is plugged in and wished for follows. */
export function afterChange(
  draft: Draft<Project>,
  state: StateName,
  target: PropertyTarget,
  property: Property,
  before: Project,
): void {
  if (target.kind !== "device" || (property.field !== "hotTab" && property.field !== "neutralTab")) return;
  const installation = getInstallation(before, state);
  const was = outletsOf(written(findDevice(installation, target.id)).device).map((outlet) => outlet.key);
  const { enclosure } = written(findDevice(installation, target.id));
  const changed = written(written(draftInstallation(draft, state).enclosures[enclosure.id]).devices[target.id]);
  const now = outletsOf({ ...changed } as Device).map((outlet) => outlet.key);
  const [whole] = now;
  if (whole === undefined || was.length === now.length) return;
  moveLoads(draftInstallation(draft, state), installation, target.id, whole);
  moveWishes(draftInstallation(draft, state), installation, target.id, now);
}

/** Into the upper half, or from either half into the whole. */
function moveLoads(target: Draft<Installation>, { loads }: Installation, device: string, to: OutletKey): void {
  for (const load of Object.values(loads))
    if (parseOutlet(load.plug).device === device) written(target.loads[load.id]).plug = to;
}

/** A wish for the whole is one for each half; of two halves' wishes, one for protection outlives a decision against it. */
function moveWishes(
  target: Draft<Installation>,
  { intent: { outlets } }: Installation,
  device: string,
  now: readonly OutletKey[],
): void {
  const keys = (Object.keys(outlets) as OutletKey[]).filter((key) => parseOutlet(key).device === device).sort();
  const wishes = keys.flatMap((key) => outlets[key] ?? []);
  const kept = wishes.find((wish) => wish.wish === "protect") ?? wishes[0];
  if (kept === undefined) return;
  for (const key of keys) delete target.intent.outlets[key];
  for (const key of now) target.intent.outlets[key] = { ...kept };
}
