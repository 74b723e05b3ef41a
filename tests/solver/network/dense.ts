import type { Network } from "../../../shared-model/solver/network/network.ts";

/** Complex number of any arithmetic, as re, im. */
type Pair<T> = [T, T];

/** The dense admittance matrix and source currents of a network whose islands all reach the reference; ties unknown to it. */
export function denseOf(network: Network): { matrix: Pair<number>[][]; currents: Pair<number>[] } {
  const { nodeCount, a, b, g, bS, sources } = network;
  const matrix = Array.from({ length: nodeCount }, () => Array.from({ length: nodeCount }, (): Pair<number> => [0, 0]));
  const currents = Array.from({ length: nodeCount }, (): Pair<number> => [0, 0]);
  const add = (to: Pair<number> | undefined, re: number, im: number) => {
    if (to === undefined) return;
    to[0] += re;
    to[1] += im;
  };
  const stamp = (from: number, to: number, re: number, im: number) => {
    if (from === to) return;
    add(matrix[from]?.[from], re, im);
    add(matrix[to]?.[to], re, im);
    add(matrix[from]?.[to], -re, -im);
    add(matrix[to]?.[from], -re, -im);
  };
  for (const [i, from] of a.entries()) stamp(from, b[i] ?? -1, g[i] ?? 0, bS[i] ?? 0);
  for (const { plus, minus, re, im, g: sourceG, bS: sourceB } of sources) {
    stamp(plus, minus, sourceG, sourceB);
    const currentRe = re * sourceG - im * sourceB;
    const currentIm = re * sourceB + im * sourceG;
    add(currents[plus], currentRe, currentIm);
    add(currents[minus], -currentRe, -currentIm);
  }
  return { matrix, currents };
}

/** Gaussian elimination with partial pivoting. */
export function solveDense(given: Pair<number>[][], right: Pair<number>[]): Pair<number>[] {
  const rows = given.map((row, i) => [
    ...row.map((value): Pair<number> => [...value]),
    [...(right[i] ?? [0, 0])] as Pair<number>,
  ]);
  const count = rows.length;
  const at = (row: number, column: number): Pair<number> => rows[row]?.[column] ?? [0, 0];
  const size = ([re, im]: Pair<number>) => re * re + im * im;
  for (let k = 0; k < count; k++) {
    let best = k;
    for (let i = k + 1; i < count; i++) if (size(at(i, k)) > size(at(best, k))) best = i;
    [rows[k], rows[best]] = [rows[best] ?? [], rows[k] ?? []];
    const pivot = at(k, k);
    for (let i = k + 1; i < count; i++) {
      const [re, im] = over(at(i, k), pivot);
      if (re === 0 && im === 0) continue;
      for (let j = k; j <= count; j++) {
        const value = at(i, j);
        const [otherRe, otherIm] = at(k, j);
        value[0] -= re * otherRe - im * otherIm;
        value[1] -= re * otherIm + im * otherRe;
      }
    }
  }
  const answer: Pair<number>[] = [];
  for (let k = count - 1; k >= 0; k--) {
    const [re, im] = at(k, count);
    const left: Pair<number> = [re, im];
    for (let j = k + 1; j < count; j++) {
      const [vRe, vIm] = answer[j] ?? [0, 0];
      const [aRe, aIm] = at(k, j);
      left[0] -= aRe * vRe - aIm * vIm;
      left[1] -= aRe * vIm + aIm * vRe;
    }
    answer[k] = over(left, at(k, k));
  }
  return answer;
}

function over([re, im]: Pair<number>, [byRe, byIm]: Pair<number>): Pair<number> {
  const square = byRe * byRe + byIm * byIm;
  return [(re * byRe + im * byIm) / square, (im * byRe - re * byIm) / square];
}

const BITS = 400n;

