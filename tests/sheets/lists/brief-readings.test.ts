import { expect, it } from "vitest";
import { sampleProject } from "../sheet-inputs.ts";
import { pagesOf, rowsOf, tablesOf, textMarks } from "./list-case.ts";

const PROPOSED = { state: "proposed" } as const;

it("a reading under load is told in full in the list, and without what its instruction says beneath it", () => {
  const project = sampleProject("laundry-proposed.loadside");
  const listed = rowsOf(tablesOf(project, "steps", PROPOSED), "Expected readings").map(({ What }) => String(What));
  const loaded = listed.filter((what) => what.endsWith(", loaded"));
  expect(loaded.length).toBeGreaterThan(5);
  const words = textMarks(pagesOf(project, "steps", PROPOSED)).map(({ text }) => text);
  expect(words.filter((text) => text.endsWith("loaded"))).toEqual([]);
  for (const what of loaded) expect(words).toContain(what.replace(", loaded", ""));
});
