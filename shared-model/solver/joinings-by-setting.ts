import { findDeviceType } from "../catalog/device-types.ts";
import type { Device } from "../model/device.ts";
import type { DeviceId } from "../model/ids.ts";
import type { ConductionGraph, GraphEdge } from "./conduction-graph.ts";
import type { HandlePosition, Joining, PathStep } from "./section.ts";
import { MOST_SWITCHES, type Setting, settingsOf } from "./settings.ts";
import type { SourceReach } from "./source-reach.ts";
import { stepOf } from "./ways.ts";
import { type Sides, weakestLinks } from "./weakest-links.ts";

/** Settings in which a joining is looked for; the rest of them are taken to be joined by the same. */
const MOST_LOOKED_INTO = 64;

export const conductsIn = (edge: GraphEdge, setting: Setting): boolean =>
  edge.kind !== "switch" || setting.positionOf(edge.handle ?? "") === edge.position;

export type IsJoined = (node: number, setting: Setting) => boolean;

/** Nodes with the same handles that decide what reaches them, and what was found to join two sides there. */
interface Group {
  readonly handles: readonly string[];
  /** Settings in which some of its nodes are joined. */
  readonly joined: readonly Setting[];
  isHere(node: number): boolean;
  readonly byStep: Map<string, { readonly by: PathStep; readonly columns: Set<number> }>;
}

/**
 * Nodes that some setting brings one of `bits` to are taken together by the handles that decide what reaches them, and
 * each such group setting by setting. What parts the two sides by the fewest places can lie in another group and hide what
 * is wrong in this one: with all that was found taken out, each setting is looked at again until nothing joins the two.
 */
export function joiningsOf(
  graph: ConductionGraph,
  reach: SourceReach,
  bits: number,
  isJoined: IsJoined,
  sides: Sides,
): readonly Joining[] {
  const groups = groupsOf(graph, reach, bits, isJoined);
  for (const group of groups)
    for (const setting of looked(group))
      for (const by of weakestLinks(graph, (edge) => conductsIn(edge, setting), sides))
        if (nodesOf(graph, by).some(group.isHere)) note(group, setting, by);
  const out = new Set(groups.flatMap(({ byStep }) => [...byStep.keys()]));
  for (const group of groups)
    for (const setting of looked(group))
      for (const by of whatIsLeft(graph, setting, sides, out)) note(group, setting, by);
  return withPositions(graph, groups);
}

const looked = ({ joined }: Group): readonly Setting[] => joined.slice(0, MOST_LOOKED_INTO);

function note({ byStep }: Group, { column }: Setting, by: PathStep): void {
  const known = byStep.get(stepKey(by));
  if (known === undefined) byStep.set(stepKey(by), { by, columns: new Set([column]) });
  else known.columns.add(column);
}

function groupsOf(graph: ConductionGraph, reach: SourceReach, bits: number, isJoined: IsJoined): readonly Group[] {
  const groups = new Map<string, { readonly handles: readonly string[]; readonly nodes: Set<number> }>();
  graph.nodes.forEach((_, node) => {
    if (graph.source[node] !== 0 || (reach.some(node) & bits) === 0 || reach.isBounded(node)) return;
    const handles = reach.handlesAt(node);
    const key = handles.join("|");
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { handles, nodes: new Set([node]) });
    else group.nodes.add(node);
  });
  return [...groups].map(([key, { handles: own, nodes }]) => {
    const handles = withSwitchesAt(graph, own, nodes);
    const joined = [...settingsOf(handles)].filter((setting) => [...nodes].some((node) => isJoined(node, setting)));
    const isHere = (node: number): boolean => graph.source[node] === 0 && reach.handlesAt(node).join("|") === key;
    return { handles, joined, isHere, byStep: new Map() };
  });
}

/** What still joins two sides in a setting once some pieces are out. */
function whatIsLeft(
  graph: ConductionGraph,
  setting: Setting,
  sides: Sides,
  out: ReadonlySet<string>,
): readonly PathStep[] {
  const gone = new Set(out);
  const left: PathStep[] = [];
  const conducts = (edge: GraphEdge): boolean => conductsIn(edge, setting) && !isOut(graph, edge, gone);
  for (;;) {
    const more = weakestLinks(graph, conducts, sides).filter((by) => !gone.has(stepKey(by)));
    if (more.length === 0) return left;
    left.push(...more);
    for (const by of more) gone.add(stepKey(by));
  }
}

const isOut = (graph: ConductionGraph, edge: GraphEdge, gone: ReadonlySet<string>): boolean =>
  (edge.cable !== undefined || edge.jumper !== undefined || edge.kind === "switch") &&
  gone.has(stepKey(stepOf(graph, edge, true)));

