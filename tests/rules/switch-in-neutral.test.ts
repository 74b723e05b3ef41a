import { expect, test } from "vitest";
import { switchInNeutral } from "../../shared-model/rules/checks/switch-in-neutral.ts";
import { checkDocument, inShort, ofWiring } from "./check-drawing.ts";
import { Drawing } from "./drawing.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { trySectionFix } from "./section-fix-tester.ts";

/** Blacks through, whites on the switch. */
const inNeutral = (): Drawing =>
  laundryProposed().put({ "C4.bk@B5": "B5n", "C7.bk@B5": "B5n", "C4.wh@B5": "S1.C", "C7.wh@B5": "S1.L" });

/** A lamp between two 3-way switches that stand in its neutral; `hot` puts them into its hot. */
function threeWay(where: "neutral" | "hot"): Drawing {
  const [through, switched] = where === "neutral" ? (["bk", "wh"] as const) : (["wh", "bk"] as const);
  return new Drawing()
    .panel("P")
    .breaker("Q1", 15)
    .box("A", 30)
    .cable("C1", "nm-14-2-g", "P", "A")
    .device("SA", "switch-3way", "A")
    .device("SB", "switch-3way", "A")
    .device("L1", "luminaire-60", "A")
    .splice("T", "A", "twist-medium")
    .put({ "C1.bk@P": "Q1.OUT", "C1.wh@P": "P-NB.BAR", [`C1.${switched}@A`]: "SA.C", [`C1.${through}@A`]: "T" })
    .jumper("t1", "A", "SA.T1", "SB.T1")
    .jumper("t2", "A", "SA.T2", "SB.T2")
    .jumper("c", "A", "SB.C", where === "neutral" ? "L1.N" : "L1.H", {
      colour: where === "neutral" ? "white" : "black",
    })
    .jumper("d", "A", "T", where === "neutral" ? "L1.H" : "L1.N", { colour: where === "neutral" ? "black" : "white" });
}

/** Each of two 3-way switches takes hot or neutral, and the lamp hangs between their commons. */
const hotOrNeutral = (): Drawing =>
  new Drawing()
    .panel("P")
    .breaker("Q1", 15)
    .box("A", 30)
    .cable("C1", "nm-14-2-g", "P", "A")
    .device("SA", "switch-3way", "A")
    .device("SB", "switch-3way", "A")
    .device("L1", "luminaire-60", "A")
    .splice("H", "A", "twist-medium")
    .splice("N", "A", "twist-medium")
    .put({ "C1.bk@P": "Q1.OUT", "C1.wh@P": "P-NB.BAR", "C1.bk@A": "H", "C1.wh@A": "N" })
    .jumper("a1", "A", "H", "SA.T1")
    .jumper("a2", "A", "N", "SA.T2")
    .jumper("b1", "A", "H", "SB.T1")
    .jumper("b2", "A", "N", "SB.T2")
    .jumper("c", "A", "SA.C", "L1.H")
    .jumper("d", "A", "SB.C", "L1.N");

const twoPole = (): Drawing =>
  laundryProposed()
    .device("S2", "switch-double-pole", "B6")
    .put({ "C5.bk@B6": "S2.L1", "C5.wh@B6": "S2.L2" })
    .jumper("u", "B6", "S2.T1", "R5.H1")
    .jumper("v", "B6", "S2.T2", "R5.N1");

ruleTester(switchInNeutral, {
  passes: [
    { name: "a switch in the hot", drawing: () => laundryProposed() },
    { name: "3-way switches in the hot", drawing: () => threeWay("hot") },
    { name: "a switch that opens both", drawing: twoPole },
    { name: "a neutral that goes round the switch", drawing: () => inNeutral().jumper("y", "B5", "S1.C", "S1.L") },
    { name: "no hot: another matter", drawing: () => inNeutral().put({ "C4.bk@B1": "cap" }) },
    { name: "no neutral before it: another matter", drawing: () => inNeutral().put({ "C4.wh@B1": "cap" }) },
  ],
  finds: [
    {
      name: "it rests on who says where the whites are",
      drawing: () => inNeutral().knownBy("C4.wh@B5", "told"),
      findings: [{ on: "S1", basis: "told" }],
    },
    {
      name: "a single-pole switch",
      drawing: inNeutral,
      findings: [
        {
          on: "S1",
          severity: "danger",
          data: { outlets: 1 },
          says: ["opens the neutral of L1", "switched off, L1 and its wires stay live"],
        },
      ],
    },
    {
      name: "a dimmer",
      drawing: () => inNeutral().setDevice("S1", { type: "dimmer" }),
      findings: [{ on: "S1" }],
    },
    {
      name: "a pair of 3-way switches: both",
      drawing: () => threeWay("neutral"),
      findings: [
        { on: "SA", says: ["L1"] },
        { on: "SB", says: ["L1"] },
      ],
    },
    {
      name: "3-way switches that choose between hot and neutral: the one at the neutral terminal",
      drawing: hotOrNeutral,
      findings: [{ on: "SB" }],
    },
    {
      name: "two lamps behind one",
      drawing: () =>
        inNeutral()
          .device("L2", "luminaire-60", "B7")
          .jumper("p", "B7", "L1.H", "L2.H")
          .jumper("q", "B7", "L1.N", "L2.N"),
      findings: [
        { on: "S1", data: { outlets: 2 }, says: ["L1 and L2", "switched off, L1, L2 and their wires stay live"] },
      ],
    },
  ],
  cannotTell: { never: "switches are drawn or they are not; past the settings that are tried the runner asks" },
});

test("it is the one finding, with the section for its kind of switch", () => {
  const [single] = ofWiring(checkDocument(inNeutral().project()).findings);
  expect(single?.section).toEqual({ section: "404.2(B)", confidence: "sourced" });
  const several = ofWiring(checkDocument(threeWay("neutral").project()).findings);
  expect(inShort(several)).toEqual(["switch-in-neutral SA", "switch-in-neutral SB"]);
  expect(several[0]?.section?.section).toBe("404.2(A)");
});

test("it may be put into the hot of the same cable", () => {
  const { title, left, project } = trySectionFix(inNeutral(), "switch-in-neutral", "S1", "Put S1");
  expect(title).toBe("Put S1 into the hot of C7 and splice the neutral");
  expect(left.filter((one) => one.startsWith("switch") || one.startsWith("open"))).toEqual([]);
  const places = project.proposed?.enclosures["B5" as never]?.places ?? {};
  expect(places["C7.bk.a" as never]).toEqual({ at: { kind: "terminal", device: "S1", terminal: "L", hole: 1 } });
  expect(places["C4.bk.b" as never]).toEqual({ at: { kind: "terminal", device: "S1", terminal: "C", hole: 1 } });
});

test("with more than two blacks in the joint a pigtail feeds it", () => {
  const more = inNeutral().cable("C8", "nm-12-2-g", "B5", "B3").put({ "C8.bk@B5": "B5n" });
  const { project } = trySectionFix(more, "switch-in-neutral", "S1", "Put S1");
  const box = project.proposed?.enclosures["B5" as never];
  expect(Object.values(box?.jumpers ?? {}).length).toBe(Object.values(more.at("B5").jumpers).length + 1);
});
