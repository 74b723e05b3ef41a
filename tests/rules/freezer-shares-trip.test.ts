import { expect, test } from "vitest";
import { freezerSharesTrip } from "../../shared-model/rules/checks/freezer-shares-trip.ts";
import { watts } from "../../shared-model/units/quantity.ts";
import type { Drawing } from "./drawing.ts";
import { findingOn, proposing } from "./fix-tester.ts";
import { laundryAsFound, laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { trySectionFix } from "./section-fix-tester.ts";

/** The freezer at R4b, whose cable is on LOAD of R1b: X58 and, without its own device, X65 of our list of slips. */
const shared = (): Drawing =>
  laundryProposed().put({ "C3.bk@B1": "HD", "C3.wh@B1": "ND" }).load("Freezer", "freezer-180", "R4b");

const onBreaker = (): Drawing =>
  laundryAsFound().breaker("QG", 20, {}, "breaker-gfci-1").put({ "C1.bk@P": "QG.OUT", "C1.wh@P": "QG.LOAD_N" });

/** Two receptacles in a row behind the face of nothing else: a blank-face device before them. */
const blankBeforeTwo = (): Drawing =>
  laundryProposed()
    .device("G5", "gfci-blank", "B6")
    .device("R8", "receptacle-15", "B6")
    .put({ "C5.bk@B1": "HL", "C5.wh@B1": "NL", "C5.bk@B6": "G5.LINE_H", "C5.wh@B6": "G5.LINE_N" })
    .jumper("y", "B6", "G5.LOAD_H", "R5.H1")
    .jumper("z", "B6", "G5.LOAD_N", "R5.N1", { colour: "white" })
    .jumper("v", "B6", "G5.LOAD_H#2", "R8.H1")
    .jumper("w", "B6", "G5.LOAD_N#2", "R8.N1", { colour: "white" })
    .load("Freezer", "freezer-180", "R5");

ruleTester(freezerSharesTrip, {
  passes: [
    { name: "the freezer has its own device", drawing: () => laundryProposed().load("Freezer", "freezer-180", "R4b") },
    { name: "no freezer", drawing: () => laundryProposed() },
    { name: "no ground-fault device", drawing: () => laundryAsFound().load("Freezer", "freezer-180", "R4") },
    {
      name: "somebody said that it does not matter",
      drawing: () => laundryProposed().load("Freezer", "freezer-180", "R3", { priority: "none" }),
    },
    {
      name: "an alarm is told by another rule",
      drawing: () => laundryProposed().load("Bell", "appliance-600", "R3", { priority: "alarm" }),
    },
  ],
  finds: [
    {
      name: "the freezer behind R1b, and behind its own device too",
      drawing: shared,
      findings: [
        {
          on: "R1b",
          severity: "advice",
          data: { outlets: 5 },
          says: ["the freezer at R4b", "R1b, R2, R3 and R5", "fed past R1b", "it must keep it"],
        },
      ],
    },
    {
      name: "a freezer without a device of its own, and who says so",
      drawing: () => laundryProposed().load("Freezer", "freezer-180", "R3", { evidence: { priority: "told" } }),
      findings: [{ on: "R1b", basis: "told", says: ["the freezer at R3 and also R1b, R2 and R5"] }],
    },
    {
      name: "medical equipment wired in, and a sump pump, behind a breaker",
      drawing: () =>
        onBreaker()
          .device("M1", "appliance-120", "B6", { priority: "medical", loadW: watts(100) })
          .jumper("y", "B6", "R5.H2", "M1.H")
          .jumper("z", "B6", "R5.N2", "M1.N", { colour: "white" })
          .load("Pump", "sump-pump-800", "R3"),
      findings: [
        {
          on: "QG",
          says: ["the medical equipment at M1", "the sump pump at R3", "stops them", "a circuit of their own"],
        },
      ],
    },
    {
      name: "nothing but important things",
      drawing: () => blankBeforeTwo().load("Pump", "sump-pump-800", "R8"),
      findings: [{ on: "G5", says: ["The freezer at R5 and the sump pump at R8 are all behind G5 in B6"] }],
    },
    {
      name: "the freezer and another outlet behind a blank-face device",
      drawing: blankBeforeTwo,
      findings: [{ on: "G5", data: { outlets: 2 } }],
    },
  ],
  cannotTell: { never: "what must not go off is recorded or it is not" },
});

test("with a device of its own the cable is brought past R1b; without one no offer takes its protection", () => {
  expect(trySectionFix(shared(), "freezer-shares-trip", "R1b", "Bring C3").title).toMatch(/from the LINE side of R1b/);
  const without = laundryProposed().load("Freezer", "freezer-180", "R5");
  expect(findingOn(proposing(without), "freezer-shares-trip", "R1b").offers).toBeUndefined();
});
