import { describe, expect, test } from "vitest";
import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
import { evenPlaces } from "../../shared-model/geometry/even-gaps.ts";
import { groupPlaceAt } from "../../shared-model/geometry/free-group-place.ts";
import { snapMove } from "../../shared-model/geometry/snap.ts";

const box = (x: number, y: number, width = 100, height = 80): Rect => ({ x, y, width, height });
/** Two boxes with 60 between them: from 0 to 100 and from 160 to 260. */
const ROW = [box(0, 0), box(160, 0)];
const startsOf = (moving: Rect, staying: readonly Rect[], axis: "x" | "y" = "x") =>
  evenPlaces(moving, staying, axis).map(({ start }) => start);

describe("places with even gaps", () => {
  test("after two boxes and before them by the gap that they have; between them there is no room", () => {
    expect(startsOf(box(500, 10), ROW)).toEqual([260 + 60, 0 - 60 - 100]);
  });
  test("between two, where it fits", () => {
    expect(startsOf(box(0, 10, 40), ROW)).toEqual([110, 320, -100]);
    expect(evenPlaces(box(0, 10, 40), ROW, "x")[0]?.gaps).toEqual([
      { axis: "x", from: 100, to: 110, at: 50 },
      { axis: "x", from: 150, to: 160, at: 50 },
    ]);
  });
  test("only boxes that it stands beside are its neighbours, and only those next to each other", () => {
    expect(startsOf(box(500, 300), ROW)).toEqual([]);
    expect(startsOf(box(500, 80), ROW)).toEqual([]);
    expect(startsOf(box(900, 0), [...ROW, box(320, 0)])).toEqual([320, -160, 480, 0]);
  });
  test("boxes that touch or overlap have no gap to repeat", () => {
    expect(startsOf(box(500, 0), [box(0, 0), box(100, 0)])).toEqual([]);
  });
  test("downward too", () => {
    expect(startsOf(box(5, 500), [box(0, 0), box(0, 120)], "y")).toEqual([240, -120]);
  });
});

describe("a move clicks into even gaps", () => {
  test("within reach, with the gaps to draw; farther away it does not", () => {
    // The edges of the neighbours are out of reach there: 260 and 160 from 323, and 317 from 40.
    const held = box(400, 30, 101, 81);
    const near = snapMove(held, { x: -77, y: 0 }, ROW, 6);
    expect(held.x + near.by.x).toBe(320);
    expect(near.gaps.map(({ from, to }) => to - from)).toEqual([60, 60]);
    const far = snapMove(held, { x: -73, y: 0 }, ROW, 6);
    expect(far.gaps).toEqual([]);
  });
  test("an edge that is nearer wins, and no gaps are drawn", () => {
    const staying = [...ROW, box(322, 300)];
    const snapped = snapMove(box(400, 30, 101, 81), { x: -78, y: 0 }, staying, 6);
    expect(400 + snapped.by.x).toBe(322);
    expect(snapped.gaps).toEqual([]);
    expect(snapped.guides.some(({ axis, at }) => axis === "x" && at === 322)).toBe(true);
  });
});

describe("a group at a point", () => {
  const group = [box(0, 0), box(200, 0)];
  test("its middle lies on the point where nothing is in the way", () => {
    expect(groupPlaceAt([], group, { x: 1000, y: 1000 })).toEqual({ x: 850, y: 960 });
  });
  test("something in the way moves it on, and it lies on nothing", () => {
    const taken = [box(850, 960)];
    const at = groupPlaceAt(taken, group, { x: 1000, y: 1000 });
    const clear = group.every(
      ({ x, y, width, height }) =>
        at.x + x >= 950 || at.x + x + width <= 850 || at.y + y >= 1040 || at.y + y + height <= 960,
    );
    expect(clear).toBe(true);
    expect(Math.hypot(at.x - 850, at.y - 960)).toBeLessThan(400);
  });
});
