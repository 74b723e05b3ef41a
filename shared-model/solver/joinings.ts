import { type ConductionGraph, GROUND, type GraphEdge, HOT, NEUTRAL } from "./conduction-graph.ts";
import { conductsIn, inOrderOfKeys, joiningsOf } from "./joinings-by-setting.ts";
import type { OutletNodes } from "./protection.ts";
import type { Joining } from "./section.ts";
import type { Setting } from "./settings.ts";
import { isOpened, type Opened, type SourceReach } from "./source-reach.ts";
import { groundSuspicions, suspicions } from "./suspicions.ts";
import { edgesAt, settingWith } from "./ways.ts";
import { weakestLinks } from "./weakest-links.ts";

/** What joins hot to neutral in some setting. */
export function shorts(graph: ConductionGraph, reach: SourceReach): readonly Joining[] {
  const isShorted = (bits: number): boolean => (bits & HOT) !== 0 && (bits & NEUTRAL) !== 0;
  return joiningsOf(graph, reach, NEUTRAL, (node, setting) => isShorted(reach.bitsAt(node, setting)), {
    isFrom: (node) => ((graph.source[node] as number) & HOT) !== 0,
    isTo: (node) => ((graph.source[node] as number) & NEUTRAL) !== 0,
    isMadeForFrom: (node) => isMadeFor(graph, node, "hot"),
    isMadeForTo: (node) => isMadeFor(graph, node, "neutral"),
    isBarred: (node) => ((graph.source[node] as number) & GROUND) !== 0,
    suspicionOf: suspicions(graph, reach),
  });
}

/** What joins the neutral to the equipment ground, or to what is made for it where no ground arrives. */
export function neutralsOnGround(graph: ConductionGraph, reach: SourceReach): readonly Joining[] {
  const grounds = graph.nodes.map((_, node) => isMadeForGround(graph, node));
  const isJoined = (node: number, setting: Setting): boolean => {
    const bits = reach.bitsAt(node, setting);
    return (bits & NEUTRAL) !== 0 && (grounds[node] === true || (bits & GROUND) !== 0);
  };
  return joiningsOf(graph, reach, NEUTRAL, isJoined, {
    isFrom: (node) => ((graph.source[node] as number) & GROUND) !== 0 || grounds[node] === true,
    isTo: (node) => ((graph.source[node] as number) & NEUTRAL) !== 0,
    isMadeForFrom: () => false,
    isMadeForTo: (node) => isMadeFor(graph, node, "neutral"),
    isBarred: (node) => ((graph.source[node] as number) & HOT) !== 0,
  });
}

/** What joins a hot, switched ones included, to the equipment ground, or to what is made for it where no ground arrives. */
export function hotsOnGround(graph: ConductionGraph, reach: SourceReach): readonly Joining[] {
  const grounds = graph.nodes.map((_, node) => isMadeForGround(graph, node));
  const isJoined = (node: number, setting: Setting): boolean => {
    const bits = reach.bitsAt(node, setting);
    return (bits & HOT) !== 0 && (grounds[node] === true || (bits & GROUND) !== 0);
  };
  return joiningsOf(graph, reach, HOT, isJoined, {
    isFrom: (node) => ((graph.source[node] as number) & GROUND) !== 0 || grounds[node] === true,
    isTo: (node) => ((graph.source[node] as number) & HOT) !== 0,
    isMadeForFrom: () => false,
    isMadeForTo: (node) => isMadeFor(graph, node, "hot"),
    isBarred: (node) => ((graph.source[node] as number) & NEUTRAL) !== 0,
    suspicionOf: groundSuspicions(graph),
  });
}

/** What joins hot terminals that no source reaches to the equipment ground: the hot must not be brought to them as they are. */
export function deadHotsOnGround(graph: ConductionGraph, reach: SourceReach): readonly Joining[] {
  const hots = graph.nodes.map(
    (_, node) => isMadeFor(graph, node, "hot") && (reach.some(node) & (HOT | NEUTRAL)) === 0,
  );
  const isJoined = (node: number, setting: Setting): boolean =>
    hots[node] === true && (reach.bitsAt(node, setting) & GROUND) !== 0;
  return joiningsOf(graph, reach, GROUND, isJoined, {
    isFrom: (node) => ((graph.source[node] as number) & GROUND) !== 0 || isMadeForGround(graph, node),
    isTo: (node) => hots[node] === true,
    isMadeForFrom: () => false,
    isMadeForTo: () => false,
    isBarred: (node) => ((graph.source[node] as number) & (HOT | NEUTRAL)) !== 0,
    suspicionOf: groundSuspicions(graph),
  });
}

/**
 * With the contacts of a device open: what joins its LOAD neutral to the neutral of the supply. Outlets whose hot the
 * contacts cut off belong to LOAD, the others to LINE; so does its own LINE neutral, unless it is fed by LOAD alone.
 */
