import { sameValue } from "../lib/same-value.ts";
import type { Cable } from "../model/cable.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { CableId, DeviceId, EnclosureId, SpliceId } from "../model/ids.ts";
import type { Installation } from "../model/project.ts";
import { findDevice } from "./find-item.ts";

/** What the work does to a box: it comes, it goes, or somebody opens it. */
export type EnclosureChange = "new" | "removed" | "opened";
export type CableChange = "new" | "removed" | "changed";
/** A device of proposed that as found does not have; one that takes another's place says whose. */
export type DeviceChange =
  | { readonly kind: "new" }
  | { readonly kind: "replaces"; readonly device: DeviceId; readonly name: string };

/** The difference of the two states by id; what is the same in both is in no table. */
export interface StateChanges {
  readonly enclosures: ReadonlyMap<EnclosureId, EnclosureChange>;
  readonly devices: ReadonlyMap<DeviceId, DeviceChange>;
  readonly cables: ReadonlyMap<CableId, CableChange>;
  /** Splices of proposed that as found does not have. */
  readonly newSplices: ReadonlySet<SpliceId>;
}

const cache = new WeakMap<Installation, { readonly asFound: Installation; readonly changes: StateChanges }>();

/** Compares two states of one document. Cached by identity of both, and per box and cable below that. */
export function changedBetweenStates(asFound: Installation, proposed: Installation): StateChanges {
  const known = cache.get(proposed);
  if (known?.asFound === asFound) return known.changes;
  const changes = compare(asFound, proposed);
  cache.set(proposed, { asFound, changes });
  return changes;
}

function compare(asFound: Installation, proposed: Installation): StateChanges {
  const cables = changedCables(asFound, proposed);
  const enclosures = changedEnclosures(asFound, proposed, cables);
  return { cables, enclosures, devices: newDevices(asFound, proposed), newSplices: newSplices(asFound, proposed) };
}

function changedCables(asFound: Installation, proposed: Installation): Map<CableId, CableChange> {
  const changes = new Map<CableId, CableChange>();
  for (const cable of Object.values(asFound.cables)) {
    const after = proposed.cables[cable.id];
    if (after === undefined) changes.set(cable.id, "removed");
    else if (!sameCable(cable, after)) changes.set(cable.id, "changed");
  }
  for (const cable of Object.values(proposed.cables))
    if (asFound.cables[cable.id] === undefined) changes.set(cable.id, "new");
  return changes;
}

function changedEnclosures(
  asFound: Installation,
  proposed: Installation,
  cables: ReadonlyMap<CableId, CableChange>,
): Map<EnclosureId, EnclosureChange> {
  const changes = new Map<EnclosureId, EnclosureChange>();
  for (const box of Object.values(asFound.enclosures)) {
    const after = proposed.enclosures[box.id];
    if (after === undefined) changes.set(box.id, "removed");
    else if (!sameInside(box, after)) changes.set(box.id, "opened");
  }
  for (const box of Object.values(proposed.enclosures))
    if (asFound.enclosures[box.id] === undefined) changes.set(box.id, "new");
  for (const installation of [asFound, proposed])
    for (const box of boxesOfCables(installation, cables)) if (!changes.has(box)) changes.set(box, "opened");
  return changes;
}

/** The boxes that changed cables end in or run through unbroken: a change of the cable opens each of them. */
function* boxesOfCables(
  installation: Installation,
  changed: ReadonlyMap<CableId, CableChange>,
): Generator<EnclosureId, void> {
  if (changed.size === 0) return;
  for (const id of changed.keys()) {
    const sides = installation.cables[id]?.sides;
    for (const side of sides === undefined ? [] : [sides.a, sides.b]) if ("enclosure" in side) yield side.enclosure;
  }
  for (const box of Object.values(installation.enclosures))
    if (Object.values(box.passThroughs).some((pass) => changed.has(pass.cable))) yield box.id;
}

