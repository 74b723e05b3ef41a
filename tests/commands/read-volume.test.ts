import { expect, test } from "vitest";
import { readVolume } from "../../shared-model/units/read-volume.ts";
import { toDecimal } from "../../shared-model/units/volume.ts";

/** An inch is 25.4 mm exactly, so a cubic inch is 16.387064 mL (NIST Handbook 44, Appendix C). Computed by hand. */
test.each([
  ["30.3", 30.3],
  ["30.3 in³", 30.3],
  ["18 cu. in.", 18],
  ["18 cu in", 18],
  ["497 mL", 30.3288],
  ["497,0 ml", 30.3288],
  ["16.387064 mL", 1],
  ["16.387 ml", 0.9999],
])("%s is %d in³", (text, in3) => {
  expect(toDecimal(readVolume(text) ?? (Number.NaN as never))).toBe(in3);
});

test.each(["", "0", "-4", "30.30001", "497 gallons", "mL", "1e3", "NaN", "0.0001 mL"])("%j is no volume", (text) => {
  expect(readVolume(text)).toBeUndefined();
});
