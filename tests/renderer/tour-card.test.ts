import fc from "fast-check";
import { expect, test } from "vitest";
import { placeCard } from "../../renderer/panels/tour/place-card.ts";

const CARD = { width: 360, height: 180 };
const WINDOW = { width: 1440, height: 900 };

test("beside a region where there is room, and over it only where it is as large as the window", () => {
  const left = placeCard({ left: 0, top: 54, width: 236, height: 800 }, CARD, WINDOW);
  expect(left.left).toBeGreaterThanOrEqual(236);
  const right = placeCard({ left: 1096, top: 54, width: 344, height: 800 }, CARD, WINDOW);
  expect(right.left + CARD.width).toBeLessThanOrEqual(1096);
  const strip = placeCard({ left: 0, top: 0, width: 1440, height: 54 }, CARD, WINDOW);
  expect(strip.top).toBeGreaterThanOrEqual(54);
  const whole = placeCard({ left: 0, top: 0, width: 1440, height: 900 }, CARD, WINDOW);
  expect(whole).toEqual({ left: 540, top: 360 });
});

test("always whole in a window that is large enough for it, wherever the region is", () => {
  const side = fc.integer({ min: -500, max: 2000 });
  const size = fc.integer({ min: 1, max: 1500 });
  fc.assert(
    fc.property(side, side, size, size, fc.integer({ min: 400, max: 1600 }), (left, top, width, height, wide) => {
      const at = placeCard({ left, top, width, height }, CARD, { width: wide, height: 700 });
      expect(at.left).toBeGreaterThanOrEqual(0);
      expect(at.top).toBeGreaterThanOrEqual(0);
      expect(at.left + CARD.width).toBeLessThanOrEqual(wide);
      expect(at.top + CARD.height).toBeLessThanOrEqual(700);
    }),
  );
});
