import type { Enclosure } from "../model/enclosure.ts";
import { enclosureGraph, type Joint } from "../solver/enclosure-graph.ts";
import { Sets } from "../solver/network/sparse-graph.ts";

type GroupOf = (point: number) => number;

const byWire = new WeakMap<Enclosure, GroupOf>();
const byWireAndStrap = new WeakMap<Enclosure, GroupOf>();

/**
 * Representative of the points of an enclosure's graph that conductors join; paths of devices left out. Cached by the
 * identity of the enclosure.
 */
export const joinedByWire = (enclosure: Enclosure): GroupOf => kept(byWire, enclosure, ({ kind }) => kind === "wire");

/** The same with what no trip opens inside the devices of a box; in a panel conductors alone. */
export const joinedByWireAndStrap = (enclosure: Enclosure): GroupOf =>
  kept(
    byWireAndStrap,
    enclosure,
    ({ kind, opens }) => kind === "wire" || (kind === "inside" && opens === undefined && enclosure.kind === "box"),
  );

function kept(cache: WeakMap<Enclosure, GroupOf>, enclosure: Enclosure, joins: (joint: Joint) => boolean): GroupOf {
  let groupOf = cache.get(enclosure);
  if (groupOf === undefined) {
    groupOf = joined(enclosure, joins);
    cache.set(enclosure, groupOf);
  }
  return groupOf;
}

function joined(enclosure: Enclosure, joins: (joint: Joint) => boolean): GroupOf {
  const { points, joints } = enclosureGraph(enclosure);
  const sets = new Sets(points.length);
  for (const joint of joints) if (joins(joint)) sets.join(joint.a, joint.b);
  const roots = Int32Array.from(points, (_, point) => sets.find(point));
  return (point) => roots[point] as number;
}
