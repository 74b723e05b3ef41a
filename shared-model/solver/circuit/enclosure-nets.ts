import type { Device } from "../../model/device.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import { type DeviceId, type EndKey, jumperEnd } from "../../model/ids.ts";
import { enclosureGraph, type Joint, type Point } from "../enclosure-graph.ts";
import { Sets } from "../network/sparse-graph.ts";
import type { BranchPart } from "./circuit.ts";
import { type DeviceUse, usesOf } from "./device-uses.ts";
import { ASSUMED_JUMPER_IN, CONTACT_OHM, LEAST_OHM } from "./modelling-values.ts";
import { ohmsPerFoot } from "./wire-resistance.ts";

/** What closes a branch; one without is always closed. */
export type Control =
  /** A breaker, fuse or disconnect. */
  | { readonly kind: "breaker"; readonly device: DeviceId }
  /** Contacts that a ground-fault device opens on a trip. */
  | { readonly kind: "trip"; readonly device: DeviceId }
  | { readonly kind: "handle"; readonly handle: string; readonly position: number }
  /** Something in use. */
  | { readonly kind: "use"; readonly item: string };

/** A branch between two nets of one enclosure. */
export interface LocalBranch {
  readonly a: number;
  readonly b: number;
  /** Siemens when closed. */
  readonly conductance: number;
  readonly part: BranchPart;
  readonly control?: Control | undefined;
}

/** Branches of one device that its sensor sums, and those that it opens on a trip. */
export interface LocalSensor {
  readonly device: Device;
  readonly summed: readonly number[];
  readonly contacts: readonly number[];
}

/** Metal of one enclosure: points that are joined without resistance are one net. */
export interface EnclosureNets {
  readonly enclosure: Enclosure;
  readonly points: readonly Point[];
  readonly count: number;
  readonly netOfPoint: Int32Array;
  /** What uses or leaks comes last. */
  readonly branches: readonly LocalBranch[];
  readonly sensors: readonly LocalSensor[];
  /** Breakers and fuses with their poles. */
  readonly overcurrent: readonly { readonly device: Device; readonly poles: readonly number[] }[];
  readonly assumptions: readonly string[];
  readonly jumpersOfUnknownLength: number;
  /** The net of the metal of an end, on its own side of a bad joint. */
  netOfEnd(end: EndKey): number | undefined;
  netOfNode(device: string, node: string): number | undefined;
  netOfSplice(splice: string): number | undefined;
}

const cache = new WeakMap<Enclosure, EnclosureNets>();

/** Cached by the identity of the enclosure. */
export function enclosureNets(enclosure: Enclosure): EnclosureNets {
  let nets = cache.get(enclosure);
  if (nets === undefined) {
    nets = build(enclosure);
    cache.set(enclosure, nets);
  }
  return nets;
}

function build(enclosure: Enclosure): EnclosureNets {
  const graph = enclosureGraph(enclosure);
  const { points } = graph;
  const bad = badJoints(enclosure);
  const sets = new Sets(points.length + bad.length);
  const contacts: Joint[] = [];
  for (const joint of graph.joints) {
    if (joint.kind === "wire" || joint.kind === "load") continue;
    if (isContact(joint)) contacts.push(joint);
    else sets.join(joint.a, joint.b);
  }
  const { netOf, count } = numbered(sets, points.length + bad.length);
  const beyond = new Map(bad.map(({ end }, index) => [end, netOf[points.length + index] as number]));
  const netOfEnd = (end: EndKey): number | undefined => {
    const point = graph.pointOfEnd(end);
    return beyond.get(end) ?? (point === undefined ? undefined : netOf[point]);
  };

  const branches: LocalBranch[] = [];
  const add = (branch: LocalBranch): number => branches.push(branch) - 1;
  for (const { end, ohm } of bad) {
    const point = graph.pointOfEnd(end);
    if (point === undefined) continue;
    const [a, b] = [netOf[point] as number, beyond.get(end) as number];
    add({ a, b, conductance: 1 / Math.max(ohm, LEAST_OHM), part: { kind: "joint", end } });
  }
  const jumpersOfUnknownLength = addJumpers(enclosure, netOfEnd, add);
  const assumptions: string[] = [];
  const sensors = new Map<DeviceId, { device: Device; summed: number[]; contacts: number[] }>();
  const overcurrent = new Map<DeviceId, { device: Device; poles: number[] }>();
  for (const joint of contacts) {
    const { device } = joint;
    if (device === undefined) continue;
    const branch = add({
      a: netOf[joint.a] as number,
      b: netOf[joint.b] as number,
      conductance: 1 / CONTACT_OHM,
      part: { kind: "contact", device: device.id },
      control: controlOf(joint, device),
    });
    if (joint.kind === "breaker") within(overcurrent, device, () => ({ device, poles: [] })).poles.push(branch);
    if (joint.opens === undefined) continue;
    const sensor = within(sensors, device, () => ({ device, summed: [], contacts: [] }));
    if (joint.opens !== "contacts") sensor.summed.push(branch);
    if (joint.opens !== "sensor") sensor.contacts.push(branch);
  }
  const netOfNode = (device: string, node: string): number | undefined => {
    const point = graph.pointOfNode(device, node);
    return point === undefined ? undefined : netOf[point];
  };
  for (const device of Object.values(enclosure.devices)) {
    const { uses, assumption } = usesOf(device);
    if (assumption !== undefined) assumptions.push(assumption);
    for (const use of uses) addUse(device, use, netOfNode, add);
  }
  return {
    enclosure,
    points,
    count,
    netOfPoint: netOf,
    branches,
    sensors: [...sensors.values()],
    overcurrent: [...overcurrent.values()],
    assumptions,
    jumpersOfUnknownLength,
    netOfEnd,
    netOfNode,
    netOfSplice: (splice) => {
      const point = graph.pointOfSplice(splice as never);
      return point === undefined ? undefined : netOf[point];
    },
  };
}

