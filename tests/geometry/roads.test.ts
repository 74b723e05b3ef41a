/** Ways of cables between boxes: around what stands there, or as a person led them. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
import { bendLeg, bentRoad, tidied } from "../../shared-model/geometry/roads/bends.ts";
import { layRoads, looseRoad } from "../../shared-model/geometry/roads/lay-roads.ts";
import { NEAR_ROADS, type RoadEnd, type RoadEnds } from "../../shared-model/geometry/roads/road.ts";
import type { Point } from "../../shared-model/model/project.ts";

const left = (x: number, y: number): RoadEnd => ({ at: { x, y }, out: -1 });
const right = (x: number, y: number): RoadEnd => ({ at: { x, y }, out: 1 });
const below = (x: number, y: number): RoadEnd => ({ at: { x, y }, out: 1, upright: true });
const above = (x: number, y: number): RoadEnd => ({ at: { x, y }, out: -1, upright: true });

const isSquare = (points: readonly Point[]): boolean =>
  points.every((b, i) => i === 0 || (b.x === points[i - 1]?.x) !== (b.y === points[i - 1]?.y));

/** Whether a way enters a box, walked in small steps. */
function enters(points: readonly Point[], { x, y, width, height }: Rect): boolean {
  return points.slice(1).some((b, i) => {
    const a = points[i] ?? b;
    const steps = Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / 4);
    return Array.from({ length: steps + 1 }, (_, step) => step / Math.max(1, steps)).some((t) => {
      const [px, py] = [a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t];
      return px > x && px < x + width && py > y && py < y + height;
    });
  });
}

test("where a wall has more cables than lanes before it they run closer together, and none on another", () => {
  // Nine cables down from one wall, to boxes so near that there are lanes for seven.
  const ends = Array.from({ length: 9 }, (_, i): RoadEnds => ({ a: left(0, 80 * i), b: right(-250, 1500 + 1000 * i) }));
  const uprights = (scale = NEAR_ROADS): readonly number[] =>
    layRoads(ends, [], scale)
      .map((points) => points[1]?.x ?? 0)
      .sort((p, q) => p - q);
  const gaps = (xs: readonly number[]): readonly number[] => xs.slice(1).map((x, i) => x - (xs[i] ?? x));
  expect(new Set(uprights()).size).toBe(9);
  expect(Math.min(...gaps(uprights()))).toBeGreaterThan(NEAR_ROADS.road);
  // With room enough they keep their lanes.
  const few = layRoads(ends.slice(0, 6), []).map((points) => points[1]?.x ?? 0);
  expect(Math.min(...gaps(few.sort((p, q) => p - q)))).toBeGreaterThanOrEqual(NEAR_ROADS.lane - 1);
});

/** Where roads cross: a level leg of one and an upright leg of another, their ends not counted. */
function crossingsOf(roads: readonly (readonly Point[])[]): number {
  const legs = roads.flatMap((points, road) => points.slice(1).map((b, i) => ({ road, a: points[i] ?? b, b })));
  const within = (at: number, p: number, q: number): boolean => at > Math.min(p, q) && at < Math.max(p, q);
  return legs.reduce(
    (sum, level) =>
      sum +
      legs.filter(
        ({ road, a, b }) =>
          road !== level.road && within(a.x, level.a.x, level.b.x) && a.x === b.x && within(level.a.y, a.y, b.y),
      ).length,
    0,
  );
}

describe("of cables that leave one wall in the order of their other ends", () => {
  /** Heights of the other ends, boxes high enough to stand apart. */
  const heights = fc
    .record({
      from: fc.integer({ min: -2000, max: 200 }),
      gaps: fc.array(fc.integer({ min: 120, max: 900 }), { minLength: 2, maxLength: 7, size: "max" }),
    })
    .map(({ from, gaps }) => gaps.map((_, i) => gaps.slice(0, i).reduce((y, gap) => y + gap, from)));
  const fan = (tos: readonly number[], out: 1 | -1): readonly RoadEnds[] =>
    tos.map((to, i) => ({
      a: { at: { x: 0, y: 80 * i }, out },
      b: { at: { x: 900 * out, y: to }, out: out > 0 ? -1 : 1 },
    }));

  test("a short one beside long ones turns beyond them: none cross", () => {
    // The first two rise far and take a lane each; the third ends beside the stub of the first.
    const ends = [-1532, -832, 24].map((to, i): RoadEnds => ({ a: right(0, 84 * i), b: left(500, to) }));
    expect(crossingsOf(layRoads(ends, []))).toBe(0);
  });

  test("none cross, whichever way they go", () => {
    fc.assert(
      fc.property(heights, fc.constantFrom(1 as const, -1 as const), (tos, out) => {
        expect(crossingsOf(layRoads(fan(tos, out), []))).toBe(0);
      }),
    );
  });
});

