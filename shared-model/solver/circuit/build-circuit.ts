import type { DeviceId } from "../../model/ids.ts";
import type { Installation, Supply } from "../../model/project.ts";
import { analyse, type Factor, type Network } from "../network/network.ts";
import { assumptionsOf } from "./assumptions.ts";
import { type BranchPart, type Circuit, EVERYTHING_ON, type OperatingSetting, type Probe } from "./circuit.ts";
import { Places } from "./circuit-places.ts";
import { type CircuitScope, wholeScope } from "./circuit-scope.ts";
import type { Control } from "./enclosure-nets.ts";
import { LEAST_OHM } from "./modelling-values.ts";
import { type Wiring, type WiringContent, wiringOf } from "./wiring.ts";

/**
 * The wiring of an installation, or of a part of it, as a circuit that can be solved: any drawing gives one, finished or
 * not. What is joined to no source stands at 0 V. Throws only where a place in `setting.added` is not in the scope.
 */
export function buildCircuit(
  installation: Installation,
  supply: Supply,
  setting: OperatingSetting = EVERYTHING_ON,
  scope: CircuitScope = wholeScope(installation),
  content: WiringContent = "all",
): Circuit {
  return new WiredCircuit(new Places(wiringOf(installation, supply, scope, content)), setting, undefined);
}

class WiredCircuit implements Circuit {
  readonly setting: OperatingSetting;
  readonly network: Network;
  readonly parts: readonly BranchPart[];
  private readonly places: Places;
  /** The first factor of this topology, whose order of elimination the others keep. */
  private readonly first: { factor?: Factor };
  private factorMade: Factor | undefined;

  constructor(places: Places, setting: OperatingSetting, before: WiredCircuit | undefined) {
    const { wiring } = places;
    const sameBranches = before !== undefined && sameAdded(before.setting, setting);
    const added = setting.added.map(({ ohm }) => 1 / Math.max(ohm, LEAST_OHM));
    const g = values(wiring.g, added);
    const bS =
      added.length === 0
        ? wiring.bS
        : values(
            wiring.bS,
            added.map(() => 0),
          );
    const isOpen = opener(setting, wiring);
    for (const { branch, control } of wiring.controls) if (isOpen(control)) g[branch] = 0;
    const ends = sameBranches ? before.network : withAdded(places, setting);
    this.places = places;
    this.setting = setting;
    this.network = { nodeCount: wiring.nodeCount, a: ends.a, b: ends.b, g, bS, sources: wiring.sources };
    this.parts = sameBranches
      ? before.parts
      : [...wiring.parts, ...setting.added.map((_, index) => ({ kind: "added", index }) as const)];
    this.first = sameBranches ? before.first : {};
  }

  get factor(): Factor {
    this.factorMade ??= this.first.factor?.refactor(this.network) ?? analyse(this.network);
    this.first.factor ??= this.factorMade;
    return this.factorMade;
  }

  get supply() {
    return this.places.wiring.supply;
  }

  get legs() {
    return this.places.wiring.legs;
  }

  get placesAt() {
    return this.places.atNodes;
  }

  get sensors() {
    return this.places.wiring.sensors;
  }

  get overcurrent() {
    return this.places.wiring.overcurrent;
  }

  get assumptions() {
    return assumptionsOf(this.places.wiring);
  }

  nodeOf(place: Probe): number | undefined {
    return this.places.nodeOf(place);
  }

  inSetting(setting: OperatingSetting): Circuit {
    return new WiredCircuit(this.places, setting, this);
  }
}

function values(wired: Float64Array, added: readonly number[]): Float64Array {
  const all = new Float64Array(wired.length + added.length);
  all.set(wired);
  all.set(added, wired.length);
  return all;
}

const sameAdded = ({ added: one }: OperatingSetting, { added: other }: OperatingSetting): boolean =>
  one === other || (one.length === other.length && one.every((item, index) => item === other[index]));

function withAdded(places: Places, { added }: OperatingSetting): Pick<Network, "a" | "b"> {
  const { a, b } = places.wiring;
  if (added.length === 0) return { a, b };
  const at = (place: Probe): number => {
    const node = places.nodeOf(place);
    if (node === undefined) throw new Error(`This circuit has no ${JSON.stringify(place)}.`);
    return node;
  };
  return {
    a: Int32Array.from([...a, ...added.map(({ from }) => at(from))]),
    b: Int32Array.from([...b, ...added.map(({ to }) => at(to))]),
  };
}

/** Whether a setting opens what a control closes. */
function opener(setting: OperatingSetting, { ties }: Wiring): (control: Control) => boolean {
  const { positions, tripped, idle } = setting;
  const off = withTied(setting.off, ties);
  return (control) => {
    switch (control.kind) {
      case "breaker":
        return off.has(control.device) || tripped.has(control.device);
      case "trip":
        return tripped.has(control.device);
      case "handle":
        return (positions.get(control.handle) ?? 0) !== control.position;
      case "use":
        return idle.has(control.item as never);
    }
  };
}

/** A breaker that is switched off takes along those whose handles are tied to it. */
function withTied(off: ReadonlySet<DeviceId>, ties: Wiring["ties"]): ReadonlySet<DeviceId> {
  if (off.size === 0 || ties.size === 0) return off;
  const all = new Set(off);
  for (const device of all) for (const tied of ties.get(device) ?? []) all.add(tied);
  return all;
}
