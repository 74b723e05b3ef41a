import { describe, expect, test } from "vitest";
import { neutralBarDoubled } from "../../shared-model/rules/checks/neutral-bar-doubled.ts";
import { Drawing } from "./drawing.ts";
import { findingOn, proposing, tryFix } from "./fix-tester.ts";
import { laundryProposed, multiwire } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

/** Two cables in a panel; where their whites and grounds go is said in each case. */
const two = (places: Readonly<Record<string, string>>): Drawing =>
  new Drawing().panel().cable("C1", "nm-12-2-g", "P", "attic").cable("C2", "nm-12-2-g", "P", "cellar").put(places);

ruleTester(neutralBarDoubled, {
  passes: [
    { name: "one neutral", drawing: () => laundryProposed() },
    { name: "one neutral of a multiwire circuit", drawing: () => multiwire() },
    {
      name: "each neutral in its own hole",
      drawing: () => two({ "C1.wh@P": "P-NB.BAR#1", "C2.wh@P": "P-NB.BAR#2" }),
    },
    {
      name: "two grounds in one hole: the marking of the panel decides",
      drawing: () => two({ "C1.cu@P": "P-GB.BAR#1", "C2.cu@P": "P-GB.BAR#1" }),
    },
    {
      name: "a neutral and a ground on one bar, each in its hole",
      drawing: () => two({ "C1.wh@P": "P-NB.BAR#1", "C2.cu@P": "P-NB.BAR#2" }),
    },
  ],
  finds: [
    {
      name: "two neutrals in one hole",
      drawing: () => two({ "C1.wh@P": "P-NB.BAR#3", "C2.wh@P": "P-NB.BAR#3" }),
      findings: [
        {
          on: "hole 3 of P-NB C1 WH C2 WH",
          severity: "violation",
          data: { conductors: 2, neutrals: 2 },
          says: ["C1 WH and C2 WH", "Move C2 WH to a free hole"],
        },
      ],
    },
    {
      name: "a neutral and a ground in one hole",
      drawing: () => two({ "C1.wh@P": "P-NB.BAR#1", "C1.cu@P": "P-NB.BAR#1" }),
      findings: [
        {
          on: "hole 1 of P-NB C1 bare C1 WH",
          data: { conductors: 2, neutrals: 1 },
          says: ["a neutral and a ground together"],
        },
      ],
    },
    {
      name: "two holes of one bar, on the ground bar too",
      drawing: () =>
        two({ "C1.wh@P": "P-NB.BAR#1", "C2.wh@P": "P-NB.BAR#1", "C1.cu@P": "P-GB.BAR#5" })
          .cable("C3", "nm-12-2-g", "P", "porch")
          .put({ "C3.wh@P": "P-GB.BAR#5" }),
      findings: [{ on: "hole 1 of P-NB C1 WH C2 WH" }, { on: "hole 5 of P-GB C1 bare C3 WH" }],
    },
    {
      name: "the neutral of a new cable under that of a multiwire circuit",
      drawing: () => multiwire().cable("M9", "nm-12-2-g", "P", "BB").put({ "M9.wh@P": "P-NB.BAR" }),
      findings: [{ on: "hole 1 of P-NB M3 WH M9 WH", says: ["M3 WH and M9 WH"] }],
    },
  ],
  cannotTell: { never: "every conductor on a bar is in a hole with a number" },
});

describe("what it offers", () => {
  test("the nearest free hole", () => {
    const drawing = two({ "C1.wh@P": "P-NB.BAR#3", "C2.wh@P": "P-NB.BAR#3" });
    const { title, project } = tryFix(drawing, "neutral-bar-doubled", "hole 3 of P-NB", { offer: "Move" });
    expect(title).toBe("Move C2 WH to hole 2");
    const at = project.proposed?.enclosures["P" as never]?.places["C2.wh.a" as never]?.at;
    expect(at).toMatchObject({ kind: "terminal", hole: 2 });
  });

  test("nothing, and another word, where the bar is full", () => {
    const drawing = two({ "C1.wh@P": "P-NB.BAR#1", "C2.wh@P": "P-NB.BAR#1" });
    for (let hole = 2; hole <= 42; hole += 1)
      drawing.cable(`X${hole}`, "single-12-white", "P", "attic").put({ [`X${hole}.wh@P`]: `P-NB.BAR#${hole}` });
    const { offers, message } = findingOn(proposing(drawing), "neutral-bar-doubled", "hole 1 of P-NB");
    expect(offers ?? []).toEqual([]);
    expect(message).toContain("P-NB is full");
  });
});
