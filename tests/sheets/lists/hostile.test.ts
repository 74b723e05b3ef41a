import { describe, expect, it } from "vitest";
import type { Installation, Project } from "../../../shared-model/model/project.ts";
import { pageFaults } from "../page-faults.ts";
import { sampleProject } from "../sheet-inputs.ts";
import { blank, LIST_KINDS, pagesOf, tablesOf, wordsOf } from "./list-case.ts";

/** What people, or files that were tampered with, may give as a name or a remark. */
const NAMES: readonly string[] = [
  "W".repeat(400),
  "a sentence that goes on and on without ever coming to its end ".repeat(20),
  "",
  "</text><script>alert(1)</script>&amp;<![CDATA[",
  "مرحبا بالعالم",
  "\u202egnirts desrever\u202c",
  "😀".repeat(60),
  "one\ntwo\r\nthree\tfour",
  "=HYPERLINK(1)",
  "constructor",
  "\u0000\u0007\uFFFF",
  "Ω≥½ ".repeat(80),
];

const FIELDS: ReadonlySet<string> = new Set([
  ..."name note title wording caption reason by remark notes tag item takenAt outside instrumentId".split(" "),
]);
/** Fields whose words the program itself gives. */
const KEPT: ReadonlySet<string> = new Set(["item"]);

/** The same drawing with every word that a person may write put in its place. */
function withHostileWords(project: Project): Project {
  let next = 0;
  const word = (): string => NAMES[next++ % NAMES.length] ?? "";
  const visit = (value: unknown, key: string): unknown => {
    if (typeof value === "string") return FIELDS.has(key) && !KEPT.has(key) ? word() : value;
    if (Array.isArray(value)) return value.map((each: unknown) => visit(each, key));
    if (typeof value !== "object" || value === null) return value;
    const isWords = key === "directory";
    return Object.fromEntries(
      Object.entries(value).map(([field, each]) => [field, isWords ? word() : visit(each, field)]),
    );
  };
  return visit(project, "") as Project;
}

const hostile = ["laundry-proposed", "two-wire-bedroom"].map(
  (name) => [name, withHostileWords(sampleProject(`${name}.loadside`))] as const,
);

describe.each(hostile)("%s with every word replaced", (_, project) => {
  it.each([
    ["letter", "proposed"],
    ["a4", "as-found"],
    ["a3", "proposed"],
  ] as const)("prints inside its margins, no text on text, on %s as %s", (paper, state) => {
    for (const kind of LIST_KINDS)
      expect(pagesOf(project, kind, { state, paper }).flatMap(pageFaults), kind).toEqual([]);
  });

  it("has rows as long as the heads of its tables", () => {
    for (const kind of LIST_KINDS)
      for (const { columns, rows, name } of tablesOf(project, kind, { state: "proposed" }))
        for (const row of rows) expect(row, `${kind}: ${name}`).toHaveLength(columns.length);
  });
});

it("keeps a heading on its page, however long the name and the note of a box are", () => {
  const laundry = sampleProject("laundry-proposed.loadside");
  const long = ({ enclosures, ...rest }: Installation): Installation => ({
    ...rest,
    enclosures: Object.fromEntries(
      Object.entries(enclosures).map(([id, box]) => [id, { ...box, name: "M".repeat(90), note: "W".repeat(2000) }]),
    ) as Installation["enclosures"],
  });
  const { asFound, proposed = asFound } = laundry;
  const project: Project = { ...laundry, asFound: long(asFound), proposed: long(proposed) };
  for (const kind of ["box-fill", "scope", "as-found", "directory"] as const)
    expect(pagesOf(project, kind, { state: "proposed", paper: "a4" }).flatMap(pageFaults), kind).toEqual([]);
});

describe("an empty drawing", () => {
  it.each(LIST_KINDS)("gives one page of %s that says that nothing is drawn", (kind) => {
    const pages = pagesOf(blank(), kind);
    expect(pages).toHaveLength(1);
    expect(wordsOf(pages)).toContain("Nothing is drawn yet.");
    expect(pages.flatMap(pageFaults)).toEqual([]);
    for (const { rows } of tablesOf(blank(), kind)) expect(rows).toEqual([]);
  });
});

describe("a drawing without a proposal", () => {
  const project = sampleProject("laundry-box.loadside");
  it.each(["scope", "steps", "materials"] as const)("gives a page of %s that says that nothing is proposed", (kind) => {
    expect(wordsOf(pagesOf(project, kind))).toContain("Nothing is proposed yet.");
  });
});

it("prints on the large papers too", () => {
  const project = sampleProject("laundry-proposed.loadside");
  for (const paper of ["tabloid", "a3"] as const)
    for (const kind of LIST_KINDS)
      expect(pagesOf(project, kind, { state: "proposed", paper }).flatMap(pageFaults), kind).toEqual([]);
});

it("repeats the head of a table on every page, where a group begins there too", () => {
  const project = sampleProject("laundry-proposed.loadside");
  for (const paper of ["letter", "a4"] as const) {
    const pages = pagesOf(project, "test-record", { state: "proposed", paper });
    const withRows = pages.filter((page) => wordsOf([page]).includes("Verified dead"));
    expect(withRows.length).toBeGreaterThan(1);
    for (const page of withRows) expect(wordsOf([page])).toContain("before: expected");
  }
});
