import type { Pattern } from "./sparse-symbolic.ts";

/** A pivot this much smaller than what it is summed from has cancelled: a resonance without losses. */
const CANCELLED = 1e-13;

/**
 * A = L D Lᵀ of a complex symmetric admittance matrix, kept as what the elimination of node k does to the others: the
 * star of admittances y around k becomes a mesh, `share = y / Σy` of whatever k holds passing to each neighbour.
 * Complex numbers lie as re, im pairs.
 */
export interface SparseFactor {
  readonly pattern: Pattern;
  /** Per entry of the pattern: the share of column k that passes to the row (−L). */
  readonly share: Float64Array;
  /** Per column: 1 / pivot. */
  readonly inverse: Float64Array;
  /** Pivots that had cancelled and were moved; never in a circuit without inductance. */
  readonly moved: number;
}

/**
 * Factorises the admittances `y` between columns (places of the pattern) and `earth` to the reference, in siemens.
 * Both arrays are used up.
 *
 * A pivot is never a difference: it is the sum of what the column still touches, earth being carried along as one more
 * entry (the idea of W. Grassmann, M. Taksar, D. Heyman, Oper. Res. 33, 1985). So a net of 10 µΩ joints that hangs in
 * the air by a picofarad keeps every digit, where the diagonal of the usual matrix would have lost the picofarad.
 *
 * No pivoting is needed. With resistance and capacitance only, A = G + jB with G and B positive semidefinite and G + B
 * positive definite, since every island reaches earth; then the real part of A·e^(-jπ/4), (G + B)/√2, is positive
 * definite, whichever of G and B is singular (islands joined by capacitors alone have G = 0). A matrix with positive
 * definite real part has an LDLᵀ in every order; with both parts semidefinite the entries grow by less than 3
 * (N. Higham, "Factorizing complex symmetric matrices with positive definite real and imaginary parts", Math. Comp. 67, 1998).
 */
export function factorise(pattern: Pattern, y: Float64Array, earth: Float64Array): SparseFactor {
  const { count, start, row, rowStart, rowPlace, rowColumn } = pattern;
  const pivots = new Float64Array(2 * count);
  const inverse = new Float64Array(2 * count);
  const work = new Float64Array(2 * count);
  let moved = 0;
  for (let k = 0; k < count; k++) {
    const begin = start[k] as number;
    const end = start[k + 1] as number;
    for (let p = begin; p < end; p++) {
      const r = 2 * (row[p] as number);
      work[r] = y[2 * p] as number;
      work[r + 1] = y[2 * p + 1] as number;
    }
    let earthRe = earth[2 * k] as number;
    let earthIm = earth[2 * k + 1] as number;
    const last = rowStart[k + 1] as number;
    for (let q = rowStart[k] as number; q < last; q++) {
      const i = rowColumn[q] as number;
      const place = rowPlace[q] as number;
      const shareRe = y[2 * place] as number;
      const shareIm = y[2 * place + 1] as number;
      const pivotRe = pivots[2 * i] as number;
      const pivotIm = pivots[2 * i + 1] as number;
      const re = shareRe * pivotRe - shareIm * pivotIm;
      const im = shareRe * pivotIm + shareIm * pivotRe;
      const stop = start[i + 1] as number;
      for (let p = place + 1; p < stop; p++) {
        const r = 2 * (row[p] as number);
        const otherRe = y[2 * p] as number;
        const otherIm = y[2 * p + 1] as number;
        work[r] = (work[r] as number) + re * otherRe - im * otherIm;
        work[r + 1] = (work[r + 1] as number) + re * otherIm + im * otherRe;
      }
      const downRe = earth[2 * i] as number;
      const downIm = earth[2 * i + 1] as number;
      earthRe += re * downRe - im * downIm;
      earthIm += re * downIm + im * downRe;
    }
    let sumRe = earthRe;
    let sumIm = earthIm;
    let all = Math.abs(earthRe) + Math.abs(earthIm);
    for (let p = begin; p < end; p++) {
      const r = 2 * (row[p] as number);
      const re = work[r] as number;
      const im = work[r + 1] as number;
      sumRe += re;
      sumIm += im;
      all += Math.abs(re) + Math.abs(im);
    }
    if (Math.abs(sumRe) + Math.abs(sumIm) <= CANCELLED * all) {
      // Nothing at all is left where equal and opposite branches lie side by side.
      sumRe += all === 0 ? 1 : CANCELLED * all;
      moved++;
    }
    pivots[2 * k] = sumRe;
    pivots[2 * k + 1] = sumIm;
    const square = sumRe * sumRe + sumIm * sumIm;
    const inverseRe = sumRe / square;
    const inverseIm = -sumIm / square;
    inverse[2 * k] = inverseRe;
    inverse[2 * k + 1] = inverseIm;
    for (let p = begin; p < end; p++) {
      const r = 2 * (row[p] as number);
      const re = work[r] as number;
      const im = work[r + 1] as number;
      y[2 * p] = re * inverseRe - im * inverseIm;
      y[2 * p + 1] = re * inverseIm + im * inverseRe;
    }
    earth[2 * k] = earthRe * inverseRe - earthIm * inverseIm;
    earth[2 * k + 1] = earthRe * inverseIm + earthIm * inverseRe;
  }
  return { pattern, share: y, inverse, moved };
}

