import type { Graph } from "./sparse-graph.ts";
import { QuotientGraph } from "./sparse-quotient-graph.ts";

/**
 * An order of elimination that keeps fill low: `order[step]` is the node to eliminate at that step.
 *
 * Leaves go first, layer by layer in linear time, so that a tree costs what it has edges. The rest goes by approximate
 * minimum degree, and nodes with very many neighbours go last.
 */
export function minimumDegreeOrder(graph: Graph): Int32Array {
  const { count } = graph;
  const order = new Int32Array(count);
  const gone = new Uint8Array(count);
  let filled = peelLeaves(graph, order, gone);
  if (filled === count) return order;
  const dense = setDenseAside(graph, gone);
  filled = new QuotientGraph(graph, gone).eliminateInto(order, filled);
  for (const node of dense) order[filled++] = node;
  return order;
}

/** Orders every node that has at most one neighbour left, again and again. Returns how many. */
function peelLeaves({ count, start, to }: Graph, order: Int32Array, gone: Uint8Array): number {
  const degree = new Int32Array(count);
  let filled = 0;
  for (let node = 0; node < count; node++) {
    degree[node] = (start[node + 1] as number) - (start[node] as number);
    if ((degree[node] as number) > 1) continue;
    gone[node] = 1;
    order[filled++] = node;
  }
  for (let step = 0; step < filled; step++) {
    const node = order[step] as number;
    for (let p = start[node] as number; p < (start[node + 1] as number); p++) {
      const other = to[p] as number;
      degree[other] = (degree[other] as number) - 1;
      if (gone[other] === 1 || (degree[other] as number) > 1) continue;
      gone[other] = 1;
      order[filled++] = other;
    }
  }
  return filled;
}

/** Nodes with far more neighbours than most: every look at their lists costs time, and they come last anyway. */
function setDenseAside({ count, start, to }: Graph, gone: Uint8Array): readonly number[] {
  const many = Math.max(16, 10 * Math.sqrt(count));
  const dense: number[] = [];
  for (let node = 0; node < count; node++) {
    const end = start[node + 1] as number;
    if (gone[node] === 1 || end - (start[node] as number) <= many) continue;
    let left = 0;
    for (let p = start[node] as number; p < end; p++) left += 1 - (gone[to[p] as number] as number);
    if (left > many) dense.push(node);
  }
  for (const node of dense) gone[node] = 1;
  return dense;
}