/** Each joining once, with the positions in which the first group that has it is joined by it. */
function withPositions(graph: ConductionGraph, groups: readonly Group[]): readonly Joining[] {
  const found = new Map<string, Joining & { readonly isNamed: (setting: Setting) => boolean }>();
  for (const { handles, joined, byStep } of groups)
    for (const [step, { by, columns }] of byStep) {
      if (joined.length > MOST_LOOKED_INTO) for (const { column } of joined) columns.add(column);
      const known = found.get(step);
      const isNamed = known?.isNamed ?? namedBy(handles, columns);
      const elsewhere = joined.some((setting) => columns.has(setting.column) && !isNamed(setting));
      if (known === undefined)
        found.set(step, { by, when: positionsOf(graph, handles, columns), alsoElse: elsewhere, isNamed });
      else if (elsewhere) found.set(step, { ...known, alsoElse: true });
    }
  return [...found]
    .sort(([one], [other]) => (one < other ? -1 : 1))
    .map(([, { by, when, alsoElse }]) => ({ by, when, alsoElse }));
}

/**
 * The handles that decide what reaches some nodes, and those of switches between nodes that are joined whatever they do:
 * another joining may lie behind them. Not more of these than are tried.
 */
function withSwitchesAt(
  graph: ConductionGraph,
  handles: readonly string[],
  nodes: ReadonlySet<number>,
): readonly string[] {
  const more = new Set(handles);
  for (const { kind, handle, a, b } of graph.edges)
    if (kind === "switch" && handle !== undefined && nodes.has(a) && nodes.has(b)) more.add(handle);
  return more.size > MOST_SWITCHES ? handles : [...more].sort();
}

/** Handles whose positions are enough for it: of the first setting, those without which it would not always be so. */
function enoughOf(handles: readonly string[], columns: ReadonlySet<number>): readonly number[] {
  const first = Math.min(...columns);
  const kept = new Set(handles.map((_, bit) => bit));
  const all = [...Array(1 << handles.length).keys()];
  for (const bit of [...kept]) {
    kept.delete(bit);
    const agrees = (column: number): boolean => [...kept].every((one) => ((column ^ first) & (1 << one)) === 0);
    if (!all.filter(agrees).every((column) => columns.has(column))) kept.add(bit);
  }
  return [...kept];
}

function positionsOf(
  graph: ConductionGraph,
  handles: readonly string[],
  columns: ReadonlySet<number>,
): readonly HandlePosition[] {
  const first = Math.min(...columns);
  return enoughOf(handles, columns).flatMap((bit) => positionOf(graph, handles[bit] ?? "", (first >> bit) & 1));
}

/** Whether a setting has the positions that are named for it. */
function namedBy(handles: readonly string[], columns: ReadonlySet<number>): (setting: Setting) => boolean {
  const first = Math.min(...columns);
  const enough = enoughOf(handles, columns);
  return (setting) => enough.every((bit) => setting.positionOf(handles[bit] ?? "") === ((first >> bit) & 1));
}

/** A position of a handle as a person names it; none for a handle of what is not known. */
export function positionOf(graph: ConductionGraph, handle: string, index: number): readonly HandlePosition[] {
  const device = deviceOfHandle(graph, handle);
  const position = device === undefined ? undefined : findDeviceType(device.type)?.positions[index];
  if (device === undefined || position === undefined) return [];
  const at = handle.slice(device.id.length + 1);
  return [{ device: device.id, position, ...(at !== "" && { at }) }];
}

export const deviceOfHandle = (graph: ConductionGraph, handle: string): Device | undefined =>
  graph.devices.get((handle.split(" ")[0] ?? "") as DeviceId)?.device;

function nodesOf(graph: ConductionGraph, step: PathStep): readonly number[] {
  const at = (end: PathStep["from"]): number | undefined =>
    step.kind === "cable" ? graph.ends.get(end as typeof step.from) : undefined;
  if (step.kind === "device")
    return [step.from, step.to].flatMap((node) => graph.nodeOfDevice(step.device, node) ?? []);
  if (step.kind === "cable") return [step.from, step.to].flatMap((end) => at(end) ?? []);
  const edge = graph.edges.find(({ jumper, enclosure }) => jumper === step.jumper && enclosure?.id === step.enclosure);
  return edge === undefined ? [] : [edge.a, edge.b];
}

const stepKey = (step: PathStep): string => {
  if (step.kind === "cable") return ["cable", step.cable, step.conductor].join(" ");
  return step.kind === "jumper"
    ? ["jumper", step.jumper].join(" ")
    : ["device", step.device, [step.from, step.to].sort()].join(" ");
};

export const inOrderOfKeys = (steps: readonly PathStep[]): readonly PathStep[] =>
  [...steps].sort((one, other) => (stepKey(one) < stepKey(other) ? -1 : 1));