/** Ends with a joint that has a resistance: each has a net of its own. */
function badJoints({ places }: Enclosure): { readonly end: EndKey; readonly ohm: number }[] {
  const found: { readonly end: EndKey; readonly ohm: number }[] = [];
  for (const key in places) {
    const ohm = places[key as EndKey]?.jointOhm;
    if (ohm !== undefined && ohm > 0) found.push({ end: key as EndKey, ohm });
  }
  return found;
}

/** The representatives of sets, numbered from 0. */
function numbered(sets: Sets, items: number): { readonly netOf: Int32Array; readonly count: number } {
  const netOf = new Int32Array(items).fill(-1);
  let count = 0;
  for (let item = 0; item < items; item++) {
    const root = sets.find(item);
    if (netOf[root] === -1) netOf[root] = count++;
    netOf[item] = netOf[root] as number;
  }
  return { netOf, count };
}

/** A path that something opens, or that a sensor looks at. */
const isContact = ({ kind, opens, device }: Joint): boolean =>
  kind === "breaker" || kind === "switch" || opens !== undefined || device?.type === "disconnect-fused";

function controlOf(joint: Joint, { id }: Device): Control | undefined {
  if (joint.kind === "breaker") return { kind: "breaker", device: id };
  if (joint.kind === "switch") return { kind: "handle", handle: joint.handle ?? id, position: joint.position ?? 0 };
  if (joint.opens === undefined) return { kind: "breaker", device: id };
  return joint.opens === "sensor" ? undefined : { kind: "trip", device: id };
}

/** @returns How many had no length. */
function addJumpers(
  { jumpers }: Enclosure,
  netOfEnd: (end: EndKey) => number | undefined,
  add: (branch: LocalBranch) => number,
): number {
  let unknown = 0;
  for (const { id, awg, material, stranded, lengthIn } of Object.values(jumpers)) {
    const [a, b] = [netOfEnd(jumperEnd(id, "a")), netOfEnd(jumperEnd(id, "b"))];
    if (a === undefined || b === undefined) continue;
    if (lengthIn === undefined) unknown++;
    const ohm = ohmsPerFoot({ awg, material, stranded }) * ((lengthIn ?? ASSUMED_JUMPER_IN) / 12);
    add({ a, b, conductance: 1 / Math.max(ohm, LEAST_OHM), part: { kind: "jumper", jumper: id } });
  }
  return unknown;
}

function addUse(
  { id }: Device,
  { a, b, ohm, kind, always }: DeviceUse,
  netOfNode: (device: string, node: string) => number | undefined,
  add: (branch: LocalBranch) => number,
): void {
  const [from, to] = [netOfNode(id, a), netOfNode(id, b)];
  if (from === undefined || to === undefined) return;
  const control: Control | undefined = always ? undefined : { kind: "use", item: id };
  add({ a: from, b: to, conductance: 1 / Math.max(ohm, LEAST_OHM), part: { kind, device: id }, control });
}

function within<K, V>(map: Map<K, V>, { id }: { readonly id: K }, make: () => V): V {
  let value = map.get(id);
  if (value === undefined) {
    value = make();
    map.set(id, value);
  }
  return value;
}
