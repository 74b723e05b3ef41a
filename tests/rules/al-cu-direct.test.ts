import { describe, expect, test } from "vitest";
import { alCuDirect } from "../../shared-model/rules/checks/al-cu-direct.ts";
import { checkDocument, inShort } from "./check-drawing.ts";
import { Drawing } from "./drawing.ts";
import { tryFix } from "./fix-tester.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

/** The blacks of an old aluminium cable and of copper cables in one splice. */
function joint(connector: string, coppers = 1): Drawing {
  const drawing = new Drawing().box("B", 60).cable("A", "al-12-2-g", "country", "B").splice("S", "B", connector);
  drawing.put({ "A.bk@B": "S" });
  for (let index = 1; index <= coppers; index += 1)
    drawing.cable(`C${index}`, "nm-12-2-g", "B", "garden").put({ [`C${index}.bk@B`]: "S" });
  return drawing;
}

ruleTester(alCuDirect, {
  passes: [
    { name: "copper alone", drawing: () => laundryProposed() },
    { name: "a connector listed for both", drawing: () => joint("al-cu-listed") },
    { name: "too many in such a connector, which another rule says", drawing: () => joint("al-cu-listed", 3) },
    {
      name: "aluminium alone, in a connector for copper: another rule says so",
      drawing: () => joint("twist-medium").setConductors("C1", { material: "aluminium" }),
    },
    { name: "tape and no connector: the connector is what is missing", drawing: () => joint("taped") },
    { name: "one conductor alone", drawing: () => joint("twist-medium", 0) },
  ],
  finds: [
    {
      name: "aluminium and copper under a twist-on",
      drawing: () => joint("twist-medium"),
      findings: [
        {
          on: "S",
          severity: "danger",
          data: { set: "1 × 12 and 1 × 12 aluminium", connector: "twist-medium" },
          says: ["joins 12 AWG copper and 12 AWG aluminium (", "A BK and C1 BK", "twist-on, medium"],
        },
      ],
    },
    {
      name: "in a lever connector",
      drawing: () => joint("lever-3", 2),
      findings: [{ on: "S", says: ["2 × 12 AWG "] }],
    },
    {
      name: "copper-clad aluminium with copper",
      drawing: () => joint("twist-medium").setConductors("A", { material: "copper-clad-aluminium" }),
      findings: [{ on: "S", says: ["copper-clad aluminium"] }],
    },
    {
      name: "one aluminium cable in the laundry circuit",
      drawing: () => laundryProposed().setConductors("C5", { material: "aluminium" }),
      findings: ["E-B6", "E2", "HD", "ND"].map((on) => ({ on })),
    },
  ],
  cannotTell: [
    { name: "the connector is not recorded", drawing: () => joint("unknown"), on: ["S"], missing: "S in B" },
  ],
});

test("that the connector takes none of it is the same fault, and its connector is asked for once", () => {
  const said = (connector: string) => checkDocument(joint(connector).project());
  expect(inShort(said("twist-medium").findings)).toContain("al-cu-direct S");
  expect(inShort(said("twist-medium").findings)).not.toContain("splice-over-capacity S");
  expect(inShort(said("al-cu-listed").findings).filter((one) => one.endsWith(" S"))).toEqual([]);
  expect(inShort(said("unknown").couldNotTell)).toContain("al-cu-direct S");
  expect(inShort(said("unknown").couldNotTell)).not.toContain("splice-over-capacity S");
});

describe("what it offers", () => {
  test("a connector listed for both metals", () => {
    const { title, left } = tryFix(joint("twist-medium"), "al-cu-direct", "S", { offer: "listed" });
    expect(title).toContain("S gets “Listed aluminium-copper connector”");
    expect(left).not.toContain("splice-over-capacity S");
  });

  test("two joints where two aluminium conductors meet two of copper", () => {
    const drawing = joint("twist-large").cable("A2", "al-12-2-g", "B", "yard").cable("C9", "nm-12-2-g", "B", "yard");
    const { project } = tryFix(drawing.put({ "A2.bk@B": "S", "C9.bk@B": "S" }), "al-cu-direct", "S", {
      offer: "listed",
    });
    const splices = Object.values(project.proposed?.enclosures["B" as never]?.splices ?? {});
    expect(splices.map(({ connector }) => connector)).toEqual(["al-cu-listed", "al-cu-listed"]);
  });

  test("two joints with a copper link where one connector does not take them", () => {
    const { title, left } = tryFix(joint("twist-large", 4), "al-cu-direct", "S", { offer: "listed" });
    expect(title).toContain("two splices with one link");
    expect(left.filter((one) => one.startsWith("al-cu-direct") || one.startsWith("splice-over"))).toEqual([]);
  });
});
