/** A job is laid out in the order of a job folder, a step at a time, and of what the document has. */
import { describe, expect, test } from "vitest";
import type { PaperJob } from "../../../shared-model/answers/paper-messages.ts";
import type { Project } from "../../../shared-model/model/project.ts";
import { layOutJob, type MadePages, numberedPages, sheetOffers } from "../../../shared-model/sheets/job/lay-out-job.ts";
import { laundryAsFound } from "../../builders/drawing.ts";
import { boxId } from "../../builders/ids.ts";
import { inputOf, JOB, sheetOf, wordsOf } from "./drawn-sheets.ts";

const found = laundryAsFound();
const both: Project = { ...found, proposed: found.asFound };

function laidOut(project: Project, job: PaperJob, made: MadePages = new Map()) {
  const calls: string[] = [];
  const gathered: string[] = [];
  const sheets = [
    sheetOf("drawing", "either", calls),
    sheetOf("steps", "difference", calls),
    sheetOf("as-found", "as-found", calls),
    sheetOf("materials", "proposed", calls),
  ];
  const steps = layOutJob(
    project,
    job,
    {
      sheets,
      gather: (state) => {
        gathered.push(state);
        return inputOf(state);
      },
    },
    made,
  );
  const told: string[] = [];
  for (;;) {
    const step = steps.next();
    if (step.done === true) {
      const pages = step.value.map(({ pages: own }) => own.map(({ title }) => title));
      return { calls, gathered, told, pages, sheets: step.value };
    }
    told.push(`${step.value.done}/${step.value.of} ${step.value.at ?? "-"}`);
  }
}

test("offers say what a sheet shows, whether boxes mean something to it, and whether it is a list", () => {
  const list = { tables: () => [] };
  const offers = sheetOffers([
    sheetOf("make-up", "either"),
    sheetOf("steps", "difference", [], list),
    sheetOf("directory", "either"),
  ]);
  expect(offers).toEqual([
    { kind: "make-up", title: "Title of make-up", shows: "either", boxes: "several", hasList: false },
    { kind: "steps", title: "Title of steps", shows: "difference", boxes: "one", hasList: true },
    { kind: "directory", title: "Title of directory", shows: "either", boxes: "whole", hasList: false },
  ]);
});

describe("a job", () => {
  test("has its sheets in the order of a job folder, each in the state that it shows", () => {
    const job: PaperJob = { ...JOB, sheets: ["materials", "as-found", "drawing", "steps"], state: "as-found" };
    expect(laidOut(both, job).pages).toEqual([
      ["drawing as-found all"],
      ["steps proposed all"],
      ["as-found as-found all"],
      ["materials proposed all"],
    ]);
    expect(laidOut(both, { ...job, state: "proposed" }).pages[0]).toEqual(["drawing proposed all"]);
  });

  test("leaves out sheets of a state that the document does not have", () => {
    const { pages } = laidOut(found, {
      ...JOB,
      sheets: ["drawing", "steps", "materials", "as-found"],
      state: "as-found",
    });
    expect(pages).toEqual([["drawing as-found all"], ["as-found as-found all"]]);
  });

  test("says before each step how far it is, and of which sheet the next is", () => {
    expect(laidOut(both, JOB).told).toEqual(["0/3 -", "1/3 Title of steps", "2/3 Title of materials"]);
  });

  test("of some boxes: those one after the other, what cannot be of several as a whole, and no box that is not there", () => {
    const boxes = [boxId("B1"), boxId("B2"), boxId("gone")];
    expect(laidOut(both, { ...JOB, boxes }).pages).toEqual([
      [`drawing proposed ${boxes[0]}`, `drawing proposed ${boxes[1]}`],
      ["steps proposed all"],
      ["materials proposed all"],
    ]);
  });

  test("of one box: all that a box can have for itself", () => {
    const one = [boxId("B1")];
    expect(laidOut(both, { ...JOB, boxes: one }).pages).toEqual([
      [`drawing proposed ${one[0]}`],
      [`steps proposed ${one[0]}`],
      ["materials proposed all"],
    ]);
  });

  test("takes pages that were made before, and makes those anew that would be others", () => {
    const made: MadePages = new Map();
    expect(laidOut(both, JOB, made).calls).toHaveLength(3);
    expect(laidOut(both, { ...JOB, sheets: ["drawing", "steps"] }, made).calls).toEqual([]);
    expect(laidOut(both, { ...JOB, state: "as-found" }, made).calls).toEqual(["drawing as-found all"]);
    for (const other of [{ paper: "letter" }, { date: "2026-05-05" }, { fileName: "a.loadside" }] as const)
      expect(laidOut(both, { ...JOB, ...other }, made).calls).toHaveLength(3);
  });
});

test("pages count in their sheet, and through all sheets where there are several", () => {
  const { sheets } = laidOut(both, JOB);
  expect(numberedPages(sheets).map((page) => wordsOf(page).at(-1))).toEqual([
    "page 1 of 1, folder 1 of 3",
    "page 1 of 1, folder 2 of 3",
    "page 1 of 1, folder 3 of 3",
  ]);
  expect(numberedPages(sheets.slice(0, 1)).map((page) => wordsOf(page).at(-1))).toEqual(["page 1 of 1"]);
  expect(numberedPages([])).toEqual([]);
});