/** Devices are looked for in boxes that are not the same in both: what was in another box before is gone from that one. */
function newDevices(asFound: Installation, proposed: Installation): Map<DeviceId, DeviceChange> {
  const changes = new Map<DeviceId, DeviceChange>();
  const names = new Map<DeviceId, string>();
  for (const box of Object.values(asFound.enclosures))
    if (proposed.enclosures[box.id] !== box)
      for (const device of Object.values(box.devices)) names.set(device.id, device.name);
  const nameOf = (id: DeviceId): string | undefined => names.get(id) ?? findDevice(asFound, id)?.device.name;
  for (const box of Object.values(proposed.enclosures)) {
    if (asFound.enclosures[box.id] === box) continue;
    for (const device of Object.values(box.devices)) {
      if (names.has(device.id)) continue;
      const name = device.replaces === undefined ? undefined : nameOf(device.replaces);
      if (device.replaces === undefined || name === undefined) changes.set(device.id, { kind: "new" });
      else changes.set(device.id, { kind: "replaces", device: device.replaces, name });
    }
  }
  return changes;
}

function newSplices(asFound: Installation, proposed: Installation): Set<SpliceId> {
  const before = new Set<string>();
  for (const box of Object.values(asFound.enclosures))
    if (proposed.enclosures[box.id] !== box) for (const splice in box.splices) before.add(splice);
  const fresh = new Set<SpliceId>();
  for (const box of Object.values(proposed.enclosures)) {
    if (asFound.enclosures[box.id] === box) continue;
    for (const splice in box.splices) if (!before.has(splice)) fresh.add(splice as SpliceId);
  }
  return fresh;
}

type Fields = Readonly<Record<string, unknown>>;

/** Facts of the drawing and of the survey: a different one does not mean that anybody had a cover off. */
const OF_THE_DRAWING: ReadonlySet<string> = new Set(["name", "note", "notes", "order", "evidence"]);
const OF_THE_BOX: ReadonlySet<string> = new Set([...OF_THE_DRAWING, "roomId", "beingSurveyed"]);
const OF_THE_PLACE: ReadonlySet<string> = new Set([...OF_THE_DRAWING, "tag"]);
/** Tables of a box; their members are compared one by one, each without its own facts of the drawing. */
const TABLES: readonly string[] = ["entries", "devices", "splices", "jumpers", "passThroughs", "places", "rings"];

const insides = new WeakMap<Enclosure, { readonly after: Enclosure; readonly same: boolean }>();
const sheaths = new WeakMap<Cable, { readonly after: Cable; readonly same: boolean }>();

function sameInside(box: Enclosure, after: Enclosure): boolean {
  if (box === after) return true;
  return remembered(insides, box, after, () => {
    const one = box as unknown as Fields;
    const other = after as unknown as Fields;
    return (
      sameBut(one, other, new Set([...OF_THE_BOX, ...TABLES])) &&
      TABLES.every((table) => sameTable(one[table], other[table], table === "places" ? OF_THE_PLACE : OF_THE_DRAWING))
    );
  });
}

function sameCable(cable: Cable, after: Cable): boolean {
  if (cable === after) return true;
  return remembered(
    sheaths,
    cable,
    after,
    () =>
      sameBut(cable as unknown as Fields, after as unknown as Fields, new Set([...OF_THE_DRAWING, "conductors"])) &&
      sameTable(cable.conductors, after.conductors, OF_THE_DRAWING),
  );
}

function remembered<T extends object>(
  known: WeakMap<T, { readonly after: T; readonly same: boolean }>,
  one: T,
  after: T,
  work: () => boolean,
): boolean {
  const found = known.get(one);
  if (found?.after === after) return found.same;
  const same = work();
  known.set(one, { after, same });
  return same;
}

function sameTable(one: unknown, other: unknown, but: ReadonlySet<string>): boolean {
  if (one === other) return true;
  const before = (one ?? {}) as Readonly<Record<string, Fields>>;
  const after = (other ?? {}) as Readonly<Record<string, Fields>>;
  const keys = Object.keys(before);
  return (
    keys.length === Object.keys(after).length &&
    keys.every((key) => {
      const a = before[key];
      const b = after[key];
      return a !== undefined && b !== undefined && (a === b || sameBut(a, b, but));
    })
  );
}

function sameBut(one: Fields, other: Fields, but: ReadonlySet<string>): boolean {
  for (const key in one) if (!but.has(key) && !sameValue(one[key], other[key])) return false;
  for (const key in other) if (!but.has(key) && !(key in one) && other[key] !== undefined) return false;
  return true;
}
