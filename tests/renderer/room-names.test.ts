import fc from "fast-check";
import { expect, test } from "vitest";
import type { RoomArea } from "../../shared-model/geometry/room-areas.ts";
import { signOf } from "../../shared-model/geometry/room-sign.ts";
import { textWidth } from "../../shared-model/geometry/text-width.ts";
import { asId, type RoomId } from "../../shared-model/model/ids.ts";
import type { Room } from "../../shared-model/model/room.ts";

const id = asId<RoomId>("r1");
const room: Room = { id, name: "Hall, first floor", kinds: ["hallway"], order: 0 };
const area = (width: number): RoomArea => ({
  room: id,
  name: "top",
  top: 24,
  rect: { x: 0, y: 0, width, height: 100 },
});
/** Of a sign, from its middle to its rim of paper, in pixels. */
const HALF = 11;
const upright = (x: number) => ({ x, from: 9, to: 31 });
const span = ({ name, x, size }: ReturnType<typeof signOf>) => [x, x + textWidth(name, size) * 1.28] as const;

test("the name of a room stands beside the sign of a finding, not under it", () => {
  const plain = signOf(area(400), room, 1, [], [], 4);
  expect(plain.name).toBe("HALL, FIRST FLOOR");
  const beside = signOf(area(400), room, 1, [], [upright(60)], 4);
  expect(beside.name).toBe("HALL, FIRST FLOOR");
  expect(beside.x).toBeGreaterThanOrEqual(60 + HALF);
});

test("a name without room beside the signs is written short, or not at all", () => {
  const short = signOf(area(190), room, 1, [], [upright(100)], 4);
  expect(short.name).toBe("HALL");
  expect(span(short)[1]).toBeLessThanOrEqual(100 - HALF);
  expect(signOf(area(190), room, 1, [], [upright(30), upright(70), upright(110), upright(150)], 4).name).toBe("");
});

test("cables may run under a name where nothing else is free, signs never lie on one", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 40, max: 500 }),
      fc.array(fc.integer({ min: 0, max: 500 }), { maxLength: 6 }),
      fc.array(fc.integer({ min: 0, max: 500 }), { maxLength: 12 }),
      (width, signs, cables) => {
        const sign = signOf(area(width), room, 1, cables.map(upright), signs.map(upright), 4);
        const [from, to] = span(sign);
        if (sign.name === "") return;
        for (const x of signs) expect(x + HALF <= from + 1e-6 || x - HALF >= to - 1e-6).toBe(true);
        expect(to).toBeLessThanOrEqual(width);
      },
    ),
  );
});
