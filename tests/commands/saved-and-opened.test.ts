import fc from "fast-check";
import { expect, test } from "vitest";
import { runCommand } from "../../shared-model/commands/run-command.ts";
import { parseProject } from "../../shared-model/format/parse-project.ts";
import { textToSave } from "../../shared-model/format/text-to-save.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { drawing, laundryDrawing } from "../builders/drawing.ts";
import { callOf, randomSteps } from "../builders/random-commands.ts";
import { sameDocument } from "./same-document.ts";

const LONG = process.env.LOADSIDE_LONG !== undefined && process.env.LOADSIDE_LONG !== "";
const RUNS = LONG ? 1_000 : 100;

/** Commands are not stricter or looser than files: what one makes, the other takes. */
test("whatever commands draw can be saved, and opens again as it was", { timeout: LONG ? 600_000 : 60_000 }, () => {
  const starts: Readonly<Record<string, Project>> = {
    empty: drawing().project,
    both: laundryDrawing().propose().project,
  };
  fc.assert(
    fc.property(fc.constantFrom("empty", "both"), randomSteps(40), (start, steps) => {
      let project = starts[start] ?? drawing().project;
      steps.forEach((step, index) => {
        const done = runCommand(project, callOf(project, step, index));
        if (done.ok) project = done.project;
      });
      const opened = parseProject(textToSave(project));
      if (!opened.ok) throw new Error(opened.problems.map((one) => `${one.path}: ${one.message}`).join("\n"));
      expect(sameDocument(opened.value.project, project)).toBe(true);
    }),
    { numRuns: RUNS },
  );
});
