import type { SensingType } from "../catalog/device-type.ts";
import { getDeviceType } from "../catalog/device-types.ts";
import type { Device } from "../model/device.ts";
import { type ConductionGraph, GROUND, HOT, NEUTRAL } from "./conduction-graph.ts";
import { busOf } from "./enclosure-graph.ts";
import type { SourceReach } from "./source-reach.ts";

/** A sensing device as nodes of the graph. */
export interface Sensor {
  readonly device: Device;
  readonly lineHot: readonly number[];
  readonly lineNeutral?: number;
  readonly isPersonnel: boolean;
  /** With everything that it sums taken out. */
  readonly cut: SourceReach;
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
 * Nets that are live through loads alone: from every net that some setting makes live, across loads and switch paths, up
 * to nets that are grounded. What is plugged in counts only where it is given, as pairs of nodes.
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
