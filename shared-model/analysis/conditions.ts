import type { BoxConditions, Condition } from "../answers/energised.ts";
import { UnionFind } from "../lib/union-find.ts";
import type { Device, Leg } from "../model/device.ts";
import type { Enclosure } from "../model/enclosure.ts";
import { type CableId, type ConductorKey, cableEnd, type DeviceId, type EndKey, type SpliceId } from "../model/ids.ts";
import type { Installation } from "../model/project.ts";
import { outletsOf } from "../queries/outlets-of.ts";
import { terminalsOf } from "../queries/terminals-of.ts";
import type { Circuit } from "../solver/circuit/circuit.ts";
import { handlesOf } from "../solver/circuit/handles.ts";
import { throughMeters } from "../solver/circuit/instruments.ts";
import { pairOf } from "../solver/circuit/two-port.ts";
import { type Bars, barsOf, METAL } from "./panel-bars.ts";

/** Below this a meter to ground shows nothing worth a word: V. */
const DEAD_BELOW_V = 3;

/** How the metal at each node of a circuit stands, in its setting. Nothing is computed before it is asked for. */
export class Conditions {
  private readonly circuit: Circuit;
  private readonly sets: UnionFind;
  private readonly bars: Bars;
  /** The same with every switch open. */
  private readonly unswitched: Bars;
  private readonly at: { readonly re: Float64Array; readonly im: Float64Array };
  private readonly known: (Condition | undefined)[] = [];
  private readonly impedance = new Map<number, ReturnType<typeof pairOf>[1]>();
  private readonly groundPlaces: ReadonlySet<number>;
  private readonly neutralPlaces: ReadonlySet<number>;

  constructor(circuit: Circuit, installation: Installation) {
    this.circuit = circuit;
    this.at = circuit.factor.operatingPoint();
    const cut = panelNodes(circuit);
    this.sets = metalSets(circuit, cut, () => true);
    this.bars = barsOf(circuit, this.sets, cut);
    const handled = handledBranches(circuit, installation);
    this.unswitched =
      handled.size === 0
        ? this.bars
        : barsOf(
            circuit,
            metalSets(circuit, cut, (branch) => !handled.has(branch)),
            cut,
          );
    [this.groundPlaces, this.neutralPlaces] = purposes(circuit, installation, this.sets, cut);
  }

  /** The piece of metal that a node belongs to, up to the buses and bars of panels. */
  islandOf(node: number): number {
    return this.sets.find(node);
  }

  ofNode(node: number): Condition {
    let condition = this.known[node];
    if (condition === undefined) {
      const found = this.conditionOf(node);
      condition = found.volts > DEAD_BELOW_V ? { ...found, shows: true } : found;
      this.known[node] = condition;
    }
    return condition;
  }

  private conditionOf(node: number): Condition {
    const volts = Math.hypot(this.at.re[node] ?? 0, this.at.im[node] ?? 0);
    const { legs, neutral, ground, bonded } = this.bars.on(node);
    if (legs.length > 0) {
      const always = this.unswitched.on(node).legs.length > 0;
      return { kind: always ? "live" : "switched", legs: legs as readonly Leg[], volts };
    }
    if (neutral || ground) return { kind: this.grounded(node, neutral, ground, bonded), volts };
    if (volts <= DEAD_BELOW_V) return { kind: "dead", volts };
    const { volts: high, floating } = throughMeters({ re: volts, im: 0 }, this.impedanceAt(node));
    if (floating) return { kind: "floating", volts: high };
    return { kind: high <= DEAD_BELOW_V ? "dead" : "through-load", volts: high };
  }

  /** Where grounds land on a bonded neutral bar, as is usual in a service panel, a ground wire is a ground wire. */
  private grounded(node: number, neutral: boolean, ground: boolean, bonded: boolean): Condition["kind"] {
    if (neutral && ground) return "neutral-and-ground";
    if (ground) return "ground";
    const root = this.sets.find(node);
    return bonded && this.groundPlaces.has(root) && !this.neutralPlaces.has(root) ? "ground" : "neutral";
  }

  private impedanceAt(node: number): ReturnType<typeof pairOf>[1] {
    const root = this.sets.find(node);
    let found = this.impedance.get(root);
    if (found === undefined) {
      [, found] = pairOf(this.circuit, this.at, node, -1);
      this.impedance.set(root, found);
    }
    return found;
  }
}

/** Nodes of buses and bars. */
function panelNodes({ placesAt }: Circuit): ReadonlySet<number> {
  const found = new Set<number>();
  placesAt.forEach((places, node) => {
    if (places.some(({ kind }) => kind === "panel")) found.add(node);
  });
  return found;
}

