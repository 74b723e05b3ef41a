import type { DeviceNode } from "../catalog/device-type.ts";
import { findDeviceType } from "../catalog/device-types.ts";
import type { Device, Leg } from "../model/device.ts";
import type { Enclosure } from "../model/enclosure.ts";
import { isBar } from "./circuits.ts";
import type { ConductionGraph, GraphEdge } from "./conduction-graph.ts";
import { busOf } from "./enclosure-graph.ts";
import { positionOf } from "./joinings-by-setting.ts";
import type { HandlePosition, PathStep, Section } from "./section.ts";
import { keptWithWiring, modelOf } from "./sections.ts";
import { edgesAt, stepOf } from "./ways.ts";
import { weakestLinks } from "./weakest-links.ts";

/** One pole of a breaker or fuse: its hot terminal and the leg of the panel that it stands on. */
export interface Pole {
  readonly breaker: Device;
  readonly panel: Enclosure;
  readonly terminal: DeviceNode;
  readonly leg: Leg;
}

/** Two poles that some switch position joins by metal outside the buses. */
export interface PolesJoined {
  readonly one: Pole;
  readonly other: Pole;
  /** Shortest way from the one to the other. */
  readonly way: readonly PathStep[];
  /** Pieces that part the two with the least taken out; none where only devices join them. */
  readonly by: readonly PathStep[];
  /** Positions of the switches on the way. */
  readonly when: readonly HandlePosition[];
}

/** The poles that feed a section. */
interface Poles {
  /** Sorted by breaker, then terminal. */
  readonly all: readonly Pole[];
  /** Poles that some position of the switches may bring to a node; in the order of `all`. */
  at(node: number): readonly Pole[];
  readonly joined: readonly PolesJoined[];
  areJoined(one: Pole, other: Pole): boolean;
}

const NONE: readonly Pole[] = [];

/** Kept as long as the wiring of the section is the same. */
export const polesOf: (section: Section) => Poles = keptWithWiring(findPoles);

function findPoles(section: Section): Poles {
  const { graph } = modelOf(section);
  const all = section.breakers().flatMap(({ device, panel }) => polesOfBreaker(device, panel));
  const byNode = new Map<number, Pole[]>();
  const outOf = new Map<Pole, number>();
  for (const pole of all) {
    const start = graph.nodeOfDevice(pole.breaker.id, pole.terminal);
    if (start === undefined) continue;
    outOf.set(pole, start);
    for (const node of reachable(graph, start)) {
      const known = byNode.get(node);
      if (known === undefined) byNode.set(node, [pole]);
      else known.push(pole);
    }
  }
  const at = (node: number): readonly Pole[] => byNode.get(node) ?? NONE;
  const joined = joinedPoles(graph, all, outOf, at);
  const pairs = new Set(
    joined.flatMap(({ one, other }) => [`${keyOf(one)}|${keyOf(other)}`, `${keyOf(other)}|${keyOf(one)}`]),
  );
  return { all, at, joined, areJoined: (one, other) => pairs.has(`${keyOf(one)}|${keyOf(other)}`) };
}

const keyOf = ({ breaker, terminal }: Pole): string => `${breaker.id} ${terminal}`;

function polesOfBreaker(breaker: Device, panel: Enclosure): readonly Pole[] {
  const type = findDeviceType(breaker.type);
  if (type === undefined) return [];
  return type.paths.flatMap((path): readonly Pole[] => {
    if (path.when !== "breaker-on") return [];
    const [bus, terminal] = path.a.startsWith("@leg") ? [path.a, path.b] : [path.b, path.a];
    const leg = busOf(breaker, type, bus).slice("@bus".length);
    return leg === "A" || leg === "B" || leg === "C" ? [{ breaker, panel, terminal, leg }] : [];
  });
}

const conducts = (edge: GraphEdge): boolean => edge.kind !== "load" && edge.kind !== "breaker";

/** Nodes that some position of each switch by itself joins to a start. */
function reachable(graph: ConductionGraph, start: number): ReadonlySet<number> {
  const lists = edgesAt(graph);
  const found = new Set<number>();
  const todo = [start];
  for (let node = todo.pop(); node !== undefined; node = todo.pop()) {
    if (found.has(node) || isBar(graph, node)) continue;
    found.add(node);
    for (const edge of lists[node] ?? []) if (conducts(edge)) todo.push(edge.a === node ? edge.b : edge.a);
  }
  return found;
}

