import { expect, test } from "vitest";
import { hotNeutralJoined } from "../../shared-model/rules/checks/hot-neutral-joined.ts";
import { checkDocument, inShort, ofWiring } from "./check-drawing.ts";
import { Drawing } from "./drawing.ts";
import { laundryProposed, multiwire } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

/** Two 3-way switches before a lamp, the hot on the common of SA; `second` is where traveller 2 ends at SB. */
const threeWay = (second: "SB.T2" | "N"): Drawing =>
  new Drawing()
    .panel("P")
    .breaker("Q1", 15)
    .box("A", 30)
    .cable("C1", "nm-14-2-g", "P", "A")
    .device("SA", "switch-3way", "A")
    .device("SB", "switch-3way", "A")
    .device("L1", "luminaire-60", "A")
    .splice("N", "A", "twist-medium")
    .put({ "C1.bk@P": "Q1.OUT", "C1.wh@P": "P-NB.BAR", "C1.bk@A": "SA.C", "C1.wh@A": "N" })
    .jumper("t1", "A", "SA.T1", "SB.T1")
    .jumper("t2", "A", "SA.T2", second)
    .jumper("c", "A", "SB.C", "L1.H")
    .jumper("d", "A", "N", "L1.N");

/** The switch of the stair between the joint of the blacks and that of the whites, the lamp on the hot itself. */
const acrossOnPigtails = (): Drawing =>
  laundryProposed()
    .splice("H", "B5", "twist-medium")
    .put({ "C4.bk@B5": "H", "C7.bk@B5": "H" })
    .jumper("p", "B5", "H", "S1.C")
    .jumper("q", "B5", "S1.L", "B5n");

/** A second switch beside the first, and a contact at the lamp. */
const sideBySide = (): Drawing =>
  laundryProposed()
    .device("S2", "switch-single-pole", "B5")
    .splice("H", "B5", "twist-medium")
    .put({ "C4.bk@B5": "H" })
    .jumper("p", "B5", "H", "S1.C")
    .jumper("q", "B5", "H", "S2.C")
    .jumper("r", "B5", "S2.L", "S1.L")
    .jumper("y", "B7", "L1.H", "L1.N");

