import { UnionFind } from "../lib/union-find.ts";
import type { ConductionGraph, GraphEdge } from "./conduction-graph.ts";
import type { PathStep } from "./section.ts";
import { stepOf } from "./ways.ts";

/** Two sides of a graph that must not be joined. */
export interface Sides {
  isFrom(node: number): boolean;
  isTo(node: number): boolean;
  /** Nodes made for one side without being it: they tell at which place the two belong apart. */
  isMadeForFrom(node: number): boolean;
  isMadeForTo(node: number): boolean;
  /** Nodes that no way may lead through: sources of other kinds. */
  isBarred(node: number): boolean;
  /** What is likelier, or less likely, to be what is wrong than other pieces of its kind; neither when left out. */
  suspicionOf?(edge: GraphEdge): "likely" | "innocent" | undefined;
}

/**
 * Where no hint tells, a jumper parts before a switch, and a switch before a cable. Several pieces that are likely to be what
 * is wrong part before one that is not: two pigtails on green screws, not the one cable that feeds both.
 */
const CABLE = 100_000;
const INNOCENT = CABLE - 1;
const SWITCH = CABLE - 3;
const JUMPER = CABLE - 5;
const LIKELY = CABLE / 10;
const NEVER = 1_000_000_000;
/** A hint that is almost a conductor: so many contacts behind one conductor are told one by one. */
const STRONG_HINT = 90_000;
/** A hint that decides between places that are equally easy to part. */
const WEAK_HINT = 10;

/**
 * What has to be taken out so that no way joins two sides: jumpers, conductors of cables, or switch paths, each walked
 * from the first side to the other. The places are those that part what is made for one side from what is made for the
 * other; where that does not tell, the fewest, nearest to the first side. Empty when nothing joins the two, or only what
 * cannot be taken out.
 */
export function weakestLinks(
  graph: ConductionGraph,
  conducts: (edge: GraphEdge) => boolean,
  sides: Sides,
): readonly PathStep[] {
  const edges = graph.edges.filter(
    (edge) =>
      edge.kind !== "load" && edge.a !== edge.b && conducts(edge) && !sides.isBarred(edge.a) && !sides.isBarred(edge.b),
  );
  const byKind = partedBy(graph, edges, sides, STRONG_HINT);
  // What is merely on the wrong terminal is parted as well by strong hints: only what joins the two sides alone stays.
  const cut = new Set(byKind.map(({ edge }) => edge));
  const rest = edges.filter((edge) => !cut.has(edge));
  const joining = byKind.filter(({ edge }) => areJoined(graph, [...rest, edge], sides));
  const taken = new Set(joining.map(({ edge }) => edge));
  const left = edges.filter((edge) => !taken.has(edge));
  const links = areJoined(graph, left, sides) ? partedBy(graph, edges, sides, WEAK_HINT) : joining;
  return links.map(({ edge, forward }) => stepOf(graph, edge, forward));
}

interface Link {
  readonly edge: GraphEdge;
  readonly forward: boolean;
}

/** The edges between the two parts that the greatest flow makes, the first part as small as can be. */
function partedBy(graph: ConductionGraph, edges: readonly GraphEdge[], sides: Sides, hint: number): readonly Link[] {
  const net = new Flow(graph.nodes.length + 2);
  const start = graph.nodes.length;
  const goal = start + 1;
  for (const edge of edges) net.join(edge.a, edge.b, weightOf(edge, sides));
  graph.nodes.forEach((_, node) => {
    if (sides.isFrom(node)) net.join(start, node, NEVER);
    else if (sides.isMadeForFrom(node)) net.join(start, node, hint);
    if (sides.isTo(node)) net.join(node, goal, NEVER);
    else if (sides.isMadeForTo(node)) net.join(node, goal, hint);
  });
  const side = net.part(start, goal, NEVER);
  if (side === undefined) return [];
  return edges.flatMap((edge) => {
    const forward = side.has(edge.a);
    return forward === side.has(edge.b) ? [] : { edge, forward };
  });
}

function areJoined(graph: ConductionGraph, edges: readonly GraphEdge[], sides: Sides): boolean {
  const sets = new UnionFind();
  const start = graph.nodes.length;
  const goal = start + 1;
  graph.nodes.forEach((_, node) => {
    if (sides.isFrom(node)) sets.join(start, node);
    if (sides.isTo(node)) sets.join(goal, node);
  });
  for (const { a, b } of edges) sets.join(a, b);
  return sets.find(start) === sets.find(goal);
}

function weightOf(edge: GraphEdge, sides: Sides): number {
  const weight =
    edge.cable !== undefined ? CABLE : edge.jumper !== undefined ? JUMPER : edge.kind === "switch" ? SWITCH : NEVER;
  if (weight === NEVER) return weight;
  const suspicion = sides.suspicionOf?.(edge);
  return suspicion === undefined ? weight : suspicion === "likely" ? LIKELY : INNOCENT;
}

/** A network of two-way arcs with capacities, parted by the greatest flow through it. */
class Flow {
  private readonly arcsAt: number[][];
  private readonly ends: number[] = [];
  private readonly left: number[] = [];

  constructor(nodes: number) {
    this.arcsAt = Array.from({ length: nodes }, () => []);
  }

  join(a: number, b: number, capacity: number): void {
    const arc = this.ends.length;
    this.ends.push(b, a);
    this.left.push(capacity, capacity);
    this.arcsAt[a]?.push(arc);
    this.arcsAt[b]?.push(arc + 1);
  }

  /** The nodes on the side of `start`, as few as possible; undefined when the two cannot be parted below a limit. */
  part(start: number, goal: number, limit: number): ReadonlySet<number> | undefined {
    for (;;) {
      const cameBy = this.reachable(start);
      if (!cameBy.has(goal)) return new Set(cameBy.keys());
      let most = limit;
      for (let at = goal; at !== start; at = this.ends[(cameBy.get(at) as number) ^ 1] as number)
        most = Math.min(most, this.left[cameBy.get(at) as number] as number);
      if (most > limit / 2) return undefined;
      for (let at = goal; at !== start; ) {
        const arc = cameBy.get(at) as number;
        this.left[arc] = (this.left[arc] as number) - most;
        this.left[arc ^ 1] = (this.left[arc ^ 1] as number) + most;
        at = this.ends[arc ^ 1] as number;
      }
    }
  }

  /** Every node that more can flow to, with the arc that first leads there. */
  private reachable(start: number): ReadonlyMap<number, number> {
    const cameBy = new Map<number, number>([[start, -1]]);
    const queue = [start];
    for (const node of queue)
      for (const arc of this.arcsAt[node] ?? []) {
        const next = this.ends[arc] as number;
        if ((this.left[arc] as number) <= 0 || cameBy.has(next)) continue;
        cameBy.set(next, arc);
        queue.push(next);
      }
    return cameBy;
  }
}
