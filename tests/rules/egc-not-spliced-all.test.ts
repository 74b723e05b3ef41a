import { describe, expect, test } from "vitest";
import { egcNotSplicedAll } from "../../shared-model/rules/checks/egc-not-spliced-all.ts";
import { butNotes, checkDocument } from "./check-drawing.ts";
import { Drawing } from "./drawing.ts";
import { tryFix } from "./fix-tester.ts";
import { laundryAsFound, laundryProposed, multiwire } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

/** Two cables with ground from open country in a nonmetallic box with one receptacle; the grounds are capped. */
const twoCables = (more: Parameters<Drawing["box"]>[2] = {}): Drawing =>
  new Drawing()
    .box("B", 30, { material: "nonmetallic", ...more })
    .cable("C1", "nm-12-2-g", "country", "B")
    .cable("C2", "nm-12-2-g", "B", "country")
    .device("R", "receptacle-15", "B")
    .put({ "C1.bk@B": "R.H1", "C1.wh@B": "R.N1", "C2.bk@B": "R.H2", "C2.wh@B": "R.N2" });

/** The proposed laundry box with its link taken out and C2 alone in a splice. */
const apart = (): Drawing =>
  laundryProposed().removeJumper("g").splice("q", "B1", "twist-small").put({ "C2.cu@B1": "q" });

/** Two cables with an ordinary and an isolated ground each, the isolated ones green. */
function isolated(): Drawing {
  const drawing = new Drawing().box("B", 42, { material: "nonmetallic" }).splice("E", "B", "twist-medium");
  for (const name of ["C1", "C2"]) {
    drawing.cable(name, "nm-12-3-g", "country", "B");
    const cable = drawing.cables[name];
    const red = Object.entries(cable?.conductors ?? {}).find(([, { colour }]) => colour === "red");
    if (cable === undefined || red === undefined) throw new Error("No red.");
    cable.conductors = { ...cable.conductors, [red[0]]: { ...red[1], colour: "green", grounding: true } };
  }
  return drawing
    .device("R", "receptacle-15", "B")
    .splice("I", "B", "twist-medium")
    .put({ "C1.bk@B": "R.H1", "C1.wh@B": "R.N1", "C2.bk@B": "R.H2", "C2.wh@B": "R.N2" })
    .put({ "C1.cu@B": "E", "C2.cu@B": "E", "C1.rd@B": "I", "C2.rd@B": "I" })
    .jumper("g", "B", "I", "R.G", { colour: "green" });
}

/** Behind an old cable without ground: grounds of two newer cables that go on. */
const noSource = (): Drawing =>
  new Drawing()
    .panel()
    .breaker("Q", 15)
    .box("A", 30, { material: "nonmetallic" })
    .box("Y", 18)
    .box("Z", 18)
    .cable("V", "nm-14-2", "P", "A")
    .cable("W1", "nm-14-2-g", "A", "Y")
    .cable("W2", "nm-14-2-g", "A", "Z")
    .splice("H", "A", "twist-small")
    .put({ "V.bk@P": "Q.OUT", "V.bk@A": "H", "W1.bk@A": "H", "W2.bk@A": "H" });

ruleTester(egcNotSplicedAll, {
  passes: [
    { name: "two joints with a link", drawing: () => laundryProposed() },
    { name: "one joint of seven, whatever its connector", drawing: () => laundryAsFound() },
    { name: "all in one splice", drawing: () => multiwire() },
    {
      name: "each under a clip of the metal box",
      drawing: () => twoCables({ material: "metal" }).put({ "C1.cu@B": "bond", "C2.cu@B": "bond" }),
    },
    { name: "an isolated ground passes by", drawing: () => isolated() },
    {
      name: "the capped ground of a cable that is not used here",
      drawing: () => twoCables().put({ "C1.cu@B": "R.G", "C2.bk@B": "cap", "C2.wh@B": "loose" }),
    },
    { name: "grounds without a source are not tied to each other", drawing: () => noSource() },
    {
      name: "the ground of a cable that the panel does not use yet",
      drawing: () => laundryProposed().put({ "C1.bk@P": "cap", "C1.wh@P": "cap", "C1.cu@P": "cap" }),
    },
    {
      name: "the first box is being surveyed",
      drawing: () => laundryProposed().put({ "C1.cu@P": "cap" }).setBox("B1", { beingSurveyed: true }),
    },
    {
      name: "parted for the survey",
      drawing: () => twoCables({ beingSurveyed: true }),
    },
    {
      name: "an armoured cable and the ground of another at the metal of the box",
      drawing: () => withArmour("bond"),
    },
  ],
  finds: [
    {
      name: "the link is missing",
      drawing: () => laundryProposed().removeJumper("g"),
      findings: [
        {
          on: "B1",
          data: { groups: 2 },
          says: [
            "C1 bare, C2 bare, C3 bare and C4 bare at E1; C5 bare at E2. Without a ground: B1, B6, R1b and R5. Join",
          ],
        },
      ],
    },
    {
      name: "the ground of the circuit left capped in the panel",
      drawing: () => laundryProposed().put({ "C1.cu@P": "cap" }),
      findings: [
        {
          on: "C1 P",
          severity: "violation",
          says: [
            "C1 bare is on nothing in P",
            "Without a ground: B1, B2, B3, B4, B5, B6, B7, L1, R1b",
            "on the ground bar",
          ],
        },
      ],
    },
    {
      name: "three groups",
      drawing: () => apart(),
      // R2 is on the second group that is left alone, R3 beyond it.
      findings: [{ on: "B1", data: { groups: 3 }, says: ["Without a ground: B1, B2, B3, B6, R1b, R2, R3 and R5."] }],
    },
    {
      name: "one left out, on nothing",
      drawing: () => laundryProposed().put({ "C3.cu@B1": "loose" }),
      findings: [{ on: "B1", data: { groups: 2 }, says: ["C3 bare on nothing. Without a ground: B4 and R4b."] }],
    },
    {
      name: "joined by the yokes of two devices only",
      drawing: () => twoCables().device("R9", "receptacle-15", "B").put({ "C1.cu@B": "R.G", "C2.cu@B": "R9.G" }),
      findings: [{ on: "B", data: { groups: 2 }, says: ["C1 bare at R G; C2 bare at R9 G. Join"] }],
    },
    {
      name: "both capped, though one comes from the panel",
      drawing: () => twoCables(),
      findings: [{ on: "B", data: { groups: 2 } }],
    },
    {
      name: "armour at the metal of the box, and a ground that is not",
      drawing: () => withArmour("R.G"),
      findings: [{ on: "B", data: { groups: 2 }, says: ["the armour of A at the metal of the box"] }],
    },
    {
      name: "one on the receptacle, the other capped",
      drawing: () => twoCables().put({ "C1.cu@B": "R.G", "C2.cu@B": "cap" }),
      findings: [{ on: "B", data: { groups: 2 } }],
    },
  ],
  cannotTell: {
    never: "where an end is is always recorded, and an unknown far end counts as what the conductor is made for",
  },
});

