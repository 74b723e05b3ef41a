import { expect, test } from "vitest";
import type { Panel } from "../../shared-model/model/enclosure.ts";
import { neutralGroundJoined } from "../../shared-model/rules/checks/neutral-ground-joined.ts";
import { checkDocument, inShort, ofWiring } from "./check-drawing.ts";
import { Drawing } from "./drawing.ts";
import { fixOf } from "./fix-tester.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { trySectionFix } from "./section-fix-tester.ts";

function panelFacts(drawing: Drawing, name: string, facts: Partial<Panel>): Drawing {
  Object.assign(drawing.at(name), facts);
  return drawing;
}

const contact = (): Drawing => laundryProposed().jumper("y", "B3", "R3.N2", "bond", { colour: "white" });

/** A feeder of four conductors to a second panel, and a receptacle there. */
const secondPanel = (): Drawing =>
  panelFacts(
    new Drawing()
      .panel("P")
      .panel("P2")
      .breaker("Q30", 30, { legs: ["A", "B"] }, "breaker-2")
      .device("L2", "main-lugs", "P2")
      .breaker("Q1", 15, {}, "breaker-1", "P2")
      .box("A", 30, { material: "nonmetallic" })
      .cable("F1", "nm-10-3-g", "P", "P2")
      .cable("C1", "nm-14-2-g", "P2", "A")
      .device("R1", "receptacle-15", "A")
      .put({ "F1.bk@P": "Q30.OUT1", "F1.rd@P": "Q30.OUT2", "F1.wh@P": "P-NB.BAR", "F1.cu@P": "P-GB.BAR" })
      .put({ "F1.bk@P2": "L2.L1", "F1.rd@P2": "L2.L2", "F1.wh@P2": "L2.N", "F1.cu@P2": "P2-GB.BAR#1" })
      .put({ "C1.bk@P2": "Q1.OUT", "C1.wh@P2": "P2-NB.BAR#1", "C1.cu@P2": "P2-GB.BAR#2" })
      .put({ "C1.bk@A": "R1.H1", "C1.wh@A": "R1.N1", "C1.cu@A": "R1.G" }),
    "P2",
    { supply: "feeder", mainBond: "elsewhere" },
  );

/** A two-wire cable, and the ground screw of the receptacle tied to its neutral. */
const bootleg = (): Drawing =>
  new Drawing()
    .panel("P")
    .breaker("Q1", 15)
    .box("A", 30, { material: "nonmetallic" })
    .cable("C1", "nm-14-2", "P", "A")
    .device("R1", "receptacle-15", "A")
    .put({ "C1.bk@P": "Q1.OUT", "C1.wh@P": "P-NB.BAR", "C1.bk@A": "R1.H1", "C1.wh@A": "R1.N1" })
    .jumper("y", "A", "R1.N2", "R1.G", { colour: "bare", awg: "14" });

