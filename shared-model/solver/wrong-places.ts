import type { DeviceId, EnclosureId, EndKey } from "../model/ids.ts";
import { type ConductionGraph, HOT, NEUTRAL } from "./conduction-graph.ts";
import type { OutletNodes } from "./protection.ts";
import type { PathStep, WrongPlace } from "./section.ts";
import type { SourceReach } from "./source-reach.ts";
import { edgesAt, enclosuresOn, endsOfCable, wayFrom } from "./ways.ts";

/**
 * Where the neutral of an outlet stops: of the enclosures that its hot comes through, the first in which something hangs
 * on the dead neutral. Its ends are those that lie open there, of the dead neutral or of a good one; with none open, all
 * that are on the dead neutral there.
 */
export function whereNeutralStops(
  graph: ConductionGraph,
  reach: SourceReach,
  outlet: OutletNodes,
): WrongPlace | undefined {
  if ((reach.some(outlet.neutral) & NEUTRAL) !== 0) return undefined;
  const way = wayFrom(graph, reach, "ungrounded", outlet.hot);
  const net = reach.net[outlet.neutral] as number;
  const dead = within(foundFor(graph, reach).neutrals, net, () =>
    deadPart(
      graph,
      (node) => reach.net[node] === net,
      (node) => (reach.some(node) & NEUTRAL) !== 0,
    ),
  );
  return whereStops(graph, way, outlet.hot, dead);
}

/**
 * Where the hot of an outlet stops that has its neutral, or one of two hots that has the other: of the enclosures that its
 * partner comes through, the first in which something hangs on the dead hot. Switches and contacts count as closed, so
 * that the place is found behind them.
 */
export function whereHotStops(graph: ConductionGraph, reach: SourceReach, outlet: OutletNodes): WrongPlace | undefined {
  const isLive = (node: number): boolean => (reach.some(node) & HOT) !== 0;
  const isOfTwo = isMadeForHot(graph, outlet.neutral);
  if (isLive(outlet.hot) && (!isOfTwo || isLive(outlet.neutral))) return undefined;
  const [start, partner] = isLive(outlet.hot) ? [outlet.neutral, outlet.hot] : [outlet.hot, outlet.neutral];
  const way = wayFrom(graph, reach, isOfTwo ? "ungrounded" : "grounded", partner);
  const { hots } = foundFor(graph, reach);
  let dead = hots.get(start);
  if (dead === undefined) {
    const nodes = deadFrom(graph, start, isLive);
    dead = deadPart(graph, (node) => nodes.has(node), isLive);
    for (const node of nodes) hots.set(node, dead);
  }
  return whereStops(graph, way, partner, dead);
}

/** A 240 V appliance has a second hot where others have their neutral. */
function isMadeForHot({ nodes }: ConductionGraph, node: number): boolean {
  const point = nodes[node]?.point;
  return (
    point?.kind === "device" &&
    point.type.terminals.some(({ name, purpose }) => name === point.node && purpose === "hot")
  );
}

/** What hangs on a dead hot: the same from each of its nodes. */
function deadFrom(graph: ConductionGraph, start: number, isLive: (node: number) => boolean): ReadonlySet<number> {
  const lists = edgesAt(graph);
  const dead = new Set<number>();
  const todo = [start];
  for (let node = todo.pop(); node !== undefined; node = todo.pop()) {
    if (dead.has(node) || isLive(node) || graph.source[node] !== 0) continue;
    dead.add(node);
    for (const edge of lists[node] ?? []) if (edge.kind !== "load") todo.push(edge.a === node ? edge.b : edge.a);
  }
  return dead;
}

/** A dead part of a section, the same for all outlets on it: many are dead by one break. */
interface DeadPart {
  readonly deadIn: ReadonlySet<EnclosureId>;
  readonly goodIn: ReadonlySet<EnclosureId>;
  isDead(node: number): boolean;
  isGood(node: number): boolean;
  /** Ends and device of what was found in an enclosure. */
  readonly places: Map<EnclosureId, Pick<WrongPlace, "ends" | "device">>;
}

interface Found {
  /** By net of the neutral, and by each node of the hot. */
  readonly neutrals: Map<number, DeadPart>;
  readonly hots: Map<number, DeadPart>;
}

const found = new WeakMap<SourceReach, Found>();

function foundFor(graph: ConductionGraph, reach: SourceReach): Found {
  if (reach.graph !== graph) throw new Error("What reaches the nodes is of another graph.");
  let known = found.get(reach);
  if (known === undefined) {
    known = { neutrals: new Map(), hots: new Map() };
    found.set(reach, known);
  }
  return known;
}

function within<K, V>(map: Map<K, V>, key: K, make: () => V): V {
  let value = map.get(key);
  if (value === undefined) {
    value = make();
    map.set(key, value);
  }
  return value;
}

function deadPart(
  graph: ConductionGraph,
  isDead: (node: number) => boolean,
  isGood: (node: number) => boolean,
): DeadPart {
  const deadIn = new Set<EnclosureId>();
  const goodIn = new Set<EnclosureId>();
  graph.nodes.forEach(({ enclosure }, node) => {
    if (isDead(node)) deadIn.add(enclosure.id);
    else if (isGood(node)) goodIn.add(enclosure.id);
  });
  return { deadIn, goodIn, isDead, isGood, places: new Map() };
}

