/** The way of a dashed line between what stands in a box. */
import { describe, expect, test } from "vitest";
import { findWay } from "../../../shared-model/geometry/scope/way-grid.ts";

const area = { x: 0, y: 0, width: 320, height: 320 };
const start = [{ at: { x: 16, y: 160 }, cost: 0 }];
const goal = [{ x: 304, y: 160 }];
const none = { area, blocked: [], legs: [] };

describe("the way of a dashed line", () => {
  test("is straight where nothing is in the way", () => {
    expect(findWay(start, goal, none)).toEqual([
      { x: 16, y: 160 },
      { x: 304, y: 160 },
    ]);
  });

  test("goes around what stands there, on the shorter side", () => {
    const blocked = [{ x: 120, y: 100, width: 80, height: 300 }];
    const way = findWay(start, goal, { ...none, blocked }) ?? [];
    expect(way.length).toBeGreaterThan(2);
    const highest = Math.min(...way.map(({ y }) => y));
    // The next free track above.
    expect(highest).toBe(96);
  });

  test("crosses lines square and does not run along one where there is another way", () => {
    const along = { from: { x: 0, y: 160 }, to: { x: 320, y: 160 } };
    const across = { from: { x: 160, y: 0 }, to: { x: 160, y: 320 } };
    const ends = [{ at: { x: 16, y: 168 }, cost: 0 }];
    const way = findWay(ends, [{ x: 304, y: 168 }], { ...none, legs: [along, across] });
    expect(way).toEqual([
      { x: 16, y: 168 },
      { x: 304, y: 168 },
    ]);
    const on = findWay(start, goal, { ...none, legs: [along] }) ?? [];
    expect(on.some(({ y }) => y !== 160)).toBe(true);
  });

  test("takes the nearest of several goals, and begins where it is cheapest", () => {
    const goals = [...goal, { x: 16, y: 208 }];
    expect(findWay(start, goals, none)?.at(-1)).toEqual({ x: 16, y: 208 });
    const starts = [...start, { at: { x: 240, y: 160 }, cost: 10 }];
    expect(findWay(starts, goal, none)?.[0]).toEqual({ x: 240, y: 160 });
    const dear = [...start, { at: { x: 240, y: 160 }, cost: 1000 }];
    expect(findWay(dear, goal, none)?.[0]).toEqual({ x: 16, y: 160 });
  });

  test("is none where there is none", () => {
    const blocked = [{ x: 100, y: -10, width: 40, height: 400 }];
    expect(findWay(start, goal, { ...none, blocked })).toBeUndefined();
    expect(findWay([], goal, none)).toBeUndefined();
    expect(findWay(start, [], none)).toBeUndefined();
  });
});