/** Half the distance from 1 to the next double. */
const ROUNDING = 2 ** -53;

/**
 * Replaces injected currents `x` (re, im per column, amperes) by voltages. Returns about how far rounding of the
 * currents may have moved a voltage, in volts: a source feeds as much in as it takes out, and where the rest of a part
 * hangs by a picofarad, the last digit of the difference matters.
 * @param error Work space, one number per column.
 */
export function solveInPlace(factor: SparseFactor, x: Float64Array, error: Float64Array): number {
  const { share, inverse } = factor;
  const { count, start, row } = factor.pattern;
  let worst = 0;
  error.fill(0);
  for (let k = 0; k < count; k++) {
    const re = x[2 * k] as number;
    const im = x[2 * k + 1] as number;
    if (re === 0 && im === 0 && error[k] === 0) continue;
    const here = (error[k] as number) + ROUNDING * (Math.abs(re) + Math.abs(im));
    const volts = here * (Math.abs(inverse[2 * k] as number) + Math.abs(inverse[2 * k + 1] as number));
    if (volts > worst) worst = volts;
    const end = start[k + 1] as number;
    for (let p = start[k] as number; p < end; p++) {
      const r = row[p] as number;
      const shareRe = share[2 * p] as number;
      const shareIm = share[2 * p + 1] as number;
      x[2 * r] = (x[2 * r] as number) + shareRe * re - shareIm * im;
      x[2 * r + 1] = (x[2 * r + 1] as number) + shareRe * im + shareIm * re;
      // Not the modulus: shares of one column sum to 1, and their moduli would grow beyond it from column to column.
      error[r] = (error[r] as number) + Math.max(Math.abs(shareRe), Math.abs(shareIm)) * here;
    }
  }
  for (let k = count - 1; k >= 0; k--) backOne(start, row, share, inverse, x, k);
  return worst;
}

/** The voltage of column k from those of its rows, in place of what it holds. */
export function backOne(
  start: Int32Array,
  row: Int32Array,
  share: Float64Array,
  inverse: Float64Array,
  x: Float64Array,
  k: number,
): void {
  const heldRe = x[2 * k] as number;
  const heldIm = x[2 * k + 1] as number;
  const inverseRe = inverse[2 * k] as number;
  const inverseIm = inverse[2 * k + 1] as number;
  let re = heldRe * inverseRe - heldIm * inverseIm;
  let im = heldRe * inverseIm + heldIm * inverseRe;
  const end = start[k + 1] as number;
  for (let p = start[k] as number; p < end; p++) {
    const r = 2 * (row[p] as number);
    const shareRe = share[2 * p] as number;
    const shareIm = share[2 * p + 1] as number;
    const otherRe = x[r] as number;
    const otherIm = x[r + 1] as number;
    re += shareRe * otherRe - shareIm * otherIm;
    im += shareRe * otherIm + shareIm * otherRe;
  }
  x[2 * k] = re;
  x[2 * k + 1] = im;
}
