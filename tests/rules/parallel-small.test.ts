import { describe, expect, test } from "vitest";
import { parallelSmall } from "../../shared-model/rules/checks/parallel-small.ts";
import type { WireSize } from "../../shared-model/units/wire-size.ts";
import { checkDocument } from "./check-drawing.ts";
import { Drawing } from "./drawing.ts";
import { laundryProposed, multiwire } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

/** A second white beside that of C5, both in one joint in the hall and in ND. */
const secondWhite = (awg: WireSize = "12"): Drawing =>
  laundryProposed()
    .cable("C8", "single-12-white", "B1", "B6")
    .setConductors("C8", { awg })
    .setConductors("C5", { awg })
    .splice("w", "B6", "twist-medium")
    .put({ "C8.wh@B1": "ND", "C8.wh@B6": "w", "C5.wh@B6": "w" })
    .jumper("k", "B6", "w", "R5.N1", { colour: "white" });

/** Three boxes in a triangle with all blacks and whites joined; the last cable is what closes it. */
const ring = (): Drawing => {
  const drawing = new Drawing().panel().breaker("Q", 20).cable("H", "nm-12-2-g", "P", "country");
  for (const box of ["A", "B", "C"])
    drawing.box(box, 60).splice(`${box}h`, box, "lever-5").splice(`${box}n`, box, "lever-5");
  for (const [name, a, b] of [
    ["C1", "A", "B"],
    ["C2", "B", "C"],
    ["C3", "C", "A"],
  ] as const)
    drawing
      .cable(name, "nm-12-2-g", a, b)
      .put({ [`${name}.bk@${a}`]: `${a}h`, [`${name}.wh@${a}`]: `${a}n` })
      .put({ [`${name}.bk@${b}`]: `${b}h`, [`${name}.wh@${b}`]: `${b}n` });
  return drawing
    .cable("C0", "nm-12-2-g", "P", "A")
    .put({ "C0.bk@P": "Q.OUT", "C0.wh@P": "P-NB.BAR", "C0.bk@A": "Ah", "C0.wh@A": "An" });
};

/** Two cables with their whites on the bar and in one joint; their blacks as given. */
const fromPanel = (breakers: number): Drawing =>
  new Drawing()
    .panel()
    .breaker("Q1", 20)
    .breaker("Q2", 20, { legs: ["B"] })
    .box("A", 60)
    .cable("C1", "nm-12-2-g", "P", "A")
    .cable("C2", "nm-12-2-g", "P", "A")
    .device("R1", "receptacle-15", "A")
    .device("R2", "receptacle-15", "A")
    .splice("n", "A", "lever-5")
    .put({ "C1.bk@P": "Q1.OUT", "C1.bk@A": "R1.H1", "C1.wh@P": "P-NB.BAR#1", "C1.wh@A": "n" })
    .put({ "C2.wh@P": "P-NB.BAR#2", "C2.wh@A": "n", ...(breakers > 1 && { "C2.bk@P": "Q2.OUT", "C2.bk@A": "R2.H1" }) })
    .jumper("x", "A", "n", "R1.N1", { colour: "white" });

ruleTester(parallelSmall, {
  passes: [
    { name: "one cable between two boxes", drawing: () => laundryProposed() },
    { name: "a shared neutral", drawing: () => multiwire() },
    {
      name: "a second white that is capped at one end",
      drawing: () => secondWhite().put({ "C8.wh@B6": "cap" }),
    },
    { name: "1/0 AWG, from where it may be", drawing: () => secondWhite("1/0") },
    {
      name: "two grounds between two boxes",
      drawing: () =>
        laundryProposed().cable("C8", "nm-12-2-g", "B1", "B6").put({ "C8.cu@B1": "E2", "C8.cu@B6": "E-B6" }),
    },
    { name: "the ring open in one box", drawing: () => ring().put({ "C3.bk@A": "cap", "C3.wh@A": "cap" }) },
    { name: "neutrals of two circuits in one joint, which is another fault", drawing: () => fromPanel(2) },
    {
      name: "travellers of a three-way pair",
      drawing: () =>
        new Drawing()
          .box("A", 60)
          .box("B", 60)
          .device("S1", "switch-3way", "A")
          .device("S2", "switch-3way", "B")
          .cable("T", "nm-12-3-g", "A", "B")
          .put({ "T.bk@A": "S1.T1", "T.rd@A": "S1.T2", "T.bk@B": "S2.T1", "T.rd@B": "S2.T2" }),
    },
  ],
  finds: [
    {
      name: "a second white between two boxes",
      drawing: () => secondWhite(),
      findings: [
        {
          on: "C5 C8",
          severity: "violation",
          data: { awg: "12", leastAwg: "1/0" },
          says: ["C5 and C8 join the same neutral in B1 and in B6"],
        },
      ],
    },
    { name: "1 AWG, one size too thin", drawing: () => secondWhite("1"), findings: [{ on: "C5 C8" }] },
    {
      name: "a ring of three boxes, both poles",
      drawing: ring,
      findings: [{ on: "C1 C2 C3", says: ["The hot and neutral runs in a ring", "A, B and C"] }],
    },
    {
      name: "through the strap of a receptacle",
      drawing: () =>
        ring().device("R", "receptacle-15", "B").put({ "C1.bk@B": "R.H1", "C2.bk@B": "R.H2", "C2.wh@B": "cap" }),
      findings: [{ on: "C1 C2 C3", says: ["The hot runs in a ring"] }],
    },
    {
      name: "two whites from the bar of the panel on one circuit",
      drawing: () => fromPanel(1),
      findings: [{ on: "C1 C2", says: ["in A and in P"] }],
    },
  ],
  cannotTell: { never: "size and place of every conductor are recorded" },
});

describe("its section by edition", () => {
  test.each([
    [2017, "310.10(H)"],
    [2020, "310.10(G)"],
    [2023, "310.10(G)"],
    [2026, "310.10(G) (2023)"],
  ] as const)("%i: %s", (edition, section) => {
    const drawing = secondWhite();
    drawing.edition = edition;
    const found = checkDocument(drawing.project()).findings.find(({ rule }) => rule === "parallel-small");
    expect(found?.section?.section).toBe(section);
  });
});
