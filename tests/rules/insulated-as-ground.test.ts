import { expect, test } from "vitest";
import { insulatedAsGround } from "../../shared-model/rules/checks/insulated-as-ground.ts";
import type { WireSize } from "../../shared-model/units/wire-size.ts";
import { checkDocument } from "./check-drawing.ts";
import { ofConductors } from "./conductor-findings.ts";
import { Drawing } from "./drawing.ts";
import { laundryProposed } from "./laundry.ts";
import { markEnd } from "./loop.ts";
import { ruleTester } from "./rule-tester.ts";

/** Two boxes in country: C1 brings the supply from out of the drawing to R1, and C2 goes on to R2. */
const unfed = (ends: Readonly<Record<string, string>> = {}): Drawing =>
  new Drawing()
    .box("A", 30)
    .box("B", 30)
    .device("R1", "receptacle-15", "A")
    .device("R2", "receptacle-15", "B")
    .cable("C1", "nm-12-2-g", "country", "A")
    .cable("C2", "nm-12-2-g", "A", "B")
    .splice("E", "A", "lever-5")
    .splice("EB", "B", "lever-3")
    .put({ "C1.bk@A": "R1.H1", "C1.wh@A": "R1.N1", "C1.cu@A": "E" })
    .put({ "C2.bk@A": "R1.H2", "C2.wh@A": "R1.N2", "C2.cu@A": "E" })
    .put({ "C2.bk@B": "R2.H1", "C2.wh@B": "R2.N1", "C2.cu@B": "EB" })
    .jumper("g", "A", "E", "R1.G", { colour: "bare" })
    .jumper("b", "A", "E", "bond", { colour: "bare" })
    .jumper("gb", "B", "EB", "R2.G", { colour: "bare" })
    .jumper("bb", "B", "EB", "bond", { colour: "bare" })
    .put(ends);

/** The black of C5 is its ground from end to end, at a circuit that is drawn whole. */
const blackGround = (): Drawing =>
  laundryProposed()
    .put({ "C5.bk@B1": "cap", "C5.cu@B1": "cap", "C5.bk@B6": "cap", "C5.cu@B6": "cap" })
    .put({ "C5.bk@B1": "bond", "C5.bk@B6": "bond" });

const awg = (drawing: Drawing, cable: string, size: WireSize): Drawing => {
  const found = drawing.cables[cable];
  if (found === undefined) throw new Error(`No ${cable}.`);
  const changed = Object.entries(found.conductors).map(([key, one]) => [key, { ...one, awg: size }] as const);
  found.conductors = Object.fromEntries(changed);
  return drawing;
};

const taped = (size: WireSize): Drawing => {
  const drawing = awg(blackGround(), "C5", size);
  for (const end of ["C5.bk@B1", "C5.bk@B6"]) markEnd(drawing, end, "green");
  return drawing;
};

