import fc from "fast-check";
import { expect, test } from "vitest";
import { cornerAfter, freestCorner, legendArea, nearestCorner } from "../../renderer/sheet/legend-place.ts";
import { LEGEND_CORNERS, type LegendCorner } from "../../renderer/state/preferences-store.ts";

const VIEW = { width: 800, height: 600 };
const LEGEND = { width: 220, height: 180 };
const AS_IT_IS = { x: 0, y: 0, zoom: 1 };
const FOOT = 40;

test("a legend stands in the first corner, the lower right, while nothing is there", () => {
  expect(freestCorner(LEGEND, VIEW, FOOT, [], AS_IT_IS)).toEqual({ corner: "bottom-right", free: true });
});

test("it goes where nothing is drawn", () => {
  const free = (...areas: Parameters<typeof freestCorner>[3]): LegendCorner =>
    freestCorner(LEGEND, VIEW, FOOT, areas, AS_IT_IS).corner;
  const right = { x: 560, y: 60, width: 240, height: 540 };
  const lower = { x: 0, y: 320, width: 800, height: 280 };
  expect(free(right)).toBe("bottom-left");
  expect(free(lower)).toBe("top-left");
  expect(free(lower, { x: 0, y: 0, width: 300, height: 320 })).toBe("top-right");
  // Seen at half the size the lower boxes are no longer where the legend was.
  expect(freestCorner(LEGEND, VIEW, FOOT, [right], { x: 0, y: 0, zoom: 0.25 }).corner).toBe("bottom-right");
});

test("a corner in which something else stands is not free", () => {
  const overview = { x: 6, y: 420, width: 200, height: 140 };
  const right = { x: 560, y: 60, width: 240, height: 540 };
  const free = freestCorner(LEGEND, VIEW, FOOT, [right], AS_IT_IS, LEGEND_CORNERS, [overview]);
  expect(free).toEqual({ corner: "top-left", free: true });
});

test("no corner covers less than the one that is taken, and all of it is in the view", () => {
  const side = fc.integer({ min: 0, max: 800 });
  const area = fc.record({
    x: side,
    y: side,
    width: fc.integer({ min: 1, max: 400 }),
    height: fc.integer({ min: 1, max: 400 }),
  });
  const covered = (corner: LegendCorner, areas: readonly { x: number; y: number; width: number; height: number }[]) => {
    const own = legendArea(corner, LEGEND, VIEW, FOOT);
    // Counted point by point, on a grid.
    let count = 0;
    for (let x = own.x; x < own.x + own.width; x += 10)
      for (let y = own.y; y < own.y + own.height; y += 10)
        for (const each of areas)
          if (x >= each.x && x < each.x + each.width && y >= each.y && y < each.y + each.height) count += 100;
    return count;
  };
  fc.assert(
    fc.property(fc.array(area, { maxLength: 6 }), (areas) => {
      const { corner, free } = freestCorner(LEGEND, VIEW, FOOT, areas, AS_IT_IS);
      // The grid may miss a corner that it only touches.
      if (free) expect(covered(corner, areas)).toBe(0);
      // The grid knows an area to within its rim.
      const rim = areas.length * 10 * (LEGEND.width + LEGEND.height);
      for (const other of LEGEND_CORNERS)
        expect(covered(corner, areas)).toBeLessThanOrEqual(covered(other, areas) + rim);
      const { x, y, width, height } = legendArea(corner, LEGEND, VIEW, FOOT);
      expect(x >= 0 && y >= 0 && x + width <= VIEW.width && y + height <= VIEW.height - FOOT).toBe(true);
    }),
  );
});

test("moved on four times it is back, and let go it takes the nearest corner", () => {
  for (const corner of LEGEND_CORNERS) {
    expect(cornerAfter(cornerAfter(cornerAfter(cornerAfter(corner))))).toBe(corner);
    const { x, y, width, height } = legendArea(corner, LEGEND, VIEW, FOOT);
    expect(nearestCorner({ x: x + width / 2, y: y + height / 2 }, VIEW)).toBe(corner);
  }
});

test("it says where no corner is free, and looks only at the one that it was put into", () => {
  const all = { x: 0, y: 0, width: 800, height: 600 };
  expect(freestCorner(LEGEND, VIEW, FOOT, [all], AS_IT_IS).free).toBe(false);
  // Its lower right corner alone is taken.
  const lower = { x: 700, y: 500, width: 60, height: 40 };
  expect(freestCorner(LEGEND, VIEW, FOOT, [lower], AS_IT_IS)).toEqual({ corner: "bottom-left", free: true });
  expect(freestCorner(LEGEND, VIEW, FOOT, [lower], AS_IT_IS, ["bottom-right"])).toEqual({
    corner: "bottom-right",
    free: false,
  });
});
