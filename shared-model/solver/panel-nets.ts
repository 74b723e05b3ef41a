import type { DeviceNode } from "../catalog/device-type.ts";
import { UnionFind } from "../lib/union-find.ts";
import type { Device } from "../model/device.ts";
import type { Jumper, Panel } from "../model/enclosure.ts";
import { type EndKey, parseEnd } from "../model/ids.ts";
import { type EnclosureGraph, enclosureGraph } from "./enclosure-graph.ts";

/**
 * What is joined inside one panel by conductors alone, breakers left out. The terminals of one sensing breaker count as
 * one net, because its sensor sums them all.
 */
export interface PanelNets {
  readonly graph: EnclosureGraph;
  /** Net of the point that an end lies at; undefined when the end is not in this panel. */
  netOfEnd(end: EndKey): number | undefined;
  netOfPoint(point: number): number;
  /** Bars and buses that a net lies on directly; a net on one is a boundary, a net on none may join cables to one circuit. */
  barsOf(net: number): readonly DeviceNode[];
  /** Ends of cables on a net, sorted. */
  cableEndsOn(net: number): readonly EndKey[];
  devicesOn(net: number): readonly Device[];
  /** Equal texts in two forms of a panel when a net joins the same things, by as much resistance. */
  signatureOf(net: number): string;
  /** Jumpers between bars or buses, as text: with loops in the metal they divide the current of every circuit on them. */
  readonly barJumpers: string;
  /** Ends of cables on the feeder lugs, sorted. */
  readonly lugEnds: readonly EndKey[];
}

const cache = new WeakMap<Panel, PanelNets>();

/** Cached by the identity of the panel. */
export function panelNets(panel: Panel): PanelNets {
  let nets = cache.get(panel);
  if (nets === undefined) {
    nets = build(panel);
    cache.set(panel, nets);
  }
  return nets;
}

interface Net {
  readonly bars: Set<DeviceNode>;
  readonly names: string[];
  readonly cableEnds: EndKey[];
  readonly devices: Device[];
  hasLugs: boolean;
  signature?: string;
}

function build(panel: Panel): PanelNets {
  const graph = enclosureGraph(panel);
  const sets = new UnionFind();
  const sensorPoint = new Map<string, number>();
  for (const joint of graph.joints) if (joint.kind === "wire") sets.join(joint.a, joint.b);
  graph.points.forEach((point, index) => {
    if (point.kind !== "device" || point.type.sensing === undefined) return;
    const first = sensorPoint.get(point.device.id);
    if (first === undefined) sensorPoint.set(point.device.id, index);
    else sets.join(first, index);
  });

  const nets = new Map<number, Net>();
  const netAt = (point: number): Net => {
    const root = sets.find(point);
    let net = nets.get(root);
    if (net === undefined) {
      net = { bars: new Set(), names: [], cableEnds: [], devices: [], hasLugs: false };
      nets.set(root, net);
    }
    return net;
  };
  graph.points.forEach((point, index) => {
    const net = netAt(index);
    if (point.kind === "panel") net.bars.add(point.node);
    else if (point.kind === "splice") net.names.push(["splice", point.splice].join(" "));
    else if (point.kind === "bond") net.names.push("bond");
    else if (point.kind === "device") {
      net.names.push(`${point.device.id} ${point.node}`);
      if (!net.devices.includes(point.device)) net.devices.push(point.device);
      if (point.type.family === "lugs") net.hasLugs = true;
    }
  });
  for (const joint of graph.joints) {
    if (joint.kind !== "inside" || joint.opens !== undefined) continue;
    for (const [inner, outer] of [
      [joint.a, joint.b],
      [joint.b, joint.a],
    ] as const) {
      const point = graph.points[inner];
      if (point?.kind === "panel") netAt(outer).bars.add(point.node);
    }
  }
  const lugEnds: EndKey[] = [];
  const onBars: string[] = [];
  for (const key of Object.keys(panel.places).sort()) {
    const end = key as EndKey;
    const point = graph.pointOfEnd(end);
    if (point === undefined) continue;
    const net = netAt(point);
    const parsed = parseEnd(end);
    const jumper = parsed?.of === "jumper" ? panel.jumpers[parsed.jumper] : undefined;
    const metal = jumper === undefined ? [] : [metalOf(jumper)];
    net.names.push(["end", end, panel.places[end]?.jointOhm ?? 0, ...metal].join(" "));
    if (parsed?.of !== "cable") {
      if (net.bars.size > 0 && jumper !== undefined)
        onBars.push(`${end} ${JSON.stringify(panel.places[end])} ${metalOf(jumper)}`);
      continue;
    }
    net.cableEnds.push(end);
    if (net.hasLugs) lugEnds.push(end);
  }
  const get = (net: number): Net => netAt(net);
  return {
    graph,
    netOfEnd: (end) => {
      const point = graph.pointOfEnd(end);
      return point === undefined ? undefined : sets.find(point);
    },
    netOfPoint: (point) => sets.find(point),
    barsOf: (net) => [...get(net).bars],
    cableEndsOn: (net) => get(net).cableEnds,
    devicesOn: (net) => get(net).devices,
    signatureOf: (root) => {
      const net = get(root);
      // What else lies on a bar counts too: a jumper to it may carry the current of a breaker.
      net.signature ??= [...[...net.bars].sort(), ...net.names.sort()].join("\n");
      return net.signature;
    },
    barJumpers: onBars.join("\n"),
    lugEnds,
  };
}

/** What the resistance of a jumper follows from. */
const metalOf = ({ awg, material, stranded, lengthIn }: Jumper): string =>
  `${awg} ${material} ${stranded} ${lengthIn ?? "?"}`;
