import { getDeviceType } from "../../catalog/device-types.ts";
import { findLoadItem } from "../../catalog/load-items.ts";
import type { Cable } from "../../model/cable.ts";
import type { Device, Leg } from "../../model/device.ts";
import type { Panel } from "../../model/enclosure.ts";
import { type ConductorKey, cableEnd, type DeviceId, type EnclosureId, type Side } from "../../model/ids.ts";
import type { Load } from "../../model/load.ts";
import type { Installation, Supply } from "../../model/project.ts";
import { outletsOf } from "../../queries/outlets-of.ts";
import type { NetworkSource } from "../network/network.ts";
import { type BranchPart, EARTH, type OvercurrentCircuit, type SensorCircuit } from "./circuit.ts";
import type { CircuitScope } from "./circuit-scope.ts";
import { ohmsOfWatts } from "./device-uses.ts";
import { type Control, type EnclosureNets, enclosureNets } from "./enclosure-nets.ts";
import { loadsOn } from "./loads-on.ts";
import { ALL_METAL } from "./metal.ts";
import {
  ASSUMED_CABLE_FT,
  ASSUMED_LOAD_W,
  CAPACITANCE_F_PER_FT,
  CONTACT_OHM,
  EARTH_OHM,
  FREQUENCY_HZ,
  LEAST_OHM,
  RATED_V,
  SOURCE_OHM,
  STRAY_S,
} from "./modelling-values.ts";
import { sensorCircuit } from "./sensor-circuit.ts";
import { legPhasors } from "./supply-legs.ts";
import { ohmsPerFoot } from "./wire-resistance.ts";

/** An enclosure of a circuit: net n of it is node `base + n`. */
export interface PlacedNets {
  readonly nets: EnclosureNets;
  readonly base: number;
}

/** All that does not depend on the setting. Branches are given with what they conduct when closed. */
export interface Wiring {
  readonly scope: CircuitScope;
  readonly supply: Supply;
  readonly enclosures: ReadonlyMap<EnclosureId, PlacedNets>;
  readonly nodeCount: number;
  readonly a: Int32Array;
  readonly b: Int32Array;
  readonly g: Float64Array;
  readonly bS: Float64Array;
  readonly parts: readonly BranchPart[];
  /** Branches that a setting can open, with what opens them. */
  readonly controls: readonly { readonly branch: number; readonly control: Control }[];
  readonly sources: readonly NetworkSource[];
  readonly legs: readonly { readonly panel: EnclosureId; readonly leg: Leg }[];
  readonly sensors: readonly SensorCircuit[];
  readonly overcurrent: readonly OvercurrentCircuit[];
  /** Breakers by those that their handles are tied to. */
  readonly ties: ReadonlyMap<DeviceId, readonly DeviceId[]>;
  readonly loads: readonly Load[];
}

/** Everything, or without what uses, leaks or stores: enough for currents of a test in a dead network. */
export type WiringContent = "all" | "metal";

/** Puts the enclosures of a scope together with its cables, plugged loads and supply. */
export function wiringOf(
  installation: Installation,
  supply: Supply,
  scope: CircuitScope,
  content: WiringContent = "all",
): Wiring {
  const maker = new WiringMaker(installation, supply, scope, content);
  for (const { nets, base } of maker.enclosures.values()) maker.addEnclosure(nets, base);
  for (const cable of scope.cables) maker.addCable(cable);
  for (const { nets, base } of maker.enclosures.values())
    if (nets.enclosure.kind === "panel") maker.addSupply(nets.enclosure, nets, base);
  return maker.finish();
}

class WiringMaker {
  readonly enclosures = new Map<EnclosureId, PlacedNets>();
  private readonly scope: CircuitScope;
  private readonly supply: Supply;
  private readonly isMetalOnly: boolean;
  private readonly plugged: ReadonlyMap<DeviceId, readonly Load[]>;
  private readonly nodeCount: number;
  private readonly a: number[] = [];
  private readonly b: number[] = [];
  private readonly g: number[] = [];
  private readonly bS: number[] = [];
  private readonly parts: BranchPart[] = [];
  private readonly controls: { readonly branch: number; readonly control: Control }[] = [];
  private readonly sources: NetworkSource[] = [];
  private readonly legs: { readonly panel: EnclosureId; readonly leg: Leg }[] = [];
  private readonly sensors: SensorCircuit[] = [];
  private readonly overcurrent: OvercurrentCircuit[] = [];
  private readonly ties = new Map<DeviceId, DeviceId[]>();
  private readonly loads: Load[] = [];

