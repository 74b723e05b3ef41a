import { expect, test } from "vitest";
import { layRoads, looseRoad } from "../../shared-model/geometry/roads/lay-roads.ts";
import { NEAR_ROADS } from "../../shared-model/geometry/roads/road.ts";
import type { Point } from "../../shared-model/model/project.ts";

const up = (x: number, y: number) => ({ at: { x, y }, out: -1 as const, upright: true as const });
const down = (x: number, y: number) => ({ at: { x, y }, out: 1 as const, upright: true as const });
const straight = (points: readonly Point[]): boolean =>
  points.slice(1).every((b, i) => b.x === points[i]?.x || b.y === points[i]?.y);

test("a box under another is joined straight down, one further aside by one level leg that is clear of both", () => {
  expect(layRoads([{ a: down(40, 624), b: up(40, 1076) }], [])).toEqual([
    [
      { x: 40, y: 624 },
      { x: 40, y: 1076 },
    ],
  ]);
  const [road = []] = layRoads([{ a: down(40, 624), b: up(340, 1076) }], []);
  expect(road).toHaveLength(4);
  expect(straight(road)).toBe(true);
  const level = road[1]?.y ?? 0;
  expect(level).toBe(road[2]?.y);
  // Over a box stands its name, under it how full it is.
  expect(level - 624).toBeGreaterThanOrEqual(NEAR_ROADS.stepOut);
  expect(1076 - level).toBeGreaterThanOrEqual(NEAR_ROADS.stepOut);
});

test("two roads down to boxes aside have level legs of their own", () => {
  const roads = layRoads(
    [
      { a: down(40, 624), b: up(400, 1076) },
      { a: down(200, 624), b: up(560, 1076) },
    ],
    [],
  );
  const [one, other] = roads.map((points) => points[1]?.y ?? 0);
  expect(Math.abs((one ?? 0) - (other ?? 0))).toBeGreaterThanOrEqual(NEAR_ROADS.lane);
});

test("a road laid while its box is dragged is the road that is laid then, and one that faces away goes around", () => {
  const ends = { a: down(40, 624), b: up(340, 1076) };
  expect(looseRoad(ends, NEAR_ROADS)).toEqual(layRoads([ends], [])[0]);
  const away = looseRoad({ a: down(40, 624), b: up(340, 300) }, NEAR_ROADS);
  expect(away[0]).toEqual({ x: 40, y: 624 });
  expect(away[away.length - 1]).toEqual({ x: 340, y: 300 });
  expect(straight(away)).toBe(true);
  expect(Math.max(...away.map(({ y }) => y))).toBeGreaterThan(624);
  expect(Math.min(...away.map(({ y }) => y))).toBeLessThan(300);
});
