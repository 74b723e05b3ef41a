import { expect, test } from "vitest";
import { gfciBehindGfci } from "../../shared-model/rules/checks/gfci-behind-gfci.ts";
import { about, checkDocument, inShort } from "./check-drawing.ts";
import type { Drawing } from "./drawing.ts";
import { fixOf } from "./fix-tester.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { trySectionFix } from "./section-fix-tester.ts";

/** The cable of R4b on LOAD of R1b: X58 of our list of slips. */
const inSeries = (): Drawing => laundryProposed().put({ "C3.bk@B1": "HD", "C3.wh@B1": "ND" });

/** The plan behind a sensing breaker. */
const behindBreaker = (type: string, neutral: string): Drawing => {
  const drawing = laundryProposed().breaker("QG", 20, {}, type);
  return drawing.put({ "C1.bk@P": "QG.OUT", "C1.wh@P": neutral });
};

/** A third device in the box of R4b, fed from its LOAD. */
const threeInSeries = (): Drawing =>
  inSeries()
    .device("R6b", "gfci-receptacle-15", "B4")
    .jumper("y", "B4", "R4b.LOAD_H", "R6b.LINE_H")
    .jumper("z", "B4", "R4b.LOAD_N", "R6b.LINE_N", { colour: "white" });

ruleTester(gfciBehindGfci, {
  passes: [
    { name: "R4b is fed from LINE of R1b", drawing: () => laundryProposed() },
    { name: "its hot alone is on LOAD: another matter", drawing: () => laundryProposed().put({ "C3.bk@B1": "HD" }) },
    { name: "its neutral alone: another matter", drawing: () => laundryProposed().put({ "C3.wh@B1": "ND" }) },
    {
      name: "R1b is fed on LOAD: another matter",
      drawing: () => inSeries().exchange("R1b", "LINE_H", "LOAD_H").exchange("R1b", "LINE_N", "LOAD_N"),
    },
    {
      name: "an arc-fault breaker before it trips for something else",
      drawing: () => behindBreaker("breaker-afci-1", "QG.LOAD_N"),
    },
  ],
  finds: [
    {
      name: "R4b on LOAD of R1b",
      drawing: inSeries,
      findings: [
        { on: "R4b", severity: "caution", data: { upstream: "R1b" }, says: ["from the LOAD of R1b in B1", "in B4"] },
      ],
    },
    {
      name: "who says so",
      drawing: () => inSeries().knownBy("C3.bk@B1", "told"),
      findings: [{ on: "R4b", basis: "told" }],
    },
    {
      name: "three in a row: the last one is behind both, and should be fed before the nearest",
      drawing: threeInSeries,
      findings: [
        { on: "R4b", data: { upstream: "R1b" } },
        { on: "R6b", data: { upstream: "R1b R4b" }, says: ["from LINE of R4b"] },
      ],
    },
    {
      name: "a ground-fault breaker before both",
      drawing: () => behindBreaker("breaker-gfci-1", "QG.LOAD_N"),
      findings: [
        { on: "R1b", data: { upstream: "QG" }, says: ["through QG in P", "an ordinary receptacle at R1b"] },
        { on: "R4b" },
      ],
    },
  ],
  cannotTell: { never: "terminals and conductors are drawn or they are not" },
});

test("the freezer cable goes back to LINE, and nothing loses its protection", () => {
  const { title, gained, left } = trySectionFix(inSeries(), "gfci-behind-gfci", "R4b");
  expect([title, gained]).toEqual(["Bring C3 from the LINE side of R1b", []]);
  expect(left).not.toContain("gfci-behind-gfci R4b");
});

test("inside one box the jumpers go to LINE", () => {
  const drawing = laundryProposed()
    .setBox("B1", { gangs: 2 })
    .device("R6b", "gfci-receptacle-15", "B1")
    .jumper("y", "B1", "HD", "R6b.LINE_H")
    .jumper("z", "B1", "ND", "R6b.LINE_N", { colour: "white" })
    .jumper("x", "B1", "E2", "R6b.G", { colour: "bare" });
  expect(trySectionFix(drawing, "gfci-behind-gfci", "R6b").title).toContain(
    "Bring y BK and z WH from the LINE side of R1b",
  );
});

test("no fix where an outlet on the same cable would lose what protects it", () => {
  const drawing = inSeries()
    .device("R7", "receptacle-15", "B4")
    .splice("H4", "B4", "twist-medium")
    .splice("N4", "B4", "twist-medium")
    .put({ "C3.bk@B4": "H4", "C3.wh@B4": "N4" })
    .jumper("h1", "B4", "H4", "R4b.LINE_H")
    .jumper("h2", "B4", "H4", "R7.H1")
    .jumper("n1", "B4", "N4", "R4b.LINE_N", { colour: "white" })
    .jumper("n2", "B4", "N4", "R7.N1", { colour: "white" });
  expect(fixOf(drawing, "gfci-behind-gfci", "R4b")).toBeUndefined();
});

test("it is all that is said, whatever else hangs there", () => {
  expect(inShort(about(/gfci|line|protected|trip/, checkDocument(inSeries().project()).findings))).toEqual([
    "gfci-behind-gfci R4b",
  ]);
});
