import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeAll, beforeEach, expect, test } from "vitest";
import { FORMAT_VERSION } from "../../shared-model/model/project.ts";
import { buildLoadside, LAUNDRY, loadside } from "./run-loadside.ts";

beforeAll(buildLoadside, 120_000);

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "loadside-migrate-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const GOOD = { status: 0, stdout: "", stderr: "" };
const SAMPLE = readFileSync(LAUNDRY, "utf8");
/** The same document with other spacing, as another program may write it. */
const COMPACT = JSON.stringify(JSON.parse(SAMPLE));
const inFolder = (name: string) => join(folder, name);
const read = (name: string) => readFileSync(inFolder(name), "utf8");

test("a drawing is written in the present version, keys sorted, one space, one newline at the end", () => {
  writeFileSync(inFolder("old.loadside"), COMPACT);
  expect(loadside(["migrate", "old.loadside", "--out", "new.loadside"], { cwd: folder })).toEqual(GOOD);
  expect(read("new.loadside")).toBe(SAMPLE);
  expect(read("old.loadside")).toBe(COMPACT);
  expect(JSON.parse(read("new.loadside")).version).toBe(FORMAT_VERSION);
  expect(readdirSync(folder).sort()).toEqual(["new.loadside", "old.loadside"]);
});

test("from standard input, and fields that nobody knows stay", () => {
  const input = JSON.stringify({ ...JSON.parse(SAMPLE), fromElsewhere: { kept: true } });
  expect(loadside(["migrate", "-", "--out", "new.loadside"], { cwd: folder, input })).toEqual(GOOD);
  expect(JSON.parse(read("new.loadside")).fromElsewhere).toEqual({ kept: true });
});

test("the drawing itself may be named, by a link too", () => {
  writeFileSync(inFolder("mine.loadside"), COMPACT);
  symlinkSync(inFolder("mine.loadside"), inFolder("link.loadside"));
  expect(loadside(["migrate", "mine.loadside", "--out", "link.loadside"], { cwd: folder })).toEqual(GOOD);
  expect(read("mine.loadside")).toBe(SAMPLE);
  writeFileSync(inFolder("mine.loadside"), COMPACT);
  expect(loadside(["migrate", "mine.loadside", "--out", "./mine.loadside"], { cwd: folder })).toEqual(GOOD);
  expect(read("mine.loadside")).toBe(SAMPLE);
});

test("any other file that is there stays as it is", () => {
  writeFileSync(inFolder("old.loadside"), COMPACT);
  writeFileSync(inFolder("other.loadside"), "my work");
  symlinkSync(inFolder("nothing"), inFolder("link"));
  mkdirSync(inFolder("sub"));
  for (const name of ["other.loadside", "link"]) {
    const { status, stderr } = loadside(["migrate", "old.loadside", "--out", name], { cwd: folder });
    expect([status, stderr]).toEqual([2, `${name}: It is there already and stays as it is. Choose another name.\n`]);
  }
  const { status, stderr } = loadside(["migrate", "old.loadside", "--out", "sub"], { cwd: folder });
  expect([status, stderr]).toEqual([2, "sub: This is a folder. Name a file in it.\n"]);
  expect(read("other.loadside")).toBe("my work");
  expect(readdirSync(folder).sort()).toEqual(["link", "old.loadside", "other.loadside", "sub"]);
});

test("a newer version, and what is no drawing, are refused in one line, and nothing is written", () => {
  const newer = SAMPLE.replace(`"version": ${FORMAT_VERSION}`, `"version": ${FORMAT_VERSION + 1}`);
  writeFileSync(inFolder("newer.loadside"), newer);
  writeFileSync(inFolder("notes.loadside"), "no drawing");
  const refused = loadside(["migrate", "newer.loadside", "--out", "out.loadside"], { cwd: folder });
  expect(refused).toEqual({
    status: 2,
    stdout: "",
    stderr: `newer.loadside: /version: It is of version ${FORMAT_VERSION + 1} of the file format, newer than this program. Nothing was written; use a newer one.\n`,
  });
  for (const [file, out] of [
    ["notes.loadside", "out.loadside"],
    ["no-such.loadside", "out.loadside"],
    ["newer.loadside", "newer.loadside"],
  ] as const) {
    const { status, stdout, stderr } = loadside(["migrate", file, "--out", out], { cwd: folder });
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).toMatch(/^[^\n]+\n$/);
  }
  expect(read("newer.loadside")).toBe(newer);
  expect(readdirSync(folder).sort()).toEqual(["newer.loadside", "notes.loadside"]);
});

test("a folder that is not there, and a missing --out, are told", () => {
  const { status, stderr } = loadside(["migrate", LAUNDRY, "--out", join(folder, "no", "x")]);
  expect([status, readdirSync(folder)]).toEqual([2, []]);
  expect(stderr).toMatch(/^[^\n]+ was not saved: the folder is not there\. [^\n]+\n$/);
  const unnamed = loadside(["migrate", LAUNDRY]);
  expect([unnamed.status, unnamed.stderr]).toEqual([2, expect.stringMatching(/^loadside: .*--out.*\n$/)]);
});

test.each(["-", "", " "])("no file can be called %j", (out) => {
  const { status, stdout, stderr } = loadside(["migrate", LAUNDRY, "--out", out], { cwd: folder });
  expect([status, stdout, stderr]).toEqual([2, "", "loadside: --out needs the name of a file. Give one.\n"]);
});
