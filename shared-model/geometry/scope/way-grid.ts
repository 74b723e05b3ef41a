import type { Point } from "../../model/project.ts";
import type { Rect } from "../box-drawing.ts";
import type { Leg } from "./taken-areas.ts";

/** Where a way may begin, and what it costs to begin there. */
export interface Start {
  readonly at: Point;
  readonly cost: number;
}

export interface Ground {
  /** The way stays inside of it. */
  readonly area: Rect;
  /** Nothing passes through these. */
  readonly blocked: readonly Rect[];
  /** Lines that are crossed square, and that nothing runs along. */
  readonly legs: readonly Leg[];
}

/**
 * Between two tracks. Rows of conductors are 16 apart, and level tracks lie half way between them; lanes are counted from
 * either wall.
 */
const STEP = { x: 8, y: 16 } as const;
/** How far a way may go around what lies beyond its ends. */
const ROUND = 256;
const BEND = 14;
const CROSSING = 18;
/** Nearer than this, two lines side by side are taken for one. */
const APART = 6.5;
const ALONG = 9;
/** A way that costs more would tell less than none. */
const MOST = 6000;

/**
 * The cheapest upright and level way from one of some starts to one of some goals: short, with few bends and crossings,
 * never through what is blocked and along no other line where there is another way.
 * @returns Its corners, from start to goal; undefined where there is none.
 */
export function findWay(
  starts: readonly Start[],
  goals: readonly Point[],
  ground: Ground,
): readonly Point[] | undefined {
  if (starts.length === 0 || goals.length === 0) return undefined;
  const marks = [...starts.map(({ at }) => at), ...goals];
  const { area } = ground;
  const xs = tracks(
    area.x,
    area.width,
    STEP.x,
    marks.map(({ x }) => x),
  );
  const ys = tracks(
    area.y,
    area.height,
    STEP.y,
    marks.map(({ y }) => y),
  );
  const cost = stepCosts(xs, ys, ground);
  const goal = new Set(goals.map(({ x, y }) => ys.indexOf(y) * xs.length + xs.indexOf(x)));
  const left = (x: number, y: number): number => {
    let least = Number.POSITIVE_INFINITY;
    for (const one of goals) least = Math.min(least, Math.abs(one.x - x) + Math.abs(one.y - y));
    return least;
  };
  const nodes = xs.length * ys.length;
  // A place is come to level (0) or upright (1): what a bend costs depends on it.
  const best = new Float64Array(2 * nodes).fill(Number.POSITIVE_INFINITY);
  const from = new Int32Array(2 * nodes).fill(-1);
  const open = new Heap();
  const reach = (state: number, way: number, before: number): void => {
    if (way >= (best[state] ?? 0) || way > MOST) return;
    best[state] = way;
    from[state] = before;
    const node = state >> 1;
    open.push(state, way + left(xs[node % xs.length] ?? 0, ys[Math.floor(node / xs.length)] ?? 0));
  };
  for (const { at, cost: begun } of starts) {
    const node = ys.indexOf(at.y) * xs.length + xs.indexOf(at.x);
    reach(2 * node, begun, -1);
    reach(2 * node + 1, begun, -1);
  }
  const closed = new Uint8Array(2 * nodes);
  for (let state = open.pop(); state !== undefined; state = open.pop()) {
    if (closed[state] === 1) continue;
    closed[state] = 1;
    const node = state >> 1;
    if (goal.has(node)) return cornersOf(state, from, xs, ys);
    const i = node % xs.length;
    const j = Math.floor(node / xs.length);
    const way = best[state] ?? 0;
    const upright = state & 1;
    const go = (di: number, dj: number): void => {
      const ni = i + di;
      const nj = j + dj;
      if (ni < 0 || nj < 0 || ni >= xs.length || nj >= ys.length) return;
      const step = di === 0 ? cost.upright(i, Math.min(j, nj)) : cost.level(Math.min(i, ni), j);
      const turns = di === 0 ? 1 : 0;
      reach(2 * (nj * xs.length + ni) + turns, way + step + (turns === upright ? 0 : BEND), state);
    };
    go(1, 0);
    go(-1, 0);
    go(0, 1);
    go(0, -1);
  }
  return undefined;
}

function tracks(from: number, length: number, step: number, marks: readonly number[]): readonly number[] {
  const all = new Set(marks);
  const [least, most] = [Math.min(...marks) - ROUND, Math.max(...marks) + ROUND];
  for (let at = from; at <= from + length; at += step) if (at >= least && at <= most) all.add(at);
  return [...all].sort((a, b) => a - b);
}

/** What lies on one track: stretches that nothing passes, lines that run along it, and where others cross it. */
interface Track {
  readonly closed: readonly (readonly [number, number])[];
  readonly along: readonly (readonly [number, number])[];
  readonly crossings: readonly number[];
}

