import type { Phasor } from "../network/network.ts";
import { between, over, size, times } from "../network/phasor.ts";
import type { Circuit, SensorCircuit } from "./circuit.ts";

/** Ohms of ways around a sensor, from LOAD to LINE outside its device; absent where there is none below 10 kilohms. */
export interface SensorLoops {
  readonly neutral?: number;
  readonly hot?: number;
}

/** Ways of less than this, in siemens, are none. */
const LEAST_S = 1e-4;
/** Holds a conductor that has no way around it at all; far below what counts. */
const HOLD_S = 1e-7;

/**
 * Ways around a sensor whose contacts are closed: what joins both sides of one conductor outside the device, with the
 * others open and the supply short-circuited behind its impedance. A load counts as what it is.
 */
export function loopsAround(circuit: Circuit, { summed, lineNeutral, loadNeutral }: SensorCircuit): SensorLoops {
  const { a, b, g } = circuit.network;
  const ends = summed.map(({ branch }) => [a[branch] as number, b[branch] as number] as const);
  const isNeutral = ends.map(
    ([one, other]) => (one === lineNeutral && other === loadNeutral) || (one === loadNeutral && other === lineNeutral),
  );
  const wanted = ends.flat();
  const z = ends.map((nodes) => {
    const volts = circuit.factor.transfer({ nodes, re: [1, -1], im: [0, 0] }, wanted);
    return ends.map((_, port) => between(volts, 2 * port, 2 * port + 1));
  });
  const outside = inverse(z);
  if (outside === undefined) return {};
  // What is seen from the device includes its own closed contacts.
  for (const [port, row] of outside.entries()) {
    const own = row[port] as Phasor;
    const { branch } = summed[port] as SensorCircuit["summed"][number];
    row[port] = { re: own.re - (g[branch] as number) + HOLD_S, im: own.im };
  }
  const around = inverse(outside);
  if (around === undefined) return {};
  const loops: { neutral?: number; hot?: number } = {};
  for (const [port, row] of around.entries()) {
    const ohm = size(row[port] as Phasor);
    if (ohm > 1 / LEAST_S) continue;
    const which = isNeutral[port] ? "neutral" : "hot";
    loops[which] = Math.min(loops[which] ?? Infinity, ohm);
  }
  return loops;
}

/** The inverse of a matrix of two or three rows, by elimination with the largest pivot of each column; none if singular. */
function inverse(matrix: readonly (readonly Phasor[])[]): Phasor[][] | undefined {
  const count = matrix.length;
  const rows = matrix.map((row, i) => [
    ...row,
    ...matrix.map((_, j): Phasor => (i === j ? { re: 1, im: 0 } : { re: 0, im: 0 })),
  ]);
  for (let k = 0; k < count; k++) {
    let best = k;
    for (let i = k + 1; i < count; i++) if (size(at(rows, i, k)) > size(at(rows, best, k))) best = i;
    if (size(at(rows, best, k)) === 0) return undefined;
    const pivotRow = rows[best] as Phasor[];
    rows[best] = rows[k] as Phasor[];
    const pivot = pivotRow[k] as Phasor;
    rows[k] = pivotRow.map((value) => over(value, pivot));
    for (let i = 0; i < count; i++) {
      if (i === k) continue;
      const factor = at(rows, i, k);
      rows[i] = (rows[i] as Phasor[]).map((value, j) => {
        const taken = times(factor, at(rows, k, j));
        return { re: value.re - taken.re, im: value.im - taken.im };
      });
    }
  }
  return rows.map((row) => row.slice(count));
}

const at = (rows: readonly (readonly Phasor[])[], i: number, j: number): Phasor => rows[i]?.[j] ?? { re: 0, im: 0 };
