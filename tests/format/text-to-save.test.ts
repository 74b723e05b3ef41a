import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { runCommand } from "../../shared-model/commands/run-command.ts";
import { parseProject } from "../../shared-model/format/parse-project.ts";
import { textToSave } from "../../shared-model/format/text-to-save.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { drawing, laundryAsFound, laundryDrawing } from "../builders/drawing.ts";
import { callOf, type RandomStep, randomSteps } from "../builders/random-commands.ts";
import { smallText } from "./small-document.ts";

const LONG = process.env.LOADSIDE_LONG !== undefined && process.env.LOADSIDE_LONG !== "";

function open(text: string): Project {
  const result = parseProject(text);
  if (!result.ok) throw new Error(result.problems.map(({ path, message }) => `${path}: ${message}`).join("\n"));
  return result.value.project;
}

const run = (project: Project, command: string, args: unknown): Project => {
  const done = runCommand(project, { command, args });
  if (!done.ok) throw new Error(done.refusal.message);
  return done.project;
};

describe("without an edit the file keeps its bytes", () => {
  test.each([
    ["as the program writes it", smallText()],
    ["without a last line end", smallText().trimEnd()],
    ["with a byte order mark and Windows line ends", `\ufeff${smallText().replaceAll("\n", "\r\n")}`],
    ["on one line", JSON.stringify(JSON.parse(smallText()))],
    [
      "with keys in another order",
      JSON.stringify(Object.fromEntries(Object.entries(JSON.parse(smallText())).reverse())),
    ],
    [
      "with numbers and texts written otherwise",
      smallText().replace(": 20,", ": 2.0e1,").replace("Small", "\\u0053mall"),
    ],
  ])("%s", (_, text) => {
    const project = open(text);
    expect(textToSave(project, { text, project })).toBe(text);
    // What comes back from the worker is a copy.
    expect(textToSave(structuredClone(project), { text, project })).toBe(text);
  });

  test("an edit that was taken back is none", () => {
    const text = JSON.stringify(JSON.parse(smallText()));
    const project = open(text);
    const edited = run(project, "set-edition", { edition: 2023 });
    expect(textToSave(edited, { text, project })).toBe(textToSave(edited));
    expect(textToSave(run(edited, "set-edition", { edition: 2020 }), { text, project })).toBe(text);
  });
});

test("after an edit the text is canonical: sorted keys, one space a level, one line end at the end, no byte order mark", () => {
  const text = `\ufeff${smallText().replaceAll("\n", "\r\n")}`;
  const project = open(text);
  const saved = textToSave(run(project, "set-edition", { edition: 2023 }), { text, project });
  expect(saved).toBe(smallText().replace('"edition": 2020', '"edition": 2023'));
  expect(saved).toMatch(/^{\n "acknowledgements": \[],\n "amendments": \[],\n "asFound": {\n {2}"cables": {\n/);
  expect(saved).toMatch(/[^\n]\n$/);
});

test("unknown fields survive an edit of what they stand in", () => {
  const root = JSON.parse(smallText());
  root.later = { of: "the document" };
  root.asFound.enclosures["box-B1"].later = "of the box";
  const text = JSON.stringify(root);
  const edited = run(open(text), "rename-item", {
    state: "as-found",
    item: { kind: "enclosure", id: "box-B1" },
    name: "B1a",
  });
  const saved = JSON.parse(textToSave(edited));
  expect([saved.later, saved.asFound.enclosures["box-B1"]]).toMatchObject([
    { of: "the document" },
    { name: "B1a", later: "of the box" },
  ]);
});

test("volumes are written in decimal cubic inches, and memory is left alone", () => {
  const project = open(smallText());
  const copy = structuredClone(project);
  expect(smallText()).toContain('"volumeIn3": 3.5');
  expect(textToSave(project)).toBe(smallText());
  expect(project).toEqual(copy);
});

test("a document of a newer version is saved only as it is", () => {
  const text = smallText().replace('"version": 1', '"version": 2');
  const project = open(text);
  expect(textToSave(project, { text, project })).toBe(text);
  expect(() => textToSave({ ...project, title: "Other" }, { text, project })).toThrow("newer version");
});

describe("every document that commands make opens again as it was", () => {
  const starts: Readonly<Record<string, Project>> = {
    empty: drawing().project,
    laundry: laundryAsFound(),
    both: laundryDrawing().propose().project,
  };
  test.each(Object.keys(starts))("from %s", (start) => {
    fc.assert(
      fc.property(randomSteps(40), (steps: readonly RandomStep[]) => {
        let project = starts[start] as Project;
        steps.forEach((step, index) => {
          const done = runCommand(project, callOf(project, step, index));
          if (done.ok) project = done.project;
        });
        const text = textToSave(project);
        const again = open(text);
        expect(again).toEqual(project);
        expect(textToSave(again)).toBe(text);
      }),
      { numRuns: LONG ? 2000 : 100 },
    );
  });
});