function trackAt(at: number, axis: "x" | "y", { blocked, legs }: Ground): Track {
  const across = axis === "x" ? "y" : "x";
  const [long, wide] = axis === "x" ? (["width", "height"] as const) : (["height", "width"] as const);
  const closed: [number, number][] = [];
  for (const rect of blocked)
    if (rect[across] < at && at < rect[across] + rect[wide]) closed.push([rect[axis], rect[axis] + rect[long]]);
  const along: [number, number][] = [];
  const crossings: number[] = [];
  for (const { from, to } of legs)
    if (from[across] === to[across]) {
      if (Math.abs(from[across] - at) < APART)
        along.push([Math.min(from[axis], to[axis]), Math.max(from[axis], to[axis])]);
    } else if (Math.min(from[across], to[across]) <= at && at <= Math.max(from[across], to[across]))
      crossings.push(from[axis]);
  return { closed, along, crossings };
}

/** What a step on a track costs; infinite through what is blocked. */
function stepCost({ closed, along, crossings }: Track, a: number, b: number): number {
  for (let i = 0; i < closed.length; i++) {
    const stretch = closed[i];
    if (stretch !== undefined && stretch[0] < b && a < stretch[1]) return Number.POSITIVE_INFINITY;
  }
  let sum = b - a;
  for (let i = 0; i < along.length; i++) {
    const stretch = along[i];
    if (stretch !== undefined && stretch[0] < b && a < stretch[1]) sum += ALONG * (b - a);
  }
  for (let i = 0; i < crossings.length; i++) {
    const at = crossings[i] ?? 0;
    if (a < at && at <= b) sum += CROSSING;
  }
  return sum;
}

/** Costs of the steps from one crossing of the tracks to the next; a track is looked at when a way first comes to it. */
function stepCosts(xs: readonly number[], ys: readonly number[], ground: Ground) {
  const rows: Track[] = [];
  const columns: Track[] = [];
  return {
    level(i: number, j: number): number {
      rows[j] ??= trackAt(ys[j] ?? 0, "x", ground);
      return stepCost(rows[j] as Track, xs[i] ?? 0, xs[i + 1] ?? 0);
    },
    upright(i: number, j: number): number {
      columns[i] ??= trackAt(xs[i] ?? 0, "y", ground);
      return stepCost(columns[i] as Track, ys[j] ?? 0, ys[j + 1] ?? 0);
    },
  };
}

function cornersOf(last: number, from: Int32Array, xs: readonly number[], ys: readonly number[]): readonly Point[] {
  const points: Point[] = [];
  for (let state = last; state >= 0; state = from[state] ?? -1) {
    const node = state >> 1;
    points.unshift({ x: xs[node % xs.length] ?? 0, y: ys[Math.floor(node / xs.length)] ?? 0 });
  }
  return points.filter((point, i) => {
    const [before, after] = [points[i - 1], points[i + 1]];
    if (before === undefined || after === undefined) return true;
    return !((before.x === point.x && point.x === after.x) || (before.y === point.y && point.y === after.y));
  });
}

/** States by their cost, least first; of equals the one that came first, so that a box is always drawn the same. */
class Heap {
  readonly #states: number[] = [];
  readonly #costs: number[] = [];
  readonly #turns: number[] = [];
  #count = 0;

  push(state: number, cost: number): void {
    let at = this.#states.length;
    this.#states.push(state);
    this.#costs.push(cost);
    this.#turns.push(this.#count++);
    while (at > 0) {
      const parent = (at - 1) >> 1;
      if (!this.#isBefore(at, parent)) break;
      this.#swap(at, parent);
      at = parent;
    }
  }

  pop(): number | undefined {
    const [first] = this.#states;
    if (first === undefined) return undefined;
    this.#swap(0, this.#states.length - 1);
    this.#states.pop();
    this.#costs.pop();
    this.#turns.pop();
    for (let at = 0; ; ) {
      const a = 2 * at + 1;
      const b = a + 1;
      let least = at;
      if (a < this.#states.length && this.#isBefore(a, least)) least = a;
      if (b < this.#states.length && this.#isBefore(b, least)) least = b;
      if (least === at) return first;
      this.#swap(at, least);
      at = least;
    }
  }

  #isBefore(a: number, b: number): boolean {
    const p = this.#costs[a] ?? 0;
    const q = this.#costs[b] ?? 0;
    return p < q || (p === q && (this.#turns[a] ?? 0) < (this.#turns[b] ?? 0));
  }

  #swap(a: number, b: number): void {
    exchange(this.#states, a, b);
    exchange(this.#costs, a, b);
    exchange(this.#turns, a, b);
  }
}

function exchange(list: number[], a: number, b: number): void {
  const kept = list[a] ?? 0;
  list[a] = list[b] ?? 0;
  list[b] = kept;
}
