import fc from "fast-check";
import { cableItems } from "../../shared-model/catalog/cable-items.ts";
import { deviceTypes } from "../../shared-model/catalog/device-types.ts";
import { findEnclosureItem } from "../../shared-model/catalog/enclosure-items.ts";
import type { Cable, CableSide } from "../../shared-model/model/cable.ts";
import type { Device } from "../../shared-model/model/device.ts";
import type { Enclosure, Entry, Jumper, PassThrough, Splice } from "../../shared-model/model/enclosure.ts";
import {
  asId,
  type CableId,
  type ConductorKey,
  cableEnd,
  type DeviceId,
  type EnclosureId,
  type EndKey,
  type EntryId,
  type JumperId,
  jumperEnd,
  type PassThroughId,
  type SpliceId,
} from "../../shared-model/model/ids.ts";
import type { At, Place } from "../../shared-model/model/place.ts";
import { emptyProject, type Installation, type Point, type Project } from "../../shared-model/model/project.ts";
import { invariantProblems } from "../../shared-model/queries/invariants.ts";
import { terminalsOf } from "../../shared-model/queries/terminals-of.ts";
import type { Colour } from "../../shared-model/units/colour.ts";
import { feet } from "../../shared-model/units/quantity.ts";

/** What a random box holds; `choices` decide, in turn, where each end is. */
export interface BoxSpec {
  readonly panel: boolean;
  readonly cables: readonly { readonly item: number; readonly far: number; readonly flipped: boolean }[];
  readonly devices: readonly { readonly type: number; readonly slot: number }[];
  readonly splices: number;
  readonly jumpers: readonly Colour[];
  readonly pass: boolean;
  readonly choices: readonly number[];
}

export const boxSpec = (most: { cables: number; devices: number }): fc.Arbitrary<BoxSpec> =>
  fc.record({
    panel: fc.boolean(),
    cables: fc.array(fc.record({ item: fc.nat(40), far: fc.nat(6), flipped: fc.boolean() }), {
      maxLength: most.cables,
      size: "max",
    }),
    devices: fc.array(fc.record({ type: fc.nat(60), slot: fc.nat(30) }), { maxLength: most.devices, size: "max" }),
    splices: fc.nat(8),
    jumpers: fc.array(fc.constantFrom<Colour>("black", "white", "bare", "red", "green"), { maxLength: 8, size: "max" }),
    pass: fc.boolean(),
    choices: fc.array(fc.nat(1_000_000), { minLength: 8, maxLength: 60, size: "max" }),
  });

export const HERE = asId<EnclosureId>("here");
const FAR: readonly Point[] = [
  { x: -1500, y: -900 },
  { x: 1500, y: -400 },
  { x: -1500, y: 800 },
  { x: 1500, y: 900 },
  { x: 100, y: 1500 },
  { x: -60, y: -1590 },
];

const enclosure = (id: EnclosureId, panel: boolean, order: number): Enclosure => {
  const item = findEnclosureItem(panel ? "panel-30" : "square-4-2-1-8");
  const common = {
    id,
    name: id,
    item: item?.id ?? "",
    entries: {},
    devices: {},
    splices: {},
    jumpers: {},
    passThroughs: {},
    places: {},
    order,
  };
  if (item?.make.kind === "panel")
    return { ...common, kind: "panel", spaces: item.make.spaces, supply: "service", mainBond: "here" };
  if (item === undefined) throw new Error("The catalogue lacks the test's box.");
  return { ...common, kind: "box", ...item.make.facts, rings: {}, supports: [] };
};

