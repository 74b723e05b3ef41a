import type { Cable } from "../model/cable.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { TerminalName } from "../model/ids.ts";
import {
  type ConductorKey,
  cableEnd,
  type DeviceId,
  type EnclosureId,
  type EndKey,
  otherSide,
  parseEnd,
  type Side,
} from "../model/ids.ts";
import { findTerminal } from "../queries/terminals-of.ts";
import { type ConductionGraph, type GraphEdge, NEUTRAL } from "./conduction-graph.ts";
import { type Pole, polesOf } from "./poles.ts";
import type { OutletStanding, PathStep, Section } from "./section.ts";
import { keptWithWiring, modelOf } from "./sections.ts";
import { stepOf } from "./ways.ts";

/** A conductor by which neutrals come back to a panel. */
export interface NeutralReturn {
  /** Its end in the panel, and its end in a box. */
  readonly end: EndKey;
  readonly boxEnd: EndKey;
  readonly cable: Cable;
  readonly panel: Enclosure;
  /** Poles on the other conductors of the same cable there: those that it is the neutral of. */
  readonly partners: readonly Pole[];
}

/** An outlet with the poles that may feed it. */
export interface FedOutlet {
  readonly standing: OutletStanding;
  readonly poles: readonly Pole[];
}

/** Neutrals that metal joins outside the panels, with what returns by them. */
export interface NeutralNet {
  /** Sorted by end. */
  readonly returns: readonly NeutralReturn[];
  readonly outlets: readonly FedOutlet[];
  /** Of its outlets, in the order of all poles. */
  readonly poles: readonly Pole[];
  /** Two of its poles are joined, or a hot is on it: another fault, which spoils what can be said of it. */
  readonly spoilt: boolean;
  has(node: number): boolean;
}

/** Neutral nets of a section by which at least one outlet returns. Kept as long as the wiring is the same. */
export const neutralNetsOf: (section: Section) => readonly NeutralNet[] = keptWithWiring(findNets);

function findNets(section: Section): readonly NeutralNet[] {
  const { graph } = modelOf(section);
  const poles = polesOf(section);
  const lists = neutralEdgesAt(graph);
  const seen = new Map<number, { readonly nodes: Set<number>; readonly outlets: FedOutlet[] }>();
  const standings = section.outlets();
  for (const [index, { nodes }] of modelOf(section).placed().entries()) {
    const standing = standings[index];
    if (standing === undefined || !hasNeutral(standing)) continue;
    let net = seen.get(nodes.neutral);
    if (net === undefined) {
      const spread = spreadFrom(graph, lists, nodes.neutral);
      net = { nodes: spread, outlets: [] };
      for (const node of spread) seen.set(node, net);
    }
    net.outlets.push({ standing, poles: poles.at(nodes.hot) });
  }
  const returns = returnsOf(section, graph);
  return [...new Set(seen.values())].map(({ nodes, outlets }) => {
    const used = new Set(outlets.flatMap((one) => one.poles));
    const own = poles.all.filter((pole) => used.has(pole));
    const isMixed = own.some((one) => own.some((other) => poles.areJoined(one, other)));
    const isHot = [...nodes].some((node) => poles.at(node).length > 0);
    return {
      returns: returns.filter(({ inBox }) => nodes.has(inBox)).map(({ back }) => back),
      outlets,
      poles: own,
      spoilt: isMixed || isHot,
      has: (node) => nodes.has(node),
    };
  });
}

/** A 240 V appliance has two hots and no neutral. */
function hasNeutral({ outlet }: OutletStanding): boolean {
  const terminal = findTerminal(outlet.device, outlet.neutral as TerminalName);
  return terminal === undefined || terminal.purpose !== "hot";
}

/** Edges at each node that a neutral may run over: inside boxes and between them, grounds left out. */
function neutralEdgesAt(graph: ConductionGraph): readonly (readonly GraphEdge[])[] {
  const made: GraphEdge[][] = graph.nodes.map(() => []);
  for (const edge of graph.edges) {
    if (edge.kind === "load" || edge.kind === "breaker" || isGrounding(edge)) continue;
    if (!isInBox(graph, edge.a) || !isInBox(graph, edge.b)) continue;
    made[edge.a]?.push(edge);
    made[edge.b]?.push(edge);
  }
  return made;
}

const isInBox = ({ nodes }: ConductionGraph, node: number): boolean => nodes[node]?.enclosure.kind === "box";

function isGrounding({ cable, conductor, jumper, enclosure }: GraphEdge): boolean {
  if (cable !== undefined && conductor !== undefined) return cable.conductors[conductor]?.grounding === true;
  const colour = jumper === undefined ? undefined : enclosure?.jumpers[jumper]?.colour;
  return colour === "bare" || colour === "green";
}

function spreadFrom({ nodes }: ConductionGraph, lists: readonly (readonly GraphEdge[])[], start: number): Set<number> {
  const found = new Set<number>();
  const todo = [start];
  for (let node = todo.pop(); node !== undefined; node = todo.pop()) {
    const point = nodes[node]?.point;
    if (found.has(node) || point?.kind === "bond") continue;
    found.add(node);
    for (const edge of lists[node] ?? []) todo.push(edge.a === node ? edge.b : edge.a);
  }
  return found;
}

interface Found {
  /** Node of its end in a box. */
  readonly inBox: number;
  readonly back: NeutralReturn;
}