/** Nodes joined by closed metal; buses and bars of panels join nothing. */
function metalSets(
  { network: { a, b, g }, parts }: Circuit,
  cut: ReadonlySet<number>,
  counts: (branch: number) => boolean,
): UnionFind {
  const sets = new UnionFind();
  parts.forEach(({ kind }, branch) => {
    const [from, to] = [a[branch] as number, b[branch] as number];
    if (!METAL.has(kind) || g[branch] === 0 || cut.has(from) || cut.has(to) || !counts(branch)) return;
    sets.join(from, to);
  });
  return sets;
}

/** Contacts of switches, as against those of breakers and ground-fault devices. */
function handledBranches({ parts, sensors, overcurrent }: Circuit, { enclosures }: Installation): ReadonlySet<number> {
  const switches = new Set<DeviceId>();
  for (const { devices } of Object.values(enclosures))
    for (const device of Object.values(devices)) if (handlesOf(device).length > 0) switches.add(device.id);
  const others = new Set([
    ...sensors.flatMap(({ summed, contacts }) => [...summed.map(({ branch }) => branch), ...contacts]),
    ...overcurrent.flatMap(({ poles }) => poles),
  ]);
  const found = new Set<number>();
  parts.forEach((part, branch) => {
    if (part.kind === "contact" && switches.has(part.device) && !others.has(branch)) found.add(branch);
  });
  return found;
}

/** Pieces of metal with ground places, and those with neutral places, by their terminals and contacts. */
function purposes(
  circuit: Circuit,
  { enclosures }: Installation,
  sets: UnionFind,
  cut: ReadonlySet<number>,
): readonly [ReadonlySet<number>, ReadonlySet<number>] {
  const [ground, neutral] = [new Set<number>(), new Set<number>()];
  const note = (into: Set<number>, node: number | undefined): void => {
    if (node !== undefined && !cut.has(node)) into.add(sets.find(node));
  };
  for (const enclosure of Object.values(enclosures)) {
    note(ground, circuit.nodeOf({ kind: "bond", enclosure: enclosure.id }));
    for (const device of Object.values(enclosure.devices))
      for (const { name, purpose } of terminalsOf(device))
        if (purpose === "ground" || purpose === "neutral")
          note(
            purpose === "ground" ? ground : neutral,
            circuit.nodeOf({ kind: "device", device: device.id, node: name }),
          );
  }
  return [ground, neutral];
}

/** Conditions of everything in an enclosure. */
export function conditionsIn(conditions: Conditions, circuit: Circuit, enclosure: Enclosure): BoxConditions {
  const ends: Record<EndKey, Condition> = {};
  const splices: Record<SpliceId, Condition> = {};
  const devices: Record<DeviceId, Record<string, Condition>> = {};
  for (const key of Object.keys(enclosure.places) as EndKey[]) {
    const node = circuit.nodeOf({ kind: "end", end: key });
    if (node !== undefined) ends[key] = conditions.ofNode(node);
  }
  for (const splice of Object.keys(enclosure.splices) as SpliceId[]) {
    const node = circuit.nodeOf({ kind: "splice", splice });
    if (node !== undefined) splices[splice] = conditions.ofNode(node);
  }
  for (const device of Object.values(enclosure.devices)) {
    const own: Record<string, Condition> = {};
    for (const name of nodesOf(device)) {
      const node = circuit.nodeOf({ kind: "device", device: device.id, node: name });
      if (node !== undefined) own[name] = conditions.ofNode(node);
    }
    devices[device.id] = own;
  }
  const bond = circuit.nodeOf({ kind: "bond", enclosure: enclosure.id });
  return { ends, splices, devices, ...(bond !== undefined && { bond: conditions.ofNode(bond) }) };
}

/** Terminals and contacts of outlets. */
function nodesOf(device: Device): ReadonlySet<string> {
  const contacts = outletsOf(device).flatMap(({ hot, neutral, ground }) => [hot, neutral, ...(ground ? [ground] : [])]);
  return new Set([...terminalsOf(device).map(({ name }) => name), ...contacts]);
}

/** Conditions of the conductors of every cable; an open conductor is one metal all along. */
export function conditionsOfCables(
  conditions: Conditions,
  circuit: Circuit,
  { cables }: Installation,
): Record<CableId, Record<ConductorKey, Condition>> {
  const found: Record<CableId, Record<ConductorKey, Condition>> = {};
  for (const { id, conductors, sides } of Object.values(cables)) {
    const own: Record<ConductorKey, Condition> = {};
    for (const key of Object.keys(conductors) as ConductorKey[]) {
      const side = "enclosure" in sides.a ? "a" : "b";
      const node = circuit.nodeOf({ kind: "end", end: cableEnd(id, key, side) });
      if (node !== undefined) own[key] = conditions.ofNode(node);
    }
    found[id] = own;
  }
  return found;
}
