import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { beforeAll, expect, test } from "vitest";
import { textToSave } from "../../shared-model/format/text-to-save.ts";
import { isSerious, type Severity } from "../../shared-model/model/severity.ts";
import { findingInShort, questionInShort, readExpectation } from "../golden/expectation.ts";
import { goldenDrawings } from "../golden/index.ts";
import { buildLoadside, loadside } from "./run-loadside.ts";

beforeAll(buildLoadside, 120_000);

interface Answer {
  readonly file: string;
  readonly state: "as-found" | "proposed";
  readonly findings: readonly (Parameters<typeof findingInShort>[0] & { readonly severity: Severity })[];
  readonly couldNotTell: readonly Parameters<typeof questionInShort>[0][];
}

/** Every golden drawing as a file, given to one run of the program as a script would give it. */
test("check over all golden drawings, both states, tells exactly what is expected, and its status says whether it is serious", () => {
  const folder = mkdtempSync(join(tmpdir(), "loadside-golden-"));
  try {
    const files = [...goldenDrawings].map(([name, draw]) => {
      const file = join(folder, `${name}.loadside`);
      writeFileSync(file, textToSave(draw()));
      return file;
    });
    const { status, stdout, stderr } = loadside(["check", ...files, "--state", "both", "--json"]);
    expect([status, stderr]).toEqual([1, ""]);
    const answers: readonly Answer[] = JSON.parse(stdout);
    const told = answers.map(({ file, state, findings, couldNotTell }) => [
      `${basename(file, ".loadside")} ${state}`,
      [...findings.map(findingInShort), ...couldNotTell.map(questionInShort)].sort(),
    ]);
    const expected = [...goldenDrawings.keys()].flatMap((name) =>
      [...readExpectation(name)].map(([state, lines]) => [`${name} ${state}`, lines.map(({ short }) => short).sort()]),
    );
    expect(told).toEqual(expected);

    const quiet = answers.find(({ findings }) => !findings.some(isSerious));
    if (quiet === undefined) throw new Error("No drawing is right.");
    expect(loadside(["check", quiet.file, "--state", quiet.state]).status).toBe(0);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}, 120_000);
