/** What is asked of the paper worker for what is ticked, and how its pages are listed, sized and named. */
import { describe, expect, test } from "vitest";
import { scaleOf, stepped, ZOOM_STEPS, zoomOfScale } from "../../renderer/panels/print/zoom.ts";
import { pictureSize } from "../../renderer/platform/page-picture.ts";
import {
  copyName,
  jobOf,
  listedPages,
  type PrintChoice,
  type PrintScene,
  pageAfter,
  sheetsOfBoxes,
  sizeWords,
  tickedSheets,
  whyNot,
} from "../../renderer/state/print/print-choice.ts";
import type { LaidSheet, SheetOffer } from "../../shared-model/answers/paper-messages.ts";
import { SHEET_KINDS, type SheetKind } from "../../shared-model/answers/sheet-input.ts";
import { sheetOffers } from "../../shared-model/sheets/job/lay-out-job.ts";
import { SHEETS as ALL_SHEETS } from "../../shared-model/sheets/registry.ts";
import { boxId } from "../builders/ids.ts";

const offer = (
  kind: SheetOffer["kind"],
  shows: SheetOffer["shows"] = "either",
  boxes: SheetOffer["boxes"] = "whole",
): SheetOffer => ({ kind, title: kind, shows, boxes, hasList: false });

const SCENE: PrintScene = {
  offers: [
    offer("drawing", "either", "several"),
    offer("protection", "either", "one"),
    offer("scope", "difference", "one"),
    offer("directory"),
  ],
  hasProposed: true,
  selected: [boxId("B1"), boxId("B2")],
};
const ALL: ReadonlySet<SheetKind> = new Set(SHEET_KINDS);
const CHOICE: PrintChoice = {
  sheets: ALL,
  state: "proposed",
  paper: "a4",
  date: "2026-05-04",
  boxes: "all",
};
const kinds = (offers: readonly SheetOffer[]) => offers.map(({ kind }) => kind);

describe("what is printed", () => {
  test("is what is ticked and can be had", () => {
    expect(kinds(tickedSheets(CHOICE, SCENE))).toEqual(["drawing", "protection", "scope", "directory"]);
    expect(
      jobOf(
        { ...CHOICE, sheets: new Set(["drawing", "scope", "directory", "labels"]) },
        { ...SCENE, fileName: "a.loadside" },
      ),
    ).toEqual({
      sheets: ["drawing", "scope", "directory"],
      state: "proposed",
      paper: "a4",
      date: "2026-05-04",
      fileName: "a.loadside",
    });
  });

  test("is as found, without what needs proposed, where proposed is not started; that is told", () => {
    const scene = { ...SCENE, hasProposed: false };
    expect(jobOf(CHOICE, scene)).toMatchObject({ sheets: ["drawing", "protection", "directory"], state: "as-found" });
    expect(whyNot(offer("scope", "difference"), false)).toBe("Proposed is not started");
    expect(whyNot(offer("scope", "proposed"), false)).toBe("Proposed is not started");
    expect(whyNot(offer("as-found", "as-found"), false)).toBeUndefined();
    expect(whyNot(offer("scope", "difference"), true)).toBeUndefined();
  });

  test("is, as long as nobody has chosen, what a state is printed for: record and faults before, the work and what stays after", () => {
    const scene: PrintScene = { ...SCENE, offers: sheetOffers(ALL_SHEETS) };
    const usual: PrintChoice = { ...CHOICE, sheets: "usual" };
    expect(kinds(tickedSheets({ ...usual, state: "as-found" }, scene))).toEqual(["drawing", "findings", "as-found"]);
    const work = ["drawing", "make-up", "scope", "steps", "test-record", "labels", "reset-slips", "materials"];
    expect(kinds(tickedSheets(usual, scene))).toEqual(work);
    // Nothing is proposed: what is there.
    expect(kinds(tickedSheets(usual, { ...scene, hasProposed: false }))).toEqual(["drawing", "findings", "as-found"]);
    // What was chosen stays, whichever state is shown.
    const chosen: PrintChoice = { ...CHOICE, sheets: new Set(["directory"]) };
    for (const state of ["as-found", "proposed"] as const)
      expect(kinds(tickedSheets({ ...chosen, state }, scene))).toEqual(["directory"]);
  });

  test("of boxes: those that are chosen, and it is told which sheets that concerns", () => {
    expect(jobOf(CHOICE, SCENE).boxes).toBeUndefined();
    expect(jobOf({ ...CHOICE, boxes: "selected" }, SCENE).boxes).toEqual(SCENE.selected);
    expect(jobOf({ ...CHOICE, boxes: boxId("B7") }, SCENE).boxes).toEqual([boxId("B7")]);
    expect(sheetsOfBoxes(CHOICE, SCENE)).toEqual([]);
    expect(kinds(sheetsOfBoxes({ ...CHOICE, boxes: "selected" }, SCENE))).toEqual(["drawing"]);
    expect(kinds(sheetsOfBoxes({ ...CHOICE, boxes: boxId("B7") }, SCENE))).toEqual(["drawing", "protection", "scope"]);
  });
});

