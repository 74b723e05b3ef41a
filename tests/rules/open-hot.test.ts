import { expect, test } from "vitest";
import { openHot } from "../../shared-model/rules/checks/open-hot.ts";
import { checkDocument, inShort, ofWiring } from "./check-drawing.ts";
import { Drawing } from "./drawing.ts";
import { laundryProposed, multiwire } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

const on240 = (): Drawing =>
  new Drawing()
    .panel("P")
    .breaker("Q1", 20, { legs: ["A", "B"] }, "breaker-2")
    .box("A", 30)
    .cable("C1", "nm-12-2-g", "P", "A")
    .device("W1", "appliance-240", "A")
    .put({ "C1.bk@P": "Q1.OUT1", "C1.wh@P": "Q1.OUT2", "C1.bk@A": "W1.L1", "C1.wh@A": "W1.L2" });

/** A neutral from the panel and a hot from country that is not drawn. */
const hotFromOutside = (): Drawing =>
  new Drawing()
    .panel("P")
    .box("A", 30)
    .cable("C1", "nm-14-2-g", "P", "A")
    .cable("C2", "nm-14-2-g", "A", "country")
    .device("R1", "receptacle-15", "A")
    .put({ "C1.wh@P": "P-NB.BAR", "C1.wh@A": "R1.N1", "C2.bk@A": "R1.H1" });

ruleTester(openHot, {
  passes: [
    { name: "every hot joined", drawing: () => laundryProposed() },
    { name: "two legs on one neutral", drawing: () => multiwire() },
    { name: "a lamp that its switch turns off", drawing: () => laundryProposed() },
    {
      name: "nothing joined at all: a drawing in the works",
      drawing: () => laundryProposed().put({ "C5.bk@B1": "cap", "C5.wh@B1": "cap" }),
    },
    {
      name: "neither of the two landed in the panel yet",
      drawing: () => laundryProposed().put({ "C1.bk@P": "cap", "C1.wh@P": "cap" }),
    },
    {
      name: "a capped end in a box that is being surveyed",
      drawing: () => laundryProposed().put({ "C5.bk@B1": "cap" }).setBox("B1", { beingSurveyed: true }),
    },
    {
      name: "hot and neutral exchanged is another matter",
      drawing: () => laundryProposed().swap("C5.bk@B6", "C5.wh@B6"),
    },
    {
      name: "its neutral is live as well: a short circuit, which stands on its own",
      drawing: () => laundryProposed().put({ "C5.bk@B1": "cap" }).jumper("y", "B1", "HL", "ND"),
    },
    { name: "a 240 V appliance with both hots", drawing: on240 },
    { name: "a 240 V appliance with neither", drawing: () => on240().put({ "C1.bk@P": "cap", "C1.wh@P": "cap" }) },
    {
      name: "a receptacle that is not wired",
      drawing: () => new Drawing().box("A", 30).device("R1", "receptacle-15", "A"),
    },
  ],
  finds: [
    {
      name: "it rests on who says where the end is",
      drawing: () => laundryProposed().put({ "C5.bk@B1": "cap" }).knownBy("C5.bk@B1", "assumed"),
      findings: [{ on: "R5", basis: "assumed" }],
    },
    {
      name: "one black capped where the cable leaves: everything behind it",
      drawing: () => laundryProposed().put({ "C2.bk@B1": "cap" }),
      findings: [
        { on: "R2", severity: "caution", says: ["It stops in B1 at C2 BK"] },
        { on: "R3", severity: "caution", says: ["It stops in B1 at C2 BK"] },
      ],
    },
    {
      name: "one black loose at the last receptacle",
      drawing: () => laundryProposed().put({ "C6.bk@B3": "loose" }),
      findings: [{ on: "R3", says: ["It stops in B3 at C6 BK"] }],
    },
    {
      name: "before a switch: no position lights the lamp",
      drawing: () => laundryProposed().put({ "C4.bk@B1": "cap" }),
      findings: [{ on: "L1", says: ["It stops in B1 at C4 BK"] }],
    },
    {
      name: "behind a switch",
      drawing: () => laundryProposed().put({ "C7.bk@B7": "loose" }),
      findings: [{ on: "L1", says: ["It stops in B7 at C7 BK"] }],
    },
    {
      name: "the half of a duplex whose tab is off",
      drawing: () => laundryProposed().setDevice("R5", { hotTab: "removed" }),
      findings: [{ on: "R5/lower", says: ["It stops in B6"] }],
    },
    {
      name: "a survey of another box excuses nothing",
      drawing: () => laundryProposed().put({ "C5.bk@B1": "cap" }).setBox("B3", { beingSurveyed: true }),
      findings: [{ on: "R5" }],
    },
    {
      name: "no breaker yet: one finding for the cable",
      drawing: () => laundryProposed().put({ "C1.bk@P": "cap" }),
      findings: [
        { on: "C1 P", data: { outlets: 6 }, says: ["C1 BK is on no breaker in P", "R1b, R2, R3, R4b, R5 and L1"] },
      ],
    },
    {
      name: "a black on the neutral bar",
      drawing: () => laundryProposed().put({ "C1.bk@P": "P-NB.BAR" }),
      findings: [{ on: "C1 P", says: ["C1 BK is on the neutral bar of P"] }],
    },
    {
      name: "a black on the ground bar",
      drawing: () => laundryProposed().put({ "C1.bk@P": "P-GB.BAR" }),
      findings: [{ on: "C1 P", says: ["C1 BK is on the ground bar of P"] }],
    },
    {
      name: "a black in the joint of the whites",
      drawing: () => laundryProposed().put({ "C3.bk@B1": "NL" }),
      findings: [{ on: "R4b", says: ["joined to the neutral"] }],
    },
    {
      name: "a black on the grounds",
      drawing: () => laundryProposed().put({ "C3.bk@B1": "E1" }),
      findings: [{ on: "R4b", says: ["joined to the equipment ground"] }],
    },
    {
      name: "cut off from its breaker, and live through an appliance between the legs",
      drawing: () =>
        multiwire()
          .device("W1", "appliance-240", "JB")
          .jumper("w1", "JB", "jA", "W1.L1")
          .jumper("w2", "JB", "jB", "W1.L2")
          .put({ "M3.bk@JB": "cap" }),
      findings: [{ on: "W1" }, { on: "RA", says: ["no hot in any switch position, but is live through W1. It stops"] }],
    },
    {
      name: "one leg of a 240 V appliance",
      drawing: () => on240().put({ "C1.wh@P": "cap" }),
      findings: [{ on: "W1", says: ["only one of its two hots"] }],
    },
  ],
  cannotTell: [
    {
      name: "its hot comes from country that is not drawn",
      drawing: hotFromOutside,
      on: ["C2"],
      missing: "what is at the other end of C2",
    },
  ],
});

test("what else could be said of a dead outlet follows from it", () => {
  const { findings, couldNotTell } = checkDocument(laundryProposed().put({ "C2.bk@B1": "cap" }).project());
  expect(inShort(ofWiring(findings))).toEqual(["open-hot R2"]);
  const [first] = ofWiring(findings);
  expect(first?.foldedSubjects.map(({ name }) => name)).toEqual(["C2 BK", "R3"]);
  expect(ofWiring(couldNotTell)).toEqual([]);
});
