import { backOne, type SparseFactor } from "./sparse-factor.ts";

/**
 * Solves for a few columns only. A current reaches no further than the ancestors of its column, and a voltage depends on
 * the ancestors of its own, so only those paths are walked. Makes nothing: one per thread of work.
 */
export class PathSolver {
  private readonly factor: SparseFactor;
  private readonly x: Float64Array;
  private readonly path: Int32Array;
  private readonly mark: Int32Array;
  private marking = 0;

  constructor(factor: SparseFactor) {
    const { count } = factor.pattern;
    this.factor = factor;
    this.x = new Float64Array(2 * count);
    this.path = new Int32Array(2 * count);
    this.mark = new Int32Array(count);
  }

  /** Adds to what is injected at a column, before `solveFor`. */
  inject(column: number, re: number, im: number): void {
    this.x[2 * column] = (this.x[2 * column] as number) + re;
    this.x[2 * column + 1] = (this.x[2 * column + 1] as number) + im;
  }

  /** Voltages (re, im) of the wanted columns into `out`; -1 gives 0. Forgets the injections of the columns `injected`. */
  solveFor(injected: ArrayLike<number>, wanted: ArrayLike<number>, out: Float64Array): void {
    const { x } = this;
    const { pattern, share, inverse } = this.factor;
    const { start, row, count } = pattern;
    const { path } = this;
    const forward = this.ancestors(injected, 0);
    for (let at = forward; at < count; at++) {
      const k = path[at] as number;
      const re = x[2 * k] as number;
      const im = x[2 * k + 1] as number;
      for (let p = start[k] as number; p < (start[k + 1] as number); p++) {
        const r = 2 * (row[p] as number);
        const shareRe = share[2 * p] as number;
        const shareIm = share[2 * p + 1] as number;
        x[r] = (x[r] as number) + shareRe * re - shareIm * im;
        x[r + 1] = (x[r + 1] as number) + shareRe * im + shareIm * re;
      }
    }
    const back = this.ancestors(wanted, count);
    for (let at = 2 * count - 1; at >= back; at--) backOne(start, row, share, inverse, x, path[at] as number);
    for (let w = 0; w < wanted.length; w++) {
      const k = wanted[w] as number;
      out[2 * w] = k < 0 ? 0 : (x[2 * k] as number);
      out[2 * w + 1] = k < 0 ? 0 : (x[2 * k + 1] as number);
    }
    this.clear(forward, count);
    this.clear(back, 2 * count);
  }

  private clear(from: number, end: number): void {
    for (let at = from; at < end; at++) {
      const k = this.path[at] as number;
      this.x[2 * k] = 0;
      this.x[2 * k + 1] = 0;
    }
  }

  /** Puts the columns and their ancestors, descendants first, at the end of half of `path`. Returns where they begin. */
  private ancestors(columns: ArrayLike<number>, half: number): number {
    const { path, mark } = this;
    const { parent, count } = this.factor.pattern;
    const marking = ++this.marking;
    let begin = half + count;
    for (let c = 0; c < columns.length; c++) {
      let many = 0;
      const first = columns[c] as number;
      for (let k = first; k !== -1 && mark[k] !== marking; k = parent[k] as number) {
        mark[k] = marking;
        many++;
      }
      begin -= many;
      for (let k = first, at = begin; at < begin + many; at++, k = parent[k] as number) path[at] = k;
    }
    return begin;
  }
}
