import { expect, test } from "vitest";
import { sharedNeutralUpstreamGfci } from "../../shared-model/rules/checks/shared-neutral-upstream-gfci.ts";
import { volts } from "../../shared-model/units/quantity.ts";
import { checkDocument } from "./check-drawing.ts";
import type { Drawing } from "./drawing.ts";
import { multiwire } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { trySectionFix } from "./section-fix-tester.ts";

/** A one-pole device before the split, on leg A with the white of both: X62 of our list of slips. */
const beforeSplit = (): Drawing =>
  multiwire()
    .setBox("JB", { gangs: 2 })
    .device("G1", "gfci-receptacle-15", "JB")
    .put({ "M3.bk@JB": "G1.LINE_H", "M3.wh@JB": "G1.LINE_N" })
    .jumper("y", "JB", "G1.LOAD_H", "jA")
    .jumper("z", "JB", "G1.LOAD_N", "jN", { colour: "white" })
    .jumper("x", "JB", "jE", "G1.G", { colour: "bare" });

/** The same circuit with its white on a one-pole sensing breaker of leg A. */
const onBreaker = (type: string): Drawing =>
  multiwire().breaker("QG", 20, {}, type).put({ "M3.bk@P": "QG.OUT", "M3.wh@P": "QG.LOAD_N" });

/** On a two-pole sensing breaker, both legs and the white. */
const twoPole = (): Drawing =>
  multiwire()
    .breaker("QG", 20, { legs: ["A", "B"] }, "breaker-gfci-2")
    .put({ "M3.bk@P": "QG.OUT1", "M3.rd@P": "QG.OUT2", "M3.wh@P": "QG.LOAD_N" });

/** After the split: on leg A alone, with a white of its own. */
const afterSplit = (): Drawing =>
  multiwire()
    .device("G1", "gfci-receptacle-15", "BA")
    .put({ "MA.bk@BA": "G1.LINE_H", "MA.wh@BA": "G1.LINE_N" })
    .jumper("y", "BA", "G1.LOAD_H", "RA.H1")
    .jumper("z", "BA", "G1.LOAD_N", "RA.N1", { colour: "white" });

ruleTester(sharedNeutralUpstreamGfci, {
  passes: [
    { name: "no ground-fault device", drawing: () => multiwire() },
    { name: "after the split", drawing: afterSplit },
    { name: "a two-pole breaker for both legs", drawing: twoPole },
    { name: "an arc-fault breaker: it trips for something else", drawing: () => onBreaker("breaker-afci-1") },
    {
      name: "one circuit, a neutral on LOAD and its hot on LINE: another matter",
      drawing: () => beforeSplit().put({ "M3.rd@JB": "cap", "MB.bk@JB": "G1.LINE_H#2" }),
    },
    { name: "its LINE is dead: another matter", drawing: () => beforeSplit().put({ "M3.bk@P": "cap" }) },
  ],
  finds: [
    {
      name: "a one-pole device before the split",
      drawing: beforeSplit,
      findings: [
        {
          on: "G1",
          severity: "danger",
          data: { tripsAboveW: 0.72, outlets: 1 },
          says: ["RB", "QB", "over about 0.7 W", "runs through it, its hot comes from QB.", "RB keeps a live hot"],
        },
      ],
    },
    {
      name: "at another voltage, and who says where the white is",
      drawing: () => {
        const drawing = beforeSplit().knownBy("M3.wh@JB", "told");
        drawing.extra.supply = { system: "208Y/120", nominalV: volts(127) };
        return drawing;
      },
      findings: [{ on: "G1", basis: "told", data: { tripsAboveW: 0.76, outlets: 1 } }],
    },
    {
      name: "both legs from one two-pole breaker",
      drawing: () =>
        beforeSplit()
          .breaker("Q2", 20, { legs: ["A", "B"] }, "breaker-2")
          .put({ "M3.bk@P": "Q2.OUT1", "M3.rd@P": "Q2.OUT2" }),
      findings: [{ on: "G1", says: ["the neutral of RB runs through it, its hot comes from the other leg of Q2."] }],
    },
    {
      name: "a one-pole breaker with the white of both legs",
      drawing: () => onBreaker("breaker-gfci-1"),
      findings: [{ on: "QG", severity: "caution", says: ["RB", "QB", "two-pole ground-fault breaker"] }],
    },
    {
      name: "the same where the other leg must be protected",
      drawing: () => onBreaker("breaker-dual-1").setDevice("RB", { zones: ["sink-zone"] }),
      findings: [{ on: "QG", severity: "violation" }],
    },
  ],
  cannotTell: { never: "terminals and conductors are drawn or they are not" },
});

test("what the other leg shows at the device is folded under it", () => {
  const drawing = beforeSplit().setDevice("RB", { zones: ["sink-zone"] });
  const { findings } = checkDocument(drawing.project());
  const about = findings.filter(({ subjects }) => subjects.some(({ name }) => name === "G1" || name === "RB"));
  expect(about.map(({ rule }) => rule)).toEqual(expect.arrayContaining(["shared-neutral-upstream-gfci"]));
  expect(about.map(({ rule }) => rule)).not.toContain("downstream-hot-on-line");
  expect(about.map(({ rule }) => rule)).not.toContain("outlet-not-protected");
  const cause = about.find(({ rule }) => rule === "shared-neutral-upstream-gfci");
  expect(cause?.foldedSubjects.map(({ name }) => name)).toEqual(["RB"]);
});

test("the white of the other leg goes to LINE, where it has an end of its own", () => {
  const { title, left } = trySectionFix(beforeSplit(), "shared-neutral-upstream-gfci", "G1", "Bring MB WH");
  expect(title).toMatch(/^Bring MB WH from the LINE neutral of G1/);
  expect(left.filter((one) => /shared-neutral|downstream/.test(one))).toEqual([]);
});
