import { describe, expect, test } from "vitest";
import { DATED_EDITIONS, EDITIONS, type Edition } from "../../shared-model/model/project.ts";
import type { EditionValues, Sourced, ValueName } from "../../shared-model/rules/editions/edition-data.ts";
import { coversRule, getEdition, standInFor } from "../../shared-model/rules/editions/editions.ts";
import { fillLedger } from "../../shared-model/rules/fill/fill-ledger.ts";
import { boxRules, rules } from "../../shared-model/rules/registry.ts";
import type { BoxContext } from "../../shared-model/rules/rule.ts";
import { checkDocument, inShort } from "./check-drawing.ts";
import { Drawing } from "./drawing.ts";
import { laundryAsFound } from "./laundry.ts";

const CONFIDENCES = ["sourced", "from-memory", "unconfirmed", "doubtful", "own-rule"];

describe.each(EDITIONS)("edition %s", (year) => {
  const values = Object.entries(getEdition(year).values) as [ValueName, Sourced<unknown>][];

  test("every value names its section, its source, and how well it is backed", () => {
    expect(values.length).toBeGreaterThan(5);
    for (const [name, { value, section, source, confidence }] of values) {
      expect(value, name).toBeDefined();
      // A number of our own stands in no section.
      if (confidence !== "own-rule") expect(section.trim(), name).not.toBe("");
      expect(source.trim().length, name).toBeGreaterThan(10);
      expect(CONFIDENCES, name).toContain(confidence);
      // What is said to be from memory is not said to be sourced.
      if (/^from memory|, from memory$/.test(source)) expect(confidence, name).not.toBe("sourced");
    }
  });

  test("every rule that runs by it points at a section of its own code, or at none", () => {
    for (const { id, sections } of rules) {
      if (!coversRule(getEdition(year), id)) expect(sections[year], id).toBeUndefined();
      else if (year === "CSA-C22.1") expect(sections[year]?.section, id).toMatch(/^(12-3034|none)/);
      else expect(sections[year]?.section ?? "", id).not.toMatch(/12-3034/);
    }
  });
});

test("every value is read by a rule, so that an amendment of it is offered and its help shows it", () => {
  const read = new Set<string>(rules.flatMap(({ values = [] }) => values));
  const held = new Set(EDITIONS.flatMap((year) => Object.keys(getEdition(year).values)));
  expect([...held].filter((name) => !read.has(name) && !READ_ELSEWHERE.has(name))).toEqual([]);
});

/** Fixture wires of a canopy stand in worksheets alone: a drawing has none. */
const READ_ELSEWHERE: ReadonlySet<string> = new Set(["canopyWiresLeftOut"]);

describe("editions that are not the whole of a verified text", () => {
  const findingsBy = (edition: Edition) => checkDocument({ ...laundryAsFound().project(), edition }).findings;
  const isOwn = (confidence: string | undefined) => confidence === undefined || confidence === "own-rule";

  test("2026 names the text of 2023 on every finding of the code", () => {
    const ofTheCode = findingsBy(2026).filter(({ section }) => !isOwn(section?.confidence));
    expect(ofTheCode.length).toBeGreaterThan(5);
    expect(new Set(ofTheCode.map(({ textOf }) => textOf))).toEqual(new Set([2023]));
  });

  test.each([2011, 2014] as const)("%i names the text of 2017 on every finding but those of the count", (edition) => {
    const all = findingsBy(edition);
    const counted = all.filter(({ rule }) => rule === "box-overfull");
    expect(counted.map(({ textOf }) => textOf)).toEqual(counted.map(() => undefined));
    const others = all.filter(({ rule, section }) => rule === "splice-over-capacity" && !isOwn(section?.confidence));
    expect(others.length).toBeGreaterThan(0);
    expect(new Set(others.map(({ textOf }) => textOf))).toEqual(new Set([2017]));
  });

  test.each([2017, 2020, 2023] as const)("%i needs no other text", (edition) => {
    expect(findingsBy(edition).every(({ textOf }) => textOf === undefined)).toBe(true);
    for (const { id } of rules) expect(standInFor(getEdition(edition), id)).toBeUndefined();
  });
});

