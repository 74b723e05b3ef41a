import { describe, expect, test } from "vitest";
import type { Material } from "../../shared-model/model/cable.ts";
import type { Edition } from "../../shared-model/model/project.ts";
import { conductorTooSmall } from "../../shared-model/rules/checks/conductor-too-small.ts";
import { amps } from "../../shared-model/units/quantity.ts";
import type { WireSize } from "../../shared-model/units/wire-size.ts";
import table from "../reference/small-conductor-limits.json" with { type: "json" };
import { checkDocument, rawAnswers } from "./check-drawing.ts";
import { Drawing } from "./drawing.ts";
import { findingOn, proposing } from "./fix-tester.ts";
import { laundryProposed, multiwire } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { trySectionFix } from "./section-fix-tester.ts";
import { twoCircuits } from "./two-circuits.ts";

/** One cable from a breaker to a receptacle. */
const run = (awg: WireSize, material: Material, ratingA: number | undefined, edition: Edition = 2020): Drawing =>
  new Drawing(edition)
    .panel("P")
    .breaker("Q1", ratingA)
    .box("A", 30)
    .cable("C1", "nm-12-2-g", "P", "A")
    .setConductors("C1", { awg, material })
    .device("R1", "receptacle-15", "A")
    .put({ "C1.bk@P": "Q1.OUT", "C1.wh@P": "P-NB.BAR", "C1.bk@A": "R1.H1", "C1.wh@A": "R1.N1" });

const CIRCUIT = ["C1", "C2", "C3", "C4", "C5", "C6", "C7", "a", "b", "c", "d"];

ruleTester(conductorTooSmall, {
  passes: [
    { name: "12 AWG everywhere behind 20 A", drawing: () => laundryProposed() },
    { name: "a shared neutral of 12 AWG behind two breakers of 20 A", drawing: () => multiwire() },
    {
      name: "14 AWG behind 15 A beside a circuit of 20 A, which it meets at the neutral bar alone",
      drawing: () =>
        twoCircuits()
          .setConductors("C1", { awg: "14" })
          .setJumper("p1", { awg: "14" })
          .setJumper("q1", { awg: "14" })
          .setDevice("Q1", { breakerRatingA: amps(15) }),
    },
    { name: "14 AWG behind exactly its limit", drawing: () => run("14", "copper", 15) },
    { name: "8 AWG where 10 AWG would do", drawing: () => run("8", "copper", 30) },
    { name: "a cable that no breaker feeds", drawing: () => run("14", "copper", 50).put({ "C1.bk@P": "cap" }) },
    {
      name: "a ground is the business of another rule",
      drawing: () => laundryProposed().setJumper("e", { awg: "18" }),
    },
    {
      name: "a breaker without a rating that feeds nothing",
      drawing: () => laundryProposed().breaker("Q15", undefined),
    },
  ],
  finds: [
    {
      name: "one jumper of 14 AWG behind 20 A",
      drawing: () => laundryProposed().setJumper("c", { awg: "14" }),
      findings: [
        { on: "c Q14", data: { awg: "14", breakerA: 20, limitA: 15 }, says: ["jumper c in B1", "15 A or less"] },
      ],
    },
    {
      name: "the last cable of the run",
      drawing: () => laundryProposed().setConductors("C6", { awg: "14" }),
      findings: [{ on: "C6 Q14", data: { awg: "14", breakerA: 20, limitA: 15 } }],
    },
    {
      name: "a switch leg",
      drawing: () => laundryProposed().setConductors("C7", { awg: "14" }),
      findings: [{ on: "C7 Q14" }],
    },
    {
      name: "a breaker too large for all of it, returns included",
      drawing: () => laundryProposed().setDevice("Q14", { breakerRatingA: amps(30) }),
      findings: CIRCUIT.map((name) => ({ on: `${name} Q14`, data: { awg: "12", breakerA: 30, limitA: 20 } })),
    },
    {
      name: "one amp above the limit",
      drawing: () => run("14", "copper", 16),
      findings: [{ on: "C1 Q1", data: { awg: "14", breakerA: 16, limitA: 15 } }],
    },
    {
      name: "14 AWG aluminium, thinner than the thinnest row that would do",
      drawing: () => run("14", "aluminium", 20),
      findings: [{ on: "C1 Q1", data: { awg: "14", breakerA: 20, limitA: 15 } }],
    },
    {
      name: "it rests on the weaker of breaker and cable",
      drawing: () => run("14", "copper", 20).setDevice("Q1", { evidence: { breakerRatingA: "told" } }),
      findings: [{ on: "C1 Q1", basis: "told" }],
    },
  ],
  cannotTell: [
    {
      name: "the rating of the breaker is not recorded",
      drawing: () => run("12", "copper", undefined),
      on: ["Q1"],
      missing: "the rating of Q1 in P",
    },
    {
      name: "8 AWG behind more than the last row",
      drawing: () => run("8", "copper", 40),
      on: ["C1 Q1"],
      missing: "the ampacity of 8 AWG copper",
    },
    {
      name: "14 AWG aluminium behind 15 A: its row is missing",
      drawing: () => run("14", "aluminium", 15),
      on: ["C1 Q1"],
      missing: "the ampacity of 14 AWG aluminium",
    },
  ],
});