/** A bonded armoured cable and one with a ground, which is where told. */
function withArmour(ground: string): Drawing {
  const drawing = new Drawing()
    .box("B", 30)
    .cable("A", "armoured-12-2-old", "country", "B")
    .cable("C", "nm-12-2-g", "country", "B")
    .device("R", "receptacle-15", "B")
    .put({ "A.bk@B": "R.H1", "A.wh@B": "R.N1", "C.bk@B": "R.H2", "C.wh@B": "R.N2", "C.cu@B": ground });
  const cable = drawing.cables.A;
  if (cable !== undefined) cable.construction = "armoured-bonded";
  return drawing;
}

test("what hangs on the group without a source is folded under it", () => {
  const { findings } = checkDocument(apart().project());
  const grounding = butNotes(findings).filter(({ rule }) => !rule.startsWith("fill"));
  expect(grounding.map(({ rule }) => rule)).toEqual(["egc-not-spliced-all"]);
  expect(grounding[0]?.foldedSubjects.map(({ name }) => name)).toEqual(["B1", "R1b", "R2"]);
});

test("a device without any pigtail stays a finding of its own", () => {
  const { findings } = checkDocument(apart().removeJumper("e").project());
  expect(findings.map(({ rule }) => rule)).toContain("device-egc-missing");
});

describe("its fix", () => {
  const RULE = "egc-not-spliced-all";
  const left = (drawing: Drawing, on: string) => {
    const tried = tryFix(drawing, RULE, on);
    return { title: tried.title, left: tried.left.filter((one) => !one.startsWith("fill-nearly-full")) };
  };

  test("links two splices", () => {
    const { title, left: rest } = left(laundryProposed().removeJumper("g"), "B1");
    expect(title).toBe("Join E2 to E1");
    expect(rest).toEqual([]);
  });

  test("links three groups, each connector taking its set", () => {
    expect(left(apart(), "B1").left).toEqual([]);
  });

  test("puts an end on nothing into the splice", () => {
    const { title, left: rest } = left(laundryProposed().put({ "C3.cu@B1": "loose" }), "B1");
    expect(title).toBe("Join C3 bare to E1");
    expect(rest).toEqual([]);
  });

  test("splices two ends on nothing", () => {
    expect(left(twoCables(), "B")).toEqual({
      title: "Splice C1 bare, C2 bare together",
      left: ["device-egc-missing R"],
    });
  });

  test("leaves one pigtail on each green screw", () => {
    const drawing = twoCables().device("R9", "receptacle-15", "B").put({ "C1.cu@B": "R.G", "C2.cu@B": "R9.G" });
    expect(left(drawing, "B").left).toEqual([]);
  });

  test("joins a ground to the metal that armour grounds", () => {
    expect(left(withArmour("R.G"), "B").left).toEqual([]);
  });

  test("changes the connector where one more does not fit", () => {
    const drawing = laundryAsFound().put({ "C5.cu@B1": "cap" }).setSplice("Z", { connector: "push-in-6" });
    expect(tryFix(drawing, RULE, "B1").title).toBe("Join C5 bare to Z; Z gets “Push-in splicing, 8 ports”");
  });
});
