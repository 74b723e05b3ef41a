import type { DeviceId } from "../../../shared-model/model/ids.ts";
import type { Installation, Project } from "../../../shared-model/model/project.ts";
import { outletsOf } from "../../../shared-model/queries/outlets-of.ts";
import { buildCircuit } from "../../../shared-model/solver/circuit/build-circuit.ts";
import {
  type Circuit,
  EVERYTHING_ON,
  type OperatingSetting,
  type Probe,
} from "../../../shared-model/solver/circuit/circuit.ts";
import { currentThrough, residualOf } from "../../../shared-model/solver/circuit/currents.ts";
import type { Phasor, Phasors } from "../../../shared-model/solver/network/network.ts";

/** The as-found wiring of a drawing with everything on but what is told. */
export const circuitOf = ({ asFound, supply }: Project, setting: Partial<OperatingSetting> = {}): Circuit =>
  buildCircuit(asFound, supply, { ...EVERYTHING_ON, ...setting });

/** Volts between two places. Throws for a place that is not drawn. */
export function voltsBetween(circuit: Circuit, from: Probe, to: Probe, at = circuit.factor.operatingPoint()): number {
  const one = voltsAt(circuit, from, at);
  const other = voltsAt(circuit, to, at);
  return Math.hypot(one.re - other.re, one.im - other.im);
}

function voltsAt(circuit: Circuit, place: Probe, { re, im }: Phasors): Phasor {
  const node = circuit.nodeOf(place);
  if (node === undefined) throw new Error(`No ${JSON.stringify(place)}.`);
  return node < 0 ? { re: 0, im: 0 } : { re: re[node] as number, im: im[node] as number };
}

/** Milliamperes that the sensor of a device sees. */
export function residualMa(circuit: Circuit, device: DeviceId): number {
  const sensor = circuit.sensors.find((one) => one.device === device);
  if (sensor === undefined) throw new Error(`${device} senses nothing.`);
  const at = circuit.factor.operatingPoint();
  const { re, im } = residualOf(circuit, sensor, at);
  return Math.hypot(re, im) * 1000;
}

/** Kirchhoff's current law: the greatest current that is missing at a node, as a share of the currents there or of 1 A. */
export function worstLeftOver(circuit: Circuit): number {
  const { network } = circuit;
  const at = circuit.factor.operatingPoint();
  const sum = Array.from({ length: network.nodeCount }, () => ({ re: 0, im: 0, size: 0 }));
  const leave = (node: number, re: number, im: number, scale: number): void => {
    const here = sum[node];
    if (here === undefined) return;
    here.re += re;
    here.im += im;
    here.size = Math.max(here.size, scale);
  };
  const volts = (node: number): number => (node < 0 ? 0 : Math.hypot(at.re[node] as number, at.im[node] as number));
  for (let branch = 0; branch < network.a.length; branch++) {
    const { re, im } = currentThrough(circuit, branch, at);
    const [a, b] = [network.a[branch] as number, network.b[branch] as number];
    // A current is a difference of voltages, so it is known to some 1e-16 of what either would drive alone.
    const scale = (volts(a) + volts(b)) * Math.hypot(network.g[branch] as number, network.bS[branch] as number);
    leave(a, re, im, scale);
    leave(b, -re, -im, scale);
  }
  for (const { plus, minus, re, im, g } of network.sources) {
    const at2 = (list: Float64Array, node: number): number => (node < 0 ? 0 : (list[node] as number));
    const outRe = (re - (at2(at.re, plus) - at2(at.re, minus))) * g;
    const outIm = (im - (at2(at.im, plus) - at2(at.im, minus))) * g;
    const scale = (Math.hypot(re, im) + volts(plus) + volts(minus)) * g;
    leave(plus, -outRe, -outIm, scale);
    leave(minus, outRe, outIm, scale);
  }
  return Math.max(0, ...sum.map(({ re, im, size }) => Math.hypot(re, im) / Math.max(size, 1)));
}

/** Volts between the contacts of every outlet, by its key. */
export function outletVolts(circuit: Circuit, { enclosures }: Installation): ReadonlyMap<string, number> {
  const found = new Map<string, number>();
  const at = circuit.factor.operatingPoint();
  for (const enclosure of Object.values(enclosures))
    for (const device of Object.values(enclosure.devices))
      for (const { key, hot, neutral } of outletsOf(device)) {
        const [from, to] = [hot, neutral].map((node): Probe => ({ kind: "device", device: device.id, node }));
        found.set(key, voltsBetween(circuit, from as Probe, to as Probe, at));
      }
  return found;
}
