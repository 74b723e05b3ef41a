import fc from "fast-check";
import { expect, test } from "vitest";
import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
import { freeGroupPlace, hull } from "../../shared-model/geometry/free-group-place.ts";

const rect = (x: number, y: number, width: number, height: number): Rect => ({ x, y, width, height });
const GAP = 160;

test("on an empty sheet a group stands at its origin", () => {
  expect(freeGroupPlace([], [rect(-50, -20, 300, 200)], undefined)).toEqual({ x: 0, y: 0 });
});

test("beside what it is a copy of, a gap away and level with it", () => {
  const own = rect(100, 40, 300, 500);
  expect(freeGroupPlace([own], [rect(-50, -20, 300, 200)], own)).toEqual({ x: 100 + 300 + GAP + 50, y: 40 + 20 });
});

test("below it where that is closer than past what stands at the right", () => {
  const own = rect(0, 0, 300, 200);
  const wide = rect(320, 0, 4_000, 200);
  expect(freeGroupPlace([own, wide], [rect(0, 0, 300, 200)], own)).toEqual({ x: 0, y: 200 + GAP });
});

test("wherever things stand, no part of the group comes closer to any of them than the gap", () => {
  const side = fc.integer({ min: 50, max: 1_500 });
  const place = fc.integer({ min: -3_000, max: 3_000 });
  const rects = fc.array(
    fc.tuple(place, place, side, side).map(([x, y, width, height]) => rect(x, y, width, height)),
    { minLength: 1, maxLength: 12 },
  );
  fc.assert(
    fc.property(rects, rects, (taken, group) => {
      const at = freeGroupPlace(taken, group, hull(taken.slice(0, 1)));
      for (const part of group) {
        const [x, y] = [at.x + part.x, at.y + part.y];
        for (const one of taken) {
          const sideways = Math.max(one.x - x - part.width, x - one.x - one.width);
          const upright = Math.max(one.y - y - part.height, y - one.y - one.height);
          expect(Math.max(sideways, upright)).toBeGreaterThanOrEqual(GAP);
        }
      }
    }),
  );
});
