import { describe, expect, it } from "vitest";
import { SAMPLE_FILES, sampleProject } from "../sheet-inputs.ts";
import { inputFor, pagesOf, rowsOf, tablesOf, textMarks } from "./list-case.ts";

describe("labels of the bedroom without a ground", () => {
  const project = sampleProject("two-wire-bedroom.loadside");
  const options = { state: "proposed" } as const;

  // NFPA 70, 406.4(D)(2): the device itself says "No Equipment Ground", what it protects says both.
  it("are counted by their exact words", () => {
    const tables = tablesOf(project, "labels", options);
    expect(rowsOf(tables, "Label counts").map(({ Words, Count }) => [Words, Count])).toEqual([
      ["No Equipment Ground", 3],
      ["GFCI Protected", 2],
    ]);
    expect(rowsOf(tables, "Labels").map((row) => `${row.Words}: ${row.On}`)).toEqual([
      "No Equipment Ground: R1b",
      "No Equipment Ground: R2b",
      "No Equipment Ground: R3b",
      "GFCI Protected: R2b",
      "GFCI Protected: R3b",
    ]);
  });

  it("are there to cut out as often as they are counted, in large letters", () => {
    const large = textMarks(pagesOf(project, "labels", options)).filter(
      ({ size, weight, anchor }) => weight === 700 && anchor === "middle" && size > 4,
    );
    expect(large.map(({ text }) => text).sort()).toEqual([
      "GFCI Protected",
      "GFCI Protected",
      "No Equipment Ground",
      "No Equipment Ground",
      "No Equipment Ground",
    ]);
  });

  it("are of the box alone that is asked for", () => {
    const rows = rowsOf(tablesOf(project, "labels", { ...options, box: "B1" }), "Labels");
    expect(rows.map(({ On }) => On)).toEqual(["R1b"]);
  });
});

// The slips come from the proof, those of the scope from the same by another way.
const PROPOSED = SAMPLE_FILES.filter((name) => sampleProject(name).proposed !== undefined);
it.each(PROPOSED)("reset slips of %s are as many as the scope asks for", (name) => {
  const project = sampleProject(name);
  const slips = rowsOf(tablesOf(project, "reset-slips", { state: "proposed" }), "Reset slips").map(
    ({ Outlet }) => Outlet,
  );
  const labels = inputFor(project, { state: "proposed" }).scope?.labels ?? [];
  const asked = labels.filter(({ kind }) => kind === "reset-slip").map(({ on }) => on.name);
  expect(asked.length).toBeGreaterThan(0);
  expect([...slips].sort()).toEqual([...asked].sort());
});
