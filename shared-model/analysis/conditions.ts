import type { Condition, ConditionKind } from "../answers/energised.ts";
import { UnionFind } from "../lib/union-find.ts";
import type { Leg } from "../model/device.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { DeviceId } from "../model/ids.ts";
import type { Installation } from "../model/project.ts";
import { terminalsOf } from "../queries/terminals-of.ts";
import type { Circuit } from "../solver/circuit/circuit.ts";
import { enclosureNets } from "../solver/circuit/enclosure-nets.ts";
import { handlesOf } from "../solver/circuit/handles.ts";
import { throughMeters } from "../solver/circuit/instruments.ts";
import { JOINED_METAL } from "../solver/circuit/metal.ts";
import { pairOf } from "../solver/circuit/two-port.ts";
import { type BarBranches, type Bars, barBranchesOf, barsOf } from "./panel-bars.ts";

/** Below this a meter to ground shows nothing worth a word: V. */
const DEAD_BELOW_V = 3;

/** Volts are told as meters show them: what differs by less is one condition. */
const STEPS_IN_A_VOLT = 10;

const KINDS: readonly ConditionKind[] = [
  "live",
  "switched",
  "through-load",
  "neutral",
  "ground",
  "neutral-and-ground",
  "floating",
  "dead",
];
const LEGS: readonly Leg[] = ["A", "B", "C"];

/** Each condition as one object, so that equal ones are known by identity, in one answer and from one to the next. */
export class ConditionPool {
  private readonly known = new Map<number, Condition>();

  of(kind: ConditionKind, legs: readonly Leg[], openVolts: number): Condition {
    const steps = Math.round(openVolts * STEPS_IN_A_VOLT);
    const shows = openVolts > DEAD_BELOW_V;
    const onLegs = legs.reduce((mask, leg) => mask | (1 << LEGS.indexOf(leg)), 0);
    const key = ((steps * KINDS.length + KINDS.indexOf(kind)) * 8 + onLegs) * 2 + (shows ? 1 : 0);
    let condition = this.known.get(key);
    if (condition === undefined) {
      const volts = steps / STEPS_IN_A_VOLT;
      condition = { kind, ...(legs.length > 0 && { legs }), volts, ...(shows && { shows }) };
      this.known.set(key, condition);
    }
    return condition;
  }
}

/** How the metal at each node of a circuit stands, in its setting. Nothing is computed before it is asked for. */
export class Conditions {
  private readonly circuit: Circuit;
  private readonly sets: UnionFind;
  private readonly bars: Bars;
  /** The same with every switch open. */
  private readonly unswitched: Bars;
  private readonly at: { readonly re: Float64Array; readonly im: Float64Array };
  private readonly known: (Condition | undefined)[];
  private readonly pool: ConditionPool;
  private readonly impedance = new Map<number, ReturnType<typeof pairOf>[1]>();
  private readonly groundPlaces: ReadonlySet<number>;
  private readonly neutralPlaces: ReadonlySet<number>;

  constructor(circuit: Circuit, installation: Installation, pool = new ConditionPool()) {
    this.circuit = circuit;
    this.pool = pool;
    this.known = new Array(circuit.network.nodeCount);
    this.at = circuit.factor.operatingPoint();
    const { cut, metal, atBars, handled, grounds, neutrals } = fixedFactsOf(circuit, installation);
    this.sets = metalSets(circuit, metal);
    this.bars = barsOf(circuit, this.sets, cut, atBars);
    const { sets } = this;
    this.unswitched =
      handled.size === 0
        ? this.bars
        : barsOf(
            circuit,
            metalSets(
              circuit,
              metal.filter((branch) => !handled.has(branch)),
            ),
            cut,
            atBars,
          );
    this.groundPlaces = new Set(grounds.map((node) => sets.find(node)));
    this.neutralPlaces = new Set(neutrals.map((node) => sets.find(node)));
  }

  /** The piece of metal that a node belongs to, up to the buses and bars of panels. */
  islandOf(node: number): number {
    return this.sets.find(node);
  }

  ofNode(node: number): Condition {
    let condition = this.known[node];
    if (condition === undefined) {
      condition = this.conditionOf(node);
      this.known[node] = condition;
    }
    return condition;
  }

  private conditionOf(node: number): Condition {
    const volts = Math.hypot(this.at.re[node] ?? 0, this.at.im[node] ?? 0);
    const { legs, neutral, ground, bonded } = this.bars.on(node);
    if (legs.length > 0) {
      const always = this.unswitched.on(node).legs.length > 0;
      return this.pool.of(always ? "live" : "switched", legs, volts);
    }
    if (neutral || ground) return this.pool.of(this.grounded(node, neutral, ground, bonded), [], volts);
    if (volts <= DEAD_BELOW_V) return this.pool.of("dead", [], volts);
    const { volts: high, floating } = throughMeters({ re: volts, im: 0 }, this.impedanceAt(node));
    if (floating) return this.pool.of("floating", [], high);
    return this.pool.of(high <= DEAD_BELOW_V ? "dead" : "through-load", [], high);
  }

