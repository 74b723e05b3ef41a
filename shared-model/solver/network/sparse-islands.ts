import { Sets } from "./sparse-graph.ts";
import type { Topology } from "./sparse-topology.ts";

/** What ties a floating island to the reference, in siemens; any value gives the same voltages. */
export const TIE = 1;

/** Parts of a network that no closed element joins, the reference not counted as a joint. */
export interface Islands {
  /** Per column, numbered from 0. */
  readonly islandOf: Int32Array;
  readonly count: number;
  /** Per island: 1 where an element leads to the reference. */
  readonly referenced: Uint8Array;
  /** Per island: 1 where a connected source lies in it. */
  readonly sourced: Uint8Array;
  /** The column that is tied to the reference in each island that would float. */
  readonly tied: Int32Array;
}

/**
 * Finds the islands for the elements that are `closed` (1).
 *
 * An island without any element to the reference has only differences of voltage. One column of it is tied to the
 * reference: where it has sources, the minus end of the first listed; else an end of the first listed branch.
 */
export function findIslands(topology: Topology, closed: Uint8Array, branches: number): Islands {
  const { elements, pattern, columnA, columnB } = topology;
  const sets = new Sets(pattern.count);
  for (let e = 0; e < elements; e++) {
    if (closed[e] === 1 && (columnA[e] as number) >= 0 && (columnB[e] as number) >= 0) {
      sets.join(columnA[e] as number, columnB[e] as number);
    }
  }
  const islandOf = new Int32Array(pattern.count);
  let count = 0;
  for (let k = 0; k < pattern.count; k++) {
    const first = sets.find(k);
    islandOf[k] = first === k ? count++ : (islandOf[first] as number);
  }
  const referenced = new Uint8Array(count);
  const sourced = new Uint8Array(count);
  const tie = new Int32Array(count).fill(-1);
  const see = (e: number): void => {
    if (closed[e] === 0) return;
    const from = columnA[e] as number;
    const to = columnB[e] as number;
    const end = to >= 0 ? to : from;
    if (end < 0) return;
    const island = islandOf[end] as number;
    if (from < 0 || to < 0) referenced[island] = 1;
    if (e >= branches) sourced[island] = 1;
    if (tie[island] === -1) tie[island] = end;
  };
  for (let e = branches; e < elements; e++) see(e);
  for (let e = 0; e < branches; e++) see(e);
  for (let k = 0; k < pattern.count; k++) if (tie[islandOf[k] as number] === -1) tie[islandOf[k] as number] = k;
  return { islandOf, count, referenced, sourced, tied: tie.filter((_, island) => referenced[island] === 0) };
}
