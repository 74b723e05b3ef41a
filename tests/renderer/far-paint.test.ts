/** The painted sheet: what is left out of it is what nobody would see, and names that would lie on each other. */
import fc from "fast-check";
import { expect, test } from "vitest";
import type { Ground } from "../../renderer/sheet/far/far-paint.ts";
import { paintRoads } from "../../renderer/sheet/far/far-paint-roads.ts";
import { MOST_ROOM, sideRooms } from "../../renderer/sheet/far/side-rooms.ts";
import type { Road } from "../../renderer/sheet/sheet-roads.ts";
import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
import type { Point } from "../../shared-model/model/project.ts";

const SIDE = 90;
const never = (): boolean => false;

/** A ground that notes the pixels which are filled. */
function pixelGround(zoom: number): { readonly ground: Ground; readonly filled: Set<string>; readonly bars: number[] } {
  const filled = new Set<string>();
  const bars: number[] = [];
  const fillRect = (x: number, y: number, width: number, height: number): void => {
    bars.push(width * height);
    for (let column = x; column < x + width; column++)
      for (let row = y; row < y + height; row++) filled.add(`${column} ${row}`);
  };
  const context = { fillRect, setTransform() {}, beginPath() {}, stroke() {} };
  const ground = { context, x: 10, y: 10, zoom, width: SIDE, height: SIDE, dots: 1, ink: { quiet: "", fresh: "" } };
  return { ground: ground as unknown as Ground, filled, bars };
}

/** Square ways, as roads are: level and upright in turns, some of their legs a few units long. */
const square: fc.Arbitrary<readonly Point[]> = fc
  .tuple(
    fc.integer({ min: 0, max: 5000 }),
    fc.integer({ min: 0, max: 5000 }),
    fc.array(fc.oneof(fc.integer({ min: -60, max: 60 }), fc.integer({ min: -3000, max: 3000 })), {
      minLength: 1,
      maxLength: 6,
    }),
  )
  .map(([x, y, legs]) => {
    const points: Point[] = [{ x, y }];
    legs.forEach((leg, i) => {
      const last = points.at(-1) ?? { x, y };
      points.push(i % 2 === 0 ? { x: last.x + leg, y: last.y } : { x: last.x, y: last.y + leg });
    });
    return points;
  });

test("many cables are painted point for point as if each leg had its own bar, in fewer bars", () => {
  let [legs, bars] = [0, 0];
  fc.assert(
    fc.property(fc.array(square, { minLength: 3, maxLength: 3 }), (ways) => {
      const zoom = 0.013;
      const painted = pixelGround(zoom);
      // So many that they are painted as bars.
      const roads = Array.from({ length: 501 }, (_, i) => ({ points: ways[i % ways.length] ?? [] }) as unknown as Road);
      paintRoads(painted.ground, roads, { isNew: never, isChosen: never, isGuarded: never });
      const wanted = pixelGround(zoom);
      const at = (value: number): number => Math.round(value * zoom + 10);
      for (const points of ways) {
        const inView = points.map(({ x, y }) => ({ x: x * zoom + 10, y: y * zoom + 10 }));
        const [xs, ys] = [inView.map(({ x }) => x), inView.map(({ y }) => y)];
        if (Math.min(...xs) >= SIDE || Math.max(...xs) <= 0 || Math.min(...ys) >= SIDE || Math.max(...ys) <= 0)
          continue;
        points.slice(1).forEach((b, i) => {
          const a = points[i] ?? b;
          const [left, top] = [Math.min(at(a.x), at(b.x)), Math.min(at(a.y), at(b.y))];
          wanted.ground.context.fillRect(left, top, Math.abs(at(a.x) - at(b.x)) + 1, Math.abs(at(a.y) - at(b.y)) + 1);
        });
      }
      legs += wanted.bars.length;
      bars += painted.bars.length / 167;
      expect([...painted.filled].sort()).toEqual([...wanted.filled].sort());
    }),
    { numRuns: 60 },
  );
  expect(bars).toBeLessThan(legs);
});

test("how far the next box stands beside a box is as when each is asked about each", () => {
  const rect: fc.Arbitrary<Rect> = fc.record({
    x: fc.integer({ min: -2000, max: 2000 }),
    y: fc.integer({ min: -2000, max: 2000 }),
    width: fc.integer({ min: 50, max: 700 }),
    height: fc.integer({ min: 50, max: 700 }),
  });
  fc.assert(
    fc.property(fc.array(rect, { maxLength: 14 }), (rects) => {
      const rooms = sideRooms(rects);
      rects.forEach((one, i) => {
        const beside = rects.flatMap((other, j) => {
          if (i === j || one.y >= other.y + other.height || other.y >= one.y + one.height) return [];
          return [Math.max(0, other.x - one.x - one.width, one.x - other.x - other.width)];
        });
        expect(rooms[i]).toBe(Math.min(MOST_ROOM, ...beside));
      });
    }),
  );
});
