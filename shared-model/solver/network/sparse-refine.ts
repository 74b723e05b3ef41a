import { type SparseFactor, solveInPlace } from "./sparse-factor.ts";
import { type Islands, TIE } from "./sparse-islands.ts";
import type { Network, Topology } from "./sparse-topology.ts";

/** What a residual needs to know of a factorised network. */
export interface Solved {
  readonly network: Network;
  readonly topology: Topology;
  readonly islands: Islands;
  readonly closed: Uint8Array;
  readonly factor: SparseFactor;
  /** Whether some susceptance is negative, so that currents may cancel in the factor. */
  readonly inductive: boolean;
}

const MOST_STEPS = 4;
/** Doubt of the voltages, as a share of the largest, that calls for a step; and the correction that ends them. */
const DOUBTFUL = 2e-12;
const SETTLED = 1e-14;

/**
 * Takes steps of iterative refinement where rounding may show: where `doubt` (volts, from `solveInPlace`) is large
 * against the voltages `x`, and where there is inductance. Steps end when the correction is small or does not shrink.
 * @param error Work space, one number per column.
 */
export function refineWhereNeeded(
  solved: Solved,
  x: Float64Array,
  injected: Float64Array,
  error: Float64Array,
  doubt: number,
): void {
  if (!solved.inductive && doubt <= DOUBTFUL * largest(x)) return;
  let before = Infinity;
  for (let step = 0; step < MOST_STEPS; step++) {
    const correction = residualOf(solved, x, injected);
    solveInPlace(solved.factor, correction, error);
    const size = largest(correction);
    if (!(size < before / 2)) return;
    for (let i = 0; i < x.length; i++) x[i] = (x[i] as number) + (correction[i] as number);
    if (size <= SETTLED * largest(x)) return;
    before = size;
  }
}

function largest(values: Float64Array): number {
  let most = 0;
  for (let i = 0; i < values.length; i++) {
    const size = Math.abs(values[i] as number);
    if (!(size <= most)) most = size;
  }
  return most;
}

/**
 * What Kirchhoff's current law misses at every column, in amperes. Every current is rounded once, the same at both its
 * ends, and summed with twice the digits: so no current is made or lost, and the residual of a whole part is true even
 * where that part hangs by a picofarad.
 */
function residualOf(
  { network, topology, islands, closed }: Solved,
  x: Float64Array,
  injected: Float64Array,
): Float64Array {
  const { columnA, columnB, elements } = topology;
  const { a, g, bS, sources } = network;
  const high = injected.slice();
  const low = new Float64Array(high.length);
  const add = (at: number, value: number): void => {
    const before = high[at] as number;
    const sum = before + value;
    const part = sum - before;
    high[at] = sum;
    low[at] = (low[at] as number) + (before - (sum - part) + (value - part));
  };
  const pass = (from: number, to: number, yRe: number, yIm: number): void => {
    const re = (from < 0 ? 0 : (x[2 * from] as number)) - (to < 0 ? 0 : (x[2 * to] as number));
    const im = (from < 0 ? 0 : (x[2 * from + 1] as number)) - (to < 0 ? 0 : (x[2 * to + 1] as number));
    const currentRe = re * yRe - im * yIm;
    const currentIm = re * yIm + im * yRe;
    if (from >= 0) {
      add(2 * from, -currentRe);
      add(2 * from + 1, -currentIm);
    }
    if (to >= 0) {
      add(2 * to, currentRe);
      add(2 * to + 1, currentIm);
    }
  };
  for (let e = 0; e < elements; e++) {
    const from = columnA[e] as number;
    const to = columnB[e] as number;
    if (closed[e] === 0 || from === to) continue;
    const source = e < a.length ? undefined : sources[e - a.length];
    pass(from, to, source?.g ?? (g[e] as number), source?.bS ?? (bS[e] as number));
  }
  for (const column of islands.tied) pass(column, -1, TIE, 0);
  for (let i = 0; i < high.length; i++) high[i] = (high[i] as number) + (low[i] as number);
  return high;
}
