import type { Device } from "../model/device.ts";
import { cableEnd, type EnclosureId, type EndKey, jumperEnd } from "../model/ids.ts";
import type { PlacedOutlet } from "../queries/outlets-of.ts";
import type { ConductionGraph } from "./conduction-graph.ts";
import type { OutletNodes } from "./protection.ts";
import type { Circuit } from "./section.ts";
import { edgesAt } from "./ways.ts";

/** The buses and bars of a panel and its lugs: every circuit ends there, and no other begins. */
export function isBar({ nodes }: ConductionGraph, node: number): boolean {
  const point = nodes[node]?.point;
  if (point?.kind === "panel") return true;
  if (point?.kind !== "device") return false;
  const { family } = point.type;
  return family === "neutral-bar" || family === "ground-bar" || family === "lugs";
}

/**
 * Nodes joined to some others by conductors and by paths inside devices, in any setting, up to the buses and bars of a
 * panel.
 */
function spread(graph: ConductionGraph, start: readonly number[]): ReadonlySet<number> {
  const lists = edgesAt(graph);
  const found = new Set<number>();
  const todo = [...start];
  for (let node = todo.pop(); node !== undefined; node = todo.pop()) {
    if (found.has(node) || isBar(graph, node)) continue;
    found.add(node);
    for (const edge of lists[node] ?? []) if (edge.kind !== "load") todo.push(edge.a === node ? edge.b : edge.a);
  }
  return found;
}

/** Nodes on the ungrounded side of a breaker. */
export function hotSideOf(graph: ConductionGraph, breaker: Device): ReadonlySet<number> {
  const start: number[] = [];
  graph.nodes.forEach(({ point }, node) => {
    if (point.kind !== "device" || point.device.id !== breaker.id) return;
    if (point.type.terminals.some((terminal) => terminal.name === point.node && terminal.purpose === "hot"))
      start.push(node);
  });
  return spread(graph, start);
}

export interface CircuitInputs {
  readonly graph: ConductionGraph;
  readonly breaker: Device;
  readonly panel: EnclosureId;
  readonly hotSide: ReadonlySet<number>;
  readonly outlets: readonly { readonly outlet: PlacedOutlet; readonly nodes: OutletNodes }[];
  /** LINE of the ground-fault devices in boxes: they return current by a neutral even where no outlet does. */
  readonly lines: readonly OutletNodes[];
}

/** Everything that one breaker feeds, with the neutrals that it returns by. */
export function circuitOn({ graph, breaker, panel, hotSide, outlets, lines }: CircuitInputs): Circuit {
  const fed = outlets.filter(({ nodes }) => hotSide.has(nodes.hot) || hotSide.has(nodes.neutral));
  const returns = [...fed.map(({ nodes }) => nodes), ...lines.filter((line) => hotSide.has(line.hot))];
  const neutralSide = spread(
    graph,
    returns.map((nodes) => nodes.neutral),
  );
  const hotEnds = new Set<EndKey>();
  const neutralEnds = new Set<EndKey>();
  const note = (end: EndKey, node: number): void => {
    if (hotSide.has(node)) hotEnds.add(end);
    else if (neutralSide.has(node)) neutralEnds.add(end);
  };
  for (const [end, node] of graph.ends) note(end, node);
  for (const { a, b, jumper, cable, conductor } of graph.edges) {
    if (jumper !== undefined) {
      note(jumperEnd(jumper, "a"), a);
      note(jumperEnd(jumper, "b"), b);
    } else if (cable !== undefined && conductor !== undefined) {
      // The end of a conductor on a bar is its own, though the bar is not.
      if (isBar(graph, a)) note(cableEnd(cable.id, conductor, "a"), b);
      if (isBar(graph, b)) note(cableEnd(cable.id, conductor, "b"), a);
    }
  }
  return {
    breaker: breaker.id,
    panel,
    hotEnds: [...hotEnds].sort(),
    neutralEnds: [...neutralEnds].sort(),
    outlets: fed.map(({ outlet }) => outlet.key).sort(),
  };
}