ruleTester(neutralGroundJoined, {
  passes: [
    { name: "apart from the panel on", drawing: () => laundryProposed() },
    {
      name: "at the main bond the two bars may be joined",
      drawing: () => laundryProposed().jumper("y", "P", "P-NB.BAR", "P-GB.BAR"),
    },
    {
      name: "grounds on the neutral bar at the main bond",
      drawing: () => laundryProposed().put({ "C1.cu@P": "P-NB.BAR" }),
    },
    { name: "a second panel with its bars apart", drawing: secondPanel },
    {
      name: "the bond of a second panel that no ground comes to, as in an outbuilding of old",
      drawing: () => panelFacts(secondPanel().put({ "F1.cu@P2": "cap" }), "P2", { mainBond: "here" }),
    },
    {
      name: "a neutral on the ground and nowhere else: told at the outlet",
      drawing: () => laundryProposed().put({ "C6.wh@B3": "cap" }).jumper("y", "B3", "R3.N2", "bond"),
    },
  ],
  finds: [
    {
      name: "it rests on who says where the jumper is",
      drawing: () => contact().knownBy("y.1", "assumed"),
      findings: [{ on: "y", basis: "assumed" }],
    },
    {
      name: "a white that touches the box",
      drawing: contact,
      findings: [{ on: "y", severity: "danger", says: ["jumper y joins the metal of B3 to R3 N in B3"] }],
    },
    {
      name: "the same where the grounds come from the neutral bar",
      drawing: () => contact().put({ "C1.cu@P": "P-NB.BAR" }),
      findings: [{ on: "y", says: ["Neutral and ground touch"] }],
    },
    {
      name: "a bare wire on a neutral terminal",
      drawing: () => laundryProposed().put({ "C6.cu@B3": "R3.N2" }),
      findings: [{ on: "C6", says: ["C6 bare joins splice E-B2 in B2 to R3 N in B3"] }],
    },
    {
      name: "a white in the joint of the grounds",
      drawing: () => laundryProposed().put({ "C6.wh@B3": "E-B3" }),
      findings: [{ on: "C6", says: ["C6 WH joins splice E-B3 in B3 to R2 N in B2"] }],
    },
    {
      name: "a white on the green screw",
      drawing: () => laundryProposed().put({ "C5.wh@B6": "R5.G" }),
      findings: [{ on: "C5", says: ["joins R5 G in B6 to splice ND in B1"] }],
    },
    {
      name: "a ground made out of the neutral",
      drawing: bootleg,
      findings: [{ on: "y", says: ["Neutral used as ground", "no ground is joined to it"] }],
    },
    {
      name: "two contacts: two findings",
      drawing: () => contact().jumper("z", "B6", "R5.N2", "bond", { colour: "white" }),
      findings: [{ on: "y" }, { on: "z" }],
    },
    {
      name: "behind a switch in the neutral",
      drawing: () =>
        laundryProposed()
          .device("S9", "switch-single-pole", "B6")
          .jumper("u", "B6", "R5.N2", "S9.C")
          .jumper("v", "B6", "S9.L", "bond"),
      findings: [{ on: "v", data: { positions: "S9 on" }, says: ["Neutral and ground touch with S9 on: jumper v"] }],
    },
    {
      name: "behind either of two switches in the neutral",
      drawing: () =>
        laundryProposed()
          .device("S8", "switch-single-pole", "B6")
          .device("S9", "switch-single-pole", "B6")
          .jumper("s", "B6", "R5.N2", "S8.C")
          .jumper("t", "B6", "S8.C", "S9.C")
          .jumper("u", "B6", "S8.L", "S9.L")
          .jumper("v", "B6", "S9.L", "bond"),
      findings: [{ on: "v", says: ["Neutral and ground touch, for instance with S9 on: jumper v"] }],
    },
    {
      name: "the bars of a second panel left joined: one finding, at the panel",
      drawing: () => secondPanel().jumper("y", "P2", "P2-NB.BAR", "P2-GB.BAR"),
      findings: [{ on: "P2", severity: "danger", says: ["by jumper y"] }],
    },
    {
      name: "the bonding screw of a second panel left in",
      drawing: () => panelFacts(secondPanel(), "P2", { mainBond: "here" }),
      findings: [
        { on: "P2", severity: "danger", says: ["screw or strap of P2 is in, and F1 bare brings it a ground"] },
      ],
    },
    {
      name: "a ground on the neutral bar of a second panel",
      drawing: () => secondPanel().put({ "C1.cu@P2": "P2-NB.BAR#2" }),
      findings: [{ on: "C1 P2", severity: "danger", says: ["C1 bare is on the neutral bar of P2"] }],
    },
    {
      name: "and where the main bond is in a meter outside",
      drawing: () => panelFacts(laundryProposed(), "P", { mainBond: "elsewhere" }).put({ "C1.cu@P": "P-NB.BAR" }),
      findings: [{ on: "C1 P" }],
    },
    {
      name: "a neutral on the ground bar at the main bond works by way of the bond",
      drawing: () => laundryProposed().put({ "C1.wh@P": "P-GB.BAR" }),
      findings: [{ on: "C1 P", severity: "violation", says: ["C1 WH is on the ground bar of P", "R1b, R2, R3"] }],
    },
  ],
  cannotTell: [
    {
      name: "bars joined where nobody knows the main bond",
      drawing: () =>
        panelFacts(laundryProposed(), "P", { mainBond: "unknown" }).jumper("y", "P", "P-NB.BAR", "P-GB.BAR"),
      on: ["P"],
      missing: "whether the main bond is in P",
    },
    {
      name: "a ground on the neutral bar there",
      drawing: () => panelFacts(laundryProposed(), "P", { mainBond: "unknown" }).put({ "C1.cu@P": "P-NB.BAR" }),
      on: ["P"],
      missing: "whether the main bond is in P",
    },
  ],
});