ruleTester(hotNeutralJoined, {
  passes: [
    { name: "they meet in loads only", drawing: () => laundryProposed() },
    { name: "two legs on one neutral", drawing: () => multiwire() },
    { name: "a 3-way pair", drawing: () => threeWay("SB.T2") },
    {
      name: "exchanged at a receptacle is another matter",
      drawing: () => laundryProposed().swap("C5.bk@B6", "C5.wh@B6"),
    },
    {
      name: "a hot and a ground joined is another matter",
      drawing: () => laundryProposed().jumper("y", "B3", "R3.H2", "bond"),
    },
    {
      name: "a black on the neutral bar that no source reaches",
      drawing: () => laundryProposed().put({ "C1.bk@P": "P-NB.BAR" }),
    },
  ],
  finds: [
    {
      name: "it rests on who says where the jumper is",
      drawing: () => laundryProposed().jumper("y", "B6", "R5.H2", "R5.N2").knownBy("y.1", "assumed"),
      findings: [{ on: "y", basis: "assumed" }],
    },
    {
      name: "and on who says what is on the screws of the switch",
      drawing: () => acrossOnPigtails().knownBy("q.1", "told").knownBy("p.1", "seen"),
      findings: [{ on: "S1", basis: "told" }],
    },
    {
      name: "a jumper behind a switch: in its position",
      drawing: () => laundryProposed().jumper("y", "B5", "S1.L", "B5n"),
      findings: [
        {
          on: "y",
          severity: "danger",
          data: { positions: "S1 on" },
          says: ["with S1 on", "jumper y in B5 joins S1 2, which is hot, to splice B5n, which is neutral"],
        },
      ],
    },
    {
      name: "a jumper at a receptacle: always",
      drawing: () => laundryProposed().jumper("y", "B6", "R5.H2", "R5.N2"),
      findings: [{ on: "y", says: ["as soon as it is switched on", "R5 H", "R5 N"] }],
    },
    {
      name: "one conductor in the wrong one of two joints",
      drawing: () => laundryProposed().put({ "b.1": "HL", "C1.wh@B1": "NL" }).jumper("y", "B1", "R1b.LINE_N", "NL"),
      findings: [{ on: "b", says: ["jumper b in B1"] }],
    },
    {
      name: "black and white of a cable on one screw",
      drawing: () => laundryProposed().put({ "C6.bk@B3": "R3.N1" }),
      findings: [{ on: "C6", says: ["C6 BK joins R2 H in B2, which is hot, to R3 N in B3, which is neutral"] }],
    },
    {
      name: "a switch across hot and neutral",
      drawing: () => laundryProposed().put({ "C7.bk@B5": "cap", "C4.wh@B5": "S1.L" }),
      findings: [{ on: "S1", says: ["with S1 on", "S1 in B5 joins C4 BK, which is hot, to C4 WH, which is neutral"] }],
    },
    {
      name: "the same on pigtails from the two joints: the switch, not an innocent pigtail",
      drawing: () => acrossOnPigtails(),
      findings: [
        {
          on: "S1",
          data: { positions: "S1 on" },
          says: ["S1 in B5 joins splice H, which is hot, to splice B5n, which is neutral. The breaker opens"],
        },
      ],
    },
    {
      name: "a switch of a double-pole pair across hot and neutral",
      drawing: () =>
        laundryProposed()
          .device("S2", "switch-double-pole", "B5")
          .splice("H", "B5", "twist-medium")
          .put({ "C4.bk@B5": "H" })
          .jumper("p", "B5", "H", "S1.C")
          .jumper("q", "B5", "H", "S2.L1")
          .jumper("r", "B5", "S2.T1", "B5n"),
      findings: [{ on: "S2", says: ["with S2 on"] }],
    },
    {
      name: "where it also feeds the lamp, what leads on to the neutral",
      drawing: () =>
        acrossOnPigtails()
          .splice("K", "B5", "twist-medium")
          .put({ "q.2": "K", "C7.bk@B5": "K" })
          .jumper("y", "B5", "K", "B5n"),
      findings: [{ on: "y", says: ["jumper y in B5 joins splice K, which is hot, to splice B5n"] }],
    },
    {
      name: "either of two switches side by side",
      drawing: () => sideBySide(),
      findings: [
        {
          on: "y",
          data: { positions: "S2 on" },
          says: ["for instance with S2 on", "The breaker opens in such a position"],
        },
      ],
    },
    {
      name: "a traveller on the neutral: one position of the first switch",
      drawing: () => threeWay("N"),
      findings: [{ on: "t2", data: { positions: "SA down" }, says: ["with SA down"] }],
    },
    {
      name: "a jumper in the panel",
      drawing: () => laundryProposed().jumper("y", "P", "Q14.OUT", "P-NB.BAR"),
      findings: [{ on: "y", says: ["jumper y in P joins Q14 H"] }],
    },
    {
      name: "a live black on the ground bar where the main bond is",
      drawing: () =>
        laundryProposed().cable("C9", "nm-12-2-g", "P", "B6").put({ "C9.bk@P": "P-GB.BAR", "C9.bk@B6": "R5.H2" }),
      findings: [{ on: "C9", says: ["C9 BK joins R5 H in B6, which is hot, to P-GB G in P, which is neutral"] }],
    },
    {
      name: "two at once",
      drawing: () => laundryProposed().jumper("y", "B6", "R5.H2", "R5.N2").jumper("z", "B5", "S1.L", "B5n"),
      findings: [{ on: "y" }, { on: "z", says: ["with S1 on"] }],
    },
  ],
  cannotTell: { never: "terminals and conductors are drawn or they are not; past the settings tried the runner asks" },
});

test("what the short circuit seems to be besides is folded under it", () => {
  const drawing = laundryProposed().jumper("y", "B1", "HD", "ND");
  expect(inShort(ofWiring(checkDocument(drawing.project()).findings))).toEqual(["hot-neutral-joined y"]);
});

test("it needs both of two switches", () => {
  const drawing = laundryProposed()
    .device("S2", "switch-single-pole", "B5")
    .put({ "C7.bk@B5": "S2.L" })
    .jumper("m", "B5", "S1.L", "S2.C")
    .jumper("y", "B7", "L1.H", "L1.N");
  const [found] = ofWiring(checkDocument(drawing.project()).findings);
  expect(found?.numbers).toEqual({ positions: "S1 on and S2 on" });
});
