import { describe, expect, test } from "vitest";
import { twoWiresOneScrew } from "../../shared-model/rules/checks/two-wires-one-screw.ts";
import { Drawing } from "./drawing.ts";
import { fixOf, tryFix } from "./fix-tester.ts";
import { laundryAsFound, laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

const onBond = (): Drawing => laundryProposed().put({ "C5.cu@B1": "bond" });

ruleTester(twoWiresOneScrew, {
  passes: [
    { name: "one conductor on every screw", drawing: () => laundryProposed() },
    {
      name: "two under a clamp plate, one in each hole",
      drawing: () =>
        laundryProposed().put({ "C2.bk@B1": "R1b.LOAD_H#1", "C5.bk@B1": "R1b.LOAD_H#2" }).removeJumper("c"),
    },
    {
      name: "two in one hole of a clamp plate is another matter",
      drawing: () => laundryProposed().put({ "C2.bk@B1": "R1b.LOAD_H#1", "C5.bk@B1": "R1b.LOAD_H#1" }),
    },
    { name: "one pigtail on the ground screw of every box as found", drawing: () => laundryAsFound() },
    {
      name: "the metal of a panel has screws enough",
      drawing: () => laundryProposed().jumper("y", "P", "bond", "P-GB.BAR").jumper("z", "P", "bond", "P-GB.BAR"),
    },
    {
      name: "a receptacle whose screws are clamp plates",
      drawing: () => laundryProposed().setDevice("R2", { entryKind: "clamp-plate" }).put({ "C6.bk@B2": "R2.H1#2" }),
    },
  ],
  finds: [
    {
      name: "both hots under one screw",
      drawing: () => laundryProposed().put({ "C6.bk@B2": "R2.H1" }),
      findings: [{ on: "R2 H", data: { conductors: 2, allowed: 1 }, says: ["C2 BK and C6 BK"] }],
    },
    {
      name: "a pigtail and a cable on the ground screw",
      drawing: () => laundryProposed().put({ "C5.cu@B1": "R1b.G" }),
      findings: [{ on: "R1b G", data: { conductors: 2, allowed: 1 } }],
    },
    {
      // An inspector's article and trade forum threads: one in the lug of a breaker, unless it is marked for two.
      name: "a second hot in the lug of a breaker, which some are marked for",
      drawing: () => laundryProposed().cable("D", "nm-12-2-g", "P", "country").put({ "D.bk@P": "Q14.OUT" }),
      findings: [
        {
          on: "Q14 H",
          severity: "caution",
          data: { conductors: 2, allowed: 1 },
          says: ["C1 BK and D BK", "unless the marking of the breaker says more"],
        },
      ],
    },
    {
      name: "a hot and a white in one lug",
      drawing: () => laundryProposed().cable("D", "nm-12-2-g", "P", "country").put({ "D.wh@P": "Q14.OUT" }),
      findings: [{ on: "Q14 H", severity: "violation", says: ["take off what does not belong"] }],
    },
    {
      name: "three under one screw, found once",
      drawing: () => laundryProposed().put({ "C6.bk@B2": "R2.H1", "C6.wh@B2": "R2.H1" }),
      findings: [{ on: "R2 H", data: { conductors: 3, allowed: 1 }, says: ["Here are a hot and a neutral"] }],
    },
    {
      name: "a second bare on the ground screw of a box",
      drawing: onBond,
      findings: [
        {
          on: "B1",
          severity: "violation",
          data: { conductors: 2, allowed: 1 },
          says: ["The ground screw or clip of B1 holds 2 conductors (C5 bare and f bare)"],
        },
      ],
    },
    {
      name: "a white beside the ground there",
      drawing: () => laundryProposed().put({ "C5.wh@B6": "bond" }),
      findings: [
        { on: "B6", data: { conductors: 2, allowed: 1 }, says: ["a neutral and a ground: take off what is no ground"] },
      ],
    },
  ],
  cannotTell: { never: "the entry kind of a terminal is that of its type unless it is given" },
});

describe("its fix", () => {
  const RULE = "two-wires-one-screw";

  test("splices the conductors and brings one pigtail to the screw", () => {
    const { title, project, left } = tryFix(laundryProposed().put({ "C6.bk@B2": "R2.H1" }), RULE, "R2 H");
    expect(title).toBe("Splice the conductors on R2 H and bring one pigtail to it");
    const made = Object.values(project.proposed?.enclosures["B2" as never]?.splices ?? {}).map(
      ({ connector }) => connector,
    );
    // Two of 12 AWG and the pigtail: the smallest twist-on that takes three of 12.
    expect(made.sort()).toEqual(["twist-large", "twist-medium"]);
    expect(left.filter((one) => !one.startsWith("fill-nearly-full"))).toEqual([]);
  });

  test("on the ground screw of a box one pigtail stays", () => {
    const { title, left } = tryFix(onBond(), RULE, "B1");
    expect(title).toBe("Leave one pigtail on the ground screw of B1, the others in E2");
    expect(left.filter((one) => !one.startsWith("fill-nearly-full"))).toEqual([]);
    const twice = laundryProposed().jumper("z", "B1", "E2", "bond", { colour: "bare" });
    const again = tryFix(twice, RULE, "B1");
    expect(Object.keys(again.project.proposed?.enclosures["B1" as never]?.jumpers ?? {})).not.toContain("z");
  });

  test("without a pigtail all go into a splice with one", () => {
    const bares = new Drawing()
      .box("B", 30)
      .cable("C1", "nm-12-2-g", "country", "B")
      .cable("C2", "nm-12-2-g", "country", "B")
      .put({ "C1.cu@B": "bond", "C2.cu@B": "bond" });
    const { title, left } = tryFix(bares, RULE, "B");
    expect(title).toBe("Splice the grounds on the ground screw of B and bring one pigtail to it");
    expect(left).toEqual([]);
  });

  test("is withheld where the conductors are of different kinds", () => {
    expect(fixOf(laundryProposed().put({ "C6.bk@B2": "R2.H1", "C6.wh@B2": "R2.H1" }), RULE, "R2 H")).toBeUndefined();
    const dead = laundryProposed().put({ "C1.bk@P": "cap", "C5.wh@B1": "cap", "C5.wh@B6": "bond" });
    expect(fixOf(dead, RULE, "B6")).toBeUndefined();
  });

  test("works on a ground screw that nothing runs on from", () => {
    // The stub leads out of the drawing with nothing behind it: where something is, losing it weighs more.
    const drawing = laundryProposed().cable("C9", "nm-12-2-g", "B1", "country").put({ "C9.cu@B1": "R1b.G" });
    tryFix(drawing, RULE, "R1b G");
  });

  test("is withheld where no connector takes what would be in it", () => {
    const drawing = new Drawing().box("B", 20).device("R", "receptacle-15", "B");
    for (const name of ["C1", "C2"]) drawing.cable(name, "al-12-2-g", "country", "B").put({ [`${name}.bk@B`]: "R.H1" });
    expect(fixOf(drawing, RULE, "R H")).toBeUndefined();
  });
});
