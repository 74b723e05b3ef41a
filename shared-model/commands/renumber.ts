import type { Cable, CableSide } from "../model/cable.ts";
import type { Device } from "../model/device.ts";
import type { Enclosure, PassThrough } from "../model/enclosure.ts";
import {
  type CableId,
  cableEnd,
  type EndKey,
  jumperEnd,
  type OutletKey,
  outletKey,
  parseEnd,
  parseOutlet,
  type RoomId,
} from "../model/ids.ts";
import type { Place } from "../model/place.ts";
import type { Installation, Label, Layout } from "../model/project.ts";

/** New ids and names of everything in some wiring. */
export interface NewIdentities {
  readonly ids: Readonly<Record<string, string>>;
  readonly names: Readonly<Record<string, string>>;
  /** Room that a room of the wiring becomes. */
  readonly rooms: ReadonlyMap<RoomId, RoomId>;
}

/** Ids that must differ from every other in a drawing. Rooms apart, which may join one that is there. */
export function idsOf({ enclosures, cables, loads, labels }: Installation): readonly string[] {
  return [
    ...Object.keys(enclosures),
    ...Object.values(enclosures).flatMap(insideIds),
    ...Object.keys(cables),
    ...Object.keys(loads),
    ...Object.keys(labels),
  ];
}

export const insideIds = ({ devices, splices, jumpers }: Enclosure): readonly string[] => [
  ...Object.keys(devices),
  ...Object.keys(splices),
  ...Object.keys(jumpers),
];

/** Ids that must differ from the others of their own table only. */
export const localIdsOf = (enclosure: Enclosure): readonly (readonly string[])[] => [
  Object.keys(enclosure.entries),
  Object.keys(enclosure.passThroughs),
  enclosure.kind === "box" ? Object.keys(enclosure.rings) : [],
];

type ById<T> = Readonly<Record<string, T>>;

/**
 * The same wiring under new ids and names. A copy replaces no device of the other state. What it is given for ids must
 * name everything; what has no new name keeps its own.
 */
export function renumbered(from: Installation, identities: NewIdentities): Installation {
  const { ids } = identities;
  return {
    enclosures: moved(from.enclosures, (one) => enclosureAs(one, identities)),
    cables: moved(from.cables, (one) => cableAs(one, identities)),
    loads: moved(from.loads, (one) => ({ ...called(one, identities), plug: outletAs(one.plug, ids) })),
    labels: moved(from.labels, (one) => ({ ...one, id: as(one.id, ids), on: labelledAs(one.on, ids) })),
    intent: {
      boxes: keyed(from.intent.boxes, ids, ({ supply, protect, ...rest }) => ({
        ...rest,
        ...(supply !== undefined && { supply: as(supply, ids) }),
        ...(protect !== undefined && { protect: keyed(protect, ids, (wished) => wished) }),
      })),
      outlets: Object.fromEntries(
        Object.entries(from.intent.outlets).map(([key, wish]) => [outletAs(key as OutletKey, ids), wish]),
      ),
    },
    directory: keyed(from.directory, ids, (line) => line),
  };
}

function as<T extends string>(id: T, ids: ById<string>): T {
  const next = Object.hasOwn(ids, id) ? ids[id] : undefined;
  if (next === undefined) throw new Error(`There is no new id for ${id}.`);
  return next as T;
}

const called = <T extends { readonly id: string; readonly name: string }>(
  item: T,
  { ids, names }: NewIdentities,
): T => ({
  ...item,
  id: as(item.id, ids),
  name: Object.hasOwn(names, item.id) ? names[item.id] : item.name,
});

/** A table of items filed under the ids that they have now. */
const moved = <K extends string, T extends { readonly id: string }>(
  table: Readonly<Record<K, T>>,
  change: (item: T) => T,
): Readonly<Record<K, T>> =>
  Object.fromEntries(
    Object.values<T>(table)
      .map(change)
      .map((item) => [item.id, item]),
  ) as Readonly<Record<K, T>>;

const keyed = <K extends string, T>(
  table: Readonly<Record<K, T>>,
  ids: ById<string>,
  change: (item: T) => T,
): Readonly<Record<K, T>> =>
  Object.fromEntries(
    (Object.entries(table) as [K, T][]).map(([key, item]) => [as(key, ids), change(item)]),
  ) as Readonly<Record<K, T>>;

