import fc from "fast-check";
import { expect, test } from "vitest";
import { BAR_SPOTS, type BarSpot, barArea, barSpot } from "../../renderer/sheet/bar-place.ts";

const VIEW = { width: 466, height: 640 };
const BAR = { width: 350, height: 30 };
const MARK = 95;
const FOOT = 68;

type Area = Parameters<typeof barSpot>[4][number];
const spotBeside = (...taken: readonly Area[]): BarSpot => barSpot(BAR, VIEW, MARK, FOOT, taken);

test("the bar of a chosen box stands beside the word of the state while nothing is read or pressed there", () => {
  expect(spotBeside()).toBe("head");
  expect(spotBeside({ x: 100, y: 60, width: 300, height: 400 })).toBe("head");
});

test("it goes out of the way of the name of the box and of the ends in it", () => {
  const name = { x: 118, y: 22, width: 200, height: 20 };
  expect(spotBeside(name)).toBe("foot");
  // Where nothing is free it covers the least: one end of six is less than a name.
  const ends = { x: 10, y: VIEW.height - FOOT - 20, width: 24, height: 16 };
  expect(spotBeside(name, ends)).toBe("foot");
  // In a wide view the other side of the head is nearer to where people look for it.
  const wide = { width: 1100, height: 640 };
  expect(barSpot(BAR, wide, MARK, 36, [name])).toBe("head-right");
});

test("no spot covers less than the one that is taken, and it never lies outside the view", () => {
  const at = fc.integer({ min: 0, max: 600 });
  const area = fc.record({
    x: at,
    y: at,
    width: fc.integer({ min: 1, max: 80 }),
    height: fc.integer({ min: 1, max: 80 }),
  });
  const wide = { width: 900, height: 640 };
  // Counted pixel by pixel.
  const covered = (spot: BarSpot, taken: readonly Area[]): number => {
    const { x, y, width, height } = barArea(spot, BAR, wide, MARK, FOOT);
    let count = 0;
    for (const each of taken)
      for (let i = each.x; i < each.x + each.width; i++)
        for (let j = each.y; j < each.y + each.height; j++)
          if (i >= x - 2 && i < x + width + 2 && j >= y - 2 && j < y + height + 2) count++;
    return count;
  };
  fc.assert(
    fc.property(fc.array(area, { maxLength: 8 }), (taken) => {
      const spot = barSpot(BAR, wide, MARK, FOOT, taken);
      for (const other of BAR_SPOTS) expect(covered(spot, taken)).toBeLessThanOrEqual(covered(other, taken));
      const { x, y, width, height } = barArea(spot, BAR, wide, MARK, FOOT);
      expect(x >= 0 && y >= 0 && x + width <= wide.width && y + height <= wide.height - FOOT).toBe(true);
    }),
    { numRuns: 60 },
  );
});
