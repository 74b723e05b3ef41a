/** Wrong input to the verbs that plan a job, find out its cables, record its tests and put it on paper. */
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { truncate } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { LIMITS } from "../../shared-model/format/limits.ts";
import { buildLoadside, LAUNDRY, loadside, ROOT } from "./run-loadside.ts";

const PROPOSED = join(ROOT, "assets/samples/laundry-proposed.loadside");
const SCHEMA = join(ROOT, "assets/loadside.schema.json");
const folder = mkdtempSync(join(tmpdir(), "loadside-hostile-verbs-"));
const inFolder = (name: string): string => join(folder, name);

const INTENT = {
  supply: "C1",
  downstream: ["C2", "C3", "C4", "C5"].map((cable) => ({ cable, protect: cable === "C2" })),
  replace: [{ device: "R1", type: "dual-function-receptacle-15" }],
};
const RECORD = { readings: [{ stage: "before", at: "R2", test: "hot-neutral", value: 121.8 }] };
const SURVEY = {
  readings: [{ arrangement: "A2", instrument: "low-impedance-meter", cable: "C1", pair: "black-white", value: 122 }],
};

beforeAll(async () => {
  buildLoadside();
  for (const name of ["a folder", "a folder.pdf", "pages-2.svg"]) mkdirSync(inFolder(name));
  for (const [name, text] of Object.entries({
    "intent.json": JSON.stringify(INTENT),
    "record.json": JSON.stringify(RECORD),
    "survey.json": JSON.stringify(SURVEY),
    empty: "",
    words: "hello\n",
    "a list": "[]",
    "an object": "{}",
    "1901": readFileSync(LAUNDRY, "utf8").replace('"edition": 2020', '"edition": 1901'),
    "too large": "",
    there: "kept",
  }))
    writeFileSync(inFolder(name), text);
  await truncate(inFolder("too large"), LIMITS.characters + 1);
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Everything in the folder with what it holds. */
const seen = (): readonly string[] =>
  readdirSync(folder, { withFileTypes: true })
    .map(
      (one) =>
        `${one.name} ${one.isFile() && one.name !== "too large" ? readFileSync(inFolder(one.name), "latin1") : ""}`,
    )
    .sort();

/** One line with status 2 on standard error that begins with what it is about, nothing printed, nothing written. */
function expectRefused(args: readonly string[], about: string, says: RegExp): void {
  const before = seen();
  const { status, stdout, stderr } = loadside(args, { cwd: folder });
  expect([status, stdout], stderr).toEqual([2, ""]);
  expect(stderr).toMatch(/^[^\n]+[.]\n$/);
  expect(stderr).not.toMatch(/undefined|\[object|args\./);
  expect(stderr.startsWith(`${about}: `) || stderr.startsWith(`${about} was not saved`), stderr).toBe(true);
  expect(stderr).toMatch(says);
  expect(seen()).toEqual(before);
}

/** Each verb with what else it needs. */
const VERBS: Readonly<Record<string, readonly string[]>> = {
  scope: [],
  survey: ["--box", "B1", "--readings", "survey.json", "--out", "made.loadside"],
  export: ["--sheet", "drawing", "--out", "made.pdf"],
  makeup: ["--box", "B1", "--intent", "intent.json", "--out", "made.loadside"],
  fit: ["--outlet", "R1", "--out", "made.loadside"],
  record: ["--readings", "record.json", "--out", "made.loadside"],
};

describe.each(Object.keys(VERBS))("%s of what is no drawing", (verb) => {
  test.each([
    ["empty", /The file is empty/],
    [SCHEMA, /This is not a Loadside document: it has no field "format"/],
    ["too large", /more than the 64 MiB allowed/],
    ["1901", /: \/edition: It must be one of 2011, /],
    // One reader serves all verbs: once is enough for the rest.
    ...(verb === "scope"
      ? ([
          ["words", /Line 1, column 1 is not JSON/],
          ["missing", /There is no such file/],
          ["a folder", /This is a folder/],
        ] as const)
      : []),
  ] as const)("%s", (file, says) => expectRefused([verb, file, ...(VERBS[verb] ?? [])], file, says));
});

describe.each([
  ["survey", "--readings", ["--box", "B1"], "/readings: Give the list of readings"],
  ["record", "--readings", [], "/readings: Give the list of readings"],
  ["makeup", "--intent", ["--box", "B1"], "/supply: Name the cable that feeds the box"],
] as const)("%s with a second file that is none", (verb, option, more, wants) => {
  test.each([
    ["empty", /The file is empty/],
    ["a list", /Give an object; it is a list/],
    ["an object", new RegExp(wants)],
    ["too large", /more than the 64 MiB allowed/],
  ] as const)("%s", (file, says) =>
    expectRefused([verb, LAUNDRY, ...more, option, file, "--out", "made.loadside"], file, says),
  );
});

describe.each(["survey", "makeup", "fit", "record"])("%s into what cannot be written", (verb) => {
  test.each([
    ["a folder", /This is a folder\. Name a file in it\./],
    ["there", /It is there already and stays as it is/],
    ["nowhere/made.loadside", /the folder is not there/],
    ["words/made.loadside", /a part of its path is not a folder/],
  ] as const)("%s", (out, says) => {
    const more = VERBS[verb]?.slice(0, -1) ?? [];
    expectRefused([verb, LAUNDRY, ...more, out], out, says);
  });
});

describe("export into what cannot be written", () => {
  test.each([
    ["", "loadside", /--out needs the name of a file/],
    ["-", "loadside", /--out needs the name of a file/],
    ["a folder.pdf", "a folder.pdf", /This is a folder\. Name a file in it\./],
    ["nowhere/made.pdf", "nowhere/made.pdf", /the folder is not there/],
    ["words/made.pdf", "words/made.pdf", /a part of its path is not a folder/],
  ] as const)("“%s”", (out, about, says) =>
    expectRefused(["export", PROPOSED, "--sheet", "drawing", "--out", out], about, says),
  );

  test("of several pages none is written where one cannot be, and none over the drawing", () => {
    const cards = ["--sheet", "make-up", "--out"];
    expectRefused(["export", PROPOSED, ...cards, "pages.svg"], "pages-2.svg", /This is a folder/);
    copyFileSync(PROPOSED, inFolder("own-2.svg"));
    expectRefused(["export", "own-2.svg", ...cards, "own.svg"], "own-2.svg", /It is what was read/);
    expect(existsSync(inFolder("own-1.svg"))).toBe(false);
  });

  test("no sheet, no paper", () => {
    const out = ["--out", "made.pdf"];
    expectRefused(
      ["export", PROPOSED, "--sheet", "poster", ...out],
      "loadside",
      /'poster' is invalid.*drawing, make-up/,
    );
    expectRefused(
      ["export", PROPOSED, "--sheet", "drawing", "--paper", "a9", ...out],
      "loadside",
      /'a9' is invalid.*letter, a4/,
    );
  });
});

const intent = ["--intent", "intent.json"];

test.each<[args: readonly string[], says: RegExp]>([
  [["scope", PROPOSED, "--box", "B99"], /It has no box "B99"/],
  [["survey", LAUNDRY, "--box", "B99"], /It has no box "B99"/],
  [["survey", LAUNDRY, "--box", "P"], /"P" is a panel/],
  [["makeup", LAUNDRY, "--box", "B99", ...intent], /It has no box "B99"/],
  [["makeup", LAUNDRY, "--box", "P", ...intent], /"P" is a panel/],
  [["fit", LAUNDRY, "--outlet", "R99"], /It has no outlet "R99"/],
  [["fit", LAUNDRY, "--outlet", "R1", "--protect", "C9"], /No cable is named "C9"/],
  [
    ["fit", LAUNDRY, "--outlet", "R1", "--protect", "C1"],
    /C1 stays on LINE: it is the supply\. Leave it out of --protect/,
  ],
  [["fit", LAUNDRY, "--outlet", "R1", "--leave", "C6"], /C6 does not hang on R1/],
  [["fit", LAUNDRY, "--outlet", "R1", "--protect", "C2", "--leave", "C2"], /C2 is named in --protect and in --leave/],
  [["fit", LAUNDRY, "--outlet", "R1", "--name", ""], /--name needs a name of 1 to 80 characters/],
])("%j", (args, says) => expectRefused(args, args[1] ?? "", says));
