import { describe, expect, test } from "vitest";
import { layRoads } from "../../shared-model/geometry/roads/lay-roads.ts";
import type { RoadEnds } from "../../shared-model/geometry/roads/road.ts";
import type { Point } from "../../shared-model/model/project.ts";

const left = (x: number, y: number) => ({ at: { x, y }, out: -1 as const });
const right = (x: number, y: number) => ({ at: { x, y }, out: 1 as const });

interface Leg {
  readonly road: number;
  readonly a: Point;
  readonly b: Point;
}

const legsOf = (roads: readonly (readonly Point[])[]): readonly Leg[] =>
  roads.flatMap((points, road) =>
    points.slice(1).flatMap((b, i) => {
      const a = points[i];
      return a === undefined ? [] : [{ road, a, b }];
    }),
  );

const isUpright = ({ a, b }: Leg): boolean => a.x === b.x;
const span = (from: number, to: number): readonly [number, number] => [Math.min(from, to), Math.max(from, to)];

/** Upright legs of two roads that lie on one another for some way. */
function shared(roads: readonly (readonly Point[])[]): number {
  const legs = legsOf(roads).filter(isUpright);
  let count = 0;
  for (const p of legs) {
    for (const q of legs) {
      if (p.road >= q.road || p.a.x !== q.a.x) continue;
      const [top, bottom] = span(p.a.y, p.b.y);
      const [otherTop, otherBottom] = span(q.a.y, q.b.y);
      if (Math.min(bottom, otherBottom) > Math.max(top, otherTop)) count += 1;
    }
  }
  return count;
}

/** Level legs of one road that pass through upright legs of another. */
function crossings(roads: readonly (readonly Point[])[]): number {
  const legs = legsOf(roads);
  let count = 0;
  for (const level of legs.filter((leg) => !isUpright(leg))) {
    for (const upright of legs.filter(isUpright)) {
      if (level.road === upright.road) continue;
      const [from, to] = span(level.a.x, level.b.x);
      const [top, bottom] = span(upright.a.y, upright.b.y);
      if (upright.a.x > from && upright.a.x < to && level.a.y > top && level.a.y < bottom) count += 1;
    }
  }
  return count;
}

describe("roads between boxes", () => {
  /** Three cables from one wall to boxes above and two to boxes below, as they leave the laundry box. */
  const fromOneWall: readonly RoadEnds[] = [
    { a: right(0, 0), b: left(900, -1200) },
    { a: right(0, 80), b: left(900, -700) },
    { a: right(0, 160), b: left(900, -200) },
    { a: right(0, 240), b: left(900, 700) },
    { a: right(0, 320), b: left(900, 1200) },
  ];

  test("begin and end at the stubs and run level or upright", () => {
    const roads = layRoads(fromOneWall, []);
    roads.forEach((points, i) => {
      expect(points[0]).toEqual(fromOneWall[i]?.a.at);
      expect(points.at(-1)).toEqual(fromOneWall[i]?.b.at);
    });
    for (const { a, b } of legsOf(roads)) expect(a.x === b.x || a.y === b.y).toBe(true);
  });

  test("of one wall neither share a lane nor cross each other", () => {
    const roads = layRoads(fromOneWall, []);
    expect(shared(roads)).toBe(0);
    expect(crossings(roads)).toBe(0);
  });

  test("go straight where the stubs face each other on one height", () => {
    expect(layRoads([{ a: right(0, 50), b: left(400, 50) }], [])).toEqual([
      [
        { x: 0, y: 50 },
        { x: 400, y: 50 },
      ],
    ]);
  });

  test("go around a box that stands where the first lane would be", () => {
    const standing = { x: 10, y: -300, width: 100, height: 200 };
    const [road = []] = layRoads([{ a: right(0, 0), b: left(900, -600) }], [standing]);
    const [upright] = legsOf([road]).filter(isUpright);
    expect(upright?.a.x).toBeGreaterThan(standing.x + standing.width);
  });

  test("between stubs that face away from each other leave both boxes outward", () => {
    const [road = []] = layRoads([{ a: left(0, 0), b: right(300, 900) }], []);
    expect(road[1]?.x).toBeLessThan(0);
    expect(road.at(-2)?.x).toBeGreaterThan(300);
  });
});