function joinedPoles(
  graph: ConductionGraph,
  all: readonly Pole[],
  outOf: ReadonlyMap<Pole, number>,
  at: (node: number) => readonly Pole[],
): readonly PolesJoined[] {
  const found: PolesJoined[] = [];
  all.forEach((one, index) => {
    const from = outOf.get(one);
    if (from === undefined) return;
    for (const other of all.slice(index + 1)) {
      const to = outOf.get(other);
      if (to === undefined || !at(to).includes(one)) continue;
      const edges = wayBetween(graph, from, to);
      if (edges === undefined) continue;
      const positions = new Map(
        edges.flatMap(({ edge }) => (edge.kind === "switch" ? [[edge.handle ?? "", edge.position ?? 0]] : [])) as [
          string,
          number,
        ][],
      );
      const by = weakestLinks(
        graph,
        (edge) =>
          conducts(edge) && (edge.kind !== "switch" || (positions.get(edge.handle ?? "") ?? 0) === edge.position),
        {
          isFrom: (node) => node === from,
          isTo: (node) => node === to,
          isMadeForFrom: () => false,
          isMadeForTo: () => false,
          isBarred: (node) => isBar(graph, node),
        },
      );
      found.push({
        one,
        other,
        way: edges.map(({ edge, forward }) => stepOf(graph, edge, forward)),
        by,
        when: [...positions].flatMap(([handle, position]) => positionOf(graph, handle, position)),
      });
    }
  });
  return found;
}

interface Walk {
  readonly edge: GraphEdge;
  readonly forward: boolean;
}

/** Ways tried before a joining behind very many switches is taken to be none. */
const MOST_STEPS = 20_000;

/** A way between two nodes that uses every switch in one position only; undefined when there is none. */
function wayBetween(graph: ConductionGraph, from: number, to: number): readonly Walk[] | undefined {
  const lists = edgesAt(graph);
  const shortest = breadthFirst(graph, from, to);
  if (shortest !== undefined && isPossible(shortest)) return shortest;
  const set = new Map<string, number>();
  const on = new Set<number>();
  const way: Walk[] = [];
  let steps = 0;
  const search = (node: number): boolean => {
    if (node === to) return true;
    steps += 1;
    if (steps > MOST_STEPS || isBar(graph, node)) return false;
    on.add(node);
    for (const edge of lists[node] ?? []) {
      const forward = edge.a === node;
      const next = forward ? edge.b : edge.a;
      if (!conducts(edge) || on.has(next)) continue;
      const { handle = "", position = 0 } = edge;
      const stands = edge.kind === "switch" ? set.get(handle) : undefined;
      if (stands !== undefined && stands !== position) continue;
      if (edge.kind === "switch") set.set(handle, position);
      way.push({ edge, forward });
      if (search(next)) return true;
      way.pop();
      if (edge.kind === "switch" && stands === undefined) set.delete(handle);
    }
    on.delete(node);
    return false;
  };
  return search(from) ? way : undefined;
}

function isPossible(way: readonly Walk[]): boolean {
  const set = new Map<string, number>();
  return way.every(({ edge: { kind, handle = "", position = 0 } }) => {
    if (kind !== "switch") return true;
    const stands = set.get(handle) ?? position;
    set.set(handle, stands);
    return stands === position;
  });
}

function breadthFirst(graph: ConductionGraph, from: number, to: number): readonly Walk[] | undefined {
  const lists = edgesAt(graph);
  const cameBy = new Map<number, Walk | undefined>([[from, undefined]]);
  const queue = [from];
  for (const node of queue) {
    if (node === to) break;
    if (isBar(graph, node)) continue;
    for (const edge of lists[node] ?? []) {
      const forward = edge.a === node;
      const next = forward ? edge.b : edge.a;
      if (!conducts(edge) || cameBy.has(next)) continue;
      cameBy.set(next, { edge, forward });
      queue.push(next);
    }
  }
  if (!cameBy.has(to)) return undefined;
  const way: Walk[] = [];
  for (let node = to, walk = cameBy.get(to); walk !== undefined; walk = cameBy.get(node)) {
    way.unshift(walk);
    node = walk.forward ? walk.edge.a : walk.edge.b;
  }
  return way;
}