/** The doubles as they are, in fixed point of 400 binary places: nothing that matters is rounded. */
function exact(value: number): bigint {
  // A double is a whole number of 2^-1074; what lies below 2^-400 of a siemens or ampere is dropped.
  let scaled = value;
  let shift = 0n;
  while (scaled !== Math.floor(scaled)) {
    scaled *= 2 ** 30;
    shift += 30n;
  }
  return (BigInt(scaled) << BITS) >> shift;
}

const times = (x: bigint, y: bigint): bigint => (x * y) >> BITS;

/** The same equations in 400-bit arithmetic, as a reference that rounding cannot reach. For small networks. */
export function solveExactly(network: Network): Pair<number>[] {
  const { nodeCount, a, b, g, bS, sources } = network;
  const rows = Array.from({ length: nodeCount }, () =>
    Array.from({ length: nodeCount + 1 }, (): Pair<bigint> => [0n, 0n]),
  );
  const add = (row: number, column: number, re: bigint, im: bigint) => {
    const to = rows[row]?.[column];
    if (to === undefined) return;
    to[0] += re;
    to[1] += im;
  };
  const stamp = (from: number, to: number, re: bigint, im: bigint) => {
    if (from === to) return;
    if (from >= 0) add(from, from, re, im);
    if (to >= 0) add(to, to, re, im);
    if (from < 0 || to < 0) return;
    add(from, to, -re, -im);
    add(to, from, -re, -im);
  };
  for (const [i, from] of a.entries()) stamp(from, b[i] ?? -1, exact(g[i] ?? 0), exact(bS[i] ?? 0));
  for (const source of sources) {
    const [yRe, yIm] = [exact(source.g), exact(source.bS)];
    const [vRe, vIm] = [exact(source.re), exact(source.im)];
    stamp(source.plus, source.minus, yRe, yIm);
    const re = times(vRe, yRe) - times(vIm, yIm);
    const im = times(vRe, yIm) + times(vIm, yRe);
    if (source.plus >= 0) add(source.plus, nodeCount, re, im);
    if (source.minus >= 0) add(source.minus, nodeCount, -re, -im);
  }
  const at = (row: number, column: number): Pair<bigint> => rows[row]?.[column] ?? [0n, 0n];
  const divide = ([re, im]: Pair<bigint>, [byRe, byIm]: Pair<bigint>): Pair<bigint> => {
    const square = byRe * byRe + byIm * byIm;
    return [((re * byRe + im * byIm) << BITS) / square, ((im * byRe - re * byIm) << BITS) / square];
  };
  for (let k = 0; k < nodeCount; k++) {
    for (let i = k + 1; i < nodeCount; i++) {
      if (isZero(at(i, k))) continue;
      const [re, im] = divide(at(i, k), at(k, k));
      for (let j = k + 1; j <= nodeCount; j++) if (!isZero(at(k, j))) takeOff(at(i, j), re, im, at(k, j));
    }
  }
  const volts: Pair<bigint>[] = new Array(nodeCount);
  for (let k = nodeCount - 1; k >= 0; k--) {
    const right = at(k, nodeCount);
    for (let j = k + 1; j < nodeCount; j++) if (!isZero(at(k, j))) takeOff(right, ...at(k, j), volts[j] ?? [0n, 0n]);
    volts[k] = divide(right, at(k, k));
  }
  return volts.map(([re, im]) => [double(re), double(im)]);
}

const isZero = ([re, im]: Pair<bigint>): boolean => re === 0n && im === 0n;

function takeOff(value: Pair<bigint>, re: bigint, im: bigint, [otherRe, otherIm]: Pair<bigint>): void {
  value[0] -= times(re, otherRe) - times(im, otherIm);
  value[1] -= times(re, otherIm) + times(im, otherRe);
}

function double(value: bigint): number {
  const magnitude = value < 0n ? -value : value;
  const bits = magnitude.toString(2).length;
  const shift = BigInt(Math.max(0, bits - 64));
  const rounded = Number(magnitude >> shift) * 2 ** (Number(shift) - Number(BITS));
  return value < 0n ? -rounded : rounded;
}
