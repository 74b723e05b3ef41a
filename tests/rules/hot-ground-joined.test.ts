import { describe, expect, test } from "vitest";
import type { Finding } from "../../shared-model/answers/finding.ts";
import { hotGroundJoined } from "../../shared-model/rules/checks/hot-ground-joined.ts";
import { butNotes, checkDocument, inShort } from "./check-drawing.ts";
import { Drawing } from "./drawing.ts";
import { proposing } from "./fix-tester.ts";
import { laundryAsFound, laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

const contact = (): Drawing => laundryProposed().jumper("y", "B3", "R3.H2", "bond");

/** A two-wire cable whose white is on the breaker and whose black is on the bar, and a ground made out of the white. */
const liveYoke = (): Drawing =>
  new Drawing()
    .panel("P")
    .breaker("Q1", 15)
    .box("A", 30, { material: "nonmetallic" })
    .cable("C1", "nm-14-2", "P", "A")
    .device("R1", "receptacle-15", "A")
    .put({ "C1.wh@P": "Q1.OUT", "C1.bk@P": "P-NB.BAR", "C1.bk@A": "R1.H1", "C1.wh@A": "R1.N1" })
    .jumper("y", "A", "R1.N2", "R1.G", { colour: "bare", awg: "14" });

ruleTester(hotGroundJoined, {
  passes: [
    { name: "apart", drawing: () => laundryProposed() },
    { name: "apart as found", drawing: () => laundryAsFound() },
    {
      name: "a neutral on the box: another matter",
      drawing: () => laundryProposed().jumper("y", "B3", "R3.N2", "bond"),
    },
    { name: "a bare that lies loose in the box", drawing: () => laundryProposed().put({ "C5.cu@B6": "loose" }) },
    {
      name: "a jumper that grounds nothing and touches nothing",
      drawing: () => laundryProposed().jumper("y", "B3", "cap", "bond"),
    },
    {
      name: "a hot on the box of a circuit that no source reaches and no ground either",
      drawing: () => liveYoke().put({ "C1.wh@P": "cap" }),
    },
  ],
  finds: [
    {
      name: "a hot on the box",
      drawing: contact,
      findings: [
        { on: "y", severity: "danger", says: ["Hot and ground touch: jumper y joins the metal of B3 to R3 H"] },
      ],
    },
    {
      name: "it rests on who says where the jumper is",
      drawing: () => contact().knownBy("y.1", "assumed"),
      findings: [{ on: "y", basis: "assumed" }],
    },
    {
      name: "the black of a cable on the box",
      drawing: () => laundryProposed().put({ "C2.bk@B2": "bond" }),
      findings: [{ on: "C2", says: ["C2 BK joins the metal of B2"] }],
    },
    {
      name: "a hot on a green screw",
      drawing: () => laundryProposed().put({ "C5.bk@B6": "R5.G" }),
      findings: [{ on: "C5", says: ["C5 BK joins R5 G in B6"] }],
    },
    {
      name: "the hot pigtail of LOAD in the joint of the grounds",
      drawing: () => laundryProposed().put({ "c.1": "E1" }),
      findings: [{ on: "c", says: ["jumper c joins splice E1 to R1b LOAD H"] }],
    },
    {
      name: "the pigtail of LINE with its other end on the hot joint",
      drawing: () => laundryProposed().put({ "a.2": "E1" }),
      findings: [{ on: "a", severity: "danger" }],
    },
    {
      name: "a bare of a run in the hot joint: what hangs on it is live and has no ground",
      drawing: () => laundryProposed().put({ "C5.cu@B1": "HL" }),
      findings: [{ on: "C5", says: ["Live metal: C5 bare joins splice E-B6 in B6 to splice HL in B1", "do not join"] }],
    },
    {
      name: "the same in the joint of LOAD, and not the pigtail that feeds that joint",
      drawing: () => laundryProposed().put({ "C5.cu@B1": "HD" }),
      findings: [{ on: "C5", says: ["to splice HD in B1"] }],
    },
    {
      name: "the same with nothing else behind that joint: the bare is what is wrong there",
      drawing: () => laundryProposed().put({ "C5.cu@B1": "HD", "C2.bk@B1": "cap", "C5.bk@B1": "cap" }),
      findings: [{ on: "C5" }],
    },
    {
      name: "two bares there: two findings",
      drawing: () => laundryProposed().put({ "C5.cu@B1": "HD", "C2.cu@B1": "HD" }),
      findings: [{ on: "C2" }, { on: "C5" }],
    },
    {
      name: "the pigtail of the box in the hot joint",
      drawing: () => laundryProposed().put({ "f.1": "HL" }),
      findings: [{ on: "f", says: ["Live metal: jumper f joins the metal of B1 to splice HL"] }],
    },
    {
      name: "the ground pigtail of a device in the hot joint",
      drawing: () => laundryProposed().put({ "e.1": "HL" }),
      findings: [{ on: "e", says: ["Live metal: jumper e joins R1b G to splice HL"] }],
    },
    {
      name: "a bare in the hole of a hot",
      drawing: () => laundryProposed().put({ "C3.cu@B4": "R4b.LINE_H#1" }),
      findings: [{ on: "C3", says: ["C3 bare joins splice E1 in B1 to R4b LINE H in B4"] }],
    },
    {
      name: "the bare of the supply on the breaker",
      drawing: () => laundryProposed().put({ "C1.cu@P": "Q14.OUT" }),
      findings: [{ on: "C1", says: ["Live metal", "to Q14 H in P"] }],
    },
    {
      name: "a jumper in the panel from a breaker to the ground bar",
      drawing: () => laundryProposed().jumper("y", "P", "Q14.OUT", "P-GB.BAR"),
      findings: [{ on: "y", says: ["Hot and ground touch: jumper y joins P-GB G to Q14 H in P"] }],
    },
    {
      name: "a jumper in the panel from a breaker to its metal",
      drawing: () => laundryProposed().jumper("y", "P", "bond", "Q14.OUT"),
      findings: [{ on: "y", says: ["Hot and ground touch: jumper y joins the metal of P to Q14 H in P"] }],
    },
    {
      name: "a ground made out of what is hot, where no ground is",
      drawing: liveYoke,
      findings: [{ on: "y", says: ["Live metal: jumper y joins R1 G to R1 N in A, and no ground arrives there"] }],
    },
    {
      name: "a switch leg on the box, in one position of the switch",
      drawing: () => laundryProposed().jumper("y", "B5", "S1.L", "bond"),
      findings: [{ on: "y", says: ["Hot and ground touch with S1 on"], data: { positions: "S1 on" } }],
    },
    {
      name: "the hot pigtail of a device on the grounds, and no hot on it: not to be joined to the hot as it is",
      drawing: () => laundryProposed().put({ "a.1": "E1" }),
      findings: [
        { on: "a", severity: "violation", says: ["A hot terminal is on the ground: jumper a", "Part the two first"] },
      ],
    },
    {
      name: "the black of a run on the box where it comes from",
      drawing: () => laundryProposed().put({ "C2.bk@B1": "bond" }),
      findings: [{ on: "C2", severity: "violation", says: ["C2 BK joins the metal of B1 in B1 to R2 H in B2"] }],
    },
  ],
  cannotTell: { never: "conductors are drawn or they are not" },
});

/** Everything said of a drawing in proposed but advice and notes. */
const said = (drawing: Drawing): readonly Finding[] =>
  butNotes(checkDocument(proposing(drawing), "proposed").findings).filter(({ severity }) => severity !== "advice");

describe("no remedy makes it worse", () => {
  test.each([
    ["the hot pigtail of LOAD on the grounds", () => laundryProposed().put({ "c.1": "E1" }), "c"],
    ["the hot pigtail of LINE on the grounds", () => laundryProposed().put({ "a.2": "E1" }), "a"],
    ["and nothing hot on it", () => laundryProposed().put({ "a.1": "E1" }), "a"],
    ["the black of a run on the box", () => laundryProposed().put({ "C2.bk@B2": "bond" }), "C2"],
    ["a bare in the hot joint", () => laundryProposed().put({ "C5.cu@B1": "HL" }), "C5"],
    ["the pigtail of the box in the hot joint", () => laundryProposed().put({ "f.1": "HL" }), "f"],
    ["that of a device", () => laundryProposed().put({ "e.1": "HL" }), "e"],
    ["a bare in the hole of a hot", () => laundryProposed().put({ "C3.cu@B4": "R4b.LINE_H#1" }), "C3"],
    ["a bare on the second hot screw", () => laundryProposed().put({ "C6.cu@B3": "R3.H2" }), "C6"],
    ["a switch leg on the box", () => laundryProposed().jumper("y", "B5", "S1.L", "bond"), "y"],
  ] as const)("%s: all else is folded under it", (_name, drawing, on) => {
    expect(inShort(said(drawing()))).toEqual([`hot-ground-joined ${on}`]);
    expect(said(drawing()).flatMap(({ fix, offers = [] }) => (fix === undefined ? offers : [fix, ...offers]))).toEqual(
      [],
    );
  });

  test("an outlet that is dead for another reason keeps its own finding", () => {
    const drawing = laundryProposed().put({ "f.1": "HL", "C7.bk@B7": "cap" });
    expect(inShort(said(drawing))).toEqual(["hot-ground-joined f", "open-hot L1"]);
  });

  test("grounds that are apart in another box keep theirs", () => {
    const drawing = laundryProposed().put({ "e.1": "HL", "C6.cu@B2": "cap" });
    expect(inShort(said(drawing))).toEqual(["egc-not-spliced-all B2", "hot-ground-joined e"]);
  });
});
