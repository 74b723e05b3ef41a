/** Areas of rooms on the sheet: which boxes they gather, how much room they take, where their names stand. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
import { areasOf, clustersOf, nameLeft, type StandingIn } from "../../shared-model/geometry/room-areas.ts";
import { asId, type RoomId } from "../../shared-model/model/ids.ts";

const room = (name: string): RoomId => asId<RoomId>(name);
const box = (name: string | undefined, x: number, y: number, width = 400, height = 300): StandingIn => ({
  room: name === undefined ? undefined : room(name),
  rect: { x, y, width, height },
});
const holds = (area: Rect, rect: Rect): boolean =>
  area.x <= rect.x &&
  area.y <= rect.y &&
  area.x + area.width >= rect.x + rect.width &&
  area.y + area.height >= rect.y + rect.height;
const meet = (a: Rect, b: Rect): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

/** Boxes on a wide grid, so that none lies on another: where they stand, and in which room. */
const house = fc
  .uniqueArray(
    fc.record({
      column: fc.integer({ min: 0, max: 7 }),
      row: fc.integer({ min: 0, max: 7 }),
      name: fc.constantFrom("r1", "r2", "r3", undefined),
    }),
    { selector: ({ column, row }) => `${column} ${row}`, minLength: 1, maxLength: 40 },
  )
  .map((spots) => spots.map(({ column, row, name }) => box(name, column * 900, row * 800)));

const MARGIN = { top: 500, side: 200, bottom: 400, named: 300, foot: 150, apart: 30 };

describe("areas", () => {
  test("boxes of one room that stand together have one area; a box between them parts it", () => {
    expect(clustersOf([box("r1", 0, 0), box("r1", 900, 0), box("r1", 0, 800)])).toEqual([
      { room: "r1", rect: { x: 0, y: 0, width: 1300, height: 1100 } },
    ]);
    const parted = clustersOf([box("r1", 0, 0), box("r2", 900, 0), box("r1", 1800, 0)]);
    expect(parted.map((each) => each.rect.width)).toEqual([400, 400, 400]);
    expect(clustersOf([box("r1", 0, 0), box("r1", 9000, 0)])).toHaveLength(2);
    expect(clustersOf([box(undefined, 0, 0)])).toEqual([]);
  });

  test("each box of a room lies in an area of it, none in an area of another; no two areas meet; order has no say", () => {
    fc.assert(
      fc.property(house, (boxes) => {
        const clusters = clustersOf(boxes);
        const loose = boxes.filter((each) => each.room === undefined).map(({ rect }) => rect);
        const areas = areasOf(clusters, loose, MARGIN);
        for (const each of boxes) {
          const around = areas.filter(({ rect }) => meet(rect, each.rect));
          if (each.room === undefined) expect(around).toEqual([]);
          else {
            expect(around.map((area) => area.room)).toEqual([each.room]);
            expect(around.every(({ rect }) => holds(rect, each.rect))).toBe(true);
          }
        }
        areas.forEach((a, i) => {
          for (const b of areas.slice(i + 1)) expect(meet(a.rect, b.rect)).toBe(false);
        });
        const text = (list: readonly object[]) => list.map((each) => JSON.stringify(each)).sort();
        expect(text(clustersOf([...boxes].reverse()))).toEqual(text(clusters));
      }),
      { numRuns: 300 },
    );
  });

  test("a thousand boxes of one room are gathered without a noticeable wait", () => {
    const many = Array.from({ length: 1000 }, (_, i) => box("r1", (i % 25) * 900, Math.floor(i / 25) * 800));
    const few = many.slice(0, 250);
    const time = (boxes: readonly StandingIn[]): number => {
      const from = process.cpuUsage();
      for (let i = 0; i < 5; i++) clustersOf(boxes);
      return process.cpuUsage(from).user;
    };
    time(many);
    expect(clustersOf(many)).toHaveLength(1);
    // Four times the boxes; were every pair looked at in every pass, it would be far more than sixteen times the time.
    expect(time(many)).toBeLessThan(24 * Math.max(time(few), 1000));
  });
});

describe("names", () => {
  test("a name stands over its boxes, under them where there is no room above, else nowhere", () => {
    const where = (above: number, below: number) =>
      areasOf(
        clustersOf([box("r1", 0, 0)]),
        [
          { x: 0, y: -above - 100, width: 400, height: 100 },
          { x: 0, y: 300 + below, width: 400, height: 100 },
        ],
        MARGIN,
      )[0]?.name;
    expect(where(2000, 2000)).toBe("top");
    expect(where(300, 2000)).toBe("bottom");
    expect(where(300, 300)).toBeUndefined();
  });

  const band = { x: 0, y: 0, width: 1000, height: 100 };
  const cable = (x: number, from = -500, to = 500) => ({ x, from, to });

  test("a name stands at the left, or as far to the right as cables drive it", () => {
    expect(nameLeft(band, 300, [], 50)).toBe(0);
    expect(nameLeft(band, 300, [cable(200)], 50)).toBe(250);
    expect(nameLeft(band, 300, [cable(400)], 50)).toBe(0);
    expect(nameLeft(band, 300, [cable(200), cable(400)], 50)).toBe(450);
  });

  test("a cable above, below or beside is in the way of no name; where there is no room there is no place", () => {
    expect(nameLeft(band, 300, [cable(100, 100, 900), cable(100, -900, 0), cable(2000)], 50)).toBe(0);
    // A cable along the band covers as much of it as it is long.
    expect(nameLeft(band, 300, [{ x: 100, until: 500, from: 50, to: 50 }], 50)).toBe(550);
    expect(nameLeft(band, 900, [cable(200)], 50)).toBeUndefined();
  });
});
