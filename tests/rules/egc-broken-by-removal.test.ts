import { describe, expect, test } from "vitest";
import { egcBrokenByRemoval } from "../../shared-model/rules/checks/egc-broken-by-removal.ts";
import { checkDocument, inShort } from "./check-drawing.ts";
import { Drawing } from "./drawing.ts";
import { laundryAsFound, laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { trySectionFix } from "./section-fix-tester.ts";

/** The ground of the hall on the ground screw of R1b, beside its pigtail. */
const onYoke = () => laundryProposed().put({ "C5.cu@B1": "R1b.G" });

ruleTester(egcBrokenByRemoval, {
  passes: [
    { name: "every ground spliced", drawing: () => laundryProposed() },
    { name: "as found", drawing: () => laundryAsFound() },
    {
      name: "two on the screw, and what is beyond has another way to ground",
      drawing: () => onYoke().cable("C9", "nm-12-2-g", "B1", "B6").put({ "C9.cu@B1": "E2", "C9.cu@B6": "E-B6" }),
    },
    {
      name: "two on the screw and nothing beyond them",
      drawing: () => laundryProposed().cable("C9", "nm-12-2-g", "B6", "attic").put({ "C9.cu@B6": "R5.G" }),
    },
    {
      name: "no ground arrives at all",
      drawing: () => onYoke().put({ "C1.cu@P": "cap" }),
    },
    {
      name: "one ground on the screw, the last of the run",
      drawing: () => laundryProposed().removeJumper("B6g").put({ "C5.cu@B6": "R5.G" }),
    },
  ],
  finds: [
    {
      name: "the ground of the hall through the yoke",
      drawing: onYoke,
      findings: [
        {
          on: "R1b",
          severity: "violation",
          data: { lost: 2 },
          says: ["The ground of B6 and R5", "ground screw of R1b in B1 (C5 bare and e bare)"],
        },
      ],
    },
    {
      name: "the box alone, through the screw of its receptacle",
      drawing: () =>
        new Drawing()
          .panel()
          .box("A", 60)
          .cable("C", "nm-12-2-g", "P", "A")
          .device("R", "receptacle-15", "A")
          .put({ "C.cu@P": "P-GB.BAR", "C.cu@A": "R.G" })
          .jumper("j", "A", "R.G", "bond", { colour: "bare" }),
      findings: [{ on: "R", data: { lost: 1 }, says: ["The ground of A runs"] }],
    },
    {
      name: "it rests on who says where the grounds are",
      drawing: () => onYoke().knownBy("C5.cu@B1", "told"),
      findings: [{ on: "R1b", basis: "told" }],
    },
  ],
  cannotTell: {
    never: "where every ground is landed is recorded; a ground that leads out of the drawing counts as one",
  },
});

test("that two conductors are on the screw is the same fault with the same cure", () => {
  const { findings } = checkDocument(onYoke().project());
  expect(findings.find(({ rule }) => rule === "egc-broken-by-removal")?.foldedSubjects).toMatchObject([
    { name: "R1b G" },
  ]);
  expect(inShort(findings)).not.toContain("two-wires-one-screw R1b G");
});

describe("its fix", () => {
  test("splices the grounds and brings one pigtail", () => {
    const { title, left } = trySectionFix(onYoke(), "egc-broken-by-removal", "R1b");
    expect(title).toBe("Splice the grounds on R1b and bring one pigtail to it");
    expect(left.filter((one) => one.includes("R1b"))).toEqual([]);
  });
});
