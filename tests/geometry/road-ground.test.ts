/** What roads are laid on: found by strip and stretch, and the same as if every box and every leg were asked. */
import fc from "fast-check";
import { expect, test } from "vitest";
import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
import { openGround } from "../../shared-model/geometry/roads/ground.ts";
import { layingRoads, layRoads } from "../../shared-model/geometry/roads/lay-roads.ts";
import { NEAR_ROADS, type RoadEnds } from "../../shared-model/geometry/roads/road.ts";
import { openStrips } from "../../shared-model/geometry/roads/strips.ts";
import type { Point } from "../../shared-model/model/project.ts";

/** Farther than is looked over part by part, and less far. */
const along = fc.oneof(fc.integer({ min: -4000, max: 4000 }), fc.integer({ min: -400_000, max: 400_000 }));
const span = fc.tuple(along, along).map(([a, b]) => [Math.min(a, b), Math.max(a, b)] as const);

test("everything in a strip that meets a stretch is asked, and nothing of another strip", () => {
  const things = fc.array(fc.record({ strip: fc.integer({ min: -2, max: 2 }), span }), { maxLength: 30 });
  const question = fc.record({ strip: fc.integer({ min: -2, max: 2 }), span });
  fc.assert(
    fc.property(things, question, (all, { strip, span: [from, to] }) => {
      const strips = openStrips<(typeof all)[number]>(600);
      for (const thing of all) strips.put(thing.strip, ...thing.span, thing);
      const asked = new Set<(typeof all)[number]>();
      strips.some(strip, from, to, (thing) => {
        asked.add(thing);
        return false;
      });
      for (const thing of all) {
        const meets = thing.strip === strip && thing.span[0] <= to && thing.span[1] >= from;
        if (meets) expect(asked).toContain(thing);
        if (thing.strip !== strip) expect(asked).not.toContain(thing);
      }
      expect(strips.some(strip, from, to, () => true)).toBe(asked.size > 0);
    }),
  );
});

const place = fc.integer({ min: -3000, max: 3000 });
const box: fc.Arbitrary<Rect> = fc.record({
  x: place,
  y: place,
  width: fc.integer({ min: 10, max: 1500 }),
  height: fc.integer({ min: 10, max: 1500 }),
});

test("whether a leg is clear, and where it ends before a box, is as when every box is asked", () => {
  const { road } = NEAR_ROADS;
  const off = 0.65 * Math.max(road, NEAR_ROADS.lane * 0.7);
  fc.assert(
    fc.property(fc.array(box, { maxLength: 12 }), place, place, place, (boxes, at, p, q) => {
      const ground = openGround(boxes, NEAR_ROADS);
      const [low, high] = [Math.min(p, q), Math.max(p, q)];
      const blocks = ({ x, y, width, height }: Rect): boolean =>
        at > x - off && at < x + width + off && low - road / 2 < y + height && high + road / 2 > y;
      expect(ground.isClear(at, p, q)).toBe(!boxes.some(blocks));
      expect(ground.free(at, p, q)).toBe(!boxes.some(blocks));
      const crosses = ({ x, y, width, height }: Rect): boolean =>
        at > y - off && at < y + height + off && low < x + width && high > x;
      expect(ground.freeLevel(at, p, q)).toBe(!boxes.some(crosses));
      const out = q >= p ? 1 : -1;
      const walls = boxes
        .filter(({ y, height }) => at > y - off && at < y + height + off)
        .map(({ x, width }) => (out > 0 ? x : x + width))
        .filter((wall) => (wall - p) * out > 0 && (wall - q) * out < 0)
        .map((wall) => (wall - p) * out);
      const end = walls.length === 0 ? q : p + out * Math.min(...walls) - out * off;
      expect(ground.reach(at, p, out, q)).toBeCloseTo(end, 6);
    }),
  );
});

test("a leg that was laid keeps others a lane away wherever they run beside it, however long it is", () => {
  fc.assert(
    fc.property(place, span, place, span, (at, [from, to], other, [start, end]) => {
      const ground = openGround([], NEAR_ROADS);
      ground.take([
        { x: at, y: from },
        { x: at, y: to },
      ]);
      const { lane, road } = NEAR_ROADS;
      const near = Math.abs(at - other) < lane - road / 100;
      const beside = start - road / 2 < to + road / 2 && end + road / 2 > from - road / 2;
      // A leg of no length is none.
      fc.pre(from < to);
      expect(ground.free(other, start, end)).toBe(!(near && beside));
    }),
  );
});

test("left off after any road and gone on with, roads are laid as at once", () => {
  const ends: readonly RoadEnds[] = Array.from({ length: 9 }, (_, i) => ({
    a: { at: { x: 0, y: i * 70 }, out: 1 },
    b: { at: { x: 2400, y: 900 - i * 110 }, out: -1 },
  }));
  const boxes = [
    { x: 700, y: 100, width: 500, height: 400 },
    { x: 1500, y: -200, width: 500, height: 700 },
  ];
  const steps = layingRoads(ends, boxes, NEAR_ROADS);
  let count = 0;
  let laid: readonly (readonly Point[])[] | undefined;
  while (laid === undefined) {
    const step = steps.next();
    if (step.done === true) laid = step.value;
    else count += 1;
    // Another laying in between has no say.
    layRoads(ends.slice(3), boxes);
  }
  expect(count).toBeGreaterThanOrEqual(ends.length);
  expect(laid).toEqual(layRoads(ends, boxes));
});
