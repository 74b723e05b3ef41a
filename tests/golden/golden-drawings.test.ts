/**
 * Whole small jobs, right and wrong, each with what the rules must say of it: every finding and nothing else, in every
 * state. The expectations were written by reasoning before the program was asked: from the sections that the rules
 * name, the table of 314.16(B), conductor resistances (NEC chapter 9, table 8) and the practice of the trade. A comment
 * says where the program was right and the first expectation was not.
 */
import { readdirSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { openSession } from "../../shared-model/analysis/session.ts";
import { parseProject } from "../../shared-model/format/parse-project.ts";
import { textToSave } from "../../shared-model/format/text-to-save.ts";
import type { Project, StateName } from "../../shared-model/model/project.ts";
import { invariantProblems } from "../../shared-model/queries/invariants.ts";
import { EXPECTED, findingInShort, questionInShort, readExpectation } from "./expectation.ts";
import { goldenDrawings } from "./index.ts";

/** What the program says, in the words of an expectation, each with its message. */
function said(project: Project, state: StateName): readonly { readonly short: string; readonly message: string }[] {
  const { findings, couldNotTell } = openSession(project).report(state);
  return [
    ...findings.map((one) => ({ short: findingInShort(one), message: one.message })),
    ...couldNotTell.map((one) => ({ short: questionInShort(one), message: one.message })),
  ];
}

test("every drawing has an expectation, and every expectation a drawing", () => {
  const files = readdirSync(EXPECTED).map((file) => file.replace(/\.txt$/, ""));
  expect(files.sort()).toEqual([...goldenDrawings.keys()].sort());
});

describe.each([...goldenDrawings])("%s", (name, draw) => {
  const project = draw();
  const expectation = readExpectation(name);

  test("is a sound document that reads as it was written", () => {
    expect(invariantProblems(project)).toEqual([]);
    const read = parseProject(textToSave(project));
    expect(read.ok && read.value.project).toEqual(project);
  });

  test("both states are expected where something is proposed", () => {
    expect([...expectation.keys()]).toEqual(project.proposed === undefined ? ["as-found"] : ["as-found", "proposed"]);
  });

  test.each([...expectation])("%s: exactly these findings, each with its words", (state, lines) => {
    const answers = said(project, state);
    expect(answers.map(({ short }) => short).sort()).toEqual(lines.map(({ short }) => short).sort());
    for (const { short, words } of lines) {
      const messages = answers.filter((one) => one.short === short).map(({ message }) => message);
      for (const word of words) expect(messages.join(" "), short).toContain(word);
    }
  });
});
