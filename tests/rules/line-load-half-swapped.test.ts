import { expect, test } from "vitest";
import { lineLoadHalfSwapped } from "../../shared-model/rules/checks/line-load-half-swapped.ts";
import { checkDocument, inShort, ofWiring } from "./check-drawing.ts";
import type { Drawing } from "./drawing.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { trySectionFix } from "./section-fix-tester.ts";

const neutrals = (): Drawing => laundryProposed().exchange("R1b", "LINE_N", "LOAD_N");
const hots = (): Drawing => laundryProposed().exchange("R1b", "LINE_H", "LOAD_H");

/** The supply in the joint of LOAD, and the rest of the circuit left out. */
const hotsBeside = (): Drawing =>
  laundryProposed()
    .removeJumper("a")
    .put({ "C1.bk@B1": "HD", "C3.bk@B1": "cap", "C4.bk@B1": "cap", "C3.wh@B1": "cap", "C4.wh@B1": "cap" });

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
      name: "both poles fed through: twice the current",
      drawing: neutrals,
      findings: [{ on: "R1b", says: ["sees twice the current of what it feeds"] }],
    },
    {
      name: "LINE H empty, the supply alone on LOAD",
      drawing: () => laundryProposed().exchange("R4b", "LINE_H", "LOAD_H"),
      findings: [{ on: "R4b", says: ["Only one of the two conductors", "LINE H is empty: move the supply to it"] }],
    },
    {
      name: "LINE N empty, the supply alone on LOAD",
      drawing: () => laundryProposed().exchange("R4b", "LINE_N", "LOAD_N"),
      findings: [{ on: "R4b", says: ["Only one of the two conductors", "LINE N is empty: move the supply to it"] }],
    },
    {
      name: "LINE H empty, the supply on LOAD with what is fed",
      drawing: hotsBeside,
      findings: [
        { on: "R1b", says: ["what is fed (C2 BK and C5 BK) is on LOAD as well: move the supply alone to LINE H"] },
      ],
    },
    {
      name: "on LINE the neutrals of what is fed, and nothing on the hot of LOAD: once, not twice",
      drawing: () => neutrals().removeJumper("c").put({ "C2.bk@B1": "HL", "C5.bk@B1": "HL" }),
      findings: [{ on: "R1b", says: ["Only one of the two conductors", "Exchange the neutral"] }],
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
] as const)("the %s conductors of %s change sides, hole by hole", (pole, on, drawing) => {
  const { title, gained } = trySectionFix(drawing(), "line-load-half-swapped", on);
  expect(title).toBe(`Exchange the ${pole} conductors of LINE and LOAD at ${on}`);
  expect(gained).toContain(on);
});

test("where LINE is empty the supply goes to it, and what is fed stays on LOAD", () => {
  const alone = trySectionFix(laundryProposed().exchange("R4b", "LINE_N", "LOAD_N"), "line-load-half-swapped", "R4b");
  expect(alone.title).toBe("Move what is on the LOAD neutral of R4b to LINE");
  expect(alone.gained).toEqual(["R4b"]);
  const beside = trySectionFix(hotsBeside(), "line-load-half-swapped", "R1b");
  expect(beside.title).toBe("Move C1 BK to LINE of R1b, what it feeds stays on LOAD");
  expect(beside.gained).toEqual(["R1b", "R2", "R3", "R5"]);
});

test("what hangs on LOAD beside the supply is folded under it", () => {
  const findings = ofWiring(checkDocument(hotsBeside().project()).findings);
  expect(inShort(findings).filter((one) => one.startsWith("outlet-not-protected"))).toEqual([]);
});

test("with no neutral anywhere there is no plain repair", () => {
  expect(() => trySectionFix(hots().put({ "C1.wh@P": "cap" }), "line-load-half-swapped", "R1b")).toThrow("No such fix");
});
