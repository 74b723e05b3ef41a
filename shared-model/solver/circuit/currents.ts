import type { Phasor, Phasors } from "../network/network.ts";
import type { Circuit, OvercurrentCircuit, SensorCircuit } from "./circuit.ts";

/** Amperes through a branch from its `a` to its `b`, at the given node voltages. */
export function currentThrough({ network: { a, b, g, bS } }: Circuit, branch: number, { re, im }: Phasors): Phasor {
  // Earth is node -1 and has no volts.
  const from = a[branch] as number;
  const to = b[branch] as number;
  const voltsRe = (re[from] ?? 0) - (re[to] ?? 0);
  const voltsIm = (im[from] ?? 0) - (im[to] ?? 0);
  const conductance = g[branch] as number;
  const susceptance = bS[branch] as number;
  return { re: voltsRe * conductance - voltsIm * susceptance, im: voltsRe * susceptance + voltsIm * conductance };
}

/** Amperes that a sensor sees: the sum of what it looks at, toward the load. */
export function residualOf(circuit: Circuit, { summed }: SensorCircuit, at: Phasors): Phasor {
  let re = 0;
  let im = 0;
  for (const { branch, sign } of summed) {
    const current = currentThrough(circuit, branch, at);
    re += sign * current.re;
    im += sign * current.im;
  }
  return { re, im };
}

/** Amperes through the pole of a breaker or fuse that carries most. */
export function mostAmps(circuit: Circuit, { poles }: OvercurrentCircuit, at: Phasors): number {
  let most = 0;
  for (const pole of poles) {
    const { re, im } = currentThrough(circuit, pole, at);
    most = Math.max(most, Math.hypot(re, im));
  }
  return most;
}