  constructor(installation: Installation, supply: Supply, scope: CircuitScope, content: WiringContent) {
    this.isMetalOnly = content === "metal";
    this.scope = scope;
    this.supply = supply;
    this.plugged = loadsOn(installation.loads);
    let count = 0;
    for (const enclosure of scope.enclosures) {
      const nets = enclosureNets(enclosure);
      this.enclosures.set(enclosure.id, { nets, base: count });
      count += nets.count;
    }
    this.nodeCount = count;
  }

  addEnclosure(nets: EnclosureNets, base: number): void {
    const first = this.parts.length;
    for (const { a, b, conductance, part, control } of nets.branches) {
      // Uses come last, so that what a sensor sums keeps its place.
      if (this.isMetalOnly && !ALL_METAL.has(part.kind)) break;
      this.add(base + a, base + b, conductance, 0, part, control);
    }
    for (const local of nets.sensors) {
      const sensor = sensorCircuit(local, nets, base, first);
      if (sensor !== undefined) this.sensors.push(sensor);
    }
    for (const { device, poles } of nets.overcurrent) {
      const ratingA = device.breakerRatingA ?? getDeviceType(device.type).defaults.breakerRatingA;
      if (ratingA !== undefined)
        this.overcurrent.push({ device: device.id, poles: poles.map((pole) => first + pole), ratingA });
      if (device.tiedTo !== undefined) {
        tie(this.ties, device.id, device.tiedTo);
        tie(this.ties, device.tiedTo, device.id);
      }
    }
    if (this.isMetalOnly) return;
    for (const id in nets.enclosure.devices) {
      const device = nets.enclosure.devices[id as DeviceId] as Device;
      for (const load of this.plugged.get(device.id) ?? []) this.addLoad(load, device, nets, base);
    }
  }

  addCable(cable: Cable): void {
    const { conductors, lengthFt = ASSUMED_CABLE_FT } = cable;
    const metal: { readonly grounding: boolean; readonly node: number }[] = [];
    for (const key in conductors) {
      const conductor = conductors[key as ConductorKey];
      if (conductor === undefined) continue;
      const a = this.nodeOfEnd(cable, key as ConductorKey, "a");
      const b = this.nodeOfEnd(cable, key as ConductorKey, "b");
      const node = b ?? a;
      if (node !== undefined) metal.push({ grounding: conductor.grounding, node });
      if (a === undefined || b === undefined) continue;
      const ohm = Math.max(ohmsPerFoot(conductor) * lengthFt, LEAST_OHM);
      this.add(a, b, 1 / ohm, 0, { kind: "conductor", cable: cable.id, conductor: key as ConductorKey });
    }
    if (!this.isMetalOnly) this.addCapacitances(cable, metal, lengthFt);
  }

  /** Sources of a service panel, and the bond between the bars of any panel that has it. */
  addSupply(panel: Panel, nets: EnclosureNets, base: number): void {
    const at = (node: string): number => base + (nets.netOfNode("", node) as number);
    const neutral = at("@neutral");
    const isService = panel.supply === "service";
    if (isService || panel.mainBond === "here")
      this.add(neutral, at("@ground"), 1 / CONTACT_OHM, 0, { kind: "main-bond", panel: panel.id });
    if (!isService) return;
    this.add(neutral, EARTH, 1 / EARTH_OHM, 0, { kind: "earth", panel: panel.id });
    for (const { leg, re, im } of legPhasors(this.supply)) {
      this.sources.push({ plus: at(`@bus${leg}`), minus: neutral, re, im, g: 1 / SOURCE_OHM, bS: 0 });
      this.legs.push({ panel: panel.id, leg });
    }
  }

