import type { Patch } from "immer";
import type { PassThrough } from "../model/enclosure.ts";
import {
  type CableId,
  type DeviceId,
  type EnclosureId,
  type LabelId,
  type LoadId,
  type OutletKey,
  type PassThroughId,
  parseOutlet,
  type RoomId,
} from "../model/ids.ts";
import type { Installation, Project, StateName } from "../model/project.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { otherKey } from "./seen-of-as-found.ts";

/** What may have other answers now than before. */
export interface Changes {
  /** The rules themselves changed, or so much that it is not worth telling apart. */
  readonly everything: boolean;
  /** Enclosures that changed, came or went, with both ends of every cable that did and what it passes through. */
  readonly enclosures: ReadonlySet<EnclosureId>;
  /** Enclosures whose section reads something else of the document that changed: their room, their intent, their labels, what is plugged in there. */
  readonly circumstances: ReadonlySet<EnclosureId>;
  /** Breakers whose line of the directory changed: the sections that they feed read it. */
  readonly breakers: ReadonlySet<DeviceId>;
}

/** Fields of a document that no answer reads. */
const UNREAD: ReadonlySet<string> = new Set([
  "layout",
  "acknowledgements",
  "attachments",
  "tariff",
  "notes",
  "evidence",
]);
/** Fields that only answers about the document as a whole read; these are looked for again at every edit. */
const OF_THE_WHOLE: ReadonlySet<string> = new Set(["title", "heldBack", "readings", "workDone"]);

/**
 * Whether any answer about a state may be another after some patches. What was held back is told of proposed alone. What
 * proposed sees of as found is looked for by `SeenOfAsFound`.
 */
export function concerns(state: StateName, patches: readonly Patch[]): boolean {
  const other = otherKey(state);
  return patches.some(({ path: [first] }) => {
    if (first === other || (first === "heldBack" && state === "as-found")) return false;
    return !UNREAD.has(String(first));
  });
}

/**
 * What an edit touched, read off the paths of its patches, so that it costs the edit and not the drawing. Only what is
 * rarer than a landing looks further: a changed cable at the pass-throughs, a changed room, wish or load at the enclosures.
 */
export function findChanges(before: Project, after: Project, state: StateName, patches: readonly Patch[]): Changes {
  const enclosures = new Set<EnclosureId>();
  const circumstances = new Set<EnclosureId>();
  const cables = new Set<CableId>();
  const rooms = new Set<RoomId>();
  const outlets = new Set<OutletKey>();
  const loads = new Set<LoadId>();
  const labels = new Set<LabelId>();
  const breakers = new Set<DeviceId>();
  const own = state === "as-found" ? "asFound" : "proposed";
  const other = otherKey(state);
  let everything = false;
  for (const { path } of patches) {
    const [first, second, third, fourth] = path.map(String);
    if (first === other || (first !== undefined && (UNREAD.has(first) || OF_THE_WHOLE.has(first)))) continue;
    if (first === own && second === "enclosures" && third !== undefined) enclosures.add(third as EnclosureId);
    else if (first === own && second === "cables" && third !== undefined) cables.add(third as CableId);
    else if (first === own && second === "intent" && third === "boxes" && fourth !== undefined)
      circumstances.add(fourth as EnclosureId);
    else if (first === own && second === "intent" && third === "outlets" && fourth !== undefined)
      outlets.add(fourth as OutletKey);
    else if (first === own && second === "loads" && third !== undefined) loads.add(third as LoadId);
    else if (first === own && second === "labels" && third !== undefined) labels.add(third as LabelId);
    else if (first === own && second === "directory" && third !== undefined) breakers.add(third as DeviceId);
    else if (first === "rooms" && second !== undefined) rooms.add(second as RoomId);
    else everything = true;
  }
  if (everything) return { everything, enclosures, circumstances, breakers };

  const was = getInstallation(before, state);
  const is = getInstallation(after, state);
  addEndsOf(cables, was, is, enclosures);
  for (const load of loads)
    for (const { loads: table } of [was, is]) if (table[load] !== undefined) outlets.add(table[load].plug);
  const devices = new Set([...outlets].map((outlet) => parseOutlet(outlet).device));
  addLabelled(labels, was, is, devices, circumstances);
  addCircumstances(rooms, devices, is, circumstances);
  return { everything, enclosures, circumstances, breakers };
}

/** What a label is on, before and after: the device, the box, or the boxes that the cable ends in. */
function addLabelled(
  labels: ReadonlySet<LabelId>,
  was: Installation,
  is: Installation,
  devices: Set<DeviceId>,
  circumstances: Set<EnclosureId>,
): void {
  for (const id of labels) {
    for (const on of [was.labels[id]?.on, is.labels[id]?.on]) {
      if (on === undefined) continue;
      if ("device" in on) devices.add(on.device);
      else if ("enclosure" in on) circumstances.add(on.enclosure);
      else
        for (const side of Object.values(is.cables[on.cable]?.sides ?? {}))
          if ("enclosure" in side) circumstances.add(side.enclosure);
    }
  }
}

function addEndsOf(
  cables: ReadonlySet<CableId>,
  was: Installation,
  is: Installation,
  enclosures: Set<EnclosureId>,
): void {
  if (cables.size === 0) return;
  for (const id of cables) {
    for (const cable of [was.cables[id], is.cables[id]]) {
      if (cable === undefined) continue;
      for (const side of [cable.sides.a, cable.sides.b]) if ("enclosure" in side) enclosures.add(side.enclosure);
    }
  }
  for (const { id, passThroughs } of Object.values(is.enclosures)) {
    for (const key in passThroughs)
      if (cables.has((passThroughs[key as PassThroughId] as PassThrough).cable)) enclosures.add(id);
  }
}

function addCircumstances(
  rooms: ReadonlySet<RoomId>,
  devices: ReadonlySet<DeviceId>,
  is: Installation,
  circumstances: Set<EnclosureId>,
): void {
  if (rooms.size === 0 && devices.size === 0) return;
  const about = [...devices];
  for (const enclosure of Object.values(is.enclosures)) {
    const inRoom = enclosure.roomId !== undefined && rooms.has(enclosure.roomId);
    if (inRoom || about.some((device) => device in enclosure.devices)) circumstances.add(enclosure.id);
  }
}
