import { expect, test } from "vitest";
import { sizeWords, standardBoxes } from "../../shared-model/catalog/standard-boxes.ts";

test("a trade size is told by its name, in metres with millimetres by 25.4 to the inch", () => {
  expect(sizeWords("4x2-1/8 square")).toBe("4 × 2-1/8 square");
  expect(sizeWords("4x2-1/8 square", "metres")).toBe("4 × 2-1/8 square, 102 × 54 mm");
  expect(sizeWords("4-11/16x1-1/4 square", "metres")).toBe("4-11/16 × 1-1/4 square, 119 × 32 mm");
  expect(sizeWords("3-3/4x2x2-1/2 masonry, per gang", "metres")).toBe(
    "3-3/4 × 2 × 2-1/2 masonry, per gang, 95 × 51 × 64 mm",
  );
  expect(sizeWords("FS single cover, 1-3/4 min depth, per gang", "metres")).toBe(
    "FS single cover, 1-3/4 min depth, per gang, 44 mm",
  );
  expect(sizeWords("a size of no table", "metres")).toBe("a size of no table");
  expect(sizeWords("3x2x3 device")).toBe("3 × 2 × 3 device");
});

test("every size of the table has millimetres in metres", () => {
  for (const { size } of standardBoxes) expect(sizeWords(size, "metres"), size).toMatch(/, [1-9]\d*( × [1-9]\d*)* mm$/);
});
