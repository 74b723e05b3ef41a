import { expect, test } from "vitest";
import { clearPlace } from "../../shared-model/geometry/clear-place.ts";

const part = { x: -10, y: -20, width: 110, height: 120 };
const box = { x: 0, y: 0, width: 200, height: 100 };

test("a place that is clear stays, down to the gap", () => {
  expect(clearPlace([], part, { x: 3, y: 4 }, 50)).toEqual({ x: 3, y: 4 });
  // The part begins 10 before its place: 50 past the box.
  expect(clearPlace([box], part, { x: 260, y: 0 }, 50)).toEqual({ x: 260, y: 0 });
});

test("one too near goes to the nearest side", () => {
  expect(clearPlace([box], part, { x: 259, y: 0 }, 50)).toEqual({ x: 260, y: 0 });
  expect(clearPlace([box], part, { x: -140, y: 40 }, 50)).toEqual({ x: -150, y: 40 });
  expect(clearPlace([box], part, { x: 100, y: 160 }, 50)).toEqual({ x: 100, y: 170 });
  expect(clearPlace([box], part, { x: 100, y: -140 }, 50)).toEqual({ x: 100, y: -150 });
});

test("the side that another box takes is passed over, and a corner between two is found", () => {
  const below = { x: 0, y: 250, width: 200, height: 100 };
  const at = clearPlace([box, below], part, { x: 100, y: 160 }, 50);
  expect(at).toEqual({ x: 260, y: 160 });
  // A wall on the right leaves the corner past the box and under the wall.
  const wall = { x: 250, y: -2000, width: 2000, height: 2050 };
  expect(clearPlace([box, wall], part, { x: 300, y: 40 }, 50)).toEqual({ x: 300, y: 120 });
});
