import type { Draft } from "immer";
import type { DeviceType } from "../catalog/device-type.ts";
import { findDeviceType, getDeviceType } from "../catalog/device-types.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Device } from "../model/device.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { DeviceId, OutletKey } from "../model/ids.ts";
import { outletKey, parseOutlet } from "../model/ids.ts";
import type { At } from "../model/place.ts";
import type { Installation, OutletWish, Project, StateName } from "../model/project.ts";
import { findDevice } from "../queries/find-item.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { landingsOnReplacement } from "../queries/landings-on-replacement.ts";
import { outletsOf } from "../queries/outlets-of.ts";
import { catalogText, idText, nameText, record, stateName } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, type Refusal, refusal } from "./define-command.ts";
import { deviceOr } from "./find-or-refuse.ts";
import { idsInUse } from "./fresh-ids.ts";
import { notInStock } from "./item-words.ts";
import { draftInstallation, forgetEvidence, moveEnds, otherState, written } from "./move-ends.ts";
import { wrongEnclosure } from "./place-device.ts";
import { replacementDevice } from "./replacement-device.ts";

type Args = CommandArgs["replace-device"];

const wording = catalogue({
  capping: (device: Part, next: Part, count: Part) =>
    `Replace ${device} with ${next}, ${count} ${count === 1 ? "conductor" : "conductors"} capped`,
  inTheWay: (type: Part, space: Part, other: Part) =>
    `${type} needs space ${space} too, and ${other} is there. Move that first, or pick a one-pole type.`,
  noSpace: (type: Part, space: Part, panel: Part, spaces: Part, device: Part) =>
    `${type} needs space ${space} too, and ${panel} has ${spaces} spaces. Move ${device} to another space first.`,
  otherKind: (type: Part, device: Part) =>
    `${type} cannot take the place of ${device}, which is a part of another kind. Place it beside, or pick another type.`,
  plugged: (load: Part, device: Part, type: Part) =>
    `${load} is plugged into ${device}, and ${type} has no outlet for it. Plug it in elsewhere first, or remove it.`,
  replace: (device: Part, next: Part) => `Replace ${device} with ${next}`,
  same: (device: Part, type: Part) =>
    `${device} already is of the type ${type}. Pick another type, or change its facts.`,
});

/**
 * Puts another device in the place of one. Ends stay where terminals correspond (`correspondences`), and are capped
 * elsewhere; the name of the step says how many. In proposed it is other hardware, linked to the device of as found that
 * stood there; as found it corrects the record of what is there, so that what was found out about it stays.
 */
export const replaceDevice = defineCommand<Args>({
  id: "replace-device",
  args: record<Args>({ state: stateName, device: idText, id: idText, type: catalogText, name: nameText }),
  label(project, args) {
    const { device, moves } = replacement(project, args);
    const capped = [...moves.values()].filter((at) => at.kind === "capped").length;
    return capped === 0 ? wording.replace(device.name, args.name) : wording.capping(device.name, args.name, capped);
  },
  refuse(project, { state, device: id, id: newId, type: typeId }) {
    const { found, no } = deviceOr(project, state, id);
    if (no !== undefined) return no;
    const { installation, enclosure, device } = found;
    const type = findDeviceType(typeId);
    if (type === undefined) return refusal("unknown-catalog-item", notInStock.device(typeId));
    return (
      wrongEnclosure(enclosure, typeId) ??
      nothingToReplace(project, state, device, type) ??
      wrongPart(device, type) ??
      noRoom(enclosure, device, type) ??
      losesPlugs(installation, device, newId, type) ??
      idsInUse(project, newId)
    );
  },
  apply(draft, args, before) {
    const { state } = args;
    const { installation, enclosure, device, next, moves } = replacement(before, args);
    const target = draftInstallation(draft, state);
    const box = written(target.enclosures[enclosure.id]);
    // A corrected record is about the same joints, so what is known of them stays.
    const stays = (at: At) => state === "as-found" && at.kind === "terminal";
    for (const [end, at] of moves) if (stays(at)) written(box.places[end]).at = { ...at };
    moveEnds(draft, state, enclosure.id, new Map([...moves].filter(([, at]) => !stays(at))), before);
    delete box.devices[device.id];
    box.devices[next.id] = next as Draft<Device>;
    moveTies(box, enclosure, device, next);
    moveReferences(target, installation, device, next);
    if (state === "as-found") moveReplaces(draft, device.id, next.id, before);
  },
});

interface Replacement {
  readonly installation: Installation;
  readonly enclosure: Enclosure;
  readonly device: Device;
  readonly next: Device;
  readonly moves: ReturnType<typeof landingsOnReplacement>;
}

function replacement(project: Project, { state, device: id, id: newId, type, name }: Args): Replacement {
  const installation = getInstallation(project, state);
  const { enclosure, device } = written(findDevice(installation, id));
  const recorded = state === "as-found";
  const made = replacementDevice(device, newId, type, name, recorded);
  const replaces = recorded ? undefined : stoodThere(project, device);
  const next: Device = replaces === undefined ? made : { ...made, replaces };
  return { installation, enclosure, device, next, moves: landingsOnReplacement(enclosure, device, next, recorded) };
}

