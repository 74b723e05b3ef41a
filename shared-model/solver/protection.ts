import type { SensingType } from "../catalog/device-type.ts";
import { getDeviceType } from "../catalog/device-types.ts";
import type { Device } from "../model/device.ts";
import { type ConductionGraph, GROUND, HOT, NEUTRAL } from "./conduction-graph.ts";
import { busOf } from "./enclosure-graph.ts";
import type { ProtectionTest } from "./section.ts";
import { MOST_SWITCHES, type Setting, settingsOf } from "./settings.ts";
import type { SourceReach } from "./source-reach.ts";

/** A sensing device as nodes of the graph. */
export interface Sensor {
  readonly device: Device;
  readonly lineHot: readonly number[];
  readonly lineNeutral?: number;
  readonly isPersonnel: boolean;
  /** With everything that it sums taken out. */
  readonly cut: SourceReach;
  /** A live conductor leads to it through fixed loads, with the contacts of the device open. */
  isLiveThroughLoads(node: number): boolean;
}

/** Nodes that an outlet hangs on. */
export interface OutletNodes {
  readonly hot: number;
  readonly neutral: number;
}

/** Trip class of a sensing device: a breaker says it by its function, which a person may have changed. */
export function sensingClass(device: Device, sensing: SensingType): SensingType["class"] | "none" {
  switch (getDeviceType(device.type).family === "breaker" ? device.function : undefined) {
    case "gfci":
    case "dual":
      return "personnel";
    case "afci":
      return "arc-fault";
    case "equipment-ground-fault":
      return "equipment";
    case "none":
      return "none";
    default:
      return sensing.class;
  }
}

export function sensorNodes(
  graph: ConductionGraph,
  device: Device,
  sensing: SensingType,
): Pick<Sensor, "lineHot" | "lineNeutral"> {
  const type = getDeviceType(device.type);
  const at = (node: string): number[] => {
    const found = graph.nodeOfDevice(device.id, busOf(device, type, node));
    return found === undefined ? [] : [found];
  };
  const [lineNeutral] = sensing.line.neutral === undefined ? [] : at(sensing.line.neutral);
  return {
    lineHot: sensing.line.hot.flatMap(at),
    ...(lineNeutral !== undefined && { lineNeutral }),
  };
}

/**
 * Nets that are live through fixed loads alone: from every net that some setting makes live, across loads and switch
 * paths, up to nets that are grounded. What is plugged in counts only where it is given, as pairs of nodes.
 */
export function netsLiveThroughLoads(
  graph: ConductionGraph,
  reach: SourceReach,
  plugged: readonly OutletNodes[] = [],
): ReadonlySet<number> {
  const across = new Map<number, number[]>();
  const link = (a: number, b: number): void => {
    const list = across.get(a);
    if (list === undefined) across.set(a, [b]);
    else list.push(b);
  };
  const netOf = (node: number): number => reach.net[node] as number;
  const todo: number[] = [];
  const lead = (from: number, to: number, isLoad: boolean): void => {
    link(netOf(from), to);
    if (isLoad && (reach.some(from) & HOT) !== 0) todo.push(to);
  };
  for (const { kind, a, b } of graph.edges) {
    if (kind !== "load" && kind !== "switch") continue;
    lead(a, b, kind === "load");
    lead(b, a, kind === "load");
  }
  for (const { hot, neutral } of plugged) {
    lead(hot, neutral, true);
    lead(neutral, hot, true);
  }
  const found = new Set<number>();
  for (let node = todo.pop(); node !== undefined; node = todo.pop()) {
    const net = netOf(node);
    if (found.has(net) || (reach.some(node) & (NEUTRAL | GROUND | HOT)) !== 0) continue;
    found.add(net);
    todo.push(...(across.get(net) ?? []));
  }
  return found;
}

export interface TestOutcome {
  readonly test: ProtectionTest;
  readonly certain: boolean;
}

/** P1, P4 and P5 of one outlet and one sensing device, over every setting in which the outlet is live. */
export function testOutlet(base: SourceReach, { hot, neutral }: OutletNodes, sensor: Sensor): TestOutcome {
  const { cut } = sensor;
  const handles = handlesOf(base, { hot, neutral }, sensor);
  let hotReached = false;
  let neutralReached = false;
  let powered = true;
  let fedOnLine = true;
  let live = false;
  for (const setting of settingsOf(handles)) {
    if ((base.bitsAt(hot, setting) & HOT) === 0) continue;
    live = true;
    if (cut.bitsAt(hot, setting) !== 0) hotReached = true;
    if (cut.bitsAt(neutral, setting) !== 0) neutralReached = true;
    if (!isPowered(base, sensor, setting)) powered = false;
    if (!isFedOnLine(base, sensor, setting)) fedOnLine = false;
  }
  const reachedThroughLoad = sensor.isLiveThroughLoads(hot) || sensor.isLiveThroughLoads(neutral);
  const isolated = live && !hotReached && !neutralReached && !reachedThroughLoad;
  const certain =
    handles.length <= MOST_SWITCHES && ![base, cut].some((reach) => reach.isBounded(hot) || reach.isBounded(neutral));
  return {
    test: {
      device: sensor.device.id,
      hotReached,
      neutralReached,
      reachedThroughLoad,
      powered,
      personnelClass: sensor.isPersonnel,
      fedOnLine,
      protects: certain && isolated && powered && sensor.isPersonnel && fedOnLine,
    },
    certain,
  };
}

function isPowered(base: SourceReach, sensor: Sensor, setting: Setting): boolean {
  const { lineHot, lineNeutral } = sensor;
  const hot = lineHot.some((node) => (base.bitsAt(node, setting) & HOT) !== 0);
  return hot && lineNeutral !== undefined && (base.bitsAt(lineNeutral, setting) & NEUTRAL) !== 0;
}

/**
 * With the sensor taken out, the supply is on LINE; what is fed on LOAD leaves its LINE dead then. Each pole counts: with
 * the neutral alone exchanged, out and back run the same way through the sensor, which sees twice the load.
 */
function isFedOnLine(base: SourceReach, { lineHot, lineNeutral, cut }: Sensor, setting: Setting): boolean {
  const hot = lineHot.some((node) => (cut.bitsAt(node, setting) & HOT) !== 0);
  if (!hot || lineNeutral === undefined) return hot;
  const isNeutral = (reach: SourceReach): boolean => (reach.bitsAt(lineNeutral, setting) & NEUTRAL) !== 0;
  return isNeutral(cut) || !isNeutral(base);
}

function handlesOf(base: SourceReach, { hot, neutral }: OutletNodes, sensor: Sensor): readonly string[] {
  const { cut, lineHot, lineNeutral } = sensor;
  const handles = new Set<string>();
  const add = (reach: SourceReach, nodes: readonly number[]): void => {
    for (const node of nodes) for (const handle of reach.handlesAt(node)) handles.add(handle);
  };
  const line = lineNeutral === undefined ? lineHot : [...lineHot, lineNeutral];
  add(base, [hot, ...line]);
  add(cut, [hot, neutral, ...line]);
  return [...handles].sort();
}
