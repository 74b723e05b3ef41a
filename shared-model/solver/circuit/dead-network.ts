import type { DeviceId } from "../../model/ids.ts";
import { analyse, type Factor, type Network } from "../network/network.ts";
import type { Setting } from "../settings.ts";
import { type Circuit, EVERYTHING_ON, type SensorCircuit } from "./circuit.ts";
import { ALL_METAL } from "./metal.ts";

/** How one sensor sees currents, in one setting. Node numbers are those of the circuit. */
export interface SensorView {
  /** A node that neither a source nor the ground outside is joined to: no current can be put in there. */
  isAdrift(node: number): boolean;
  /**
   * Amperes of difference that the sensor sees for each ampere from a node to the ground outside, positive where it passes
   * toward the load. 0 for the ground itself.
   */
  shareOf(node: number): number;
}

/**
 * The metal of a circuit for currents of a test, setting by setting. The matrix of such a network is symmetric, so that what
 * a sensor sees of an ampere put in anywhere is the voltage there when its own branches are driven: one solution a sensor
 * and setting answers for every outlet.
 */
export class DeadNetwork {
  private readonly circuit: Circuit;
  /** Branches of the circuit that are metal. */
  private readonly kept: readonly number[];
  private readonly newPlaceOf: ReadonlyMap<number, number>;
  private readonly sensors: ReadonlyMap<DeviceId, SensorCircuit>;
  private readonly first: Factor;
  private readonly factors = new Map<string, Factor>();
  private readonly views = new Map<string, SensorView>();

  constructor(circuit: Circuit) {
    this.circuit = circuit;
    const kept: number[] = [];
    circuit.parts.forEach(({ kind }, branch) => {
      if (ALL_METAL.has(kind)) kept.push(branch);
    });
    this.kept = kept;
    this.newPlaceOf = new Map(kept.map((branch, place) => [branch, place]));
    this.sensors = new Map(circuit.sensors.map((sensor) => [sensor.device, sensor]));
    const { nodeCount, a, b, g, sources } = circuit.network;
    this.first = analyse({
      nodeCount,
      a: Int32Array.from(kept, (branch) => a[branch] as number),
      b: Int32Array.from(kept, (branch) => b[branch] as number),
      g: Float64Array.from(kept, (branch) => g[branch] as number),
      bS: new Float64Array(kept.length),
      sources: sources.map((source) => ({ ...source, re: 0, im: 0 })),
    });
    this.factors.set("", this.first);
  }

  /** Undefined for a device that senses nothing in this circuit. */
  view(device: DeviceId, setting: Setting): SensorView | undefined {
    const sensor = this.sensors.get(device);
    if (sensor === undefined) return undefined;
    const moved = movedHandles(setting);
    const key = `${moved.join("|")}|${device}`;
    let view = this.views.get(key);
    if (view === undefined) {
      view = viewOf(this.factorFor(moved), sensor, (branch) => this.newPlaceOf.get(branch) as number);
      this.views.set(key, view);
    }
    return view;
  }

  private factorFor(moved: readonly string[]): Factor {
    const key = moved.join("|");
    let factor = this.factors.get(key);
    if (factor === undefined) {
      const positions = new Map(moved.map((handle) => [handle, 1]));
      const { g } = this.circuit.inSetting({ ...EVERYTHING_ON, positions }).network;
      const network: Network = {
        ...this.first.network,
        g: Float64Array.from(this.kept, (branch) => g[branch] as number),
      };
      factor = this.first.refactor(network);
      this.factors.set(key, factor);
    }
    return factor;
  }
}

/** Handles that do not stand in their first position: two settings that move the same ones are one setting of a circuit. */
const movedHandles = (setting: Setting): readonly string[] =>
  setting.handles.filter((handle) => setting.positionOf(handle) !== 0);

function viewOf(factor: Factor, { summed }: SensorCircuit, placeOf: (branch: number) => number): SensorView {
  const { a, b, g } = factor.network;
  const nodes: number[] = [];
  const re: number[] = [];
  for (const { branch, sign } of summed) {
    const place = placeOf(branch);
    const drive = sign * (g[place] as number);
    nodes.push(a[place] as number, b[place] as number);
    re.push(-drive, drive);
  }
  const driven = factor.solve({ nodes, re, im: re.map(() => 0) }).re;
  return {
    isAdrift: (node) => node >= 0 && factor.floating(node),
    shareOf: (node) => driven[node] ?? 0,
  };
}