ruleTester(insulatedAsGround, {
  passes: [
    { name: "grounds are grounds", drawing: () => laundryProposed() },
    { name: "no supply drawn, and every wire where it belongs", drawing: () => unfed() },
    { name: "a black that is capped", drawing: () => unfed({ "C2.bk@B": "cap" }) },
    {
      name: "a bare wire in the joint of the hots is the slip, not the black",
      drawing: () =>
        unfed()
          .splice("H", "B", "lever-3")
          .put({ "C2.bk@B": "H", "C2.cu@B": "H", "C2.cu@A": "cap" })
          .jumper("h", "B", "H", "R2.H1", { colour: "black" }),
    },
    { name: "4 AWG, marked green at both ends", drawing: () => taped("4") },
  ],
  finds: [
    {
      name: "a black on the green screw, and by whom it is known",
      drawing: () => unfed({ "C2.cu@B": "cap", "C2.bk@B": "R2.G" }).knownBy("C2.bk@B", "told"),
      findings: [
        {
          on: "C2 C2 BK",
          severity: "violation",
          basis: "told",
          data: { ends: 1 },
          says: ["The black of C2 is on R2 G in B", "If it is hot, metal parts become live"],
        },
      ],
    },
    {
      name: "a black among the bare wires",
      drawing: () => unfed({ "C2.bk@A": "E" }).put({ "C2.bk@B": "cap" }),
      findings: [
        { on: "C2 C2 BK", severity: "violation", says: ["joined with C1 bare, C2 bare, b bare and g bare in A"] },
      ],
    },
    {
      name: "a black with a bare wire and nothing else, on neither knows what",
      drawing: () =>
        unfed({ "C2.bk@B": "cap", "C2.cu@B": "cap" })
          .splice("X", "B", "lever-3")
          .put({
            "C2.bk@B": "X",
            "C2.cu@B": "X",
          })
          .put({ "C2.bk@A": "cap", "C2.cu@A": "cap" }),
      findings: [{ on: "C2 C2 BK", severity: "violation", says: ["joined with C2 bare in B"] }],
    },
    {
      name: "a bare wire of the grounds in the joint of the hots: once, whatever lies there",
      drawing: () =>
        unfed()
          .splice("H", "B", "lever-3")
          .put({ "C2.bk@B": "H", "C2.cu@B": "H" })
          .jumper("h", "B", "H", "R2.H1", { colour: "black" }),
      findings: [{ on: "C2 C2 BK", severity: "violation", says: ["joined with C2 bare and h BK in B"] }],
    },
    {
      name: "a white on the metal of the box may be the neutral or a hot",
      drawing: () => unfed({ "C2.wh@B": "bond" }),
      findings: [
        { on: "C2 C2 WH", severity: "violation", says: ["on the metal of B", "if it is hot, as in a switch loop"] },
      ],
    },
    {
      name: "a black pigtail to the green screw",
      drawing: () => unfed().setJumper("g", { colour: "black" }),
      findings: [
        {
          on: "g g BK",
          severity: "violation",
          data: { ends: 2 },
          says: ["Jumper g, which is black, is", "on R1 G in A"],
        },
      ],
    },
    {
      name: "with the supply drawn, what serves as the ground",
      drawing: blackGround,
      findings: [
        {
          on: "C5 C5 BK",
          severity: "violation",
          data: { ends: 2 },
          says: ["serves as the ground", "6 AWG or thinner"],
        },
      ],
    },
    {
      name: "marked green at 6 AWG",
      drawing: () => taped("6"),
      findings: [{ on: "C5 C5 BK as GN", severity: "caution" }],
    },
    {
      name: "marked at one end only",
      drawing: () => markEnd(awg(blackGround(), "C5", "4"), "C5.bk@B1", "green"),
      findings: [{ on: "C5 C5 BK as GN", severity: "violation" }],
    },
    {
      name: "with the supply drawn, what nothing reaches",
      drawing: () =>
        laundryProposed().put({ "C5.bk@B1": "cap", "C5.cu@B1": "cap", "C5.bk@B6": "bond", "C5.cu@B6": "cap" }),
      findings: [{ on: "C5 C5 BK", severity: "violation", says: ["nothing that is drawn reaches it"] }],
    },
    {
      name: "a neutral with a bare wire that leads nobody knows where",
      drawing: () =>
        new Drawing()
          .panel()
          .box("A", 30)
          .cable("C1", "nm-12-2-g", "P", "A")
          .cable("C2", "nm-12-2-g", "A", "country")
          .splice("X", "A", "lever-3")
          .put({ "C1.wh@P": "P-NB.BAR", "C1.wh@A": "X", "C2.cu@A": "X" }),
      findings: [{ on: "C1 C1 WH", severity: "violation", says: ["is on the neutral and joined with C2 bare in A"] }],
    },
    {
      name: "a live black with a bare wire that leads nobody knows where",
      drawing: () =>
        new Drawing()
          .panel()
          .breaker("Q1", 20)
          .box("A", 30)
          .cable("C1", "nm-12-2-g", "P", "A")
          .cable("C2", "nm-12-2-g", "A", "country")
          .splice("X", "A", "lever-3")
          .put({ "C1.bk@P": "Q1.OUT", "C1.bk@A": "X", "C2.cu@A": "X" }),
      findings: [{ on: "C1 C1 BK", severity: "danger", says: ["is live and joined with C2 bare in A"] }],
    },
  ],
  cannotTell: { never: "what a conductor is made of is always given; what it carries is told with it" },
});

test.each([
  ["a hot on the metal of a box", { "C5.bk@B6": "bond" }, "hot-ground-joined C5"],
  ["a neutral on the metal of a box", { "C5.wh@B6": "bond" }, "neutral-ground-joined C5"],
  ["a hot terminal on the ground", { "C5.bk@B1": "bond" }, "hot-ground-joined C5"],
])("a supply that is drawn tells it better, and once: %s", (_, ends, said) => {
  expect(ofConductors(checkDocument(laundryProposed().put(ends).project()).findings)).toEqual([said]);
});

test("what has no ground because of it is told with it", () => {
  const onScrew = unfed({ "C2.bk@B": "R2.G" }).removeJumper("gb");
  expect(ofConductors(checkDocument(onScrew.project()).findings)).toEqual(["insulated-as-ground C2"]);
  const onMetal = unfed({ "C2.bk@B": "bond" }).removeJumper("bb");
  expect(ofConductors(checkDocument(onMetal.project()).findings)).toEqual(["insulated-as-ground C2"]);
});

test("a black ground pigtail is told where neutral and ground touch elsewhere too", () => {
  const touching = laundryProposed()
    .jumper("y", "B3", "R3.N2", "bond", { colour: "white" })
    .setJumper("B7g", { colour: "black" });
  const { findings } = checkDocument(touching.project());
  expect(ofConductors(findings)).toEqual(["insulated-as-ground B7g", "neutral-ground-joined y"]);
  const [told] = findings.filter(({ rule }) => rule === "insulated-as-ground");
  expect(told?.message).toContain("Jumper B7g, which is black, serves as the ground");
});
