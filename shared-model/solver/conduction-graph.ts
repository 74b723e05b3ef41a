import type { DeviceFamily, DeviceNode } from "../catalog/device-type.ts";
import type { Cable } from "../model/cable.ts";
import type { Device } from "../model/device.ts";
import type { Enclosure, Panel } from "../model/enclosure.ts";
import {
  type CableId,
  type ConductorKey,
  cableEnd,
  type DeviceId,
  type EnclosureId,
  type EndKey,
  type SpliceId,
} from "../model/ids.ts";
import type { Installation } from "../model/project.ts";
import { type EnclosureGraph, enclosureGraph, type Joint, type Point } from "./enclosure-graph.ts";
import { feederCables, type Walked, walkSection } from "./section-walk.ts";

/** Sources as bits of a set: the legs, the neutral and the equipment ground of a service panel. */
export const LEG_A = 1;
export const LEG_B = 2;
export const LEG_C = 4;
export const NEUTRAL = 8;
export const GROUND = 16;
export const HOT = LEG_A | LEG_B | LEG_C;

const SOURCE_BITS: Readonly<Record<DeviceNode, number>> = {
  "@busA": LEG_A,
  "@busB": LEG_B,
  "@busC": LEG_C,
  "@neutral": NEUTRAL,
  "@ground": GROUND,
};

export interface GraphNode {
  readonly point: Point;
  readonly enclosure: Enclosure;
}

/** A joint of an enclosure or a conductor of a cable, between two nodes of the whole graph. */
export interface GraphEdge extends Joint {
  readonly enclosure?: Enclosure | undefined;
  readonly cable?: Cable | undefined;
  readonly conductor?: ConductorKey | undefined;
}

/** Everything that conducts in a section, with its panels as far as its cables and their supply reach. */
export interface ConductionGraph {
  readonly nodes: readonly GraphNode[];
  readonly edges: readonly GraphEdge[];
  /** Source bits of a node; 0 for what is no source. Sources conduct to their neighbours, never through themselves. */
  readonly source: readonly number[];
  /** Panels that were looked into, with the ends of cables at which that was done. */
  readonly panelEnds: ReadonlyMap<Panel, ReadonlySet<EndKey>>;
  /** Boxes that belong to other sections and carry the feeder of a panel, and the feeder cables. */
  readonly upstream: Walked;
  /** Node at which each end lies: all ends in its boxes, and ends of its cables in panels. */
  readonly ends: ReadonlyMap<EndKey, number>;
  nodeOfSplice(splice: SpliceId): number | undefined;
  nodeOfBond(enclosure: EnclosureId): number | undefined;
  nodeOfDevice(device: DeviceId, node: DeviceNode): number | undefined;
  readonly devices: ReadonlyMap<DeviceId, { readonly device: Device; readonly enclosure: Enclosure }>;
}

/**
 * The graph of a section. Its boxes go in whole. A panel goes in only as far as it is reached from the ends of the cables
 * at hand, so that the cost does not grow with what else the panel feeds. The buses and bars of a service panel are
 * sources; those of a feeder panel are points like others, and its feeders are followed upstream.
 *
 * The main bond is left out: a bar of a service panel is one source, and what is joined to it by a jumper in the panel
 * does not make it another. What a cable brings to the other bar there counts as if it were on its own.
 */
export function conductionGraph(installation: Installation, walked: Walked): ConductionGraph {
  const builder = new Builder(installation);
  for (const box of walked.boxes) builder.addBox(box);
  for (const cable of walked.cables) builder.addCable(cable);
  return builder.finish(walked);
}

/** The graph of one panel by itself, with the supply of its buses and nothing that it feeds. */
export function panelGraph(installation: Installation, panel: Panel): ConductionGraph {
  const builder = new Builder(installation);
  builder.addPanel(panel);
  return builder.finish({ boxes: [], cables: [] });
}

interface Part {
  readonly graph: EnclosureGraph;
  /** Node of each point, -1 while it has none. */
  readonly nodes: number[];
  readonly jointsIn: Set<number>;
}

class Builder {
  private readonly installation: Installation;
  private readonly nodes: GraphNode[] = [];
  private readonly edges: GraphEdge[] = [];
  private readonly source: number[] = [];
  private readonly parts = new Map<EnclosureId, Part>();
  private readonly cables = new Map<CableId, Cable>();
  private readonly boxes = new Map<EnclosureId, Enclosure>();
  private readonly panelEnds = new Map<Panel, Set<EndKey>>();
  private readonly ends = new Map<EndKey, number>();
  private readonly splices = new Map<SpliceId, number>();
  private readonly devices = new Map<DeviceId, { readonly device: Device; readonly enclosure: Enclosure }>();

