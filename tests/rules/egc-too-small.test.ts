import { describe, expect, test } from "vitest";
import type { Conductor, Material } from "../../shared-model/model/cable.ts";
import type { ConductorKey } from "../../shared-model/model/ids.ts";
import type { Edition } from "../../shared-model/model/project.ts";
import { egcTooSmall } from "../../shared-model/rules/checks/egc-too-small.ts";
import { amps } from "../../shared-model/units/quantity.ts";
import { WIRE_SIZES, type WireSize } from "../../shared-model/units/wire-size.ts";
import table from "../reference/equipment-grounds.json" with { type: "json" };
import { rawAnswers } from "./check-drawing.ts";
import { Drawing } from "./drawing.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { trySectionFix } from "./section-fix-tester.ts";

/** Another ground in a cable. */
function ground(drawing: Drawing, cable: string, facts: Partial<Conductor>): Drawing {
  const found = drawing.cables[cable];
  const key = "cu" as ConductorKey;
  const own = found?.conductors[key];
  if (found === undefined || own === undefined) throw new Error(`${cable} has no ground.`);
  found.conductors = { ...found.conductors, [key]: { ...own, ...facts } };
  return drawing;
}

/** One cable from a breaker to a box; its circuit conductors are thick enough for all that is tried. */
const run = (awg: WireSize, ratingA: number | undefined, material: Material = "copper", edition: Edition = 2020) =>
  ground(
    new Drawing(edition)
      .panel()
      .breaker("Q", ratingA)
      .box("A", 60)
      .cable("C", "nm-12-2-g", "P", "A")
      .setConductors("C", { awg: "4/0" })
      .put({ "C.bk@P": "Q.OUT" }),
    "C",
    { awg, material },
  );

/** Circuits of Q1, 20 A, and Q2 in one box; R, on Q2, has a ground pigtail g of 14 AWG. */
const twoInOne = (ratingA: number): Drawing =>
  new Drawing()
    .panel()
    .breaker("Q1", 20)
    .breaker("Q2", ratingA)
    .box("A", 60)
    .cable("C1", "nm-12-2-g", "P", "A")
    .cable("C2", "nm-12-2-g", "P", "A")
    .splice("E", "A", "twist-medium")
    .device("R", "receptacle-15", "A")
    .put({ "C1.bk@P": "Q1.OUT", "C2.bk@P": "Q2.OUT", "C2.wh@P": "P-NB.BAR", "C2.bk@A": "R.H1", "C2.wh@A": "R.N1" })
    .put({ "C1.cu@P": "P-GB.BAR", "C2.cu@P": "P-GB.BAR", "C1.cu@A": "E", "C2.cu@A": "E" })
    .jumper("g", "A", "E", "R.G", { colour: "bare", awg: "14" });