  /** Where grounds land on a bonded neutral bar, as is usual in a service panel, a ground wire is a ground wire. */
  private grounded(node: number, neutral: boolean, ground: boolean, bonded: boolean): ConditionKind {
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

/** What the setting does not change. */
interface FixedFacts {
  /** Nodes of buses and bars. */
  readonly cut: ReadonlySet<number>;
  /** Branches that are metal between others than these. */
  readonly metal: readonly number[];
  readonly atBars: BarBranches;
  /** Contacts of switches, as against those of breakers and ground-fault devices. */
  readonly handled: ReadonlySet<number>;
  /** Nodes of ground places and of neutral places, by terminals and contacts. */
  readonly grounds: readonly number[];
  readonly neutrals: readonly number[];
}

/** By the list of sensors, which all settings of one wiring share. */
const fixed = new WeakMap<Circuit["sensors"], FixedFacts>();

function fixedFactsOf(circuit: Circuit, installation: Installation): FixedFacts {
  let facts = fixed.get(circuit.sensors);
  if (facts === undefined) {
    const cut = panelNodes(circuit, installation);
    const [grounds, neutrals] = purposes(circuit, installation, cut);
    facts = {
      cut,
      metal: metalIn(circuit, cut),
      atBars: barBranchesOf(circuit, cut),
      handled: handledBranches(circuit, installation),
      grounds,
      neutrals,
    };
    fixed.set(circuit.sensors, facts);
  }
  return facts;
}

function panelNodes(circuit: Circuit, { enclosures }: Installation): ReadonlySet<number> {
  const found = new Set<number>();
  for (const enclosure of Object.values(enclosures)) {
    const first = enclosure.kind === "panel" ? firstNodeOf(circuit, enclosure) : undefined;
    if (first === undefined) continue;
    const { points, netOfPoint } = enclosureNets(enclosure);
    points.forEach(({ kind }, point) => {
      if (kind === "panel") found.add(first + (netOfPoint[point] as number));
    });
  }
  return found;
}

/** Nothing that is added to a wiring is metal. */
function metalIn({ network: { a, b }, parts }: Circuit, cut: ReadonlySet<number>): readonly number[] {
  const found: number[] = [];
  parts.forEach(({ kind }, branch) => {
    if (JOINED_METAL.has(kind) && !cut.has(a[branch] as number) && !cut.has(b[branch] as number)) found.push(branch);
  });
  return found;
}

/** Nodes joined by closed metal; buses and bars of panels join nothing. */
function metalSets({ network: { a, b, g } }: Circuit, metal: readonly number[]): UnionFind {
  const sets = new UnionFind();
  for (const branch of metal) if (g[branch] !== 0) sets.join(a[branch] as number, b[branch] as number);
  return sets;
}

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

function purposes(
  circuit: Circuit,
  { enclosures }: Installation,
  cut: ReadonlySet<number>,
): readonly [readonly number[], readonly number[]] {
  const [ground, neutral] = [new Set<number>(), new Set<number>()];
  for (const enclosure of Object.values(enclosures)) {
    const first = firstNodeOf(circuit, enclosure);
    if (first === undefined) continue;
    const { grounds, neutrals } = purposesIn(enclosure);
    for (const net of grounds) if (!cut.has(first + net)) ground.add(first + net);
    for (const net of neutrals) if (!cut.has(first + net)) neutral.add(first + net);
  }
  return [[...ground], [...neutral]];
}

interface Purposes {
  readonly grounds: readonly number[];
  readonly neutrals: readonly number[];
}

const purposesKnown = new WeakMap<Enclosure, Purposes>();

/** Nets with the metal of the enclosure and with terminals by their purpose; cached by the identity of the enclosure. */
function purposesIn(enclosure: Enclosure): Purposes {
  const known = purposesKnown.get(enclosure);
  if (known !== undefined) return known;
  const nets = enclosureNets(enclosure);
  const netsFor = (wanted: "ground" | "neutral"): readonly number[] =>
    Object.values(enclosure.devices).flatMap((device) =>
      terminalsOf(device).flatMap(({ name, purpose }) => {
        const net = purpose === wanted ? nets.netOfNode(device.id, name) : undefined;
        return net === undefined ? [] : [net];
      }),
    );
  const [bond] = nets.netOfPoint;
  const found = {
    grounds: [...(bond === undefined ? [] : [bond]), ...netsFor("ground")],
    neutrals: netsFor("neutral"),
  };
  purposesKnown.set(enclosure, found);
  return found;
}

/** Nets of an enclosure are nodes of a circuit that follow each other from here; undefined where it is not in it. */
export function firstNodeOf(circuit: Circuit, enclosure: Enclosure): number | undefined {
  const bond = circuit.nodeOf({ kind: "bond", enclosure: enclosure.id });
  const [net] = enclosureNets(enclosure).netOfPoint;
  return bond === undefined || net === undefined ? undefined : bond - net;
}
