import { expect, test } from "vitest";
import { inchWords } from "../../shared-model/units/inch-words.ts";

test.each([
  [0, "0 in."],
  [6, "6 in."],
  [0.25, "1/4 in."],
  [0.0625, "1/16 in."],
  [2.125, "2-1/8 in."],
  [1.1875, "1-3/16 in."],
  [-0.125, "-1/8 in."],
  [-1.5, "-1-1/2 in."],
  // No sixteenth says these.
  [1.3, "1.3 in."],
  [0.2, "0.2 in."],
  [1 / 3, "0.333 in."],
])("%d as a rule is read: %s", (length, words) => {
  expect(inchWords(length)).toBe(words);
});