/** Limits as published or remembered, each row with its source: at the limit nothing is found, one amp above it is. */
describe("small-conductor limits", () => {
  const found = (awg: string, material: string, ratingA: number, edition: number): number =>
    rawAnswers(run(awg as WireSize, material as Material, ratingA, edition as Edition).project())
      .flat()
      .flatMap(({ reports }) => reports)
      .filter(({ rule }) => rule === conductorTooSmall).length;
  test.each(table.rows)("$awg AWG $material: $limitA A ($source)", ({ awg, material, limitA, edition }) => {
    for (const year of [2017, 2020, 2023, 2026].filter((one) => one >= edition)) {
      expect(found(awg, material, limitA, year)).toBe(0);
      expect(found(awg, material, limitA + 1, year)).toBe(1);
    }
  });
});

describe("what it offers", () => {
  const offersAt = (drawing: Drawing, on: string) =>
    findingOn(proposing(drawing), "conductor-too-small", on).offers?.map(({ title }) => title);
  const thinJumper = () => laundryProposed().setJumper("c", { awg: "14" });

  test("a breaker that every conductor behind it allows, or a jumper made anew", () => {
    expect(offersAt(thinJumper(), "c")).toEqual(["Fit a breaker of 15 A at Q14", "Make jumper c of 12 AWG"]);
    trySectionFix(thinJumper(), "conductor-too-small", "c", "Fit a breaker");
    const { project } = trySectionFix(thinJumper(), "conductor-too-small", "c", "Make jumper");
    expect(project.proposed?.enclosures["B1" as never]?.jumpers["c" as never]).toMatchObject({ awg: "12" });
  });

  test("a cable is not made anew by pressing a button", () => {
    expect(offersAt(laundryProposed().setConductors("C6", { awg: "14" }), "C6")).toEqual([
      "Fit a breaker of 15 A at Q14",
    ]);
  });

  test("the thinnest conductor of all decides: one that allows no breaker that is made leaves nothing", () => {
    const drawing = thinJumper().setConductors("C6", { awg: "16" });
    expect(offersAt(drawing, "C6") ?? []).toEqual([]);
    // With a cable too thin as well, a thicker jumper is no cure: it is told with the cable, whose ground is too thin as well.
    const { findings } = checkDocument(drawing.project());
    const told = findings.filter(({ rule }) => rule === "conductor-too-small");
    expect(
      told.map(({ subjects, foldedSubjects }) => [subjects[0]?.name, foldedSubjects.map(({ name }) => name)]),
    ).toEqual([["C6", ["C6", "c"]]]);
  });

  test("a joint that the thicker jumper is too much for gets another connector", () => {
    const drawing = new Drawing()
      .panel("P")
      .breaker("Q1", 20)
      .box("A", 30)
      .cable("C1", "nm-12-2-g", "P", "A")
      .device("R1", "receptacle-20", "A")
      .device("R2", "receptacle-20", "A")
      .splice("H", "A", "twist-medium")
      .put({ "C1.bk@P": "Q1.OUT", "C1.wh@P": "P-NB.BAR", "C1.bk@A": "H", "C1.wh@A": "R1.N1" })
      .jumper("p", "A", "H", "R1.H1", { awg: "14" })
      .jumper("q", "A", "H", "R2.H1", { awg: "12" })
      .jumper("r", "A", "R1.N2", "R2.N1", { awg: "12", colour: "white" })
      .setSplice("H", { connector: "twist-large" });
    const { title } = trySectionFix(drawing, "conductor-too-small", "p", "Make jumper");
    expect(title).toBe("Make jumper p of 12 AWG");
  });
});