describe("CSA C22.1 over a drawing", () => {
  const canadian = (): Drawing => {
    const drawing = laundryAsFound();
    drawing.edition = "CSA-C22.1";
    return drawing;
  };

  test("runs the rules of the count, and says of all others once that they are not covered", () => {
    const { findings, couldNotTell, checksRun } = checkDocument(canadian().project());
    // Eight enclosures, three rules.
    expect(checksRun).toBe(24);
    expect(findings.every(({ rule }) => coversRule(getEdition("CSA-C22.1"), rule))).toBe(true);
    const [statement, ...more] = couldNotTell.filter(({ rule }) => rule === "not-covered");
    expect(more).toEqual([]);
    expect(statement?.message).toContain(`${rules.length - 3} of ${rules.length} rules did not run`);
    expect(statement?.message).toContain("held for the count of box fill only");
  });

  test("is silent about a danger that a dated edition finds, and says that it is", () => {
    const bare = (edition: Edition) =>
      checkDocument(
        new Drawing(edition).box("B", 30, { cover: "none" }).cable("C", "nm-12-2-g", "B", "country").project(),
      );
    expect(inShort(bare(2020).findings)).toContain("cover-missing B");
    expect(bare("CSA-C22.1").findings.map(({ rule }) => rule)).not.toContain("cover-missing");
    expect(bare("CSA-C22.1").couldNotTell.map(({ rule }) => rule)).toEqual(["not-covered"]);
  });

  test("no dated edition says that anything is not covered", () => {
    for (const edition of DATED_EDITIONS) {
      const { couldNotTell } = checkDocument({ ...laundryAsFound().project(), edition });
      expect(couldNotTell.map(({ rule }) => rule)).not.toContain("not-covered");
    }
  });

  test("the rules that run read no value that it does not hold", () => {
    const missing: string[] = [];
    const values = new Proxy(getEdition("CSA-C22.1").values, {
      get(held, name, self) {
        const value: unknown = Reflect.get(held, name, self);
        if (value === undefined && REQUIRED.has(String(name))) missing.push(String(name));
        return value;
      },
    });
    const edition = { ...getEdition("CSA-C22.1"), values };
    const project = canadian().project();
    const context = { project, installation: project.asFound, state: "as-found", edition } as const;
    const silent = { report: () => undefined, cannotTell: () => undefined };
    for (const enclosure of Object.values(project.asFound.enclosures)) {
      for (const rule of boxRules)
        if (coversRule(edition, rule.id)) rule.check({ ...context, ...silent, enclosure } satisfies BoxContext);
      fillLedger(project.asFound, enclosure, edition);
    }
    // The length of a loop is asked for, and without one a loop counts as straight through.
    expect(missing.filter((name) => name !== "loopLengthIn")).toEqual([]);
  });
});

/** What every dated edition holds: a rule may take it for granted. */
const REQUIRED: ReadonlySet<string> = new Set(
  Object.keys(getEdition(2017).values).filter((name) =>
    DATED_EDITIONS.every((year) => getEdition(year).values[name as keyof EditionValues] !== undefined),
  ),
);

describe("the ledger of a drawn box by CSA C22.1", () => {
  const ledger = (drawing: Drawing, box: string) => {
    const installation = drawing.installation();
    const enclosure = Object.values(installation.enclosures).find(({ name }) => name === box);
    if (enclosure === undefined) throw new Error(`No ${box}.`);
    return fillLedger(installation, enclosure, getEdition("CSA-C22.1"));
  };
  const inShortOf = (drawing: Drawing, box: string) => {
    const { lines, totalMl, verdict } = ledger(drawing, box);
    return [...lines.map(({ item, count, awg }) => `${count} ${item} ${awg}`), (totalMl ?? 0) / 10, verdict];
  };

  test("the laundry box, by hand: ten conductors, three connectors are one pair, one device; grounds and clamps are free", () => {
    // 13 × 28.7 mL = 373.1; 13 × 1.75 in³ = 22.75, of 30.3 marked.
    expect(inShortOf(laundryAsFound(), "B1")).toEqual([
      "10 conductors 12",
      "1 connectors 12",
      "2 devices 12",
      373.1,
      "fits",
    ]);
  });

  const joined = (connector: string): Drawing =>
    new Drawing("CSA-C22.1")
      .box("J", 30)
      .cable("C1", "nm-14-2", "J", "country")
      .cable("C2", "nm-14-2", "J", "country")
      .splice("X", "J", connector)
      .splice("Y", "J", connector)
      .put({ "C1.bk@J": "X", "C2.bk@J": "X", "C1.wh@J": "Y", "C2.wh@J": "Y" });

  test.each([
    ["twist-medium", ["4 conductors 14", "1 connectors 14", 123, "fits"]],
    ["unknown", ["4 conductors 14", "1 connectors 14", 123, "fits"]],
    ["none", ["4 conductors 14", 98.4, "fits"]],
    ["taped", ["4 conductors 14", 98.4, "fits"]],
    ["crimp-ground", ["4 conductors 14", 98.4, "fits"]],
  ] as const)("two splices with %s", (connector, wanted) => {
    expect(inShortOf(joined(connector), "J")).toEqual(wanted);
  });

  test("what is not recorded of clamps is no question: they are free", () => {
    expect(ledger(joined("none").setBox("J", { internalClamps: "unknown" }), "J").reason).toBeUndefined();
  });

  test("a standard size has the volume of Table 23; one that it does not have is unknown, and why", () => {
    const sized = (size: string) => ledger(joined("none").setBox("J", { volume: { kind: "table", size } }), "J");
    expect(sized("4x1-1/2 round/octagonal")).toMatchObject({ available: 150_000, verdict: "fits" });
    expect(sized("4x1-1/4 square").verdict).toBe("volume-unknown");
    expect(sized("4x1-1/4 square").reason).toContain("Table 23 of this rule set has no box 4 × 1-1/4 square");
  });

  test("a device whose body reaches in more than an inch takes room by its depth", () => {
    const deep = (bodyDepthIn: number) =>
      inShortOf(
        new Drawing("CSA-C22.1")
          .box("J", 30)
          .cable("C1", "nm-14-2", "J", "country")
          .device("R", "receptacle-15", "J", { bodyDepthIn: bodyDepthIn as never })
          .put({ "C1.bk@J": "R.H1", "C1.wh@J": "R.N1" }),
        "J",
      );
    expect(deep(1)).toEqual(["2 conductors 14", "2 devices 14", 98.4, "fits"]);
    // 2 in. are 5.08 cm: 162.56 mL, rounded up.
    expect(deep(2)).toEqual(["2 conductors 14", "1 deep-devices 14", 211.8, "fits"]);
  });
});
