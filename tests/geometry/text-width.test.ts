import { expect, test } from "vitest";
import { fitText, textWidth } from "../../shared-model/geometry/text-width.ts";

test("widths add up from the table of the face: C 645, 3 576, space 280, B 613, K 631 of 1000", () => {
  expect(textWidth("C3 BK", 10)).toBeCloseTo((645 + 576 + 280 + 613 + 631) / 100, 6);
  expect(textWidth("", 11)).toBe(0);
});

test("bold and spaced text is wider, a character outside the table counts as one letter", () => {
  expect(textWidth("BK", 11, 800)).toBeGreaterThan(textWidth("BK", 11, 400));
  expect(textWidth("LINE", 10, 400, 0.1)).toBeCloseTo(textWidth("LINE", 10) + 4, 6);
  expect(textWidth("你", 10)).toBeGreaterThan(4);
});

test("a text that does not fit ends in an ellipsis and fits", () => {
  expect(fitText("C3", 100, 11)).toBe("C3");
  const cut = fitText("Kitchen counter feed number three", 60, 11);
  expect(cut.endsWith("…")).toBe(true);
  expect(textWidth(cut, 11)).toBeLessThanOrEqual(60);
});
