import { describe, expect, test } from "vitest";
import { SHEETS } from "../../shared-model/sheets/registry.ts";
import { pageFaults } from "./page-faults.ts";
import { inputOf, SAMPLE_FILES, sampleProject, statesOf } from "./sheet-inputs.ts";

describe.each(SAMPLE_FILES)("%s", (name) => {
  const project = sampleProject(name);
  test.each(statesOf(project))(
    "%s: every sheet prints inside its margins and no text on text, on Letter and A4",
    (state) => {
      for (const paper of ["letter", "a4"] as const) {
        const input = inputOf(project, { state, paper });
        for (const { kind, make } of SHEETS) {
          const pages = make(input);
          expect(pages.length, kind).toBeGreaterThan(0);
          expect(pages.flatMap(pageFaults), `${kind} on ${paper}`).toEqual([]);
        }
      }
    },
  );
});