/** Builds the document; the box is `HERE`. Throws where the result breaks an invariant. */
export function buildBox(spec: BoxSpec): Project {
  let turn = 0;
  const next = (below: number): number => {
    turn += 1;
    return ((spec.choices[turn % spec.choices.length] ?? 0) + turn * 7919) % below;
  };
  const entries: Record<EntryId, Entry> = {};
  const cables: Record<CableId, Cable> = {};
  const devices: Record<DeviceId, Device> = {};
  const splices: Record<SpliceId, Splice> = {};
  const jumpers: Record<JumperId, Jumper> = {};
  const passThroughs: Record<PassThroughId, PassThrough> = {};
  const ends: EndKey[] = [];
  const farEntries: Record<EntryId, Entry>[] = FAR.map(() => ({}));
  const farPlaces: Record<EndKey, Place>[] = FAR.map(() => ({}));
  const enter = (table: Record<EntryId, Entry>, name: string, order: number): EntryId => {
    const id = asId<EntryId>(name);
    table[id] = { id, means: order % 2 === 0 ? "internal-clamp" : "external-connector", order };
    return id;
  };
  spec.cables.forEach(({ item, far, flipped }, order) => {
    const stock = cableItems[item % cableItems.length] ?? cableItems[0];
    if (stock === undefined) return;
    const id = asId<CableId>(`c${order}`);
    const here: CableSide = { enclosure: HERE, entry: enter(entries, `in${order}`, order) };
    const box = farEntries[far];
    const there: CableSide =
      box === undefined
        ? { outside: "attic" }
        : { enclosure: asId<EnclosureId>(`far${far}`), entry: enter(box, `out${order}`, order) };
    const sides = flipped ? { a: there, b: here } : { a: here, b: there };
    const { construction, conductors } = stock;
    cables[id] = {
      id,
      name: `C${order + 1}`,
      item: stock.id,
      construction,
      conductors,
      sides,
      lengthFt: feet(20),
      order,
    };
    for (const key of Object.keys(conductors) as ConductorKey[]) {
      ends.push(cableEnd(id, key, flipped ? "b" : "a"));
      const places = farPlaces[far];
      if (places) places[cableEnd(id, key, flipped ? "a" : "b")] = { at: { kind: "capped" } };
    }
  });
  const types = deviceTypes.filter((type) => type.where === (spec.panel ? "panel" : "box"));
  spec.devices.forEach(({ type, slot }, order) => {
    const made = types[type % types.length];
    if (made === undefined) return;
    const id = asId<DeviceId>(`d${order}`);
    devices[id] = {
      ...made.defaults,
      id,
      name: `R${order + 1}`,
      type: made.id,
      order,
      ...(spec.panel && slot > 0 && { slot }),
    };
  });
  for (let order = 0; order < spec.splices; order += 1) {
    const id = asId<SpliceId>(`s${order}`);
    splices[id] = { id, name: `S${order + 1}`, connector: order % 3 === 0 ? "none" : "twist-large", order };
  }
  spec.jumpers.forEach((colour, order) => {
    const id = asId<JumperId>(`j${order}`);
    jumpers[id] = {
      id,
      name: String.fromCharCode(97 + order),
      awg: "12",
      colour,
      material: "copper",
      stranded: false,
      order,
    };
    ends.push(jumperEnd(id, "a"), jumperEnd(id, "b"));
  });
  const anywhere = (): At => {
    const kind = next(20);
    const spliceIds = Object.keys(splices) as SpliceId[];
    const splice = spliceIds[next(Math.max(1, spliceIds.length))];
    if (kind < 10 && splice !== undefined) return { kind: "splice", splice };
    const all = Object.values(devices);
    const device = all[next(Math.max(1, all.length))];
    const terminals = device ? terminalsOf(device) : [];
    const terminal = terminals[next(Math.max(1, terminals.length))];
    if (kind < 16 && device !== undefined && terminal !== undefined)
      return {
        kind: "terminal",
        device: device.id,
        terminal: terminal.name,
        hole: 1 + next(Math.min(12, terminal.holes)),
      };
    return kind < 17 ? { kind: "bond" } : kind < 19 ? { kind: "capped" } : { kind: "loose" };
  };
  const places: Record<EndKey, Place> = {};
  for (const end of ends) places[end] = { at: anywhere(), ...(next(12) === 0 && { markedAs: "black" as const }) };
  for (const id of Object.keys(jumpers) as JumperId[]) {
    const [a, b] = [places[jumperEnd(id, "a")]?.at, places[jumperEnd(id, "b")]?.at];
    if (a && b && sameNode(a, b)) places[jumperEnd(id, "b")] = { at: { kind: "capped" } };
  }
  if (spec.pass) addPass(cables, passThroughs, entries, enter, farEntries, farPlaces);
  const box = { ...enclosure(HERE, spec.panel, 0), entries, devices, splices, jumpers, passThroughs, places };
  const others = FAR.map((_, index) => {
    const each = enclosure(asId<EnclosureId>(`far${index}`), false, index + 1);
    return { ...each, entries: farEntries[index] ?? {}, places: farPlaces[index] ?? {} };
  });
  const base = emptyProject("random", 2020);
  const asFound: Installation = {
    ...base.asFound,
    cables,
    enclosures: Object.fromEntries([box, ...others].map((each) => [each.id, each])),
  };
  const spots = Object.fromEntries([[HERE, { x: 0, y: 0 }], ...FAR.map((point, index) => [`far${index}`, point])]);
  const project: Project = { ...base, asFound, layout: { ...base.layout, enclosures: spots } };
  const problems = invariantProblems(project);
  if (problems.length > 0) throw new Error(problems.map((one) => `${one.path}: ${one.message}`).join("\n"));
  return project;
}

/** Both ends of a jumper on one node, however many holes it has. */
const sameNode = (a: At, b: At): boolean =>
  a.kind === b.kind &&
  ((a.kind === "splice" && b.kind === "splice" && a.splice === b.splice) ||
    (a.kind === "terminal" && b.kind === "terminal" && a.device === b.device && a.terminal === b.terminal) ||
    a.kind === "bond");

/** Two conductors of a cable between two other boxes run through here unbroken. */
function addPass(
  cables: Record<CableId, Cable>,
  passThroughs: Record<PassThroughId, PassThrough>,
  entries: Record<EntryId, Entry>,
  enter: (table: Record<EntryId, Entry>, name: string, order: number) => EntryId,
  farEntries: readonly Record<EntryId, Entry>[],
  farPlaces: readonly Record<EndKey, Place>[],
): void {
  const stock = cableItems[0];
  const [first, second] = farEntries;
  const id = asId<CableId>("through");
  if (stock === undefined || first === undefined || second === undefined) return;
  const sides = {
    a: { enclosure: asId<EnclosureId>("far0"), entry: enter(first, "through-a", 90) },
    b: { enclosure: asId<EnclosureId>("far1"), entry: enter(second, "through-b", 91) },
  };
  const { construction, conductors } = stock;
  cables[id] = { id, name: "T1", item: stock.id, construction, conductors, sides, order: 90 };
  for (const key of Object.keys(conductors) as ConductorKey[])
    for (const [index, side] of (["a", "b"] as const).entries()) {
      const places = farPlaces[index];
      if (places) places[cableEnd(id, key, side)] = { at: { kind: "capped" } };
    }
  const pass = asId<PassThroughId>("pass");
  const keys = Object.keys(conductors).slice(0, 2) as ConductorKey[];
  const [entryIn, entryOut] = [enter(entries, "pass-in", 92), enter(entries, "pass-out", 93)];
  passThroughs[pass] = { id: pass, cable: id, conductors: keys, entryIn, entryOut };
}
