import { expect, test } from "vitest";
import { downstreamHotOnLine } from "../../shared-model/rules/checks/downstream-hot-on-line.ts";
import { checkDocument, inShort, ofWiring } from "./check-drawing.ts";
import type { Drawing } from "./drawing.ts";
import { laundryProposed, multiwire } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { trySectionFix } from "./section-fix-tester.ts";

/** A one-pole device before the neutral of two legs is split. */
const beforeTheSplit = (): Drawing =>
  multiwire()
    .device("G1", "gfci-receptacle-20", "JB")
    .put({ "M3.bk@JB": "G1.LINE_H", "M3.wh@JB": "G1.LINE_N" })
    .jumper("y", "JB", "G1.LOAD_H", "jA")
    .jumper("z", "JB", "G1.LOAD_N", "jN", { colour: "white" });

ruleTester(downstreamHotOnLine, {
  passes: [
    { name: "both conductors behind or neither", drawing: () => laundryProposed() },
    { name: "the neutral on LINE: another matter", drawing: () => laundryProposed().put({ "C5.wh@B1": "NL" }) },
    {
      name: "both conductors on LINE: another matter",
      drawing: () => laundryProposed().put({ "C5.bk@B1": "HL", "C5.wh@B1": "NL" }),
    },
    {
      name: "neutrals of both sides joined: another matter",
      drawing: () => laundryProposed().put({ "C4.wh@B1": "ND" }).jumper("y", "B1", "NL", "ND"),
    },
    {
      name: "supply exchanged: another matter",
      drawing: () => laundryProposed().exchange("R1b", "LINE_N", "LOAD_N"),
    },
    { name: "no neutral at all", drawing: () => laundryProposed().put({ "C4.wh@B1": "cap" }) },
  ],
  finds: [
    {
      name: "it rests on who says where the black is",
      drawing: () => laundryProposed().put({ "C4.wh@B1": "ND" }).knownBy("C4.bk@B1", "assumed"),
      findings: [{ on: "L1", basis: "assumed" }],
    },
    {
      name: "one white in the joint of LOAD",
      drawing: () => laundryProposed().put({ "C4.wh@B1": "ND" }),
      findings: [
        { on: "L1", severity: "danger", data: { device: "R1b" }, says: ["Bring C4 BK and C4 WH from the same side"] },
      ],
    },
    {
      name: "one black left in the joint of LINE: every outlet of the cable",
      drawing: () => laundryProposed().put({ "C2.bk@B1": "HL" }),
      findings: [{ on: "R2" }, { on: "R3" }],
    },
    {
      name: "the other leg of two that share a neutral",
      drawing: beforeTheSplit,
      findings: [{ on: "RB", says: ["its hot from another circuit (QB)"] }],
    },
    {
      name: "in one position of a switch",
      drawing: () =>
        laundryProposed()
          .device("S9", "switch-3way", "B6")
          .put({ "C5.bk@B6": "S9.T1" })
          .jumper("x", "B6", "S9.C", "R5.H1")
          .cable("C8", "nm-12-2-g", "B1", "B6")
          .put({ "C8.bk@B1": "HL", "C8.bk@B6": "S9.T2" }),
      findings: [{ on: "R5" }],
    },
  ],
  cannotTell: { never: "terminals and conductors are drawn or they are not" },
});

test("that a load brings the hot round the device follows from it", () => {
  const findings = ofWiring(checkDocument(laundryProposed().put({ "C4.wh@B1": "ND" }).project()).findings);
  expect(inShort(findings)).toEqual(["downstream-hot-on-line L1"]);
});

test("where protection is asked for the hot comes behind the device", () => {
  const { title, gained } = trySectionFix(laundryProposed().put({ "C2.bk@B1": "HL" }), "downstream-hot-on-line", "R2");
  expect(title).toBe("Move C2 BK to the LOAD hot of R1b");
  expect(gained).toEqual(["R2", "R3"]);
});

test("where it is not, the neutral goes back to LINE", () => {
  const { title } = trySectionFix(laundryProposed().put({ "C4.wh@B1": "ND" }), "downstream-hot-on-line", "L1");
  expect(title).toBe("Move C4 WH to the LINE neutral of R1b");
});

test("a neutral shared by two circuits has no plain repair", () => {
  expect(() => trySectionFix(beforeTheSplit(), "downstream-hot-on-line", "RB")).toThrow("No such fix");
});
