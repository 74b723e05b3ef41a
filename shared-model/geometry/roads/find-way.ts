import type { Point } from "../../model/project.ts";
import type { Ground } from "./ground.ts";
import type { RoadEnds, RoadScale } from "./road.ts";

/** What a turn costs, in drawing units of way. */
const TURN = 400;
/** How much the way that is left counts over the way that was made: many ways are as long, and one is enough. */
const KEEN = 1.4;
/** Places that are looked at for one road, at most: beyond that nothing is found that a person would call a way. */
const MOST = 5000;

/**
 * The shortest way with few turns between two ends that no simple road joins: along lines beside boxes, through every gap
 * that is wide enough. Undefined where none is found.
 * @param lines Across and down, where a leg may run.
 */
export function findWay(
  { a, b }: RoadEnds,
  ground: Ground,
  { stepOut }: RoadScale,
  lines: { readonly xs: readonly number[]; readonly ys: readonly number[] },
): readonly Point[] | undefined {
  const start = { x: a.at.x + a.out * stepOut, y: a.at.y };
  const end = { x: b.at.x + b.out * stepOut, y: b.at.y };
  const xs = sorted([...lines.xs, start.x, end.x]);
  const ys = sorted([...lines.ys, start.y, end.y]);
  const [endX, endY] = [xs.indexOf(end.x), ys.indexOf(end.y)];
  const wide = xs.length;
  /** A place is a crossing of two lines, with the way that it was come to: 0 level, 1 upright. */
  const keyOf = (i: number, j: number, way: number): number => (j * wide + i) * 2 + way;
  const costs = new Map<number, number>();
  const from = new Map<number, number>();
  const queue = openQueue();
  const first = keyOf(xs.indexOf(start.x), ys.indexOf(start.y), 0);
  const rest = (i: number, j: number): number =>
    KEEN * (Math.abs((xs[i] ?? 0) - end.x) + Math.abs((ys[j] ?? 0) - end.y) + (j === endY ? 0 : TURN));
  costs.set(first, 0);
  queue.add(first, 0);
  const done = new Set<number>();
  while (done.size < MOST) {
    const key = queue.take();
    if (key === undefined) return undefined;
    if (done.has(key)) continue;
    done.add(key);
    const way = key % 2;
    const cell = (key - way) / 2;
    const i = cell % wide;
    const j = (cell - i) / wide;
    if (i === endX && j === endY && way === 0) return wayBack(key);
    const cost = costs.get(key) ?? 0;
    for (const [di, dj] of STEPS) {
      const [p, q] = [i + di, j + dj];
      const [x, y, px, qy] = [xs[i], ys[j], xs[p], ys[q]];
      if (x === undefined || y === undefined || px === undefined || qy === undefined) continue;
      // It leaves outward, and comes in from outside.
      if (key === first && di !== a.out) {
        if (dj === 0) continue;
      }
      const next = dj === 0 ? 0 : 1;
      const to = keyOf(p, q, next);
      if (done.has(to) || !(dj === 0 ? ground.freeLevel(y, x, px) : ground.free(x, y, qy))) continue;
      if (p === endX && q === endY && dj === 0 && di === b.out) continue;
      const sum = cost + Math.abs(px - x) + Math.abs(qy - y) + (next === way ? 0 : TURN);
      if (sum >= (costs.get(to) ?? Number.POSITIVE_INFINITY)) continue;
      costs.set(to, sum);
      from.set(to, key);
      queue.add(to, sum + rest(p, q));
    }
    // At the last place a turn into the wall is a turn like any other.
    if (i === endX && j === endY && way === 1) {
      const to = keyOf(i, j, 0);
      if (cost + TURN < (costs.get(to) ?? Number.POSITIVE_INFINITY)) {
        costs.set(to, cost + TURN);
        from.set(to, key);
        queue.add(to, cost + TURN);
      }
    }
  }
  return undefined;

  function wayBack(last: number): readonly Point[] {
    const points: Point[] = [b.at];
    for (let key: number | undefined = last; key !== undefined; key = from.get(key)) {
      const cell = (key - (key % 2)) / 2;
      points.push({ x: xs[cell % wide] ?? 0, y: ys[Math.floor(cell / wide)] ?? 0 });
    }
    points.push(a.at);
    return points.reverse();
  }
}

const STEPS = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
] as const;

const sorted = (values: readonly number[]): readonly number[] => [...new Set(values)].sort((p, q) => p - q);

/** What is cheapest comes out first; of equals the earlier. */
function openQueue() {
  const heap: { readonly key: number; readonly cost: number; readonly turn: number }[] = [];
  let turn = 0;
  const isBefore = (p: number, q: number): boolean => {
    const [one, other] = [heap[p], heap[q]];
    if (one === undefined || other === undefined) return false;
    return one.cost < other.cost || (one.cost === other.cost && one.turn < other.turn);
  };
  const swap = (p: number, q: number): void => {
    const [one, other] = [heap[p], heap[q]];
    if (one === undefined || other === undefined) return;
    heap[p] = other;
    heap[q] = one;
  };
  return {
    add(key: number, cost: number): void {
      heap.push({ key, cost, turn: turn++ });
      for (let i = heap.length - 1; i > 0; ) {
        const up = (i - 1) >> 1;
        if (!isBefore(i, up)) break;
        swap(i, up);
        i = up;
      }
    },
    take(): number | undefined {
      const [top] = heap;
      const last = heap.pop();
      if (top === undefined || last === undefined) return undefined;
      if (heap.length === 0) return top.key;
      heap[0] = last;
      for (let i = 0; ; ) {
        let least = i;
        for (const down of [2 * i + 1, 2 * i + 2]) if (isBefore(down, least)) least = down;
        if (least === i) return top.key;
        swap(i, least);
        i = least;
      }
    },
  };
}
