import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { backInView, clearPart, fitBox, fitWhole, LEAST_WHOLE, READABLE } from "../../renderer/sheet/view-fit.ts";

const VIEW = { width: 800, height: 700 };

/** Where an area of the sheet is seen, in pixels from the corner of the view. */
const seen = (
  area: { x: number; y: number; width: number; height: number },
  { x, y, zoom }: { x: number; y: number; zoom: number },
) => ({ x: area.x * zoom + x, y: area.y * zoom + y, width: area.width * zoom, height: area.height * zoom });

const isClear = ({ x, y, width, height }: ReturnType<typeof seen>, view = VIEW): boolean => {
  const room = clearPart(view);
  return (
    x >= room.x - 1e-6 &&
    y >= room.y - 1e-6 &&
    x + width <= room.x + room.width + 1e-6 &&
    y + height <= room.y + room.height + 1e-6
  );
};

const sizes = fc.record({
  x: fc.double({ min: -5000, max: 5000, noNaN: true }),
  y: fc.double({ min: -5000, max: 5000, noNaN: true }),
  width: fc.double({ min: 20, max: 4000, noNaN: true }),
  height: fc.double({ min: 20, max: 4000, noNaN: true }),
});

describe("what is fitted", () => {
  test("is all in the part of the view that nothing lies over, and never larger than life", () => {
    fc.assert(
      fc.property(sizes, (area) => {
        const view = fitWhole(area, VIEW, 1);
        expect(view.zoom).toBeLessThanOrEqual(1);
        expect(isClear(seen(area, view))).toBe(true);
      }),
    );
  });

  test("as a lone box is whole where it can be read then, else begins at the corner with codes 9 pixels high", () => {
    const wide = { x: -140, y: -60, width: 750, height: 600 };
    const view = fitBox(wide, VIEW, 1);
    // Between 24 pixels at either side: 752 pixels for 750 units, but 604 above and below for 600.
    expect(view.zoom).toBe(1);
    expect(isClear(seen(wide, view))).toBe(true);
    // 354 × 500 pixels, as in a window 390 pixels wide: 306 pixels for 750 units would be 0.408.
    const narrow = fitBox(wide, { width: 354, height: 500 }, 1);
    expect(narrow.zoom * 11).toBeCloseTo(9, 9);
    expect(seen(wide, narrow).x).toBeCloseTo(24, 9);
    fc.assert(
      fc.property(sizes, (area) => {
        const { zoom, ...at } = fitBox(area, VIEW, 1);
        const shown = seen(area, { ...at, zoom });
        if (!isClear(shown)) {
          expect(zoom).toBe(READABLE);
          expect(shown.x).toBeGreaterThanOrEqual(24 - 1e-6);
          expect(shown.y).toBeGreaterThanOrEqual(44 - 1e-6);
        } else expect(zoom).toBeGreaterThanOrEqual(LEAST_WHOLE);
      }),
    );
  });
});

describe("a box that has grown past the view", () => {
  const now = { x: 10, y: 20, zoom: 0.8 };

  test("that fits at this size is panned by what is missing, and no further", () => {
    // Its right edge is 50 pixels beyond the clear part, 776; above and below it has room.
    const area = { x: 426, y: 100, width: 400, height: 300 };
    expect(backInView(area, VIEW, now, 0.45)).toEqual({ x: 10 - 50, y: 20, zoom: 0.8 });
  });

  test("that does not fit is made just as much smaller as it must be", () => {
    // 1592 pixels into 796, all of the width but 2 pixels at either side: half.
    const view = backInView({ x: -100, y: 100, width: 1592, height: 300 }, VIEW, now, 0.2);
    expect(view?.zoom).toBeCloseTo(0.4, 9);
    expect(backInView({ x: -100, y: 100, width: 1592, height: 300 }, VIEW, now, 0.45)).toBeUndefined();
    // One that fits, though not clear of the margins, keeps its size.
    expect(backInView({ x: 60, y: 100, width: 790, height: 300 }, VIEW, now, 0.45)?.zoom).toBe(0.8);
  });

  test("is all above the title block then, whatever it was", () => {
    fc.assert(
      fc.property(sizes, (area) => {
        const view = backInView(area, VIEW, now, 0);
        if (view === undefined) throw new Error("There is always a size at which it fits.");
        const onSheet = {
          x: (area.x - now.x) / now.zoom,
          y: (area.y - now.y) / now.zoom,
          width: area.width / now.zoom,
          height: area.height / now.zoom,
        };
        const { x, y, width, height } = seen(onSheet, view);
        expect(Math.min(x, y)).toBeGreaterThanOrEqual(-1e-6);
        expect(x + width).toBeLessThanOrEqual(VIEW.width + 1e-6);
        expect(y + height).toBeLessThanOrEqual(VIEW.height - 36 + 1e-6);
        expect(view.zoom).toBeLessThanOrEqual(now.zoom);
      }),
    );
  });
});
