import fc from "fast-check";
import { expect, test } from "vitest";
import {
  type InTheWay,
  NOTICE_EDGE,
  NOTICE_SIDES,
  NOTICE_STEP,
  noticeArea,
  noticeSpot,
} from "../../renderer/sheet/notice-spot.ts";

const VIEW = { width: 504, height: 598 };
const NOTICE = { width: 440, height: 98 };

const at = (x: number, y: number, width: number, height: number, weight = 4): InTheWay => ({
  area: { x, y, width, height },
  weight,
});
/** Written apart from the code that looks for the spot. */
const lieOnEachOther = (a: InTheWay["area"], b: InTheWay["area"]): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

test("a notice stands in the middle of the head while nothing lies there", () => {
  expect(noticeSpot(NOTICE, VIEW, [])).toEqual({ side: "center", top: NOTICE_EDGE.head });
  expect(noticeSpot(NOTICE, VIEW, [at(100, 300, 300, 200)])).toEqual({ side: "center", top: NOTICE_EDGE.head });
});

test("it goes below a box that reaches up to the head, and over the title block before it covers the box", () => {
  const box = at(60, 60, 380, 330);
  expect(noticeSpot(NOTICE, VIEW, [box]).top).toBeGreaterThan(390);
  const block = at(20, 490, 464, 88, 3);
  const tall = at(60, 60, 380, 420);
  const name = at(60, 40, 200, 16, 5);
  expect(noticeSpot(NOTICE, VIEW, [tall, name, block]).top).toBeGreaterThanOrEqual(484);
});

test("beside a box that is as high as a wide view there is room for it", () => {
  const view = { width: 1400, height: 700 };
  expect(noticeSpot(NOTICE, view, [at(500, 0, 880, 700)]).side).toBe("flex-start");
});

test("where any spot is free, nothing is touched", () => {
  const side = fc.integer({ min: 0, max: 560 });
  const size = fc.integer({ min: 1, max: 120 });
  const thing = fc.record({ x: side, y: side, width: size, height: size });
  const view = { width: 700, height: 598 };
  let free = 0;
  fc.assert(
    fc.property(fc.array(thing, { maxLength: 6 }), (areas) => {
      const spots = NOTICE_SIDES.flatMap((which) =>
        Array.from({ length: 1 + Math.floor((view.height - 138) / NOTICE_STEP) }, (_, step) =>
          noticeArea({ side: which, top: NOTICE_EDGE.head + step * NOTICE_STEP }, NOTICE, view),
        ),
      );
      // With the room that is kept around each.
      const roomy = areas.map(({ x, y, width, height }) => ({
        x: x - 4,
        y: y - 4,
        width: width + 8,
        height: height + 8,
      }));
      if (!spots.some((spot) => !roomy.some((area) => lieOnEachOther(spot, area)))) return;
      free += 1;
      const taken = areas.map((area) => ({ area, weight: 1 }));
      const chosen = noticeArea(noticeSpot(NOTICE, view, taken), NOTICE, view);
      expect(areas.filter((area) => lieOnEachOther(chosen, area))).toEqual([]);
      expect(chosen.y + chosen.height).toBeLessThanOrEqual(view.height);
    }),
  );
  expect(free).toBeGreaterThan(20);
});
