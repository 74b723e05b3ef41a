import { describe, expect, test } from "vitest";
import { standardBoxes } from "../../shared-model/catalog/standard-boxes.ts";
import { DATED_EDITIONS } from "../../shared-model/model/project.ts";
import { type FillCase, fillCase } from "../../shared-model/rules/fill/fill-case.ts";
import { readFillCases } from "../../shared-model/rules/fill/read-fill-case.ts";
import published from "../reference/box-fill-cases.json" with { type: "json" };
import metal from "../reference/metal-box-counts.json" with { type: "json" };

function answer(input: unknown) {
  const read = readFillCases(input);
  if (!read.ok) throw new Error(read.problems.map(({ path, message }) => `${path}: ${message}`).join("\n"));
  return fillCase(read.value as FillCase);
}

/** Each case names its source in the file; where the source is wrong the figure worked by hand stands. */
describe("published box-fill examples", () => {
  test.each(published.cases)("$id: $source.title", ({ case: input, expect: worked, published: printed, disagrees }) => {
    const { totalIn3, verdict } = answer(input);
    expect({ totalIn3, verdict }).toEqual(worked);
    const total = "total_in3" in printed ? printed.total_in3 : undefined;
    // One source prints two decimals of 3.9375, cut off.
    if (total !== undefined && !disagrees) expect(Math.abs((totalIn3 ?? 0) - total)).toBeLessThan(0.01);
    if ("passes" in printed && !disagrees) expect(verdict === "fits").toBe(printed.passes);
  });

  test("the sources that disagree are those known to be wrong", () => {
    const wrong = published.cases.filter(({ disagrees }) => disagrees).map(({ id }) => id);
    expect(wrong).toEqual(["BF17", "BF23", "BF26-5", "BF26-6", "BF28-15", "BF28-16", "BF41"]);
  });
});

/** NFPA 70 Table 314.16(A), from memory, with the rows that were also found printed; the same in every edition. */
describe("conductors of one size that a standard metal box holds", () => {
  test("the catalogue has the boxes of the table with their volumes", () => {
    expect(standardBoxes.map(({ size, volumeIn3 }) => ({ size, volumeIn3 }))).toEqual(
      metal.boxes.map(({ size, volumeIn3 }) => ({ size, volumeIn3 })),
    );
  });

  test.each(metal.boxes)("$size", ({ size, counts }) => {
    for (const edition of DATED_EDITIONS) {
      for (const [awg, count] of Object.entries(counts)) {
        const verdict = (conductors: number): string =>
          answer({ edition, box: { size }, conductors: [{ awg, count: conductors, as: "ends" }] }).verdict;
        expect([size, awg, verdict(count), verdict(count + 1)]).toEqual([size, awg, "fits", "overfull"]);
      }
    }
  });
});
