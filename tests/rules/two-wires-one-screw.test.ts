import { describe, expect, test } from "vitest";
import { twoWiresOneScrew } from "../../shared-model/rules/checks/two-wires-one-screw.ts";
import { Drawing } from "./drawing.ts";
import { fixOf, tryFix } from "./fix-tester.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

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
      name: "three under one screw, found once",
      drawing: () => laundryProposed().put({ "C6.bk@B2": "R2.H1", "C6.wh@B2": "R2.H1" }),
      findings: [{ on: "R2 H", data: { conductors: 3, allowed: 1 } }],
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

  test("works on a ground screw", () => {
    tryFix(laundryProposed().put({ "C5.cu@B1": "R1b.G" }), RULE, "R1b G");
  });

  test("is withheld where no connector takes what would be in it", () => {
    const drawing = new Drawing().box("B", 20).device("R", "receptacle-15", "B");
    for (const name of ["C1", "C2"]) drawing.cable(name, "al-12-2-g", "country", "B").put({ [`${name}.bk@B`]: "R.H1" });
    expect(fixOf(drawing, RULE, "R H")).toBeUndefined();
  });
});
