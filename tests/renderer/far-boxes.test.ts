import { expect, test } from "vitest";
import { boxUnder } from "../../renderer/sheet/far/box-under.ts";
import type { FarItem } from "../../renderer/sheet/far/far-scene.ts";
import { asId, type EnclosureId } from "../../shared-model/model/ids.ts";

const item = (id: string, x: number, y: number, width: number, height: number): FarItem => ({
  id: asId<EnclosureId>(id),
  rect: { x, y, width, height },
  name: id,
  symbols: [],
  ratio: undefined,
  sign: undefined,
  change: undefined,
  aside: Number.POSITIVE_INFINITY,
});

const items = [item("b1", 0, 0, 600, 400), item("b2", 1200, 0, 600, 400), item("b3", 1500, 300, 600, 400)];

test("a painted box is found where it is pressed; of two over each other, the one painted later", () => {
  expect(boxUnder(items, { x: 10, y: 10 }, 0.1)).toBe("b1");
  expect(boxUnder(items, { x: 600, y: 400 }, 0.1)).toBe("b1");
  expect(boxUnder(items, { x: 1600, y: 350 }, 0.1)).toBe("b3");
  expect(boxUnder(items, { x: 900, y: 200 }, 0.1)).toBeUndefined();
  expect(boxUnder([], { x: 0, y: 0 }, 0.1)).toBeUndefined();
});

test("a box of a few pixels takes presses in 24 pixels around its middle, the nearest first", () => {
  // 600 units are 6 pixels here: 9 more on either side, 900 units.
  expect(boxUnder(items, { x: -890, y: 200 }, 0.01)).toBe("b1");
  expect(boxUnder(items, { x: -910, y: 200 }, 0.01)).toBeUndefined();
  expect(boxUnder(items, { x: 800, y: 100 }, 0.01)).toBe("b1");
  expect(boxUnder(items, { x: 1100, y: 100 }, 0.01)).toBe("b2");
});