  constructor(installation: Installation) {
    this.installation = installation;
  }

  addBox(box: Enclosure): void {
    if (this.boxes.has(box.id)) return;
    this.boxes.set(box.id, box);
    const part = this.part(box);
    part.graph.points.forEach((_, point) => {
      this.nodeAt(part, point);
    });
    // All of them, and only here: which are in already need not be noted, as it must in a panel.
    for (const joint of part.graph.joints) this.addEdge(part, joint);
    for (const device of Object.values(box.devices)) this.devices.set(device.id, { device, enclosure: box });
    this.noteEnds(part);
  }

  addPanel(panel: Panel): void {
    const part = this.part(panel);
    part.graph.points.forEach((_, point) => {
      this.touch(part, point);
    });
    this.noteEnds(part);
  }

  addCable(cable: Cable): void {
    if (this.cables.has(cable.id)) return;
    this.cables.set(cable.id, cable);
    for (const conductor of Object.keys(cable.conductors) as ConductorKey[]) {
      const a = this.endNode(cable, conductor, "a");
      const b = this.endNode(cable, conductor, "b");
      if (a !== undefined && b !== undefined) this.edges.push(wireEdge(a, b, cable, conductor));
    }
  }

  finish(own: Walked): ConductionGraph {
    const { nodes, edges, source, parts, panelEnds, devices } = this;
    const ownBoxes = new Set(own.boxes);
    const ownCables = new Set(own.cables);
    const upstream: Walked = {
      boxes: [...this.boxes.values()].filter((box) => !ownBoxes.has(box)),
      cables: [...this.cables.values()].filter((cable) => !ownCables.has(cable)),
    };
    const { ends, splices } = this;
    return {
      nodes,
      edges,
      source,
      panelEnds,
      upstream,
      devices,
      ends,
      nodeOfSplice: (splice) => splices.get(splice),
      nodeOfBond: (id) => {
        const part = parts.get(id);
        const node = part?.nodes[part.graph.bond] ?? -1;
        return node < 0 ? undefined : node;
      },
      nodeOfDevice: (device, node) => {
        const home = devices.get(device)?.enclosure;
        const part = home === undefined ? undefined : parts.get(home.id);
        const point = part?.graph.pointOfNode(device, node);
        const found = point === undefined ? -1 : (part?.nodes[point] ?? -1);
        return found < 0 ? undefined : found;
      },
    };
  }

  private part(enclosure: Enclosure): Part {
    let part = this.parts.get(enclosure.id);
    if (part === undefined) {
      const graph = enclosureGraph(enclosure);
      part = { graph, nodes: new Array<number>(graph.points.length).fill(-1), jointsIn: new Set() };
      this.parts.set(enclosure.id, part);
      if (enclosure.kind === "panel") {
        this.panelEnds.set(enclosure, new Set());
        if (enclosure.supply === "feeder") this.addFeeders(enclosure);
      }
    }
    return part;
  }

  /** A feeder may run through boxes, a disconnect say: their whole section is upstream of this one. */
  private addFeeders(panel: Panel): void {
    for (const cable of feederCables(this.installation, panel)) {
      this.addCable(cable);
      for (const side of [cable.sides.a, cable.sides.b]) {
        const enclosure = "enclosure" in side ? this.installation.enclosures[side.enclosure] : undefined;
        if (enclosure?.kind !== "box" || this.boxes.has(enclosure.id)) continue;
        const beyond = walkSection(this.installation, enclosure);
        for (const box of beyond.boxes) this.addBox(box);
        for (const other of beyond.cables) this.addCable(other);
      }
    }
  }

  private endNode(cable: Cable, conductor: ConductorKey, side: "a" | "b"): number | undefined {
    const where = cable.sides[side];
    const enclosure = "enclosure" in where ? this.installation.enclosures[where.enclosure] : undefined;
    if (enclosure === undefined) return undefined;
    const part = this.part(enclosure);
    const end = cableEnd(cable.id, conductor, side);
    const point = part.graph.pointOfEnd(end);
    if (point === undefined) return undefined;
    if (enclosure.kind === "box") return this.nodeAt(part, point);
    this.panelEnds.get(enclosure)?.add(end);
    const grounding = cable.conductors[conductor]?.grounding === true;
    const node = this.touch(part, pointAtMainBond(part.graph, point, grounding));
    this.ends.set(end, node);
    return node;
  }

