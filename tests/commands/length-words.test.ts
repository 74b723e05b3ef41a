import fc from "fast-check";
import { expect, test } from "vitest";
import { lengthInField, lengthWords, readLength } from "../../shared-model/units/length-words.ts";

/** By hand from 1 in = 25.4 mm and 1 ft = 12 in (NIST Handbook 44, Appendix C). */
const WRITTEN: readonly (readonly [string, "ft" | "in", "feet-inches" | "metres", number])[] = [
  ["12", "ft", "feet-inches", 12],
  ["12 ft", "in", "feet-inches", 144],
  [`1' 6 1/2"`, "in", "feet-inches", 18.5],
  [`1′ 6-1/2″`, "ft", "feet-inches", 18.5 / 12],
  ["18-1/2 in.", "in", "feet-inches", 18.5],
  ["6 in", "ft", "feet-inches", 0.5],
  ["1/2", "in", "feet-inches", 0.5],
  ["6 1/4", "in", "metres", 0.24606],
  ["3.048 m", "ft", "feet-inches", 10],
  ["3,048 m", "ft", "metres", 10],
  ["3.048", "ft", "metres", 10],
  ["254 mm", "in", "feet-inches", 10],
  ["25.4cm", "in", "metres", 10],
  ["254", "in", "metres", 10],
  ["0", "ft", "feet-inches", 0],
];

test.each(WRITTEN)("%s in a field of %s, %s, is %d", (text, unit, system, expected) => {
  expect(readLength(text, unit, system)).toBeCloseTo(expected, 9);
});

test.each(["", "six", "1/0", "-3", "3 miles", "1e5 m", "4 ft 3 m", "--", "'", "Infinity", "NaN", "1 2 3"])(
  "%j is no length",
  (text) => {
    for (const unit of ["ft", "in"] as const)
      for (const system of ["feet-inches", "metres"] as const) expect(readLength(text, unit, system)).toBeUndefined();
  },
);

test("lengths are written as they are read off a rule or a tape", () => {
  expect(lengthWords(12, "ft", "feet-inches")).toBe("12 ft");
  expect(lengthWords(12.5, "ft", "feet-inches")).toBe("12 ft 6 in.");
  expect(lengthWords(11.9999, "ft", "feet-inches")).toBe("12 ft");
  expect(lengthWords(6.5, "in", "feet-inches")).toBe("6-1/2 in.");
  expect(lengthWords(12.5, "ft", "metres")).toBe("3.81 m");
  expect(lengthWords(6.5, "in", "metres")).toBe("165 mm");
  expect(lengthInField(12.5, "ft", "metres")).toBe("3.81");
  expect(lengthInField(6.5, "in", "feet-inches")).toBe("6-1/2");
});

test("what was typed in millimetres shows again as typed", () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 500_000 }), fc.constantFrom("ft" as const, "in" as const), (mm, unit) => {
      const typed = unit === "ft" ? String(mm / 1000) : String(mm);
      const stored = readLength(typed, unit, "metres") as number;
      expect(lengthInField(stored, unit, "metres")).toBe(typed);
    }),
  );
});

test("what stands in a field in feet and inches is read as the same length, to a sixteenth", () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 40_000 }), fc.constantFrom("ft" as const, "in" as const), (n, unit) => {
      const length = unit === "ft" ? n / 192 : n / 16;
      const again = readLength(lengthInField(length, unit, "feet-inches"), unit, "feet-inches") as number;
      expect(again).toBeCloseTo(length, 9);
    }),
  );
});
