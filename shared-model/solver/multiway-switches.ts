import { getDeviceType } from "../catalog/device-types.ts";
import type { Device } from "../model/device.ts";
import type { DeviceId, OutletKey, TerminalName } from "../model/ids.ts";
import { type ConductionGraph, HOT, NEUTRAL } from "./conduction-graph.ts";
import type { OutletNodes } from "./protection.ts";
import type { Section } from "./section.ts";
import { modelOf } from "./sections.ts";
import { MOST_SWITCHES, type Setting, settingsOf } from "./settings.ts";
import type { SourceReach } from "./source-reach.ts";

/** Three- and four-way switches joined by travellers that do not turn a light over from every position. */
export interface MultiwayFault {
  /** Sorted by id. */
  readonly switches: readonly Device[];
  readonly outlet: OutletKey;
  /** Of how many positions of the group moving this switch turns the light over, where it should from all. */
  readonly turns: ReadonlyMap<DeviceId, number>;
  readonly positions: number;
  /** Those with feed or light on a traveller screw, with that screw. */
  readonly misplaced: readonly { readonly device: Device; readonly traveller: TerminalName }[];
}

const isMultiway = ({ type }: Device): boolean =>
  getDeviceType(type).terminals.some(({ purpose }) => purpose === "traveller");

/**
 * Judged by what the handles do. A light is on where its two sides have hot and neutral, either way round. With the
 * other switches of the circuit in any one position, either no handle of a group changes it, or each does from every
 * position of the others.
 */
export function multiwayFaults(section: Section): readonly MultiwayFault[] {
  const model = modelOf(section);
  const { graph } = model;
  const groups = groupsOf(section, graph);
  if (groups.length === 0) return [];
  const reach = model.sourceReach();
  return groups.flatMap((group) => {
    const faults = model.placed().flatMap(({ outlet, nodes }) => {
      const fault = judge(graph, reach, group, nodes);
      return fault === undefined ? [] : { ...fault, outlet: outlet.key };
    });
    return faults.slice(0, 1);
  });
}

/** Switches with travellers that lie on one conductor net with a traveller of another; those that stand alone are none. */
function groupsOf(section: Section, graph: ConductionGraph): readonly (readonly Device[])[] {
  const reach = modelOf(section).sourceReach();
  const own = new Set(section.enclosures);
  const onNet = new Map<number, { readonly devices: Set<Device>; traveller: boolean }>();
  graph.nodes.forEach(({ point, enclosure }, node) => {
    if (point.kind !== "device" || !own.has(enclosure) || !isMultiway(point.device)) return;
    const purpose = point.type.terminals.find(({ name }) => name === point.node)?.purpose;
    if (purpose === "ground") return;
    const net = reach.net[node] as number;
    const found = onNet.get(net) ?? { devices: new Set(), traveller: false };
    found.devices.add(point.device);
    found.traveller ||= purpose === "traveller";
    onNet.set(net, found);
  });
  const groupOf = new Map<Device, Set<Device>>();
  for (const [net, { devices, traveller }] of onNet) {
    // Switches that are fed from one joint share no traveller. A net is named by one of its nodes.
    if (!traveller || devices.size < 2 || reach.always(net) !== 0) continue;
    const merged = new Set([...devices].flatMap((device) => [...(groupOf.get(device) ?? [device])]));
    for (const device of merged) groupOf.set(device, merged);
  }
  return [...new Set(groupOf.values())].map((group) => [...group].sort((a, b) => (a.id < b.id ? -1 : 1)));
}

function judge(
  graph: ConductionGraph,
  reach: SourceReach,
  group: readonly Device[],
  nodes: OutletNodes,
): Omit<MultiwayFault, "outlet"> | undefined {
  const handles = [...new Set([...reach.handlesAt(nodes.hot), ...reach.handlesAt(nodes.neutral)])].sort();
  const ours = group.filter(({ id }) => handles.includes(id));
  if (ours.length < 2 || handles.length > MOST_SWITCHES) return undefined;
  if (reach.isBounded(nodes.hot) || reach.isBounded(nodes.neutral)) return undefined;
  const isShort = (setting: Setting): boolean =>
    [nodes.hot, nodes.neutral].some((node) => {
      const bits = reach.bitsAt(node, setting);
      return (bits & HOT) !== 0 && (bits & NEUTRAL) !== 0;
    });
  const isLit = (setting: Setting): boolean => {
    const [hot, neutral] = [reach.bitsAt(nodes.hot, setting), reach.bitsAt(nodes.neutral, setting)];
    return (
      ((hot & HOT) !== 0 && (neutral & NEUTRAL) !== 0) ||
      ((hot & NEUTRAL) !== 0 && (neutral & HOT) !== 0) ||
      ((hot & HOT) !== 0 && (neutral & HOT) !== 0 && (hot & HOT) !== (neutral & HOT))
    );
  };
  const all = [...settingsOf(handles)];
  if (all.some(isShort)) return undefined;
  // Settings that agree in everything but the group.
  const bits = ours.map(({ id }) => 1 << handles.indexOf(id));
  const mask = bits.reduce((sum, bit) => sum | bit, 0);
  const byOthers = new Map<number, Setting[]>();
  for (const setting of all) {
    const key = setting.column & ~mask;
    byOthers.set(key, [...(byOthers.get(key) ?? []), setting]);
  }
  for (const settings of byOthers.values()) {
    const turns = new Map<DeviceId, number>();
    for (const { id } of ours)
      turns.set(id, settings.filter((setting) => isLit(setting) !== isLit(setting.flipped(id))).length);
    const counts = [...turns.values()];
    if (counts.every((count) => count === 0) || counts.every((count) => count === settings.length)) continue;
    return {
      switches: ours,
      turns,
      positions: settings.length,
      misplaced: misplacedOf(graph, reach, ours, nodes),
    };
  }
  return undefined;
}

/** Three-way switches with what belongs on the common on a traveller screw: the feed, or the light. */
function misplacedOf(
  graph: ConductionGraph,
  reach: SourceReach,
  group: readonly Device[],
  nodes: OutletNodes,
): MultiwayFault["misplaced"] {
  const isEnd = (node: number | undefined): boolean =>
    node !== undefined &&
    (reach.isAlwaysHot(node) ||
      (reach.always(node) & NEUTRAL) !== 0 ||
      reach.net[node] === reach.net[nodes.hot] ||
      reach.net[node] === reach.net[nodes.neutral]);
  return group.flatMap((device) => {
    const { terminals } = getDeviceType(device.type);
    const common = terminals.find(({ purpose }) => purpose === "common");
    if (common === undefined || isEnd(graph.nodeOfDevice(device.id, common.name))) return [];
    const traveller = terminals.find(
      ({ name, purpose }) => purpose === "traveller" && isEnd(graph.nodeOfDevice(device.id, name)),
    );
    return traveller === undefined ? [] : { device, traveller: traveller.name };
  });
}
