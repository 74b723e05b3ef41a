import { type ConductionGraph, type GraphEdge, HOT, NEUTRAL } from "./conduction-graph.ts";
import { settingsOf } from "./settings.ts";
import type { SourceReach } from "./source-reach.ts";
import { edgesAt } from "./ways.ts";

/**
 * What to think of a piece that lies between hot and neutral in some setting. A jumper that is hot and nothing else in
 * another setting is innocent: what is wrong lies beyond the switch. A switch whose one conductor on the one side is
 * innocent and on the other goes to a joint of neutrals lies across the two, and is itself what is wrong.
 */
export function suspicions(
  graph: ConductionGraph,
  reach: SourceReach,
): (edge: GraphEdge) => "likely" | "innocent" | undefined {
  const lists = edgesAt(graph);
  const alone = new Map<number, boolean>();
  const isHotAlone = (node: number): boolean => {
    const net = reach.net[node] as number;
    let is = alone.get(net);
    if (is === undefined) {
      is = !reach.isBounded(node) && [...settingsOf(reach.handlesAt(node))].some((setting) => isHot(node, setting));
      alone.set(net, is);
    }
    return is;
  };
  const isHot = (node: number, setting: Parameters<SourceReach["bitsAt"]>[1]): boolean => {
    const bits = reach.bitsAt(node, setting);
    return (bits & HOT) !== 0 && (bits & NEUTRAL) === 0;
  };
  return (edge) => {
    if (edge.jumper !== undefined) return isHotAlone(edge.a) && isHotAlone(edge.b) ? "innocent" : undefined;
    if (edge.kind !== "switch" || !isSingleThrow(graph, edge)) return undefined;
    const far = isHotAlone(edge.a) ? edge.b : isHotAlone(edge.b) ? edge.a : undefined;
    return far !== undefined && endsAtNeutrals(graph, lists, edge, far) ? "likely" : undefined;
  };
}

/**
 * What to think of a piece that lies between hot and ground. A ground wire among circuit conductors, or a circuit
 * conductor on the metal, on a ground screw or among grounds, is itself what is wrong.
 */
export function groundSuspicions(graph: ConductionGraph): (edge: GraphEdge) => "likely" | undefined {
  const lists = edgesAt(graph);
  const isForeignAt = (edge: GraphEdge, node: number, grounding: boolean): boolean => {
    const point = graph.nodes[node]?.point;
    if (point === undefined || point.kind === "end") return false;
    if (point.kind === "bond") return !grounding;
    if (point.kind === "device") {
      const purpose = point.type.terminals.find(({ name }) => name === point.node)?.purpose;
      return purpose !== undefined && (purpose === "ground") !== grounding;
    }
    const others = (lists[node] ?? []).filter((other) => other !== edge).flatMap((other) => isGrounding(other) ?? []);
    const unlike = others.filter((other) => other !== grounding).length;
    return unlike > others.length - unlike;
  };
  return (edge) => {
    const grounding = isGrounding(edge);
    if (grounding === undefined) return undefined;
    return [edge.a, edge.b].some((node) => isForeignAt(edge, node, grounding)) ? "likely" : undefined;
  };
}

/** Whether a conductor is made as a ground; undefined for what is no conductor. */
function isGrounding({ cable, conductor, jumper, enclosure }: GraphEdge): boolean | undefined {
  if (cable !== undefined && conductor !== undefined) return cable.conductors[conductor]?.grounding === true;
  const colour = jumper === undefined ? undefined : enclosure?.jumpers[jumper]?.colour;
  return colour === undefined ? undefined : colour === "bare" || colour === "green";
}

/** Its handle joins something in this position only: the other one is off. */
const isSingleThrow = ({ edges }: ConductionGraph, { handle, position }: GraphEdge): boolean =>
  edges.every((edge) => edge.kind !== "switch" || edge.handle !== handle || edge.position === position);

/** One jumper and nothing else on a terminal of a switch, to what the neutral comes to by a cable. */
function endsAtNeutrals(
  graph: ConductionGraph,
  lists: readonly (readonly GraphEdge[])[],
  through: GraphEdge,
  terminal: number,
): boolean {
  const others = (lists[terminal] ?? []).filter((edge) => edge !== through);
  const [only, ...more] = others;
  if (only?.jumper === undefined || more.length > 0) return false;
  const joint = only.a === terminal ? only.b : only.a;
  const isNeutral = (node: number): boolean => ((graph.source[node] as number) & NEUTRAL) !== 0;
  if (isNeutral(joint)) return true;
  const seen = new Set([joint, terminal]);
  const queue = (lists[joint] ?? []).flatMap((edge) => (edge.cable === undefined ? [] : otherEnd(edge, joint)));
  for (const node of queue) {
    if (seen.has(node)) continue;
    seen.add(node);
    if (isNeutral(node)) return true;
    if (graph.source[node] !== 0) continue;
    for (const edge of lists[node] ?? []) if (edge.kind !== "load") queue.push(otherEnd(edge, node));
  }
  return false;
}

const otherEnd = (edge: GraphEdge, node: number): number => (edge.a === node ? edge.b : edge.a);
