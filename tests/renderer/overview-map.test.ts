import fc from "fast-check";
import { expect, test } from "vitest";
import { frameIn, overviewMap, viewAround, viewDragged } from "../../renderer/sheet/overview/overview-map.ts";

const MOST = { width: 210, height: 140 };
const HOST = { width: 800, height: 600 };

const length = fc.integer({ min: 1, max: 200_000 });
const place = fc.integer({ min: -100_000, max: 100_000 });
const area = fc.record({ x: place, y: place, width: length, height: length });
const view = fc.record({
  x: place,
  y: place,
  zoom: fc.double({ min: 0.004, max: 4, noNaN: true }),
});

const mapOf = (of: Parameters<typeof overviewMap>[0]) => {
  const map = overviewMap(of, MOST);
  if (map === undefined) throw new Error("There is no map.");
  return map;
};

test("nothing drawn has no map", () => expect(overviewMap(undefined, MOST)).toBeUndefined());

test("all of any drawing lies inside the overview, which is no larger than it may be", () => {
  fc.assert(
    fc.property(area, (of) => {
      const { x, y, zoom, width, height } = mapOf(of);
      expect(width <= MOST.width && height <= MOST.height).toBe(true);
      for (const [from, long, offset, most] of [
        [of.x, of.width, x, width],
        [of.y, of.height, y, height],
      ] as const) {
        expect(from * zoom + offset).toBeGreaterThanOrEqual(0);
        expect((from + long) * zoom + offset).toBeLessThanOrEqual(most + 1e-6);
      }
    }),
  );
});

test("the frame is what is in view: by hand, a drawing of 10 000 by 5 000 seen at 10 % from its corner", () => {
  const map = mapOf({ x: 0, y: 0, width: 10_000, height: 5_000 });
  // 192 pixels across for 10 000 units; 800 pixels of a view at 10 % are 8 000 units, 600 are 6 000, more than there is.
  expect(map.zoom).toBeCloseTo(0.0192, 6);
  const frame = frameIn(map, { x: 0, y: 0, zoom: 0.1 }, HOST);
  expect(frame.x).toBeCloseTo(9, 1);
  expect(frame.width).toBeCloseTo(153.6, 1);
  expect(frame.y + frame.height).toBe(map.height);
});

test("the frame never leaves the overview and never vanishes in it", () => {
  fc.assert(
    fc.property(area, view, (of, seen) => {
      const map = mapOf(of);
      const { x, y, width, height } = frameIn(map, seen, HOST);
      expect(x >= 0 && y >= 0).toBe(true);
      expect(x + width <= map.width + 1e-6 && y + height <= map.height + 1e-6).toBe(true);
      expect(width >= 8 - 1e-6 && height >= 8 - 1e-6).toBe(true);
    }),
  );
});

test("a press brings its place into the middle of the view, and the size of the drawing stays", () => {
  fc.assert(
    fc.property(area, view, fc.integer({ min: 0, max: 100 }), fc.integer({ min: 0, max: 50 }), (of, seen, x, y) => {
      const map = mapOf(of);
      const after = viewAround(map, { x, y }, seen.zoom, HOST);
      expect(after.zoom).toBe(seen.zoom);
      // The middle of the view, as a point of the sheet, and that as a point of the overview.
      const middle = { x: (HOST.width / 2 - after.x) / after.zoom, y: (HOST.height / 2 - after.y) / after.zoom };
      expect(middle.x * map.zoom + map.x).toBeCloseTo(x, 3);
      expect(middle.y * map.zoom + map.y).toBeCloseTo(y, 3);
    }),
  );
});

test("dragged, the frame goes with the hand", () => {
  const map = mapOf({ x: 0, y: 0, width: 10_000, height: 5_000 });
  const from = { x: -1000, y: -500, zoom: 0.5 };
  const before = frameIn(map, from, HOST);
  const after = frameIn(map, viewDragged(map, from, { x: 30, y: -4 }), HOST);
  expect(after.x - before.x).toBeCloseTo(30, 6);
  expect(after.y - before.y).toBeCloseTo(-4, 6);
});
