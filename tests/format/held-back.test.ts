import { expect, test } from "vitest";
import { parseProject } from "../../shared-model/format/parse-project.ts";
import { textToSave } from "../../shared-model/format/text-to-save.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { smallProject } from "./small-document.ts";

const noted = (): Project => ({
  ...smallProject(),
  heldBack: [
    {
      id: "1",
      title: "Remove C5",
      because: "In proposed, C5 would be cut off.",
      items: [{ kind: "cable", id: "cable-C5", name: "C5" }],
    },
  ],
  acknowledgements: [
    {
      finding: "box-overfull|enclosure:box-B1",
      state: "as-found",
      by: "J. Doe",
      reason: "It is replaced next week.",
      at: "2026-05-04T10:20:30Z",
      said: "B1 is overfull.",
    },
  ],
});

const problemsOf = (document: object): readonly string[] => {
  const opened = parseProject(JSON.stringify(document));
  return opened.ok ? [] : opened.problems.map(({ code, path }) => `${code} ${path}`);
};

test("an edit that was held back, and what a finding said, are saved and opened as they were", () => {
  const opened = parseProject(textToSave(noted()));
  if (!opened.ok) throw new Error(opened.problems[0]?.message);
  expect(opened.value.project.heldBack).toEqual(noted().heldBack);
  expect(opened.value.project.acknowledgements).toEqual(noted().acknowledgements);
});

test("both may be absent, and neither may be something else", () => {
  const document = JSON.parse(textToSave(noted()));
  const {
    heldBack: [held],
    acknowledgements: [word],
  } = document;
  const { said: _, ...old } = word;
  expect(problemsOf({ ...document, heldBack: undefined, acknowledgements: [old] })).toEqual([]);
  expect(problemsOf({ ...document, acknowledgements: [{ ...word, said: 7 }] })).toEqual([
    "wrong-value /acknowledgements/0/said",
  ]);
  expect(problemsOf({ ...document, heldBack: [{ ...held, items: [{ ...held.items[0], kind: "house" }] }] })).toEqual([
    "wrong-value /heldBack/0/items/0/kind",
  ]);
  expect(problemsOf({ ...document, heldBack: [{ ...held, because: undefined }] })).toEqual([
    "missing-field /heldBack/0/because",
  ]);
});