const laid = (kind: LaidSheet["kind"], ...titles: readonly string[]): LaidSheet => ({
  kind,
  title: kind,
  hasList: false,
  pages: titles.map((title) => ({ title, width: 210, height: 297 })),
});
const SHEETS = [laid("make-up", "Card B1", "Card B1", "Card B4"), laid("scope", "Scope"), laid("labels")];

describe("pages", () => {
  test("are listed through all sheets, and counted among those of their title", () => {
    expect(
      listedPages(SHEETS).map(({ sheet, title, number, part, parts }) => [sheet, title, number, part, parts]),
    ).toEqual([
      [0, "Card B1", 1, 1, 2],
      [0, "Card B1", 2, 2, 2],
      [0, "Card B4", 3, 1, 1],
      [1, "Scope", 1, 1, 1],
    ]);
  });

  test("stay where a person was, as far as there is such a page after another layout", () => {
    expect(pageAfter({ kind: "scope", number: 1 }, SHEETS)).toBe(3);
    expect(pageAfter({ kind: "make-up", number: 9 }, SHEETS)).toBe(2);
    expect(pageAfter({ kind: "labels", number: 1 }, SHEETS)).toBe(0);
    expect(pageAfter(undefined, SHEETS)).toBe(0);
    expect(pageAfter({ kind: "scope", number: 1 }, [])).toBe(0);
  });
});

describe("sizes", () => {
  const LETTER = { width: 215.9, height: 279.4 };

  test("of a picture are those of the paper at 96 points to the inch", () => {
    // Letter is 8 1/2 x 11 in.
    expect(pictureSize(LETTER.width, LETTER.height, 1)).toEqual({ width: 816, height: 1056 });
    expect(pictureSize(LETTER.width, LETTER.height, 4)).toEqual({ width: 3264, height: 4224 });
  });

  test("on screen: all of the page, as wide as the room, or a part of its true size", () => {
    const room = { width: 632, height: 432 };
    expect(scaleOf("width", LETTER, room) * LETTER.width).toBeCloseTo(600);
    expect(scaleOf("page", LETTER, room) * LETTER.height).toBeCloseTo(400);
    // An inch is 96 points of CSS.
    expect(scaleOf(1, LETTER, room) * 25.4).toBeCloseTo(96);
    expect(scaleOf("page", LETTER, { width: 0, height: 0 })).toBeGreaterThan(0);
  });

  test("go a step up or down from wherever they are, and end at the ends", () => {
    const at = (zoom: number) => scaleOf(zoom, LETTER, { width: 1, height: 1 });
    expect(stepped(at(0.62), 1)).toBe(0.75);
    expect(stepped(at(0.62), -1)).toBe(0.5);
    expect(stepped(at(1), 1)).toBe(1.5);
    expect(stepped(at(1), -1)).toBe(0.75);
    expect(stepped(at(9), 1)).toBe(4);
    expect(stepped(at(0.1), -1)).toBe(0.25);
    for (const step of ZOOM_STEPS) expect(zoomOfScale(at(step))).toBeCloseTo(step);
  });

  test("of files are said in decimal units", () => {
    expect([999, 1000, 38_400, 999_499, 999_500, 1_234_567].map(sizeWords)).toEqual([
      "999 B",
      "1 kB",
      "38 kB",
      "999 kB",
      "1.0 MB",
      "1.2 MB",
    ]);
  });
});

test("files are named by the job and what is in them", () => {
  expect(copyName(" 1962 bungalow ", "job folder")).toBe("1962 bungalow job folder");
  expect(copyName("", "scope")).toBe("drawing scope");
});
