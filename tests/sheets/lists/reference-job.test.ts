import { describe, expect, it } from "vitest";
import type { Project } from "../../../shared-model/model/project.ts";
import { type InputOptions, sampleProject } from "../sheet-inputs.ts";
import { inputFor, type ListKind, pagesOf, rowsOf, tablesOf, textMarks, wordsOf } from "./list-case.ts";

// The laundry box as proposed: figures and lists of the worked reference job, counted there by another program.

const laundry = sampleProject("laundry-proposed.loadside");
const PROPOSED: InputOptions = { state: "proposed" };
const words = (kind: ListKind, options = PROPOSED, project: Project = laundry): string =>
  wordsOf(pagesOf(project, kind, options));

describe("box fill of B1", () => {
  const rows = (project: Project, name: string) =>
    rowsOf(tablesOf(project, "box-fill", PROPOSED), name).filter(({ Box }) => Box === "B1");

  it.each([
    [2017, [22.5, 2.25, 4.5, 2.25], 31.5, -1.2, [22.5, 4.5, 2.25], 29.25, 1.05],
    [2020, [22.5, 2.25, 4.5, 2.25, 0.5625], 32.0625, -1.7625, [22.5, 4.5, 2.25, 0.5625], 29.8125, 0.4875],
  ] as const)("by %i is the worked ledger in both states", (edition, found, foundSum, foundLeft, after, sum, left) => {
    const project: Project = { ...laundry, edition };
    const lines = rows(project, "Box fill lines");
    const volumes = (state: string) => lines.filter(({ State }) => State === state).map((row) => row["Volume, in³"]);
    expect(volumes("as found")).toEqual(found);
    expect(volumes("proposed")).toEqual(after);
    expect(
      rows(project, "Box fill sums").map((row) => [row["Used, in³"], row["Volume, in³"], row["Left, in³"], row.Result]),
    ).toEqual([
      [foundSum, 30.3, foundLeft, "overfull"],
      [sum, 30.3, left, "fits"],
    ]);
  });

  it("stands on paper with every line, its section, and what is over", () => {
    const page = words("box-fill", { ...PROPOSED, box: "B1" });
    for (const part of ["insulated conductors", "internal clamps", "devices, two for each yoke", "grounds"])
      expect(page).toContain(part);
    for (const section of ["314.16(B)(1)", "314.16(B)(2)", "314.16(B)(4)", "314.16(B)(5)"])
      expect(page).toContain(section);
    for (const figure of ["22.5", "4.5", "0.5625", "32.0625", "29.8125", "30.3", "0.4875"])
      expect(page).toContain(figure);
    expect(page).toMatch(/OVER BY 1\.7625/);
  });

  it("is of the box alone that is asked for", () => {
    const page = words("box-fill", { ...PROPOSED, box: "B2" });
    expect(page).toContain("used 18 volume of the box 18 left 0");
    expect(page).not.toContain("32.0625");
  });
});

describe("protection schedule", () => {
  it("tells what protects each outlet, with the proof of each test", () => {
    const rows = rowsOf(tablesOf(laundry, "protection", PROPOSED), "Protection");
    expect(rows.map((row) => [row.Outlet, row["Protected by"]])).toEqual([
      ["R1b", "R1b"],
      ["R2", "R1b"],
      ["R3", "R1b"],
      ["R4b", "R4b"],
      ["R5", "R1b"],
      ["L1", undefined],
    ]);
    for (const row of rows.slice(0, 5))
      for (const test of ["P1", "P2", "P3", "P4", "P5", "P6"]) expect(row[test]).toBe("pass");
    expect(rows[5]?.P1).toBe("fail");
  });

  it("says who decided that the stair light stays on LINE", () => {
    const page = words("protection");
    expect(page).toContain("by nothing");
    expect(page).toContain("Decided not to be protected, customer: The stair must not go dark when R1b trips.");
    expect(page.match(/Decided not/g)).toHaveLength(1);
    for (const test of ["P1", "P2", "P3", "P4", "P5", "P6"]) expect(page).toContain(`${test} `);
  });
});