export function neutralsAround(
  graph: ConductionGraph,
  base: SourceReach,
  tripped: SourceReach,
  opened: Opened,
  { lineNeutral, loadNeutral }: { readonly lineNeutral: number; readonly loadNeutral: number },
  outlets: readonly OutletNodes[],
): readonly Joining[] {
  const setting = settingWith(tripped, loadNeutral, NEUTRAL);
  if (setting === undefined) return [];
  const isHot = (reach: SourceReach, node: number): boolean => (reach.some(node) & HOT) !== 0;
  const onLine = new Set<number>();
  const onLoad = new Set<number>();
  for (const { hot, neutral } of outlets)
    if (isHot(tripped, hot)) onLine.add(neutral);
    else if (isHot(base, hot)) onLoad.add(neutral);
  const conducts = (edge: GraphEdge): boolean => !isOpened(edge, opened) && conductsIn(edge, setting);
  const isSource = (node: number): boolean => ((graph.source[node] as number) & NEUTRAL) !== 0;
  const ownLine = isReachedWithout(graph, conducts, lineNeutral, loadNeutral, isSource) ? lineNeutral : undefined;
  const links = weakestLinks(graph, conducts, {
    isFrom: (node) => isSource(node) || node === ownLine,
    isTo: (node) => node === loadNeutral,
    isMadeForFrom: (node) => onLine.has(node),
    isMadeForTo: (node) => onLoad.has(node),
    isBarred: (node) => ((graph.source[node] as number) & (HOT | GROUND)) !== 0,
  });
  return inOrderOfKeys(links).map((by) => ({ by, when: [], alsoElse: false }));
}

/**
 * With the contacts of a device open: what joins its LOAD hot to a hot of the supply, nearest to LINE or nearest to LOAD
 * where several pieces lie one behind the other. Outlets whose neutral the contacts cut off belong to LOAD, the others to
 * LINE.
 */
export function hotsAround(
  graph: ConductionGraph,
  base: SourceReach,
  tripped: SourceReach,
  opened: Opened,
  { lineHot, loadHot }: { readonly lineHot: number; readonly loadHot: number },
  outlets: readonly OutletNodes[],
  nearest: "LINE" | "LOAD",
): readonly Joining[] {
  const setting = settingWith(tripped, loadHot, HOT);
  if (setting === undefined) return [];
  const isGrounded = (reach: SourceReach, node: number): boolean => (reach.some(node) & NEUTRAL) !== 0;
  const onLine = new Set<number>();
  const onLoad = new Set<number>();
  for (const { hot, neutral } of outlets)
    if (isGrounded(tripped, neutral)) onLine.add(hot);
    else if (isGrounded(base, neutral)) onLoad.add(hot);
  const line = {
    is: (node: number): boolean => ((graph.source[node] as number) & HOT) !== 0 || node === lineHot,
    isMadeFor: (node: number): boolean => onLine.has(node),
  };
  const load = {
    is: (node: number): boolean => node === loadHot,
    isMadeFor: (node: number): boolean => onLoad.has(node),
  };
  const [from, to] = nearest === "LINE" ? [line, load] : [load, line];
  const links = weakestLinks(graph, (edge) => !isOpened(edge, opened) && conductsIn(edge, setting), {
    isFrom: from.is,
    isTo: to.is,
    isMadeForFrom: from.isMadeFor,
    isMadeForTo: to.isMadeFor,
    isBarred: (node) => ((graph.source[node] as number) & (NEUTRAL | GROUND)) !== 0,
  });
  return inOrderOfKeys(links).map((by) => ({ by, when: [], alsoElse: false }));
}

/** Whether a source comes to a node by some way that another node is not on. */
function isReachedWithout(
  graph: ConductionGraph,
  conducts: (edge: GraphEdge) => boolean,
  to: number,
  without: number,
  isSource: (node: number) => boolean,
): boolean {
  const lists = edgesAt(graph);
  const seen = new Set([to, without]);
  const queue = [to];
  for (const node of queue) {
    if (isSource(node)) return true;
    if (graph.source[node] !== 0) continue;
    for (const edge of lists[node] ?? []) {
      const next = edge.a === node ? edge.b : edge.a;
      if (edge.kind === "load" || seen.has(next) || !conducts(edge)) continue;
      seen.add(next);
      queue.push(next);
    }
  }
  return false;
}

/**
 * The terminal of a device in a box that stands for what it has of one of the two, one for each device. Switches are for
 * neither, as they may wrongly stand in a neutral.
 */
function isMadeFor({ nodes }: ConductionGraph, node: number, purpose: "hot" | "neutral"): boolean {
  const at = nodes[node];
  if (at?.enclosure.kind !== "box" || at.point.kind !== "device" || at.point.type.positions.length > 0) return false;
  const { point } = at;
  return point.type.terminals.find((terminal) => terminal.purpose === purpose)?.name === point.node;
}

/** Ground terminals and slots, the metal of enclosures, and the ground bars of panels that a feeder supplies. */
function isMadeForGround({ nodes }: ConductionGraph, node: number): boolean {
  const point = nodes[node]?.point;
  if (point === undefined) return false;
  if (point.kind === "bond") return true;
  if (point.kind === "panel") return point.node === "@ground";
  if (point.kind !== "device") return false;
  const { type } = point;
  return (
    type.terminals.some(({ name, purpose }) => name === point.node && purpose === "ground") ||
    type.outlets.some(({ ground }) => ground === point.node)
  );
}
