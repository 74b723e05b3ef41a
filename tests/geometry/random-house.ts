import fc from "fast-check";
import { cableItems } from "../../shared-model/catalog/cable-items.ts";
import { getDeviceType } from "../../shared-model/catalog/device-types.ts";
import { findEnclosureItem } from "../../shared-model/catalog/enclosure-items.ts";
import type { Cable } from "../../shared-model/model/cable.ts";
import type { Device } from "../../shared-model/model/device.ts";
import type { Enclosure, Entry } from "../../shared-model/model/enclosure.ts";
import {
  asId,
  type CableId,
  type ConductorKey,
  cableEnd,
  type DeviceId,
  type EnclosureId,
  type EndKey,
  type EntryId,
  type RoomId,
} from "../../shared-model/model/ids.ts";
import type { Place } from "../../shared-model/model/place.ts";
import { emptyInstallation, emptyProject, type Point, type Project } from "../../shared-model/model/project.ts";
import type { Room } from "../../shared-model/model/room.ts";
import { invariantProblems } from "../../shared-model/queries/invariants.ts";

/** A house: each box hangs on one before it, a few cables make rings, and boxes lie about in rooms and nowhere. */
export interface HouseSpec {
  readonly panels: number;
  readonly boxes: readonly {
    /** Which of those before it feeds it: 0 the first panel, mostly the one before. */
    readonly from: number;
    readonly item: number;
    readonly devices: number;
    readonly room: number;
    readonly at: Point;
  }[];
  readonly rings: readonly { readonly one: number; readonly other: number }[];
}

const DEVICES = ["receptacle-tr-15", "gfci-receptacle-15", "switch-3way"] as const;
const ROOMS = ["Kitchen", "Hall", "Basement", "Porch"];

export const houseSpec = (most: number, rings = 3): fc.Arbitrary<HouseSpec> =>
  fc.record({
    panels: fc.integer({ min: 0, max: 2 }),
    boxes: fc.array(
      fc.record({
        from: fc.oneof({ weight: 3, arbitrary: fc.constant(-1) }, { weight: 2, arbitrary: fc.nat(1000) }),
        item: fc.nat(40),
        devices: fc.nat(2),
        room: fc.nat(ROOMS.length),
        at: fc.record({ x: fc.integer({ min: -6000, max: 6000 }), y: fc.integer({ min: -6000, max: 6000 }) }),
      }),
      { minLength: 2, maxLength: most, size: "max" },
    ),
    rings: fc.array(fc.record({ one: fc.nat(1000), other: fc.nat(1000) }), { maxLength: rings, size: "max" }),
  });

/** Builds the document. Throws where the result breaks an invariant. */
export function buildHouse({ panels, boxes, rings }: HouseSpec): Project {
  const base = emptyProject("A random house", 2020);
  const rooms = Object.fromEntries(
    ROOMS.map((name, order): [RoomId, Room] => {
      const id = asId<RoomId>(`room-${order}`);
      return [id, { id, name, kinds: [], order }];
    }),
  );
  const parts = new Map<EnclosureId, { entries: Record<EntryId, Entry>; places: Record<EndKey, Place> }>();
  const enclosures: Record<EnclosureId, Enclosure> = {};
  const spots: Record<EnclosureId, Point> = {};
  const cables: Record<CableId, Cable> = {};
  const add = (id: EnclosureId, panel: boolean, at: Point, devices: Record<DeviceId, Device>, room?: number): void => {
    const item = findEnclosureItem(panel ? "panel-30" : "square-4-2-1-8");
    const part = { entries: {}, places: {} };
    parts.set(id, part);
    spots[id] = at;
    const common = {
      id,
      name: id.toUpperCase(),
      item: item?.id ?? "",
      devices,
      splices: {},
      jumpers: {},
      passThroughs: {},
      ...part,
      order: Object.keys(enclosures).length,
      ...(room !== undefined && room < ROOMS.length && { roomId: asId<RoomId>(`room-${room}`) }),
    };
    if (item?.make.kind === "panel")
      enclosures[id] = { ...common, kind: "panel", spaces: item.make.spaces, supply: "service", mainBond: "here" };
    else if (item !== undefined)
      enclosures[id] = { ...common, kind: "box", ...item.make.facts, rings: {}, supports: [] };
  };
  const join = (a: EnclosureId, b: EnclosureId, kind: number): void => {
    const stock = cableItems[kind % cableItems.length];
    if (stock === undefined || a === b) return;
    const order = Object.keys(cables).length;
    const id = asId<CableId>(`c${order}`);
    const side = (box: EnclosureId, end: "a" | "b") => {
      const entry = asId<EntryId>(`${box}-${order}`);
      const part = parts.get(box);
      if (part !== undefined) {
        part.entries[entry] = { id: entry, means: "internal-clamp", order };
        for (const key of Object.keys(stock.conductors) as ConductorKey[])
          part.places[cableEnd(id, key, end)] = { at: { kind: "capped" } };
      }
      return { enclosure: box, entry };
    };
    const { construction, conductors } = stock;
    const sides = { a: side(a, "a"), b: side(b, "b") };
    cables[id] = { id, name: `C${order + 1}`, item: stock.id, construction, conductors, sides, order };
  };
  const ids: EnclosureId[] = [];
  for (let i = 0; i < panels; i++) {
    const id = asId<EnclosureId>(`p${i}`);
    add(id, true, { x: 0, y: 3000 * i }, {});
    if (i > 0) join(asId<EnclosureId>("p0"), id, 0);
    ids.push(id);
  }
  boxes.forEach(({ from, item, devices, room, at }, i) => {
    const id = asId<EnclosureId>(`b${i}`);
    const own: Record<DeviceId, Device> = {};
    for (let order = 0; order < devices; order++) {
      const type = getDeviceType(DEVICES[(i + order) % DEVICES.length] ?? "receptacle-tr-15");
      const device = asId<DeviceId>(`${id}-d${order}`);
      own[device] = { ...type.defaults, id: device, name: `D${order}`, type: type.id, order };
    }
    add(id, false, at, own, room);
    const feeder = from < 0 ? ids[ids.length - 1] : ids[from % Math.max(1, ids.length)];
    if (feeder !== undefined) join(feeder, id, item);
    ids.push(id);
  });
  for (const { one, other } of rings) {
    const [a, b] = [ids[one % ids.length], ids[other % ids.length]];
    if (a !== undefined && b !== undefined) join(a, b, one);
  }
  const project: Project = {
    ...base,
    rooms,
    asFound: { ...emptyInstallation, enclosures, cables },
    layout: { ...base.layout, enclosures: spots },
  };
  const problems = invariantProblems(project);
  if (problems.length > 0) throw new Error(problems.map((each) => `${each.path}: ${each.message}`).join("\n"));
  return project;
}