describe("findings", () => {
  const by = (standing: string) =>
    rowsOf(tablesOf(laundry, "findings", PROPOSED), "Findings")
      .filter(({ Standing }) => Standing === standing)
      .map(({ Rule, At }) => `${Rule} ${At}`)
      .sort();

  it("stand in the lists of the worked job", () => {
    expect(by("introduced")).toEqual(["fill-nearly-full B1", "replace-needs-afci R1b"]);
    expect(by("repaired")).toEqual([
      "box-overfull B1",
      "outlet-not-protected R1",
      "splice-over-capacity X",
      "splice-over-capacity Y",
      "splice-over-capacity Z",
      "wish-not-protected R5",
    ]);
    expect([...by("inherited"), ...by("inherited, touched")]).toEqual(
      expect.arrayContaining([
        "egc-edition-difference B1",
        "fill-nearly-full B2",
        "fill-nearly-full B5",
        "fill-nearly-full B6",
        expect.stringMatching(/^laundry-circuit-mixed /),
      ]),
    );
  });

  it("never says more of an empty list than how many checks were run", () => {
    const page = words("findings");
    expect(page).toMatch(/\d+ checks run, 0 could not be told\./);
    expect(page.replaceAll("No finding shown does not mean safe or compliant.", "")).not.toMatch(/safe|compliant/i);
  });

  it("shows an acknowledged one with name, day and reason", () => {
    const afci = inputFor(laundry, PROPOSED).findings.proposed?.find(({ rule }) => rule === "replace-needs-afci");
    if (afci === undefined) throw new Error("no finding");
    const { key, message, severity } = afci;
    const acknowledgement = {
      finding: key,
      state: "proposed",
      by: "A. Tester",
      reason: "A dual-function receptacle is on order.",
      at: "2026-04-30",
      said: message,
      severity,
    } as const;
    const page = words("findings", PROPOSED, { ...laundry, acknowledgements: [acknowledgement] });
    expect(page).toContain("replace-needs-afci");
    expect(page.replaceAll(/\s+/g, " ")).toContain(
      "Acknowledged by A. Tester, 30 Apr 2026: A dual-function receptacle is on order.",
    );
  });
});

describe("scope", () => {
  it("counts the moves of the worked boxes", () => {
    const rows = rowsOf(tablesOf(laundry, "scope", PROPOSED), "Scope counts");
    const counts = (box: string) => {
      const row = rows.find(({ Box }) => Box === box);
      return [row?.Detach, row?.Attach, row?.["New joints"], row?.Devices];
    };
    expect(counts("B1")).toEqual([10, 16, 3, 1]);
    expect(counts("B4")).toEqual([3, 3, 0, 1]);
    expect(words("scope")).toContain("10 detach, 16 attach, 3 joints, 1 device");
  });

  it("flags every line with its letter", () => {
    const lines = rowsOf(tablesOf(laundry, "scope", PROPOSED), "Scope");
    const letters = textMarks(pagesOf(laundry, "scope", PROPOSED)).filter(({ text }) => /^[KMRN]$/.test(text));
    // Five more in the legend, one for the slips.
    const lone = lines.filter(({ Kind, What }) => !(Kind === "new" && String(What).startsWith("label on")));
    expect(letters).toHaveLength(lone.length + 6);
  });
});

describe("work steps", () => {
  const marks = textMarks(pagesOf(laundry, "steps", PROPOSED));
  const page = marks.map(({ text }) => text).join(" ");

  it("has every instruction in its order, with its number", () => {
    const steps = inputFor(laundry, PROPOSED).scope?.steps ?? [];
    expect(steps.length).toBeGreaterThan(40);
    let at = 0;
    for (const { text } of steps) {
      const found = page.indexOf(text, at);
      expect(found, text).toBeGreaterThanOrEqual(at);
      at = found + 1;
    }
  });

  it("has every hold point white on black, with lines to sign on", () => {
    const holds = (inputFor(laundry, PROPOSED).scope?.steps ?? []).flatMap(({ hold }) => hold ?? []);
    expect(new Set(holds)).toEqual(new Set(["HP1", "HP2", "HP3", "HP4", "HP5", "HP6"]));
    const plates = marks.filter(({ text, ink }) => /^HP\d$/.test(text) && ink === "#ffffff");
    expect(plates.map(({ text }) => text)).toEqual(holds);
    expect(marks.filter(({ text }) => text === "signature").length).toBeGreaterThanOrEqual(holds.length);
  });

  it("has what is expected of every reading, and cautions as they are worded", () => {
    const readings = (inputFor(laundry, PROPOSED).scope?.steps ?? []).flatMap(({ readings: own }) => own);
    for (const { what } of readings.slice(0, 40)) expect(page).toContain(what.split(" ")[0]);
    expect(page).toContain("Never join or part conductors with power on.");
    expect(rowsOf(tablesOf(laundry, "steps", PROPOSED), "Expected readings")).toHaveLength(readings.length);
  });
});

