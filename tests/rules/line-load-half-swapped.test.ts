import { expect, test } from "vitest";
import { lineLoadHalfSwapped } from "../../shared-model/rules/checks/line-load-half-swapped.ts";
import { checkDocument, inShort, ofWiring } from "./check-drawing.ts";
import type { Drawing } from "./drawing.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { trySectionFix } from "./section-fix-tester.ts";

const neutrals = (): Drawing => laundryProposed().exchange("R1b", "LINE_N", "LOAD_N");
const hots = (): Drawing => laundryProposed().exchange("R1b", "LINE_H", "LOAD_H");

ruleTester(lineLoadHalfSwapped, {
  passes: [
    { name: "both on LINE", drawing: () => laundryProposed() },
    { name: "both on LOAD is another matter", drawing: () => neutrals().exchange("R1b", "LINE_H", "LOAD_H") },
    { name: "exchanged twice", drawing: () => neutrals().exchange("R1b", "LINE_N", "LOAD_N") },
    { name: "a neutral on both sides is another matter", drawing: () => neutrals().jumper("y", "B1", "NL", "ND") },
    { name: "a hot on both sides is another matter", drawing: () => neutrals().jumper("y", "B1", "HL", "HD") },
    { name: "no hot at all", drawing: () => neutrals().put({ "C1.bk@P": "cap" }) },
    { name: "no neutral, the hot on LINE: another matter", drawing: () => laundryProposed().put({ "C1.wh@P": "cap" }) },
  ],
  finds: [
    {
      name: "it rests on who says where the supply is",
      drawing: () => neutrals().knownBy("C1.bk@P", "assumed"),
      findings: [{ on: "R1b", basis: "assumed" }],
    },
    {
      name: "the whites exchanged",
      drawing: neutrals,
      findings: [
        { on: "R1b", severity: "danger", says: ["the hot is on LINE and the neutral on LOAD", "Exchange the neutral"] },
      ],
    },
    {
      name: "the blacks exchanged",
      drawing: hots,
      findings: [{ on: "R1b", says: ["the hot is on LOAD and the neutral on LINE", "Exchange the hot"] }],
    },
    {
      name: "the black on LOAD and no white at all",
      drawing: () => hots().put({ "C1.wh@P": "cap" }),
      findings: [{ on: "R1b", says: ["no neutral reaches it"] }],
    },
    {
      name: "at the end of a run",
      drawing: () => laundryProposed().exchange("R4b", "LINE_N", "LOAD_N"),
      findings: [{ on: "R4b" }],
    },
  ],
  cannotTell: { never: "terminals and conductors are drawn or they are not" },
});

test("what follows from it is folded under it", () => {
  for (const drawing of [neutrals(), hots()]) {
    const findings = ofWiring(checkDocument(drawing.project()).findings);
    expect(inShort(findings)).toEqual(["line-load-half-swapped R1b"]);
  }
});

test.each([
  ["neutral", "R1b", neutrals],
  ["hot", "R1b", hots],
  ["neutral", "R4b", () => laundryProposed().exchange("R4b", "LINE_N", "LOAD_N")],
] as const)("the %s conductors of %s change sides, hole by hole", (pole, on, drawing) => {
  const { title, gained } = trySectionFix(drawing(), "line-load-half-swapped", on);
  expect(title).toBe(`Exchange the ${pole} conductors of LINE and LOAD at ${on}`);
  expect(gained).toContain(on);
});

test("with no neutral anywhere there is no plain repair", () => {
  expect(() => trySectionFix(hots().put({ "C1.wh@P": "cap" }), "line-load-half-swapped", "R1b")).toThrow("No such fix");
});