describe("around boxes", () => {
  const wall = (x: number, y: number, width = 500, height = 400): Rect => ({ x, y, width, height });

  test("a box between two that face each other is passed, whichever way is shorter", () => {
    const between = wall(400, -150);
    const [road = []] = layRoads([{ a: right(0, 0), b: left(1300, 20) }], [between]);
    expect(enters(road, between)).toBe(false);
    expect(isSquare(road)).toBe(true);
    expect([road[0], road.at(-1)]).toEqual([
      { x: 0, y: 0 },
      { x: 1300, y: 20 },
    ]);
    // Its upper edge is 150 away, its lower one 250.
    expect(Math.min(...road.map(({ y }) => y))).toBeLessThan(-150);
    expect(Math.max(...road.map(({ y }) => y))).toBeLessThan(250);
  });

  test("a row of boxes is passed under each other in gaps that are wide enough", () => {
    const rows = [0, 1, 2].flatMap((row) => [0, 1, 2, 3].map((column) => wall(300 + 900 * column, -600 + 700 * row)));
    const ends: readonly RoadEnds[] = [
      { a: right(0, -400), b: left(4000, 1000) },
      { a: right(0, 300), b: left(4000, -400) },
      { a: left(250, 1000), b: right(4100, -500) },
    ];
    for (const road of layRoads(ends, rows)) for (const box of rows) expect(enters(road, box)).toBe(false);
  });

  test("between boxes over and under each other it is the same", () => {
    const between = wall(-200, 500);
    const [road = []] = layRoads([{ a: below(0, 0), b: above(20, 1500) }], [between]);
    expect(enters(road, between)).toBe(false);
    expect(isSquare(road)).toBe(true);
  });

  test("boxes that lie on each other keep nobody waiting", () => {
    const many = (count: number) => {
      const at = (i: number) => ({ x: ((i * 7919) % count) * 200, y: ((i * 104_729) % count) * 90 });
      const boxes = Array.from({ length: count }, (_, i) => ({ ...at(i), width: 910, height: 691 }));
      const ends = boxes.slice(1).map((to, i): RoadEnds => {
        const from = boxes[i] ?? to;
        const toTheRight = to.x > from.x;
        return {
          a: toTheRight ? right(from.x + 919, from.y + 200) : left(from.x - 9, from.y + 200),
          b: toTheRight ? left(to.x - 9, to.y + 200) : right(to.x + 919, to.y + 200),
        };
      });
      const before = process.cpuUsage();
      layRoads(ends, boxes);
      return process.cpuUsage(before).user / 1000;
    };
    many(200);
    // Without a bound it is the square of their number: minutes for this many.
    expect(many(1500)).toBeLessThan(3000);
  });
});

const along = fc.integer({ min: -40, max: 40 }).map((n) => n * 16);
const facing = fc
  .record({ x: fc.integer({ min: 30, max: 120 }), y: along })
  .map(({ x, y }): RoadEnds => ({ a: right(0, 0), b: left(x * 16, y) }));
const anyEnds: fc.Arbitrary<RoadEnds> = fc.oneof(
  facing,
  fc.record({ x: along, y: along }).map(({ x, y }): RoadEnds => ({ a: left(0, 0), b: right(x * 2 + 16, y) })),
  fc
    .record({ x: along, y: fc.integer({ min: 30, max: 90 }) })
    .map(({ x, y }): RoadEnds => ({ a: below(0, 0), b: above(x, y * 16) })),
);

