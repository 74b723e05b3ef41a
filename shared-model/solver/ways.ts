import type { DeviceNode } from "../catalog/device-type.ts";
import {
  type CableId,
  cableEnd,
  type EnclosureId,
  type EndKey,
  jumperEnd,
  otherSide,
  type Side,
} from "../model/ids.ts";
import { type ConductionGraph, type GraphEdge, HOT, NEUTRAL } from "./conduction-graph.ts";
import type { PathStep } from "./section.ts";
import { type Setting, settingsOf } from "./settings.ts";
import { isOpened, type Opened, type SourceReach } from "./source-reach.ts";

const neighbours = new WeakMap<ConductionGraph, readonly (readonly GraphEdge[])[]>();

/** Edges at each node. */
export function edgesAt(graph: ConductionGraph): readonly (readonly GraphEdge[])[] {
  let lists = neighbours.get(graph);
  if (lists === undefined) {
    const made: GraphEdge[][] = graph.nodes.map(() => []);
    for (const edge of graph.edges) {
      made[edge.a]?.push(edge);
      if (edge.b !== edge.a) made[edge.b]?.push(edge);
    }
    lists = made;
    neighbours.set(graph, lists);
  }
  return lists;
}

/** A setting in which a node has one of some source bits; undefined when there is none. */
export function settingWith(reach: SourceReach, node: number, bits: number): Setting | undefined {
  for (const setting of settingsOf(reach.handlesAt(node)))
    if ((reach.bitsAt(node, setting) & bits) !== 0) return setting;
  return undefined;
}

/**
 * A way with the fewest pieces from a source to a node, in a setting in which it leads there, from the source on;
 * undefined when none does.
 */
export function wayFrom(
  graph: ConductionGraph,
  reach: SourceReach,
  source: "ungrounded" | "grounded",
  to: number,
  opened?: Opened,
): readonly PathStep[] | undefined {
  const bits = source === "ungrounded" ? HOT : NEUTRAL;
  const setting = settingWith(reach, to, bits);
  if (setting === undefined) return undefined;
  const lists = edgesAt(graph);
  const cameBy = new Map<number, GraphEdge | undefined>([[to, undefined]]);
  const queue = [to];
  for (const node of queue) {
    const held = graph.source[node] as number;
    if ((held & bits) !== 0) return stepsTo(graph, node, cameBy);
    if (held !== 0) continue;
    for (const edge of lists[node] ?? []) {
      if (edge.kind === "load" || isOpened(edge, opened)) continue;
      if (edge.kind === "switch" && setting.positionOf(edge.handle ?? "") !== edge.position) continue;
      const next = edge.a === node ? edge.b : edge.a;
      if (cameBy.has(next)) continue;
      cameBy.set(next, edge);
      queue.push(next);
    }
  }
  return undefined;
}

function stepsTo(graph: ConductionGraph, from: number, cameBy: ReadonlyMap<number, GraphEdge | undefined>): PathStep[] {
  const steps: PathStep[] = [];
  let node = from;
  for (let edge = cameBy.get(node); edge !== undefined; edge = cameBy.get(node)) {
    const forward = edge.a === node;
    steps.push(stepOf(graph, edge, forward));
    node = forward ? edge.b : edge.a;
  }
  return steps;
}

/** One edge as a piece of a way, walked from its first node to its second or the other way round. */
export function stepOf(graph: ConductionGraph, edge: GraphEdge, forward: boolean): PathStep {
  const side: Side = forward ? "a" : "b";
  const { cable, conductor, jumper, device } = edge;
  const [from, to] = forward ? [edge.a, edge.b] : [edge.b, edge.a];
  const enclosureAt = (node: number): EnclosureId => graph.nodes[node]?.enclosure.id as EnclosureId;
  if (cable !== undefined && conductor !== undefined) {
    return {
      kind: "cable",
      cable: cable.id,
      conductor,
      from: cableEnd(cable.id, conductor, side),
      to: cableEnd(cable.id, conductor, otherSide(side)),
      fromEnclosure: enclosureAt(from),
      toEnclosure: enclosureAt(to),
    };
  }
  const enclosure = enclosureAt(from);
  if (jumper !== undefined)
    return { kind: "jumper", jumper, from: jumperEnd(jumper, side), to: jumperEnd(jumper, otherSide(side)), enclosure };
  if (device === undefined) throw new Error("A joint is neither a conductor nor a path of a device.");
  return { kind: "device", device: device.id, from: nameOf(graph, from), to: nameOf(graph, to), enclosure };
}

function nameOf(graph: ConductionGraph, node: number): DeviceNode {
  const point = graph.nodes[node]?.point;
  return point?.kind === "device" || point?.kind === "panel" ? point.node : "bond";
}

/** Enclosures in the order in which a way comes to them. */
export function enclosuresOn(way: readonly PathStep[]): readonly EnclosureId[] {
  const seen = new Set<EnclosureId>();
  for (const step of way) {
    if (step.kind === "cable") seen.add(step.fromEnclosure).add(step.toEnclosure);
    else seen.add(step.enclosure);
  }
  return [...seen];
}

/** Ends of one cable that lie in an enclosure, grounding ones left out. */
export function endsOfCable(graph: ConductionGraph, cable: CableId, enclosure: EnclosureId): readonly EndKey[] {
  const found: EndKey[] = [];
  for (const edge of graph.edges) {
    if (edge.cable?.id !== cable || edge.conductor === undefined) continue;
    if (edge.cable.conductors[edge.conductor]?.grounding === true) continue;
    for (const [node, side] of [
      [edge.a, "a"],
      [edge.b, "b"],
    ] as const) {
      if (graph.nodes[node]?.enclosure.id === enclosure) found.push(cableEnd(cable, edge.conductor, side));
    }
  }
  return found.sort();
}
