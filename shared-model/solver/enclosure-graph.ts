import type { DeviceNode, DevicePath, DeviceType } from "../catalog/device-type.ts";
import { findDeviceType } from "../catalog/device-types.ts";
import type { Device } from "../model/device.ts";
import type { Enclosure } from "../model/enclosure.ts";
import { type EndKey, type JumperId, jumperEnd, type SpliceId } from "../model/ids.ts";

/** A point at which metal meets metal inside one enclosure. Both holes of a clamp plate are one point. */
export type Point =
  | { readonly kind: "device"; readonly device: Device; readonly type: DeviceType; readonly node: DeviceNode }
  /** `@busA`, `@busB`, `@busC`, `@neutral` or `@ground` of a panel. */
  | { readonly kind: "panel"; readonly node: DeviceNode }
  | { readonly kind: "splice"; readonly splice: SpliceId }
  /** The metal of the enclosure. */
  | { readonly kind: "bond" }
  /** A capped or loose end, on its own. */
  | { readonly kind: "end"; readonly end: EndKey };

/** What a joint between two points is, and so what opens it. */
export interface Joint {
  readonly a: number;
  readonly b: number;
  /**
   * A conductor; a path of a device that its handle does not touch; one that conducts in one position of its handle; one
   * through a breaker; one through a load, which conducts only where loads count.
   */
  readonly kind: "wire" | "inside" | "switch" | "breaker" | "load";
  readonly jumper?: JumperId | undefined;
  readonly device?: Device | undefined;
  /** Position of the handle, as an index into the positions of its type; and which handle, where a yoke has several. */
  readonly position?: number | undefined;
  readonly handle?: string | undefined;
  /** Whether its ground-fault device opens it on a trip, sums its current, or both: the contacts of a face are not summed. */
  readonly opens?: "contacts" | "sensor" | "both" | undefined;
}

/** Points of one enclosure and the joints between them, as drawn, without what lies beyond its cables. */
export interface EnclosureGraph {
  readonly enclosure: Enclosure;
  readonly points: readonly Point[];
  readonly joints: readonly Joint[];
  /** Joints at each point. */
  readonly jointsAt: readonly (readonly number[])[];
  readonly bond: number;
  /** Point of each end, in the order of the places. */
  readonly ends: ReadonlyMap<EndKey, number>;
  pointOfEnd(end: EndKey): number | undefined;
  pointOfSplice(splice: SpliceId): number | undefined;
  pointOfNode(device: string, node: DeviceNode): number | undefined;
}

const cache = new WeakMap<Enclosure, EnclosureGraph>();

/** The graph of an enclosure, cached by its identity. Never throws: an end at a place that does not exist stands alone. */
export function enclosureGraph(enclosure: Enclosure): EnclosureGraph {
  let graph = cache.get(enclosure);
  if (graph === undefined) {
    graph = build(enclosure);
    cache.set(enclosure, graph);
  }
  return graph;
}

/** Points by device and node, without a text made of both at every question. */
class NodePoints {
  private readonly byDevice = new Map<string, Map<DeviceNode, number>>();

  get(device: string, node: DeviceNode): number | undefined {
    return this.byDevice.get(device)?.get(node);
  }

  set(device: string, node: DeviceNode, point: number): void {
    const known = this.byDevice.get(device);
    if (known === undefined) this.byDevice.set(device, new Map([[node, point]]));
    else known.set(node, point);
  }
}