/** The device of as found whose place this is: itself, or the one it replaces. */
function stoodThere({ asFound }: Project, { id, replaces }: Device): DeviceId | undefined {
  const first = findDevice(asFound, id) === undefined ? replaces : id;
  return first !== undefined && findDevice(asFound, first) !== undefined ? first : undefined;
}

/** One for another of its kind is work only where the old one was found there; elsewhere nothing would be different. */
function nothingToReplace(project: Project, state: StateName, device: Device, type: DeviceType): Refusal | undefined {
  if (device.type !== type.id) return undefined;
  if (state === "proposed" && findDevice(project.asFound, device.id) !== undefined) return undefined;
  return refusal("same-device-type", wording.same(device.name, type.title));
}

const PANEL_PARTS: Readonly<Partial<Record<DeviceType["family"], string>>> = {
  breaker: "breaker",
  fuse: "breaker",
  "neutral-bar": "neutral-bar",
  "ground-bar": "ground-bar",
  lugs: "lugs",
};

/** Breakers, bars and lugs do different things in a panel: no terminal of one is a terminal of another. */
function wrongPart(device: Device, type: DeviceType): Refusal | undefined {
  const old = getDeviceType(device.type);
  if (PANEL_PARTS[old.family] === PANEL_PARTS[type.family]) return undefined;
  return refusal("nothing-corresponds", wording.otherKind(type.title, device.name));
}

/** A two-pole breaker takes the space below its own too: spaces of one side of a panel are numbered by twos. */
function noRoom(enclosure: Enclosure, device: Device, type: DeviceType): Refusal | undefined {
  const { slot } = device;
  if (enclosure.kind !== "panel" || slot === undefined || type.gangs <= getDeviceType(device.type).gangs)
    return undefined;
  const needed = slot + 2;
  const inTheWay = Object.values(enclosure.devices).find((one) => one.id !== device.id && one.slot === needed);
  if (inTheWay !== undefined) return refusal("space-in-use", wording.inTheWay(type.title, needed, inTheWay.name));
  if (needed <= enclosure.spaces) return undefined;
  return refusal("no-such-space", wording.noSpace(type.title, needed, enclosure.name, enclosure.spaces, device.name));
}

/** What is plugged in does not vanish with the face. */
function losesPlugs({ loads }: Installation, device: Device, newId: DeviceId, type: DeviceType): Refusal | undefined {
  const plugged = Object.values(loads).find((load) => parseOutlet(load.plug).device === device.id);
  if (plugged === undefined) return undefined;
  const next = replacementDevice(device, newId, type.id, device.name, false);
  if (outletsOf(next).some((outlet) => outlet.receptacle)) return undefined;
  return refusal("load-plugged-in", wording.plugged(plugged.name, device.name, type.title));
}

/** A neighbour tied to the old breaker is tied to the new one; a tie to what is no breaker would be none. */
function moveTies(box: Draft<Enclosure>, enclosure: Enclosure, device: Device, next: Device): void {
  for (const one of Object.values(enclosure.devices)) {
    if (one.id === device.id || one.tiedTo !== device.id) continue;
    const tied = written(box.devices[one.id]);
    tied.tiedTo = next.id;
    forgetEvidence(tied, "tiedTo");
  }
}

function moveReferences(target: Draft<Installation>, installation: Installation, device: Device, next: Device): void {
  const { loads, labels, intent, directory } = installation;
  for (const load of Object.values(loads))
    if (parseOutlet(load.plug).device === device.id) {
      const [plug] = outletsFor(load.plug, next);
      written(target.loads[load.id]).plug = written(plug);
    }
  for (const label of Object.values(labels))
    if ("device" in label.on && label.on.device === device.id)
      written(target.labels[label.id]).on = { device: next.id };
  moveWishes(target, intent.outlets, device, next);
  const line = directory[device.id];
  if (line === undefined) return;
  delete target.directory[device.id];
  target.directory[next.id] = line;
}

/** The outlets of the new device that an outlet of the old one becomes: its own half where there is one. */
function outletsFor(key: OutletKey, next: Device): readonly OutletKey[] {
  const keys = outletsOf(next).map((outlet) => outlet.key);
  const { half } = parseOutlet(key);
  if (half === undefined) return keys;
  const same = outletKey(next.id, half);
  return keys.includes(same) ? [same] : keys.slice(0, 1);
}

/** Where two halves become one face, a wish for protection outlives a decision against it. */
function moveWishes(
  target: Draft<Installation>,
  outlets: Readonly<Record<OutletKey, OutletWish>>,
  device: Device,
  next: Device,
): void {
  const keys = (Object.keys(outlets) as OutletKey[]).filter((key) => parseOutlet(key).device === device.id).sort();
  for (const key of keys) delete target.intent.outlets[key];
  for (const key of keys) {
    const wish = outlets[key];
    for (const to of wish === undefined ? [] : outletsFor(key, next))
      if (target.intent.outlets[to]?.wish !== "protect") target.intent.outlets[to] = { ...written(wish) };
  }
}

/** The record of a device that proposed replaces was corrected: it still is the one that is replaced. */
function moveReplaces(draft: Draft<Project>, old: DeviceId, next: DeviceId, before: Project): void {
  const other = otherState(before, "as-found");
  for (const enclosure of Object.values(other?.enclosures ?? {}))
    for (const device of Object.values(enclosure.devices))
      if (device.replaces === old)
        written(written(draft.proposed?.enclosures[enclosure.id]).devices[device.id]).replaces = next;
}