  finish(): Wiring {
    if (!this.isMetalOnly) for (let node = 0; node < this.nodeCount; node++) this.add(node, EARTH, STRAY_S, 0, STRAY);
    const { scope, supply, enclosures, nodeCount, parts, controls, sources, legs, ties, loads } = this;
    return {
      scope,
      supply,
      enclosures,
      nodeCount,
      a: Int32Array.from(this.a),
      b: Int32Array.from(this.b),
      g: Float64Array.from(this.g),
      bS: Float64Array.from(this.bS),
      parts,
      controls,
      sources,
      legs,
      sensors: this.sensors.sort(byDevice),
      overcurrent: this.overcurrent.sort(byDevice),
      ties,
      loads,
    };
  }

  private add(a: number, b: number, g: number, bS: number, part: BranchPart, control?: Control): void {
    const branch = this.parts.push(part) - 1;
    this.a.push(a);
    this.b.push(b);
    this.g.push(g);
    this.bS.push(bS);
    if (control !== undefined) this.controls.push({ branch, control });
  }

  /** A load that hangs on an outlet which its device no longer has is nowhere. */
  private addLoad(load: Load, device: Device, nets: EnclosureNets, base: number): void {
    const outlet = outletsOf(device).find(({ key }) => key === load.plug);
    if (outlet === undefined) return;
    const at = (node: string): number => base + (nets.netOfNode(device.id, node) as number);
    const [hot, neutral] = [at(outlet.hot), at(outlet.neutral)];
    const item = findLoadItem(load.item);
    const ohm = load.loadOhm ?? ohmsOfWatts(load.loadW ?? item?.loadW ?? ASSUMED_LOAD_W, RATED_V);
    const control: Control = { kind: "use", item: load.id };
    this.loads.push(load);
    if (Number.isFinite(ohm))
      this.add(
        hot,
        neutral,
        1 / Math.max(ohm, LEAST_OHM),
        0,
        { kind: "load", device: device.id, load: load.id },
        control,
      );
    const leakMa = load.leakMa ?? 0;
    if (leakMa > 0 && outlet.ground !== undefined) {
      const part: BranchPart = { kind: "leak", device: device.id, load: load.id };
      this.add(hot, at(outlet.ground), leakMa / 1000 / RATED_V, 0, part, control);
    }
  }

  /** Lumped at one end of the cable: along its conductors nothing drops that a reading could show. */
  private addCapacitances(
    { id }: Cable,
    metal: readonly { readonly grounding: boolean; readonly node: number }[],
    lengthFt: number,
  ): void {
    for (let i = 0; i < metal.length; i++) {
      for (let j = i + 1; j < metal.length; j++) {
        const [one, other] = [metal[i], metal[j]];
        if (one === undefined || other === undefined || one.node === other.node) continue;
        const { toGround, between } = CAPACITANCE_F_PER_FT;
        const farads = (one.grounding || other.grounding ? toGround : between) * lengthFt;
        const part: BranchPart = { kind: "capacitance", cable: id };
        this.add(one.node, other.node, 0, 2 * Math.PI * FREQUENCY_HZ * farads, part);
      }
    }
  }

  private nodeOfEnd(cable: Cable, conductor: ConductorKey, side: Side): number | undefined {
    const where = cable.sides[side];
    const placed = "enclosure" in where ? this.enclosures.get(where.enclosure) : undefined;
    const net = placed?.nets.netOfEnd(cableEnd(cable.id, conductor, side));
    return placed === undefined || net === undefined ? undefined : placed.base + net;
  }
}

const STRAY: BranchPart = { kind: "stray" };

function tie(ties: Map<DeviceId, DeviceId[]>, one: DeviceId, other: DeviceId): void {
  const list = ties.get(one);
  if (list === undefined) ties.set(one, [other]);
  else list.push(other);
}

const byDevice = (p: { readonly device: DeviceId }, q: { readonly device: DeviceId }): number =>
  p.device < q.device ? -1 : p.device > q.device ? 1 : 0;
