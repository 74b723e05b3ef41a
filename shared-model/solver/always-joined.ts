import type { ConductionGraph, GraphEdge } from "./conduction-graph.ts";

/** What conducts whatever is open, joined once for all states of the contacts; and the rest. */
export interface AlwaysJoined {
  /** Disjoint sets of nodes: a parent for each. */
  readonly parent: Int32Array;
  /** Source bits that a node has of itself or from a source beside it. */
  readonly seeds: Uint8Array;
  /** What a ground-fault device opens or sums, and paths that a handle closes. */
  readonly opening: readonly GraphEdge[];
  readonly switching: readonly GraphEdge[];
}

const joinedIn = new WeakMap<ConductionGraph, AlwaysJoined>();

/** Cached by the graph. */
export function alwaysJoined(graph: ConductionGraph): AlwaysJoined {
  let joined = joinedIn.get(graph);
  if (joined === undefined) {
    const parent = new Int32Array(graph.nodes.length).map((_, index) => index);
    const seeds = Uint8Array.from(graph.source);
    const opening: GraphEdge[] = [];
    const switching: GraphEdge[] = [];
    for (const edge of graph.edges) {
      if (edge.kind === "load") continue;
      if (edge.kind === "switch") switching.push(edge);
      else if (edge.opens !== undefined) opening.push(edge);
      else joinEdge(graph, edge, parent, seeds);
    }
    joined = { parent, seeds, opening, switching };
    joinedIn.set(graph, joined);
  }
  return joined;
}

/** A source gives its bits to its neighbours and joins none of them to each other. */
export function joinEdge(
  { source }: ConductionGraph,
  { a, b }: GraphEdge,
  parent: Int32Array,
  seeds: Uint8Array,
): void {
  const atA = source[a] as number;
  const atB = source[b] as number;
  if (atA === 0 && atB === 0) join(parent, a, b);
  else if (atA === 0) seeds[a] = (seeds[a] as number) | atB;
  else if (atB === 0) seeds[b] = (seeds[b] as number) | atA;
}

/** Representative of an item's set. Plain arrays, because they are copied for every state of the contacts. */
export function find(parent: Int32Array, item: number): number {
  let root = item;
  while (parent[root] !== root) {
    parent[root] = parent[parent[root] as number] as number;
    root = parent[root] as number;
  }
  return root;
}

export function join(parent: Int32Array, first: number, second: number): void {
  const a = find(parent, first);
  const b = find(parent, second);
  if (a !== b) parent[Math.max(a, b)] = Math.min(a, b);
}