  private noteEnds(part: Part): void {
    for (const [end, point] of part.graph.ends) this.ends.set(end, part.nodes[point] as number);
  }

  private nodeAt(part: Part, point: number): number {
    let node = part.nodes[point] ?? -1;
    if (node < 0) {
      const at = part.graph.points[point] as Point;
      const { enclosure } = part.graph;
      node = this.nodes.push({ point: at, enclosure }) - 1;
      part.nodes[point] = node;
      const isService = enclosure.kind === "panel" && enclosure.supply === "service";
      this.source.push(isService ? (SOURCE_BITS[busAt(at)] ?? 0) : 0);
      if (at.kind === "device") this.devices.set(at.device.id, { device: at.device, enclosure });
      else if (at.kind === "splice") this.splices.set(at.splice, node);
    }
    return node;
  }

  /** Takes in a point of a panel and what it is joined to, but not the breakers that stand on a bus. */
  private touch(part: Part, start: number): number {
    const todo = [start];
    const walked: number[] = [];
    for (let point = todo.pop(); point !== undefined; point = todo.pop()) {
      if ((part.nodes[point] ?? -1) >= 0) continue;
      const node = this.nodeAt(part, point);
      if (this.source[node] !== 0) continue;
      const at = part.graph.points[point] as Point;
      for (const index of part.graph.jointsAt[point] ?? []) {
        const joint = part.graph.joints[index] as Joint;
        const outward = at.kind === "panel" && (joint.kind === "breaker" || joint.opens !== undefined);
        if (outward) continue;
        walked.push(index);
        todo.push(joint.a === point ? joint.b : joint.a);
      }
      if (at.kind !== "device" || at.type.sensing === undefined) continue;
      for (const terminal of at.type.terminals) {
        const sibling = part.graph.pointOfNode(at.device.id, terminal.name);
        if (sibling !== undefined) todo.push(sibling);
      }
    }
    for (const index of walked) this.addJoint(part, index);
    return part.nodes[start] as number;
  }

  private addJoint(part: Part, index: number): void {
    if (part.jointsIn.has(index)) return;
    part.jointsIn.add(index);
    this.addEdge(part, part.graph.joints[index] as Joint);
  }

  private addEdge(part: Part, joint: Joint): void {
    // Field by field, so that all edges have one shape: a section has hundreds, made anew at every edit.
    const { kind, jumper, device, position, handle, opens } = joint;
    const a = part.nodes[joint.a] as number;
    const b = part.nodes[joint.b] as number;
    const { enclosure } = part.graph;
    this.edges.push({
      a,
      b,
      kind,
      jumper,
      device,
      position,
      handle,
      opens,
      enclosure,
      cable: undefined,
      conductor: undefined,
    });
  }
}

/**
 * Where the main bond is, the two bars are one: a ground on the neutral bar is a ground there, and a neutral on the ground
 * bar a neutral, each with the current of its own kind. Not known where the bond is: taken to be here, and asked.
 */
function pointAtMainBond(graph: EnclosureGraph, point: number, grounding: boolean): number {
  const { enclosure } = graph;
  if (enclosure.kind !== "panel" || enclosure.supply !== "service" || enclosure.mainBond === "elsewhere") return point;
  const bar = busAt(graph.points[point] as Point);
  if (bar !== (grounding ? "@neutral" : "@ground")) return point;
  return graph.pointOfNode("", grounding ? "@ground" : "@neutral") ?? point;
}

const wireEdge = (a: number, b: number, cable: Cable, conductor: ConductorKey): GraphEdge => ({
  a,
  b,
  kind: "wire",
  jumper: undefined,
  device: undefined,
  position: undefined,
  handle: undefined,
  opens: undefined,
  enclosure: undefined,
  cable,
  conductor,
});

const ON_BUS: ReadonlySet<DeviceFamily> = new Set(["neutral-bar", "ground-bar", "lugs"]);

/**
 * The bus or bar that a point of a panel is: one bar is one source, however many conductors end on it, so that a fault on
 * one of them is not carried over to the rest.
 */
function busAt(point: Point): DeviceNode {
  if (point.kind === "panel") return point.node;
  if (point.kind !== "device" || !ON_BUS.has(point.type.family)) return "";
  return point.type.paths.find((path) => path.a === point.node)?.b ?? "";
}