function returnsOf(section: Section, graph: ConductionGraph): readonly Found[] {
  const { enclosures } = section.installation;
  const reach = modelOf(section).sourceReach();
  const found: Found[] = [];
  for (const cable of section.cables) {
    for (const side of ["a", "b"] as const) {
      const where = cable.sides[side];
      const panel = "enclosure" in where ? enclosures[where.enclosure] : undefined;
      if (panel?.kind !== "panel") continue;
      for (const key of insulatedOf(cable)) {
        const end = cableEnd(cable.id, key, side);
        const atPanel = graph.ends.get(end);
        const boxEnd = cableEnd(cable.id, key, otherSide(side));
        const inBox = graph.ends.get(boxEnd);
        if (atPanel === undefined || inBox === undefined || !isInBox(graph, inBox)) continue;
        if (((reach.some(atPanel) | (graph.source[atPanel] ?? 0)) & NEUTRAL) === 0) continue;
        found.push({
          inBox,
          back: { end, boxEnd, cable, panel, partners: partnersOf(section, graph, cable, side, panel) },
        });
      }
    }
  }
  return found.sort((one, other) => (one.back.end < other.back.end ? -1 : 1));
}

const insulatedOf = ({ conductors }: Cable): readonly ConductorKey[] =>
  (Object.keys(conductors) as ConductorKey[]).filter((key) => conductors[key]?.grounding !== true);

/** Single conductors belong together that run the same route to the same panel; where none is recorded, all of them. */
function partnersOf(
  section: Section,
  graph: ConductionGraph,
  cable: Cable,
  side: Side,
  panel: Enclosure,
): readonly Pole[] {
  const poles = polesOf(section);
  const beside = isSingle(cable)
    ? section.cables.flatMap((other) =>
        isSingle(other) && other.route === cable.route
          ? (["a", "b"] as const).filter((one) => isIn(other, one, panel)).map((one) => ({ other, one }))
          : [],
      )
    : [{ other: cable, one: side }];
  const nodes = beside.flatMap(({ other, one }) =>
    insulatedOf(other).flatMap((key) => graph.ends.get(cableEnd(other.id, key, one)) ?? []),
  );
  const here = new Set(nodes.flatMap((node) => poles.at(node)));
  return poles.all.filter((pole) => here.has(pole));
}

export const isSingle = (cable: Cable): boolean => insulatedOf(cable).length === 1;

function isIn(cable: Cable, side: Side, panel: Enclosure): boolean {
  const where = cable.sides[side];
  return "enclosure" in where && where.enclosure === panel.id;
}

/** The way from the one return to the other through the boxes, the two returns included; from the panel on, and back. */
export function wayBetweenReturns(
  section: Section,
  one: NeutralReturn,
  other: NeutralReturn,
): readonly PathStep[] | undefined {
  const { graph } = modelOf(section);
  const [from, to] = [graph.ends.get(one.boxEnd), graph.ends.get(other.boxEnd)];
  if (from === undefined || to === undefined) return undefined;
  const lists = neutralEdgesAt(graph);
  const cameBy = new Map<number, GraphEdge | undefined>([[to, undefined]]);
  const queue = [to];
  for (const node of queue)
    for (const edge of lists[node] ?? []) {
      const next = edge.a === node ? edge.b : edge.a;
      if (cameBy.has(next)) continue;
      cameBy.set(next, edge);
      queue.push(next);
    }
  if (!cameBy.has(from)) return undefined;
  const way: PathStep[] = [];
  for (let node = from, edge = cameBy.get(node); edge !== undefined; edge = cameBy.get(node)) {
    way.push(stepOf(graph, edge, edge.a === node));
    node = edge.a === node ? edge.b : edge.a;
  }
  const boxOf = (node: number): EnclosureId => graph.nodes[node]?.enclosure.id as EnclosureId;
  return [
    { ...returnStep(one), from: one.end, to: one.boxEnd, fromEnclosure: one.panel.id, toEnclosure: boxOf(from) },
    ...way,
    { ...returnStep(other), from: other.boxEnd, to: other.end, fromEnclosure: boxOf(to), toEnclosure: other.panel.id },
  ];
}

function returnStep({ cable, end }: NeutralReturn) {
  const parsed = parseEnd(end);
  if (parsed?.of !== "cable") throw new Error("A neutral comes back by a cable.");
  return { kind: "cable", cable: cable.id, conductor: parsed.conductor } as const;
}

/** Outlets of a net that have no way to a return any more with a device taken out and its conductors apart; not its own. */
export function lostWithout(section: Section, net: NeutralNet, device: DeviceId): readonly FedOutlet[] {
  const { graph } = modelOf(section);
  const isOn = (node: number): boolean => {
    const point = graph.nodes[node]?.point;
    return point?.kind === "device" && point.device.id === device;
  };
  if (!graph.nodes.some((_, node) => isOn(node) && net.has(node))) return NONE;
  const lists = neutralEdgesAt(graph);
  const starts = net.returns.flatMap(({ boxEnd }) => graph.ends.get(boxEnd) ?? []);
  const left = new Set<number>();
  const todo = starts.filter((node) => !isOn(node));
  for (let node = todo.pop(); node !== undefined; node = todo.pop()) {
    if (left.has(node)) continue;
    left.add(node);
    for (const edge of lists[node] ?? []) {
      const next = edge.a === node ? edge.b : edge.a;
      if (!isOn(next)) todo.push(next);
    }
  }
  return net.outlets.filter(({ standing: { outlet } }) => {
    const node = graph.nodeOfDevice(outlet.device.id, outlet.neutral);
    return outlet.device.id !== device && node !== undefined && !left.has(node);
  });
}

const NONE: readonly FedOutlet[] = [];