ruleTester(egcTooSmall, {
  passes: [
    { name: "12 AWG behind 20 A", drawing: () => laundryProposed() },
    { name: "14 AWG behind exactly 15 A", drawing: () => run("14", 15) },
    { name: "10 AWG behind exactly 60 A", drawing: () => run("10", 60) },
    {
      name: "a pigtail of 14 AWG behind 15 A",
      drawing: () =>
        laundryProposed()
          .setDevice("Q14", { breakerRatingA: amps(15) })
          .setJumper("e", { awg: "14" }),
    },
    { name: "a thin hot jumper is no ground", drawing: () => laundryProposed().setJumper("c", { awg: "14" }) },
    {
      name: "no ground comes to the box: its jumper carries nothing",
      drawing: () =>
        new Drawing()
          .panel()
          .breaker("Q", 20)
          .box("A", 60)
          .cable("C", "nm-12-2", "P", "A")
          .device("R", "receptacle-15", "A")
          .put({ "C.bk@P": "Q.OUT", "C.bk@A": "R.H1", "C.wh@P": "P-NB.BAR", "C.wh@A": "R.N1" })
          .jumper("g", "A", "R.G", "bond", { colour: "bare", awg: "14" }),
    },
    { name: "the pigtail of a device on the smaller of two circuits", drawing: () => twoInOne(15) },
    {
      name: "an old cable without a ground",
      drawing: () =>
        new Drawing().panel().breaker("Q", 20).box("A", 60).cable("C", "nm-14-2", "P", "A").put({ "C.bk@P": "Q.OUT" }),
    },
    { name: "a cable that no breaker feeds", drawing: () => run("16", 30).put({ "C.bk@P": "cap" }) },
    { name: "the rating is not recorded, which is asked elsewhere", drawing: () => run("16", undefined) },
  ],
  finds: [
    {
      name: "a ground of 14 AWG in one cable behind 20 A",
      drawing: () => ground(laundryProposed(), "C5", { awg: "14" }),
      findings: [
        {
          on: "C5 Q14",
          severity: "violation",
          data: { awg: "14", breakerA: 20, leastAwg: "12" },
          says: ["The ground of C5 is 14 AWG copper behind Q14 of 20 A: 12 AWG is the least"],
        },
      ],
    },
    {
      name: "a pigtail of 14 AWG behind 20 A",
      drawing: () => laundryProposed().setJumper("e", { awg: "14", evidence: { awg: "told" } }),
      findings: [
        {
          on: "e Q14",
          severity: "violation",
          basis: "told",
          data: { awg: "14", breakerA: 20, leastAwg: "12" },
          says: ["The ground pigtail e in B1 is 14 AWG copper behind Q14 of 20 A: 12 AWG is the least"],
        },
      ],
    },
    {
      name: "the pigtail of a device on the greater of two circuits",
      drawing: () => twoInOne(20),
      findings: [{ on: "g Q2" }],
    },
    {
      name: "from a device to the metal of the box: by the greatest in it",
      drawing: () => twoInOne(15).jumper("b", "A", "E", "bond", { colour: "green", awg: "14" }),
      findings: [{ on: "b Q1", says: ["The ground pigtail b"] }],
    },
    {
      name: "a breaker of 30 A on the laundry circuit: each cable, and no pigtail besides",
      drawing: () => laundryProposed().setDevice("Q14", { breakerRatingA: amps(30) }),
      findings: ["C1", "C2", "C3", "C4", "C5", "C6", "C7"].map((name) => ({
        on: `${name} Q14`,
        data: { awg: "12", breakerA: 30, leastAwg: "10" },
      })),
    },
    {
      name: "the greater of the two breakers of a multiwire cable counts",
      drawing: () =>
        ground(
          new Drawing()
            .panel()
            .breaker("Q1", 15)
            .breaker("Q2", 20, { legs: ["B"] })
            .box("A", 60)
            .cable("C", "nm-12-3-g", "P", "A")
            .put({ "C.bk@P": "Q1.OUT", "C.rd@P": "Q2.OUT" }),
          "C",
          { awg: "14" },
        ),
      findings: [{ on: "C Q2" }],
    },
    {
      name: "an old cable made with a thinner ground may stay",
      drawing: () =>
        new Drawing()
          .panel()
          .breaker("Q", 15)
          .box("A", 60)
          .cable("C", "nm-14-2-reduced-g", "P", "A")
          .put({ "C.bk@P": "Q.OUT" }),
      findings: [
        {
          on: "C Q",
          severity: "advice",
          data: { awg: "16", breakerA: 15, leastAwg: "14" },
          says: ["made thinner than its circuit conductors", "It may stay"],
        },
      ],
    },
    {
      name: "it rests on the weaker of breaker and cable",
      drawing: () => run("14", 20).setDevice("Q", { evidence: { breakerRatingA: "told" } }),
      findings: [{ on: "C Q", basis: "told" }],
    },
  ],
  cannotTell: [{ name: "past the last row", drawing: () => run("1/0", 500), on: ["C Q"], missing: "behind 500 A" }],
});

/** Rows as published, with their source: the size of the row passes, the next thinner one does not. */
describe("least equipment grounds", () => {
  const found = (awg: WireSize, ratingA: number, material: Material, edition: Edition): number =>
    rawAnswers(run(awg, ratingA, material, edition).project())
      .flat()
      .flatMap(({ reports }) => reports)
      .filter(({ rule }) => rule === egcTooSmall).length;

  test.each(table.rows)("to $upToA A: copper $copper, aluminium $aluminium", ({ upToA, copper, aluminium }) => {
    for (const [material, size] of [
      ["copper", copper],
      ["aluminium", aluminium],
      ["copper-clad-aluminium", aluminium],
    ] as const) {
      const thinner = WIRE_SIZES[WIRE_SIZES.indexOf(size as WireSize) - 1] as WireSize;
      for (const edition of [2017, 2020, 2023, 2026] as const) {
        expect(found(size as WireSize, upToA, material, edition)).toBe(0);
        expect(found(thinner, upToA, material, edition)).toBe(1);
      }
    }
  });

  test.each(table.rows.slice(0, -1).map((row, index) => [row, table.rows[index + 1]] as const))(
    "one ampere more than %o asks for the next row",
    (row, next) => {
      expect(found(row.copper as WireSize, row.upToA + 1, "copper", 2020)).toBe(row.copper === next?.copper ? 0 : 1);
      expect(found(next?.copper as WireSize, row.upToA + 1, "copper", 2020)).toBe(0);
    },
  );
});

test("a thin pigtail is made of the size that its breaker asks for", () => {
  const { title, project } = trySectionFix(laundryProposed().setJumper("e", { awg: "14" }), "egc-too-small", "e");
  expect(title).toMatch(/^Make e of 12 AWG/);
  expect(project.proposed?.enclosures["B1" as never]?.jumpers["e" as never]).toMatchObject({ awg: "12" });
});
