/** A sheet says why it has nothing to print exactly where its page would say no more than that. */
import { describe, expect, test } from "vitest";
import { openListSheet } from "../../shared-model/sheets/page/list-sheet.ts";
import { SHEETS } from "../../shared-model/sheets/registry.ts";
import { textsOf } from "../../shared-model/sheets/text-boxes.ts";
import { blank } from "./lists/list-case.ts";
import { inputOf, SAMPLE_FILES, sampleProject, statesOf } from "./sheet-inputs.ts";

/** A sentence takes so many lines at most. */
const LINES = 2;

describe.each(SAMPLE_FILES)("%s", (name) => {
  const project = sampleProject(name);
  test.each(statesOf(project))("%s: an empty page is told of, and a page with something on it is not", (state) => {
    const input = inputOf(project, { state });
    for (const { kind, title, make, nothing } of SHEETS) {
      const bare = textsOf(openListSheet(input, { kind, title }).pages()[0]?.marks ?? []).length;
      const pages = make(input);
      const words = pages.flatMap(({ marks }) => textsOf(marks).map(({ text }) => text));
      const why = nothing(input);
      if (why === undefined) expect(words.length, kind).toBeGreaterThan(bare + LINES);
      else {
        expect([kind, pages.length]).toEqual([kind, 1]);
        expect(words.join(" "), kind).toContain(why);
        expect(words.length, kind).toBeLessThanOrEqual(bare + LINES);
      }
    }
  });
});

test("of the laundry job labels are the one sheet with nothing to say; as found there are no slips either", () => {
  const project = sampleProject("laundry-proposed.loadside");
  const emptyOf = (state: "as-found" | "proposed") => {
    const input = inputOf(project, { state });
    return SHEETS.filter(({ nothing }) => nothing(input) !== undefined).map(({ kind }) => kind);
  };
  expect(emptyOf("proposed")).toEqual(["labels"]);
  expect(emptyOf("as-found")).toEqual(["labels", "reset-slips"]);
});

test("the scope of a box that stays closed has its slip to leave, and without one nothing", () => {
  const project = sampleProject("laundry-proposed.loadside");
  const why = (box: string) =>
    SHEETS.find(({ kind }) => kind === "scope")?.nothing(inputOf(project, { state: "proposed", box }));
  // R2 in B2 is reset at the laundry; the stair light in B7 is left on LINE.
  expect(why("B2")).toBeUndefined();
  expect(why("B7")).toMatch(/^As found and proposed are alike/);
});

test("of an empty drawing every sheet has nothing to say, and says what to do", () => {
  const input = inputOf(blank());
  for (const { kind, nothing } of SHEETS) expect(nothing(input), kind).toMatch(/[.]$/);
});