it("test record leaves blanks beside what is expected, and rules out what a stage does not have", () => {
  const rows = rowsOf(tablesOf(laundry, "test-record", PROPOSED), "Test record");
  const of = (at: string, test: string, stage: string) =>
    rows.find((row) => row.At === at && row.Test === test && row.Stage === stage);
  expect(of("R2", "Hot to neutral", "before")?.Expected).toMatch(/^1\d\d(\.\d+)? V, within 5 V$/);
  expect(of("R2", "Hot to neutral", "before")?.Found).toBeUndefined();
  expect(of("R1b", "TEST pressed", "after")?.Expected).toBe("R1b, R2, R3, R5 went dark");
  expect(of("R1b", "TEST pressed", "before")).toBeUndefined();
  // What is measured before the work is what stood there then, as the steps say it.
  expect(of("R1", "Plug-in tester", "before")?.Expected).toBe("correct");
  expect(of("R1b", "Plug-in tester", "before")).toBeUndefined();
  const page = words("test-record");
  for (const part of ["Hot to neutral", "instrument", "tested by", "signature"]) expect(page).toContain(part);
  expect(page.match(/R1b before: R1 /g)).toHaveLength(4);
});

it("reset slips are left at R2, R3 and R5, and say where to press RESET", () => {
  expect(rowsOf(tablesOf(laundry, "reset-slips", PROPOSED), "Reset slips").map(({ Outlet }) => Outlet)).toEqual([
    "R2",
    "R3",
    "R5",
  ]);
  const page = words("reset-slips");
  expect(page.match(/Press RESET on R1b in B1 \(laundry\)\./g)).toHaveLength(3);
  expect(page).toContain("If R2 (sink");
});

it("panel directory has the circuit at its number, its rooms, and white at every other number: nobody knows what is there", () => {
  const page = words("directory");
  expect(page).toContain("Laundry, sink, porch, freezer, stair light, hall receptacle");
  for (const room of ["Laundry", "Porch", "Stair"]) expect(page).toContain(room);
  const numbers = textMarks(pagesOf(laundry, "directory", PROPOSED)).filter(
    ({ text, weight }) => weight === 700 && /^\d{1,2}$/.test(text),
  );
  expect(numbers.map(({ text }) => Number(text)).sort((a, b) => a - b)).toEqual(
    Array.from({ length: 16 }, (_, i) => i + 1),
  );
  expect(page).not.toMatch(/ space [^.]* 14 /);
  expect(page).toContain("A line without words is not in this drawing");
  const [row] = rowsOf(tablesOf(laundry, "directory", PROPOSED), "Directory");
  expect([row?.Space, row?.["Rating, A"], row?.Outlets]).toEqual([14, 20, 6]);
});

// No text of 408.4(A) was read for it: it is to be looked up. By CSA C22.1 it has another number, which nobody gave.
it.each([
  [2020, "(408.4(A), check)"],
  [2026, "(408.4(A) (2023), check)"],
  ["CSA-C22.1", "lives there now. Correct"],
] as const)("panel directory of edition %s points where the edition says it: %s", (edition, said) => {
  const page = wordsOf(pagesOf({ ...laundry, edition }, "directory"));
  expect(page).toContain(said);
  expect(page.includes("408.4")).toBe(edition !== "CSA-C22.1");
});

it("as-found record has every end once, with place, role and how it is known", () => {
  const rows = rowsOf(tablesOf(laundry, "as-found"), "Ends");
  const { enclosures } = laundry.asFound;
  const ends = Object.values(enclosures).flatMap(({ places }) => Object.keys(places));
  expect(rows).toHaveLength(ends.length);
  const c2 = rows.find(({ Box, End }) => Box === "B1" && End === "C2 BK");
  expect([c2?.Place, c2?.Role, c2?.Known]).toEqual(["X", "hot", "seen"]);
  expect(rows.find(({ Box, End }) => Box === "B1" && End === "C2 WH")?.Role).toBe("neutral");
  const names = textMarks(pagesOf(laundry, "as-found")).filter(({ text }) => /^C\d (BK|WH|bare)$/.test(text));
  expect(names).toHaveLength(rows.filter(({ End }) => /^C\d (BK|WH|bare)$/.test(String(End))).length);
});

it("materials are those of the scope, and what comes out", () => {
  const { materials = [], removed = [] } = inputFor(laundry, PROPOSED).scope ?? {};
  expect(materials.length).toBeGreaterThan(3);
  const tables = tablesOf(laundry, "materials", PROPOSED);
  expect(rowsOf(tables, "Materials")).toHaveLength(materials.length);
  expect(rowsOf(tables, "Taken out")).toHaveLength(removed.length);
  const page = words("materials");
  for (const { what } of [...materials, ...removed]) expect(page).toContain(what.split(",")[0]);
});
