import { expect, test } from "vitest";
import { travellerMisused } from "../../shared-model/rules/checks/traveller-misused.ts";
import { checkDocument } from "./check-drawing.ts";
import { ofConductors } from "./conductor-findings.ts";
import type { Drawing } from "./drawing.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { trySectionFix } from "./section-fix-tester.ts";
import { threeWay } from "./three-way.ts";

/** The common of SA on the first traveller of the pair, the feed on its traveller screw. */
const common = (): Drawing => threeWay().put({ "V1.bk@A": "SA.T1", "V2.bk@A": "SA.C" });

/** A four-way switch between the two: its box on V2, with the travellers straight or with one pair taken apart. */
function fourWay(right: boolean): Drawing {
  return threeWay()
    .box("C", 30)
    .device("SC", "switch-4way", "C")
    .cable("W1", "nm-14-3-g", "A", "C")
    .cable("W2", "nm-14-3-g", "C", "B")
    .put({ "V2.bk@A": "cap", "V2.rd@A": "cap", "V2.bk@B": "cap", "V2.rd@B": "cap" })
    .put({ "W1.bk@A": "SA.T1", "W1.rd@A": "SA.T2", "W2.bk@B": "SB.T1", "W2.rd@B": "SB.T2" })
    .put(
      right
        ? { "W1.bk@C": "SC.A1", "W1.rd@C": "SC.A2", "W2.bk@C": "SC.B1", "W2.rd@C": "SC.B2" }
        : { "W1.bk@C": "SC.A1", "W1.rd@C": "SC.B1", "W2.bk@C": "SC.A2", "W2.rd@C": "SC.B2" },
    );
}

/** Three-way switches that choose between hot and neutral, as was once done. */
const hotOrNeutral = (): Drawing =>
  threeWay()
    .splice("H", "A", "twist-medium")
    .put({ "V1.bk@A": "H", "V2.bk@A": "H", "V2.rd@A": "SA.C", "V2.wh@A": "N" })
    .jumper("x", "A", "H", "SA.T1")
    .jumper("y", "A", "N", "SA.T2", { colour: "white" })
    .put({ "V2.bk@B": "SB.T1", "V2.wh@B": "SB.T2", "V2.rd@B": "M" })
    .removeJumper("c")
    .removeJumper("d")
    .jumper("c", "B", "M", "L1.H")
    .jumper("d", "B", "SB.C", "L1.N");

ruleTester(travellerMisused, {
  passes: [
    { name: "a single-pole switch", drawing: () => laundryProposed() },
    { name: "right in all four positions", drawing: () => threeWay() },
    { name: "right with a way back", drawing: () => threeWay({ returns: "bk" }) },
    {
      name: "travellers exchanged at one switch are right as well",
      drawing: () => threeWay().swap("V2.bk@A", "V2.rd@A"),
    },
    { name: "right in all eight positions", drawing: () => fourWay(true) },
    { name: "hot or neutral by turns works: a switch in the neutral", drawing: hotOrNeutral },
    {
      name: "one three-way alone is a switch",
      drawing: () => laundryProposed().setDevice("S1", { type: "switch-3way" }).put({ "C7.bk@B5": "S1.T1" }),
    },
    {
      name: "a single-pole switch before the pair",
      drawing: () =>
        threeWay().device("S0", "switch-single-pole", "A").put({ "V1.bk@A": "S0.C" }).jumper("y", "A", "S0.L", "SA.C"),
    },
    {
      name: "a traveller on the metal of the box is a ground fault",
      drawing: () => threeWay().put({ "V2.rd@B": "bond" }),
    },
    { name: "dead for want of a feed", drawing: () => common().put({ "V1.bk@P": "cap" }) },
    { name: "a box that is being surveyed", drawing: () => common().setBox("B", { beingSurveyed: true }) },
  ],
  finds: [
    {
      name: "the feed on a traveller screw",
      drawing: common,
      findings: [
        {
          on: "SA SB",
          severity: "violation",
          data: { positions: 4, turns: 2 },
          says: ["SA in A has a traveller on its common screw", "SA T1", "turns L1 over in 2 of 4 positions"],
        },
      ],
    },
    {
      name: "the light on a traveller screw, and by whom it is known",
      drawing: () =>
        threeWay()
          .removeJumper("c")
          .put({ "V2.bk@B": "SB.C" })
          .jumper("c", "B", "SB.T1", "L1.H")
          .knownBy("V2.bk@B", "told"),
      findings: [{ on: "SB SA", basis: "told", says: ["SB in B has a traveller on its common screw"] }],
    },
    {
      name: "a traveller that is open",
      drawing: () => threeWay().put({ "V2.rd@B": "cap" }),
      findings: [{ on: "SA SB", severity: "caution", data: { positions: 4, turns: 2 }, says: ["A traveller is open"] }],
    },
    {
      name: "a four-way with its pairs mixed",
      drawing: () => fourWay(false),
      findings: [{ on: "SA SB SC", severity: "caution" }],
    },
  ],
  cannotTell: { never: "what every position does is drawn; past the settings that are tried the runner asks" },
});

test("it is the one finding", () => {
  expect(ofConductors(checkDocument(common().project()).findings).filter((one) => !/egc|unbonded/.test(one))).toEqual([
    "traveller-misused SA",
  ]);
});

test("common and traveller are exchanged", () => {
  const { title, left } = trySectionFix(common(), "traveller-misused", "SA", "Exchange");
  expect(title).toBe("Exchange what is on SA COM and on SA T1");
  expect(left.filter((one) => /traveller|switch/.test(one))).toEqual([]);
});
