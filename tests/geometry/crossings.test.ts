import fc from "fast-check";
import { expect, test } from "vitest";
import { crossingsOf } from "../../shared-model/geometry/roads/crossings.ts";
import { roadLabel } from "../../shared-model/geometry/roads/road-label.ts";

const WORDS = { name: "C15A", sizeText: "12/2", lengthText: "20 ft" };
const ROAD = 10;
const level = (y: number, x1: number, x2: number) => ({
  points: [
    { x: x1, y },
    { x: x2, y },
  ],
});
const upright = (x: number, y1: number, y2: number) => ({
  points: [
    { x, y: y1 },
    { x, y: y2 },
  ],
});

test("a leg is free between the roads that cross it, and those that pass beside it do not matter", () => {
  const own = level(0, 0, 300);
  const roads = [own, upright(100, -50, 50), upright(200, -50, 50), upright(150, 20, 90), upright(0, -90, 0)];
  const { free } = crossingsOf(roads, ROAD);
  expect(free({ x: 0, y: 0 }, { x: 300, y: 0 })).toEqual([
    [0, 95],
    [105, 195],
    [205, 300],
  ]);
  // From the other end too, and across strips of the search.
  expect(crossingsOf([upright(5000, -9, 9)], ROAD).free({ x: 9000, y: 0 }, { x: -4000, y: 0 })).toEqual([
    [-4000, 4995],
    [5005, 9000],
  ]);
});

test("the words of a cable go where no other lies over them, shorter before covered", () => {
  const { points } = level(0, 0, 300);
  const label = (...over: ReturnType<typeof upright>[]) =>
    roadLabel(points, WORDS, 12, 1, crossingsOf([{ points }, ...over], ROAD));
  expect(label()).toMatchObject({ at: { x: 150, y: 0 }, rest: "12/2  20 ft" });
  expect(label(upright(120, -9, 9))).toMatchObject({ at: { x: 212.5, y: 0 }, rest: "12/2  20 ft" });
  expect(label(upright(100, -9, 9), upright(200, -9, 9))).toMatchObject({ rest: "12/2" });
  expect(label(...[40, 80, 120, 160, 200, 240, 280].map((x) => upright(x, -9, 9)))).toBeUndefined();
});

test("whatever crosses it, no road lies over the words of a cable", () => {
  const place = fc.integer({ min: -2000, max: 2000 });
  const way = fc.record({ x: place, y1: place, y2: place });
  fc.assert(
    fc.property(fc.array(way, { maxLength: 30 }), (ways) => {
      const { points } = level(0, -2000, 2000);
      const roads = ways.map(({ x, y1, y2 }) => upright(x, y1, y2));
      const label = roadLabel(points, WORDS, 12, 1, crossingsOf([{ points }, ...roads], ROAD));
      if (label === undefined) return;
      for (const { x, y1, y2 } of ways)
        if (Math.min(y1, y2) < 0 && Math.max(y1, y2) > 0)
          expect(Math.abs(x - label.at.x)).toBeGreaterThanOrEqual(label.long / 2);
    }),
  );
});