/** The place at which a conductor is dead first, along the way that its partner takes from the source. */
function whereStops(
  graph: ConductionGraph,
  way: readonly PathStep[] | undefined,
  partner: number,
  dead: DeadPart,
): WrongPlace | undefined {
  if (way === undefined) return undefined;
  const { deadIn, goodIn } = dead;
  const home = graph.nodes[partner]?.enclosure.id as EnclosureId;
  const order = enclosuresOn(way);
  const first = Math.max(
    0,
    order.findIndex((id) => deadIn.has(id)),
  );
  const enclosure = order[first] ?? home;
  const lastRight = order.slice(0, first + 1).findLast((id) => goodIn.has(id));
  const place = within(dead.places, enclosure, () => placeIn(graph, enclosure, dead));
  return { enclosure, ...place, ...(lastRight !== undefined && { lastRight }) };
}

function placeIn(
  graph: ConductionGraph,
  enclosure: EnclosureId,
  { isDead, isGood }: DeadPart,
): Pick<WrongPlace, "ends" | "device"> {
  const open: EndKey[] = [];
  const onDead: EndKey[] = [];
  let device: DeviceId | undefined;
  for (const [end, node] of graph.ends) {
    const at = graph.nodes[node];
    if (at?.enclosure.id !== enclosure) continue;
    if (isDead(node)) onDead.push(end);
    if (at.point.kind === "end" && (isDead(node) || isGood(node))) open.push(end);
  }
  graph.nodes.forEach(({ point, enclosure: where }, node) => {
    if (where.id !== enclosure || point.kind !== "device" || !isDead(node)) return;
    if (device === undefined || point.device.id < device) device = point.device.id;
  });
  return { ends: (open.length > 0 ? open : onDead).sort(), ...(device !== undefined && { device }) };
}

/**
 * Where hot and neutral change places before an outlet whose neutral slot is live. Along the way of the hot, every
 * conductor and device terminal is made for hot or for neutral; the place is where the run that is made for neutral, and
 * leads up to the slot, begins. A white re-marked at either end counts as a hot. This is a clue for a message: colours
 * decide nothing about whether it is wrong.
 */
export function wherePolarityCrosses(
  graph: ConductionGraph,
  reach: SourceReach,
  outlet: OutletNodes,
): WrongPlace | undefined {
  const way = wayFrom(graph, reach, "ungrounded", outlet.neutral);
  if (way === undefined) return undefined;
  let first: number | undefined;
  for (let index = way.length - 1; index >= 0; index--) {
    const made = madeFor(graph, way[index] as PathStep);
    if (made === "hot") break;
    if (made === "neutral") first = index;
  }
  if (first === undefined) return undefined;
  const step = way[first] as PathStep;
  const before = way[first - 1];
  const enclosure = step.kind === "cable" ? step.fromEnclosure : step.enclosure;
  const ends = new Set<EndKey>();
  for (const end of [
    step.kind === "device" ? undefined : step.from,
    before?.kind === "device" ? undefined : before?.to,
  ])
    if (end !== undefined) ends.add(end);
  const cable = step.kind === "cable" ? step.cable : before?.kind === "cable" ? before.cable : undefined;
  if (cable !== undefined) for (const end of endsOfCable(graph, cable, enclosure)) ends.add(end);
  const lastRight = enclosuresOn(way.slice(0, first)).findLast((id) => id !== enclosure);
  return {
    enclosure,
    ends: [...ends].sort(),
    ...(step.kind === "device" && { device: step.device }),
    ...(lastRight !== undefined && { lastRight }),
  };
}

function madeFor(graph: ConductionGraph, step: PathStep): "hot" | "neutral" | undefined {
  if (step.kind === "jumper") {
    const colour = graph.nodes.find(({ enclosure }) => enclosure.id === step.enclosure)?.enclosure.jumpers[step.jumper]
      ?.colour;
    if (colour === undefined || colour === "bare" || colour === "green") return undefined;
    return colour === "white" || colour === "grey" ? "neutral" : "hot";
  }
  if (step.kind === "device") {
    for (const { point } of graph.nodes) {
      if (point.kind !== "device" || point.device.id !== step.device) continue;
      const terminal = point.type.terminals.find(({ name }) => name === step.from || name === step.to);
      return terminal?.purpose === "neutral" ? "neutral" : "hot";
    }
    return undefined;
  }
  const edge = graph.edges.find(
    (candidate) => candidate.cable?.id === step.cable && candidate.conductor === step.conductor,
  );
  const colour = edge?.cable?.conductors[step.conductor]?.colour;
  if (colour !== "white" && colour !== "grey") return "hot";
  for (const [end, id] of [
    [step.from, step.fromEnclosure],
    [step.to, step.toEnclosure],
  ] as const) {
    const node = graph.ends.get(end);
    const place = node === undefined ? undefined : graph.nodes[node]?.enclosure.places[end];
    if (
      graph.nodes[node ?? -1]?.enclosure.id === id &&
      place?.markedAs !== undefined &&
      place.markedAs !== "white" &&
      place.markedAs !== "grey"
    )
      return "hot";
  }
  return "neutral";
}