function build(enclosure: Enclosure): EnclosureGraph {
  const points: Point[] = [{ kind: "bond" }];
  const joints: Joint[] = [];
  const byNode = new NodePoints();
  const bySplice = new Map<SpliceId, number>();
  const byEnd = new Map<EndKey, number>();
  const add = (point: Point): number => points.push(point) - 1;

  const panelPoint = (node: DeviceNode): number => {
    const found = byNode.get("", node);
    if (found !== undefined) return found;
    const made = add({ kind: "panel", node });
    byNode.set("", node, made);
    return made;
  };
  const devicePoint = (device: Device, type: DeviceType, node: DeviceNode): number => {
    if (node.startsWith("@")) return panelPoint(busOf(device, type, node));
    const found = byNode.get(device.id, node);
    if (found !== undefined) return found;
    const made = add({ kind: "device", device, type, node });
    byNode.set(device.id, node, made);
    return made;
  };

  if (enclosure.kind === "panel") {
    for (const node of PANEL_NODES) panelPoint(node);
    // The metal of a panel is its equipment ground.
    joints.push({ a: 0, b: panelPoint("@ground"), kind: "inside" });
  }
  for (const device of Object.values(enclosure.devices)) {
    const type = findDeviceType(device.type);
    if (type === undefined) continue;
    for (const terminal of type.terminals) devicePoint(device, type, terminal.name);
    for (const path of type.paths) {
      const joint = jointOf(device, type, path);
      if (joint === undefined) continue;
      joints.push({ ...joint, a: devicePoint(device, type, path.a), b: devicePoint(device, type, path.b), device });
    }
    const yoke = byNode.get(device.id, "G");
    const metal = enclosure.kind === "box" && enclosure.material === "metal";
    if (device.selfGrounding === true && metal && yoke !== undefined)
      joints.push({ a: yoke, b: 0, kind: "inside", device });
  }
  for (const splice of Object.values(enclosure.splices))
    bySplice.set(splice.id, add({ kind: "splice", splice: splice.id }));
  for (const [key, place] of Object.entries(enclosure.places)) {
    const end = key as EndKey;
    const { at } = place;
    const point =
      at.kind === "terminal"
        ? byNode.get(at.device, at.terminal)
        : at.kind === "splice"
          ? bySplice.get(at.splice)
          : at.kind === "bond"
            ? 0
            : undefined;
    byEnd.set(end, point ?? add({ kind: "end", end }));
  }
  for (const jumper of Object.values(enclosure.jumpers)) {
    const a = byEnd.get(jumperEnd(jumper.id, "a"));
    const b = byEnd.get(jumperEnd(jumper.id, "b"));
    if (a !== undefined && b !== undefined) joints.push({ a, b, kind: "wire", jumper: jumper.id });
  }

  const jointsAt: number[][] = points.map(() => []);
  joints.forEach((joint, index) => {
    jointsAt[joint.a]?.push(index);
    if (joint.b !== joint.a) jointsAt[joint.b]?.push(index);
  });
  return {
    enclosure,
    points,
    joints,
    jointsAt,
    bond: 0,
    ends: byEnd,
    pointOfEnd: (end) => byEnd.get(end),
    pointOfSplice: (splice) => bySplice.get(splice),
    pointOfNode: (device, node) => byNode.get(node.startsWith("@") ? "" : device, node),
  };
}

const PANEL_NODES = ["@busA", "@busB", "@busC", "@neutral", "@ground"] as const;

/** The bus that a leg of a breaker stands on; bars and buses name themselves. */
export function busOf(device: Device, type: DeviceType, node: DeviceNode): DeviceNode {
  if (!node.startsWith("@leg")) return node;
  const legs = device.legs ?? type.defaults.legs ?? ["A"];
  return `@bus${legs[Number(node.slice(4))] ?? "A"}`;
}

/** The handle that closes a path: one for the device, but two switches on one yoke have one for each terminal switched. */
export const handleOf = (device: Device, type: DeviceType, switched: DeviceNode): string =>
  type.family === "combination" ? `${device.id} ${switched}` : device.id;

function jointOf(
  device: Device,
  type: DeviceType,
  path: DevicePath,
): Pick<Joint, "kind" | "position" | "handle" | "opens"> | undefined {
  switch (path.when) {
    case "always":
      return path.sensed === true ? { kind: "inside", opens: "sensor" } : { kind: "inside" };
    case "hot-tab":
      return device.hotTab === "removed" ? undefined : { kind: "inside" };
    case "neutral-tab":
      return device.neutralTab === "removed" ? undefined : { kind: "inside" };
    case "reset":
      return { kind: "inside", opens: "both" };
    case "face":
      return (device.faceContact ?? type.defaults.faceContact) === "tied-to-load"
        ? { kind: "inside" }
        : { kind: "inside", opens: "contacts" };
    case "breaker-on":
      return path.sensed === true ? { kind: "breaker", opens: "both" } : { kind: "breaker" };
    case "load":
      return { kind: "load" };
    default: {
      // A disconnect is an opening means like a breaker: roles are taken with it on.
      if (type.family === "disconnect") return path.when === "on" ? { kind: "inside" } : undefined;
      return { kind: "switch", position: type.positions.indexOf(path.when), handle: handleOf(device, type, path.b) };
    }
  }
}