describe("as a person led it", () => {
  test("it leaves both walls outward, goes through every bend and is square throughout", () => {
    const far = fc.record({ x: fc.integer({ min: 300, max: 1500 }), y: fc.integer({ min: -1500, max: 1500 }) });
    fc.assert(
      fc.property(fc.array(far, { minLength: 1, maxLength: 4 }), (bends) => {
        const road = bentRoad({ a: right(0, 0), b: left(2000, 100), bends }, NEAR_ROADS);
        expect(isSquare(road)).toBe(true);
        expect(road[0]).toEqual({ x: 0, y: 0 });
        expect(road.at(-1)).toEqual({ x: 2000, y: 100 });
        expect(road[1]?.y === 0 && (road[1]?.x ?? 0) > 0).toBe(true);
        expect(road.at(-2)?.y === 100 && (road.at(-2)?.x ?? 0) < 2000).toBe(true);
        for (const bend of bends.slice(1, -1)) {
          const lies = road.slice(1).some((b, i) => {
            const a = road[i] ?? b;
            const within = (p: number, q: number, r: number) => Math.min(p, q) <= r && r <= Math.max(p, q);
            return within(a.x, b.x, bend.x) && within(a.y, b.y, bend.y);
          });
          const turnsBack = tidied([...road]).length < road.length;
          expect(lies || turnsBack).toBe(true);
        }
      }),
      { numRuns: 200 },
    );
  });

  test("a stretch that was drawn aside runs where it was put, on the pitch, and the rest keeps its way", () => {
    fc.assert(
      fc.property(anyEnds, fc.nat(6), along, (ends, pick, to) => {
        const before = looseRoad(ends, NEAR_ROADS);
        const leg = pick % (before.length - 1);
        const bends = bendLeg(ends, before, leg, to + 5, NEAR_ROADS);
        if (bends === undefined) return;
        const after = bentRoad({ ...ends, bends }, NEAR_ROADS);
        expect(isSquare(after)).toBe(true);
        expect([after[0], after.at(-1)]).toEqual([ends.a.at, ends.b.at]);
        for (const { x, y } of bends) expect([Number.isFinite(x), Number.isFinite(y)]).toEqual([true, true]);
        const axis = before[leg]?.y === before[leg + 1]?.y ? "y" : "x";
        // A cable leaves its walls outward: behind them no stretch of it can be put.
        const isFree = [ends.a, ends.b].every(
          (end) => axis === (end.upright ? "x" : "y") || (to - end.at[axis]) * end.out > 240,
        );
        if (isFree) expect(after.some((point) => point[axis] === to)).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  test("only what cannot be found again is kept: an upright is one bend, a stretch around boxes two", () => {
    const ends = { a: right(0, 0), b: left(800, 320) };
    expect(bendLeg(ends, looseRoad(ends, NEAR_ROADS), 1, 400, NEAR_ROADS)).toEqual([{ x: 400, y: 160 }]);
    const away = { a: left(0, 0), b: right(800, 0) };
    const around = looseRoad(away, NEAR_ROADS);
    expect(bendLeg(away, around, 2, -640, NEAR_ROADS)).toEqual([
      { x: -28, y: -640 },
      { x: 828, y: -640 },
    ]);
  });

  test("it stays where it was put when a box moves, and never runs back over itself", () => {
    fc.assert(
      fc.property(facing, along, along, (ends, ya, yb) => {
        const bends = [{ x: 240, y: 0 }];
        const { at } = ends.b;
        const road = bentRoad({ a: right(0, ya), b: left(at.x, yb), bends }, NEAR_ROADS);
        expect(tidied(road)).toEqual(road);
        if (ya !== yb) expect(road.map(({ x }) => x)).toEqual([0, 240, 240, at.x]);
      }),
    );
  });

  test("it is drawn the same from every distance: only where it leaves the walls differs", () => {
    const near = { a: right(124, 40), b: left(1876, 340) };
    const away = { a: right(9, 60), b: left(1991, 300) };
    const bends = [
      { x: 640, y: -320 },
      { x: 1280, y: -320 },
    ];
    const inner = (ends: RoadEnds) => bentRoad({ ...ends, bends }, NEAR_ROADS).slice(2, -2);
    expect(inner(near)).toEqual(inner(away));
  });

  test("others make room for it", () => {
    const bent: RoadEnds = { a: right(0, 0), b: left(1000, 400), bends: [{ x: 400, y: 200 }] };
    const other: RoadEnds = { a: right(0, 100), b: left(1000, 500) };
    const [one = [], two = []] = layRoads([bent, other], []);
    expect(one[1]?.x).toBe(400);
    expect(Math.abs((two[1]?.x ?? 400) - 400)).toBeGreaterThanOrEqual(NEAR_ROADS.lane - 1);
  });
});