test("with nothing joined nobody asks where the main bond is", () => {
  const drawing = panelFacts(laundryProposed(), "P", { mainBond: "unknown" });
  expect(ofWiring(checkDocument(drawing.project()).couldNotTell)).toEqual([]);
});

test("outlets whose device the ground goes round are folded under it, others are not", () => {
  const drawing = contact()
    .setDevice("R4b", { type: "receptacle-15" })
    .put({ "C3.bk@B4": "R4b.H1", "C3.wh@B4": "R4b.N1" });
  const findings = ofWiring(checkDocument(drawing.project()).findings);
  expect(inShort(findings)).toEqual(["neutral-ground-joined y", "outlet-not-protected R4b"]);
  expect(findings[0]?.foldedSubjects.map(({ name }) => name)).toEqual(["R1b", "R2", "R3", "y"]);
});

test("white and bare exchanged at a lamp are one finding", () => {
  const findings = ofWiring(checkDocument(laundryProposed().exchange("L1", "N", "G").project()).findings);
  expect(inShort(findings)).toEqual(["neutral-ground-joined C7"]);
  expect(findings[0]?.foldedSubjects.map(({ name }) => name)).toContain("L1");
});

test("a neutral in a second panel on the ground bar is told as an open neutral, as there is no bond", () => {
  const findings = ofWiring(checkDocument(secondPanel().put({ "C1.wh@P2": "P2-GB.BAR#3" }).project()).findings);
  expect(inShort(findings)).toEqual(["open-neutral R1"]);
  expect(findings[0]?.severity).toBe("danger");
});

test("a jumper is taken out, a conductor is for a person to judge", () => {
  const { title, gained } = trySectionFix(contact(), "neutral-ground-joined", "y");
  expect(title).toBe("Remove jumper y between the metal of B3 and R3 N");
  expect(gained).toEqual(["R1b", "R2", "R3", "R5"]);
  trySectionFix(bootleg(), "neutral-ground-joined", "y");
  expect(fixOf(laundryProposed().put({ "C6.cu@B3": "R3.N2" }), "neutral-ground-joined", "C6")).toBeUndefined();
});

test("in a panel ends go to their own bar, and the bars are parted where each has its own way back", () => {
  const joined = secondPanel().jumper("y", "P2", "P2-NB.BAR", "P2-GB.BAR");
  expect(trySectionFix(joined, "neutral-ground-joined", "P2").title).toBe("Remove jumper y between the bars of P2");
  const onNeutral = secondPanel().put({ "C1.cu@P2": "P2-NB.BAR#2" });
  expect(trySectionFix(onNeutral, "neutral-ground-joined", "C1").title).toBe("Move C1 bare to the ground bar of P2");
  const onGround = laundryProposed().put({ "C1.wh@P": "P-GB.BAR" });
  expect(trySectionFix(onGround, "neutral-ground-joined", "C1").title).toBe("Move C1 WH to the neutral bar of P");
});

test("without a ground in the feeder the joint of the bars is not taken out", () => {
  const three = secondPanel().put({ "F1.cu@P2": "cap" }).jumper("y", "P2", "P2-NB.BAR", "P2-GB.BAR");
  expect(fixOf(three, "neutral-ground-joined", "P2")).toBeUndefined();
});