function enclosureAs(enclosure: Enclosure, identities: NewIdentities): Enclosure {
  const { ids, rooms } = identities;
  const { roomId, ...rest } = enclosure;
  const room = roomId === undefined ? undefined : rooms.get(roomId);
  const own = <T extends { readonly id: string }>(item: T): T => ({ ...item, id: as(item.id, ids) });
  return {
    ...called(rest, identities),
    ...(room !== undefined && { roomId: room }),
    entries: moved(enclosure.entries, own),
    devices: moved(enclosure.devices, (one) => deviceAs(one, identities)),
    splices: moved(enclosure.splices, (one) => called(one, identities)),
    jumpers: moved(enclosure.jumpers, (one) => called(one, identities)),
    passThroughs: moved(enclosure.passThroughs, (one) => passThroughAs(one, ids)),
    places: Object.fromEntries(
      (Object.entries(enclosure.places) as [EndKey, Place][]).map(([end, place]) => [
        endAs(end, ids),
        placeAs(place, ids),
      ]),
    ),
    ...(enclosure.kind === "box" && { rings: moved(enclosure.rings, own) }),
  } as Enclosure;
}

function deviceAs({ replaces: _old, tiedTo, ...device }: Device, identities: NewIdentities): Device {
  const { replaces: _mark, ...marks } = device.evidence ?? {};
  const { evidence: _all, ...rest } = called(device, identities);
  return {
    ...rest,
    ...(tiedTo !== undefined && { tiedTo: as(tiedTo, identities.ids) }),
    ...(device.evidence !== undefined && { evidence: marks as NonNullable<Device["evidence"]> }),
  };
}

const passThroughAs = (pass: PassThrough, ids: ById<string>): PassThrough => ({
  ...pass,
  id: as(pass.id, ids),
  cable: as(pass.cable, ids),
  entryIn: as(pass.entryIn, ids),
  entryOut: as(pass.entryOut, ids),
});

function endAs(end: EndKey, ids: ById<string>): EndKey {
  const parsed = parseEnd(end);
  if (parsed === undefined) throw new Error(`Not an end: ${end}`);
  return parsed.of === "cable"
    ? cableEnd(as(parsed.cable, ids), parsed.conductor, parsed.side)
    : jumperEnd(as(parsed.jumper, ids), parsed.side);
}

function placeAs(place: Place, ids: ById<string>): Place {
  const { at } = place;
  if (at.kind === "terminal") return { ...place, at: { ...at, device: as(at.device, ids) } };
  if (at.kind === "splice") return { ...place, at: { ...at, splice: as(at.splice, ids) } };
  return place;
}

function cableAs(cable: Cable, identities: NewIdentities): Cable {
  const { ids } = identities;
  const side = (where: CableSide): CableSide =>
    "enclosure" in where ? { ...where, enclosure: as(where.enclosure, ids), entry: as(where.entry, ids) } : where;
  return { ...called(cable, identities), sides: { ...cable.sides, a: side(cable.sides.a), b: side(cable.sides.b) } };
}

function outletAs(key: OutletKey, ids: ById<string>): OutletKey {
  const { device, half } = parseOutlet(key);
  return outletKey(as(device, ids), half);
}

function labelledAs(on: Label["on"], ids: ById<string>): Label["on"] {
  if ("device" in on) return { ...on, device: as(on.device, ids) };
  if ("enclosure" in on) return { ...on, enclosure: as(on.enclosure, ids) };
  return { ...on, cable: as(on.cable, ids) };
}

/** Splices placed by hand and bends of cables, under their new ids; what the wiring does not have is left out. */
export function renumberedLayout(
  from: Installation,
  layout: Pick<Layout, "splices" | "cables">,
  ids: ById<string>,
): Pick<Layout, "splices" | "cables"> {
  const splices = new Set(Object.values(from.enclosures).flatMap((one) => Object.keys(one.splices)));
  const pick = <T>(table: ById<T>, has: (id: string) => boolean) =>
    Object.fromEntries(Object.entries(table).flatMap(([id, value]) => (has(id) ? [[as(id, ids), value]] : [])));
  return {
    splices: pick(layout.splices, (id) => splices.has(id)),
    cables: pick(layout.cables, (id) => from.cables[id as CableId] !== undefined),
  };
}
