import { expect, test } from "vitest";
import { gfciNoNeutral } from "../../shared-model/rules/checks/gfci-no-neutral.ts";
import { checkDocument, inShort, ofWiring } from "./check-drawing.ts";
import { Drawing } from "./drawing.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

/** One device with its hot from the panel and its white to country that is not drawn. */
const neutralFromOutside = (): Drawing =>
  new Drawing()
    .panel("P")
    .breaker("Q1", 15)
    .box("A", 30)
    .cable("C1", "nm-14-2-g", "P", "A")
    .cable("C2", "nm-14-2-g", "A", "country")
    .device("G1", "gfci-receptacle-15", "A")
    .put({ "C1.bk@P": "Q1.OUT", "C1.wh@P": "P-NB.BAR", "C1.bk@A": "G1.LINE_H", "C2.wh@A": "G1.LINE_N" });

ruleTester(gfciNoNeutral, {
  passes: [
    { name: "both conductors of the supply on LINE", drawing: () => laundryProposed() },
    { name: "no supply at all", drawing: () => laundryProposed().put({ "a.2": "cap", "b.2": "cap" }) },
    { name: "no hot: another matter", drawing: () => laundryProposed().put({ "a.2": "cap" }) },
    {
      name: "the neutral on LOAD: another matter",
      drawing: () => laundryProposed().exchange("R1b", "LINE_N", "LOAD_N"),
    },
    {
      name: "the neutral terminal on the ground: told at the outlets",
      drawing: () => laundryProposed().put({ "b.1": "E1" }),
    },
    {
      name: "the neutral terminal on a hot: told at the outlets",
      drawing: () => laundryProposed().put({ "b.1": "HL" }),
    },
    {
      name: "a box that is being surveyed",
      drawing: () => laundryProposed().put({ "b.2": "cap" }).setBox("B1", { beingSurveyed: true }),
    },
  ],
  finds: [
    {
      name: "it rests on who says where the hot is",
      drawing: () => laundryProposed().put({ "b.2": "cap" }).knownBy("C1.bk@B1", "told"),
      findings: [{ on: "R1b", basis: "told" }],
    },
    {
      name: "the white of LINE under its cap",
      drawing: () => laundryProposed().put({ "b.2": "cap" }),
      findings: [{ on: "R1b", severity: "danger", says: ["R1b in B1 cannot trip", "R2, R3 and R5"] }],
    },
    {
      name: "the white of the supply loose in the box before",
      drawing: () => laundryProposed().put({ "C3.wh@B1": "loose" }),
      findings: [{ on: "R4b", says: ["its own face"] }],
    },
    {
      name: "a blank-face device with nothing behind it",
      drawing: () => laundryProposed().setDevice("R4b", { type: "gfci-blank" }).put({ "C3.wh@B4": "cap" }),
      findings: [{ on: "R4b", says: ["its LOAD terminals"] }],
    },
    {
      name: "both devices of a circuit without neutral",
      drawing: () => laundryProposed().put({ "C1.wh@B1": "cap" }),
      findings: [{ on: "R1b" }, { on: "R4b" }],
    },
  ],
  cannotTell: [
    {
      name: "its neutral leads into country that is not drawn",
      drawing: neutralFromOutside,
      on: ["C2"],
      missing: "what is at the other end of C2",
    },
  ],
});

test("the open neutrals behind it follow from it", () => {
  const { findings } = checkDocument(laundryProposed().put({ "b.2": "cap" }).project());
  expect(inShort(ofWiring(findings))).toEqual(["gfci-no-neutral R1b"]);
  expect(ofWiring(findings)[0]?.foldedSubjects.map(({ name }) => name)).toEqual(["R1b", "R2", "R3", "R5"]);
});
