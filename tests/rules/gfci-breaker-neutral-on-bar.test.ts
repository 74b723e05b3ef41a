import { expect, test } from "vitest";
import { gfciBreakerNeutralOnBar } from "../../shared-model/rules/checks/gfci-breaker-neutral-on-bar.ts";
import { about, checkDocument, inShort } from "./check-drawing.ts";
import type { Drawing } from "./drawing.ts";
import { fixOf } from "./fix-tester.ts";
import { laundryAsFound, laundryProposed, multiwire } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { trySectionFix } from "./section-fix-tester.ts";

/** A sensing breaker for the circuit, with the white where it is said. */
const onBreaker = (drawing: Drawing, type: string, neutral: string): Drawing =>
  drawing.breaker("QG", 20, {}, type).put({ "C1.bk@P": "QG.OUT", "C1.wh@P": neutral });

const multiwireOn = (neutral: string): Drawing =>
  multiwire().breaker("QG", 20, {}, "breaker-gfci-1").put({ "M3.bk@P": "QG.OUT", "M3.wh@P": neutral });

ruleTester(gfciBreakerNeutralOnBar, {
  passes: [
    { name: "an ordinary breaker", drawing: () => laundryAsFound() },
    { name: "the white on the breaker", drawing: () => onBreaker(laundryAsFound(), "breaker-gfci-1", "QG.LOAD_N") },
    {
      name: "the same of an arc-fault breaker",
      drawing: () => onBreaker(laundryAsFound(), "breaker-afci-1", "QG.LOAD_N"),
    },
    {
      name: "a ground-fault breaker whose function says that it has none",
      drawing: () => onBreaker(laundryAsFound(), "breaker-gfci-1", "P-NB.BAR").setDevice("QG", { function: "none" }),
    },
    { name: "no white at all: another matter", drawing: () => onBreaker(laundryAsFound(), "breaker-gfci-1", "cap") },
    {
      name: "240 V without a neutral on a two-pole ground-fault breaker",
      drawing: () =>
        multiwire()
          .breaker("QG", 20, { legs: ["A", "B"] }, "breaker-gfci-2")
          .device("A1", "appliance-240", "BA")
          .put({ "M3.bk@P": "QG.OUT1", "M3.rd@P": "QG.OUT2", "M3.wh@P": "cap" })
          .put({ "MA.bk@BA": "A1.L1", "MA.wh@JB": "jB", "MA.wh@BA": "A1.L2", "MB.bk@JB": "cap", "MB.wh@JB": "cap" }),
    },
  ],
  finds: [
    {
      name: "the white left on the bar: X63 of our list of slips; R1b and R4b protect what they did",
      drawing: () => onBreaker(laundryProposed(), "breaker-gfci-1", "P-NB.BAR"),
      findings: [
        {
          on: "QG",
          severity: "caution",
          data: { outlets: 6, tripsAboveW: 0.72 },
          says: ["C1 WH does not come back through it", "over about 0.7 W", "Land C1 WH on QG"],
        },
      ],
    },
    {
      name: "outlets of the circuit must be protected and are not",
      drawing: () => onBreaker(laundryAsFound(), "breaker-dual-1", "P-NB.BAR").knownBy("C1.wh@P", "assumed"),
      findings: [{ on: "QG", severity: "violation", basis: "assumed" }],
    },
    {
      name: "an arc-fault breaker",
      drawing: () => onBreaker(laundryAsFound(), "breaker-afci-1", "P-NB.BAR"),
      findings: [{ on: "QG", severity: "caution", data: { outlets: 6 }, says: ["cannot compare the two"] }],
    },
    {
      name: "one leg of a shared neutral",
      drawing: () => multiwireOn("P-NB.BAR"),
      findings: [{ on: "QG", severity: "caution", says: ["the circuit of QB returns by it too", "two-pole"] }],
    },
    {
      name: "an ordinary breaker that is said to be a ground-fault one",
      drawing: () => laundryAsFound().setDevice("Q14", { function: "gfci" }),
      findings: [{ on: "Q14", severity: "violation", says: ["recorded as ground-fault", "C1 WH"] }],
    },
  ],
  cannotTell: { never: "terminals and conductors are drawn or they are not" },
});

test("that nothing is protected follows from it", () => {
  const drawing = onBreaker(laundryAsFound(), "breaker-gfci-1", "P-NB.BAR");
  const said = about(/gfci|line|protected/, checkDocument(drawing.project()).findings);
  expect(inShort(said)).toEqual(["gfci-breaker-neutral-on-bar QG"]);
  expect(said[0]?.foldedSubjects.map(({ name }) => name)).toEqual(["R1", "R2", "R3", "R4"]);
});

test("the white is landed on the breaker, and all of the circuit is protected", () => {
  const drawing = onBreaker(laundryAsFound(), "breaker-gfci-1", "P-NB.BAR");
  const { title, gained } = trySectionFix(drawing, "gfci-breaker-neutral-on-bar", "QG");
  expect(title).toBe("Land C1 WH on the neutral of QG");
  expect(gained).toEqual(["L1", "R1", "R2", "R3", "R4", "R5"]);
});

test("an arc-fault breaker gets its white too; one leg of a shared neutral has no such fix", () => {
  expect(
    fixOf(onBreaker(laundryAsFound(), "breaker-afci-1", "P-NB.BAR"), "gfci-breaker-neutral-on-bar", "QG")?.title,
  ).toBe("Land C1 WH on the neutral of QG");
  expect(fixOf(multiwireOn("P-NB.BAR"), "gfci-breaker-neutral-on-bar", "QG")).toBeUndefined();
});

test("two sensing breakers and one white: told at the one that has it", () => {
  const drawing = multiwireOn("QG.LOAD_N")
    .breaker("QH", 20, { legs: ["B"] }, "breaker-gfci-1")
    .put({ "M3.rd@P": "QH.OUT" });
  expect(inShort(about(/gfci|line|protected/, checkDocument(drawing.project()).findings))).toEqual([
    "shared-neutral-upstream-gfci QG",
  ]);
});
