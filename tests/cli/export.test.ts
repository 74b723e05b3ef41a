import { copyFileSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { readPictureHeader } from "../../shared-model/lib/picture-header.ts";
import { HAS_POPPLER, textOfPdf } from "../sheets/read-pdf.ts";
import { buildLoadside, type Ended, LAUNDRY, loadside, ROOT } from "./run-loadside.ts";

const PROPOSED = join(ROOT, "assets/samples/laundry-proposed.loadside");
const HOUSE = join(ROOT, "assets/samples/house-twelve-circuits.loadside");

beforeAll(buildLoadside, 120_000);

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "loadside-export-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const exported = (file: string, out: string, ...more: readonly string[]): Ended =>
  loadside(["export", file, "--out", join(folder, out), "--date", "2026-05-04", ...more]);

const startOf = (name: string): string => readFileSync(join(folder, name)).subarray(0, 5).toString("latin1");

test("a sheet becomes what the ending says, and the same input the same bytes", () => {
  for (const out of ["a.pdf", "b.pdf"])
    expect(exported(PROPOSED, out, "--sheet", "make-up")).toEqual({ status: 0, stdout: "", stderr: "" });
  expect(startOf("a.pdf")).toBe("%PDF-");
  expect(readFileSync(join(folder, "a.pdf")).equals(readFileSync(join(folder, "b.pdf")))).toBe(true);
});

test("a drawing becomes an SVG, a list becomes a table", () => {
  expect(exported(PROPOSED, "a.svg", "--sheet", "drawing", "--box", "B1").status).toBe(0);
  expect(startOf("a.svg")).toBe("<?xml");
  for (const out of ["a.csv", "a.xlsx"]) expect(exported(PROPOSED, out, "--sheet", "box-fill").status).toBe(0);
  expect(readFileSync(join(folder, "a.csv"), "utf8")).toContain("B1");
  expect(startOf("a.xlsx").slice(0, 2)).toBe("PK");
});

test("a picture has 96 points to the inch, and as many times more as asked", () => {
  for (const [scale, width] of [
    [1, 1056],
    [4, 4224],
  ] as const) {
    expect(exported(PROPOSED, "a.png", "--sheet", "drawing", "--scale", String(scale)).status).toBe(0);
    // Letter across is 11 in.
    expect(readPictureHeader(readFileSync(join(folder, "a.png")))?.width).toBe(width);
  }
});

test("of several pages each becomes a picture with its number", () => {
  expect(exported(HOUSE, "house.svg", "--sheet", "drawing").status).toBe(0);
  const made = readdirSync(folder).sort();
  expect(made[0]).toBe("house-1.svg");
  expect(made.length).toBeGreaterThan(2);
});

test("a job folder holds the chosen sheets, counted through", () => {
  expect(
    exported(PROPOSED, "job.pdf", "--sheet", "job-folder", "--sheets", "make-up,drawing", "--paper", "a4").status,
  ).toBe(0);
  expect(startOf("job.pdf")).toBe("%PDF-");
  if (!HAS_POPPLER) return;
  const words = textOfPdf(readFileSync(join(folder, "job.pdf"))).replace(/\s+/g, " ");
  // In the order of a folder, whatever order they were asked in.
  expect(words.indexOf("Whole drawing")).toBeLessThan(words.indexOf("make-up"));
  expect(words).toContain("page 2 of 2, folder 3 of 3");
});

describe("what has nothing to say", () => {
  const LEFT = /^\S*laundry-proposed[.]loadside: Left out of the folder, with nothing to say: labels[.]\n$/;

  test("is left out of a folder of all there is, and told in one line", () => {
    const { status, stdout, stderr } = exported(PROPOSED, "job.pdf", "--sheet", "job-folder");
    expect([status, stdout]).toEqual([0, ""]);
    expect(stderr).toMatch(LEFT);
    if (HAS_POPPLER) expect(textOfPdf(readFileSync(join(folder, "job.pdf")))).not.toContain("There is no label");
  });

  test("is made all the same when it is asked for by its name, and told in one line", () => {
    for (const [out, ...args] of [
      ["a.pdf", "--sheet", "labels"],
      ["a.csv", "--sheet", "labels"],
      ["b.pdf", "--sheet", "job-folder", "--sheets", "labels,directory"],
    ] as const) {
      const { status, stdout, stderr } = exported(PROPOSED, out, ...args);
      expect([status, stdout, existsSync(join(folder, out))]).toEqual([0, "", true]);
      expect(stderr).toMatch(/laundry-proposed[.]loadside: labels: There is no label to fix[.]\n$/);
      expect(stderr.trimEnd().split("\n")).toHaveLength(1);
    }
  });
});

test("letters that no type is there for are told in one line with their text, their place and the page; a list keeps them", () => {
  const drawing = JSON.parse(readFileSync(PROPOSED, "utf8"));
  drawing.title = "Maison d’été 日本";
  const odd = join(folder, "odd.loadside");
  writeFileSync(odd, JSON.stringify(drawing));
  const { status, stderr } = exported(odd, "a.pdf", "--sheet", "box-fill");
  expect(status).toBe(0);
  expect(stderr).toContain('are printed as "?": "Maison d’été 日本" (title of the drawing, page 1).');
  expect(stderr.trimEnd().split("\n")).toHaveLength(1);
  expect(exported(odd, "a.csv", "--sheet", "box-fill").stderr).toBe("");
});

describe("says what is wrong in one line, with status 2, and writes nothing", () => {
  test.each<[what: string, args: readonly string[], out: string, says: RegExp]>([
    ["no such sheet", ["--sheet", "poster"], "a.pdf", /'poster' is invalid/],
    ["no such ending", ["--sheet", "drawing"], "a.doc", /Its ending says nothing/],
    ["no such box", ["--sheet", "make-up", "--box", "B99"], "a.pdf", /It has no box "B99"/],
    ["a card of a panel", ["--sheet", "make-up", "--box", "P"], "a.pdf", /is a panel/],
    ["a list of what is none", ["--sheet", "drawing"], "a.csv", /drawing is no list/],
    ["a box of a whole", ["--sheet", "directory", "--box", "B1"], "a.pdf", /always of the whole/],
    ["a folder as a picture", ["--sheet", "job-folder"], "a.png", /A job folder becomes .pdf/],
    [
      "a folder of what is none",
      ["--sheet", "job-folder", "--sheets", "poster"],
      "a.pdf",
      /There is no sheet "poster"/,
    ],
    [
      "sheets without a folder",
      ["--sheet", "drawing", "--sheets", "scope"],
      "a.pdf",
      /--sheets chooses from a job folder/,
    ],
    ["the other state", ["--sheet", "as-found", "--state", "proposed"], "a.pdf", /shows as-found alone/],
    ["too large a picture", ["--sheet", "drawing", "--scale", "5"], "a.png", /Give 1, 2, 3 or 4/],
    ["a day that is none", ["--sheet", "drawing", "--date", "2026-02-30"], "a.pdf", /Give a day as 2026-05-04/],
    ["a folder that is not there", ["--sheet", "drawing"], "nowhere/a.pdf", /was not saved/],
  ])("%s", (_, args, out, says) => {
    const { status, stdout, stderr } = exported(PROPOSED, out, ...args);
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).toMatch(says);
    expect(stderr.trimEnd().split("\n")).toHaveLength(1);
    expect(readdirSync(folder)).toEqual([]);
  });

  test("the difference where nothing is proposed", () => {
    for (const sheet of ["scope", "steps", "materials"]) {
      const { status, stderr } = exported(LAUNDRY, "a.pdf", "--sheet", sheet);
      expect([status, existsSync(join(folder, "a.pdf"))]).toEqual([2, false]);
      expect(stderr).toMatch(/Nothing is proposed in it yet/);
    }
  });

  test("into the drawing itself", () => {
    const own = join(folder, "own.svg");
    copyFileSync(PROPOSED, own);
    const { status, stderr } = exported(own, "own.svg", "--sheet", "drawing");
    expect(status).toBe(2);
    expect(stderr).toContain("It is what was read, and stays as it is.");
    expect(readFileSync(own).equals(readFileSync(PROPOSED))).toBe(true);
  });
});
