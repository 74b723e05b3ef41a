import { expect, test } from "vitest";
import { hotHotJoined } from "../../shared-model/rules/checks/hot-hot-joined.ts";
import { checkDocument } from "./check-drawing.ts";
import { ofConductors } from "./conductor-findings.ts";
import type { Drawing } from "./drawing.ts";
import { laundryProposed, multiwire } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { trySectionFix } from "./section-fix-tester.ts";
import { twoCircuits } from "./two-circuits.ts";

/** The upper half of R1 on Q1, the lower half on Q2, with the tab in or out. */
const split = (tab: "intact" | "removed"): Drawing =>
  twoCircuits()
    .setDevice("R1", { hotTab: tab, neutralTab: "removed" })
    .put({ "X.bk@B1": "R1.H2", "X.bk@B2": "h2", "X.wh@B1": "R1.N2", "X.wh@B2": "n2" })
    .setDevice("Q2", { tiedTo: "Q1" as never });

ruleTester(hotHotJoined, {
  passes: [
    { name: "one circuit", drawing: () => laundryProposed() },
    { name: "a multiwire circuit", drawing: () => multiwire() },
    { name: "two halves of a duplex whose tab is out", drawing: () => split("removed") },
    {
      name: "an appliance between two legs",
      drawing: () =>
        twoCircuits()
          .device("W1", "appliance-240", "B1")
          .put({ "X.bk@B2": "h2", "X.bk@B1": "W1.L2" })
          .jumper("y", "B1", "h1", "W1.L1"),
    },
    {
      name: "a three-way switch that takes the one or the other",
      drawing: () =>
        twoCircuits()
          .device("S3", "switch-3way", "B1")
          .put({ "X.bk@B2": "h2", "X.bk@B1": "S3.T2" })
          .jumper("y", "B1", "h1", "S3.T1"),
    },
  ],
  finds: [
    {
      name: "on different legs, by a jumper",
      drawing: () => multiwire().jumper("y", "JB", "jA", "jB"),
      findings: [
        {
          on: "QA QB",
          severity: "danger",
          says: ["stand on different legs", "jumper y joins splice jA to splice jB in JB", "short circuit"],
        },
      ],
    },
    {
      name: "on one leg, over a cable, and by whom it is known",
      drawing: () =>
        twoCircuits()
          .put({ "X.bk@B1": "h1", "X.bk@B2": "h2" })
          .setDevice("Q2", { legs: ["A"] })
          .knownBy("C1.bk@P", "told"),
      findings: [{ on: "Q1 Q2", basis: "told", says: ["Q1 and Q2 feed one wire:", "stays live"] }],
    },
    {
      name: "on legs that nobody looked at",
      drawing: () =>
        twoCircuits()
          .put({ "X.bk@B1": "h1", "X.bk@B2": "h2" })
          .setDevice("Q2", { legs: ["A"], evidence: { legs: "assumed" } }),
      findings: [{ on: "Q1 Q2", says: ["on two legs it is a short circuit"] }],
    },
    {
      name: "by a switch, in one of its positions",
      drawing: () =>
        twoCircuits()
          .device("S1", "switch-single-pole", "B1")
          .put({ "X.bk@B2": "h2", "X.bk@B1": "S1.L" })
          .jumper("y", "B1", "h1", "S1.C"),
      findings: [{ on: "Q1 Q2", data: { positions: "S1 on" }, says: ["joined with S1 on"] }],
    },
    {
      name: "by a tab that was left in",
      drawing: () => split("intact"),
      findings: [{ on: "Q1 Q2", says: ["the tab between the hot screws of R1 is in place"] }],
    },
    {
      name: "both poles of one breaker",
      drawing: () =>
        laundryProposed()
          .breaker("Q2", 20, { legs: ["A", "B"] }, "breaker-2")
          .box("B9", 30)
          .cable("C9", "nm-12-2-g", "P", "B9")
          .splice("h9", "B9", "twist-medium")
          .put({ "C9.bk@P": "Q2.OUT1", "C9.wh@P": "Q2.OUT2", "C9.bk@B9": "h9", "C9.wh@B9": "h9" }),
      findings: [{ on: "Q2", says: ["Both poles of Q2"] }],
    },
  ],
  cannotTell: { never: "where the leg is not known it says what either would be" },
});

test("it is the one finding of a multiwire circuit whose hots are joined", () => {
  const drawing = multiwire().jumper("y", "JB", "jA", "jB");
  expect(ofConductors(checkDocument(drawing.project()).findings)).toEqual(["hot-hot-joined QA"]);
});

test("the tab is taken out", () => {
  const { title, left } = trySectionFix(split("intact"), "hot-hot-joined", "Q1");
  expect(title).toBe("Take out the tab between the hot screws of R1");
  expect(left.filter((one) => /hot-hot|split/.test(one))).toEqual([]);
});
