import { expect, test } from "vitest";
import { shellHot } from "../../shared-model/rules/checks/shell-hot.ts";
import { checkDocument } from "./check-drawing.ts";
import { ofConductors } from "./conductor-findings.ts";
import type { Drawing } from "./drawing.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { trySectionFix } from "./section-fix-tester.ts";

/** The two leads of the stair light exchanged at its box. */
const exchanged = (): Drawing => laundryProposed().swap("C7.bk@B7", "C7.wh@B7");

ruleTester(shellHot, {
  passes: [
    { name: "the shell on the neutral", drawing: () => laundryProposed() },
    { name: "an open neutral is another matter", drawing: () => laundryProposed().put({ "C7.wh@B5": "cap" }) },
    { name: "a receptacle is judged by its polarity", drawing: () => laundryProposed().swap("C5.bk@B6", "C5.wh@B6") },
    {
      name: "an LED luminaire has no lampholder that is known",
      drawing: () => exchanged().setDevice("L1", { type: "luminaire-led-9" }),
    },
    {
      name: "both sides on the same hot: it has no neutral",
      drawing: () => laundryProposed().put({ "C7.wh@B7": "cap" }).jumper("y", "B7", "L1.H", "L1.N"),
    },
    { name: "nothing is live", drawing: () => exchanged().put({ "C1.bk@P": "cap" }) },
  ],
  finds: [
    {
      name: "exchanged behind a switch",
      drawing: exchanged,
      findings: [
        {
          on: "L1",
          severity: "danger",
          says: ["live when it is switched on", "They first cross in B7 at C7 BK and C7 WH"],
        },
      ],
    },
    {
      name: "exchanged without a switch, told by whom",
      drawing: () => exchanged().put({ "C7.bk@B5": "S1.C" }).knownBy("C7.bk@B7", "told"),
      findings: [{ on: "L1", basis: "told", says: ["the screw shell is live, and"] }],
    },
    {
      name: "no neutral at all, the switched hot on the shell",
      drawing: () => laundryProposed().put({ "C7.wh@B7": "cap", "C7.bk@B7": "L1.N" }),
      findings: [{ on: "L1", says: ["no neutral comes to it"] }],
    },
    {
      name: "a fan with a light: its shell is on the common neutral",
      drawing: () =>
        laundryProposed()
          .device("F1", "fan-light", "B7")
          .put({ "C7.bk@B7": "F1.N", "C7.wh@B7": "F1.H_LIGHT" })
          .jumper("y", "B7", "F1.H_LIGHT", "F1.H_FAN"),
      findings: [{ on: "F1/upper" }],
    },
  ],
  cannotTell: { never: "a source that is drawn reaches the shell or none does" },
});

test("it is the one finding: colours and protection follow from it", () => {
  expect(ofConductors(checkDocument(exchanged().project()).findings)).toEqual(["shell-hot L1"]);
  const atTheJoint = laundryProposed().put({ "C4.bk@B1": "NL", "C4.wh@B1": "HL" });
  expect(ofConductors(checkDocument(atTheJoint.project()).findings).filter((one) => !one.startsWith("switch"))).toEqual(
    ["shell-hot L1"],
  );
});

test("the two leads are exchanged", () => {
  const drawing = laundryProposed().swap("C7.bk@B7", "C7.wh@B7");
  const { title, left } = trySectionFix(drawing, "shell-hot", "L1");
  expect(title).toBe("Exchange C7 BK and C7 WH at L1");
  expect(left.filter((one) => one.includes("L1"))).toEqual([]);
});
