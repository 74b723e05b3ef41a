import { describe, expect, test } from "vitest";
import type { Box, Entry } from "../../shared-model/model/enclosure.ts";
import { sheathNotInside } from "../../shared-model/rules/checks/sheath-not-inside.ts";
import { inches } from "../../shared-model/units/quantity.ts";
import { checkDocument } from "./check-drawing.ts";
import { Drawing } from "./drawing.ts";
import { ruleTester } from "./rule-tester.ts";

const stripped = (
  inside: number | undefined,
  box: Partial<Box> = {},
  entry: Partial<Entry> = {},
  item = "nm-12-2-g",
): Drawing =>
  new Drawing()
    .box("B", 20, { material: "nonmetallic", shape: "device", ...box })
    .cable("C", item, "country", "B")
    .setEntry("C", "B", {
      means: "integral-clamp",
      ...(inside !== undefined && { sheathInsideIn: inches(inside) }),
      ...entry,
    });

ruleTester(sheathNotInside, {
  passes: [
    { name: "1/2 in. inside", drawing: () => stripped(0.5) },
    { name: "exactly 1/4 in.", drawing: () => stripped(0.25) },
    { name: "not measured", drawing: () => stripped(undefined) },
    { name: "a metal box", drawing: () => stripped(0, { material: "metal" }) },
    { name: "armour has no such sheath", drawing: () => stripped(0, {}, {}, "armoured-12-2-g") },
    {
      name: "an opening by which nothing comes in",
      drawing: () => {
        const drawing = new Drawing().box("B", 20, { material: "nonmetallic" });
        const { entries } = drawing.at("B");
        entries["e" as keyof typeof entries] = { id: "e" as never, means: "none", sheathInsideIn: inches(0), order: 0 };
        return drawing;
      },
    },
  ],
  finds: [
    {
      name: "ends in front of the box",
      drawing: () => stripped(0),
      findings: [
        {
          on: "C B",
          severity: "violation",
          data: { insideIn: 0, leastIn: 0.25 },
          says: ["The sheath of C does not reach into B: 1/4 in. inside is the least"],
        },
      ],
    },
    {
      name: "just short",
      drawing: () => stripped(0.1875),
      findings: [{ on: "C B", says: ["reaches only 3/16 in. into B"] }],
    },
    {
      name: "a box of two gangs, told by somebody",
      drawing: () => stripped(0, { gangs: 2 }, { evidence: { sheathInsideIn: "told" } }),
      findings: [{ on: "C B", basis: "told" }],
    },
  ],
  cannotTell: [
    {
      name: "material",
      drawing: () => stripped(0, { material: "unknown" }),
      on: ["C B"],
      missing: "whether B is nonmetallic",
    },
  ],
});

describe("with a cable that nothing clamps", () => {
  const short = (entry: Partial<Entry>, box: Partial<Box> = {}) =>
    checkDocument(stripped(0.125, box, { means: "none", ...entry }).project())
      .findings.filter(({ rule }) => rule === "sheath-not-inside" || rule === "cable-entry-unsecured")
      .map(({ rule, folded }) => `${rule} ${folded}`)
      .sort();

  test("a box that needs no clamp: the sheath is the one fault", () => {
    expect(short({ securedWithinIn: inches(8) })).toEqual(["sheath-not-inside 1"]);
  });

  test("fastened too far off, or two gangs: two faults", () => {
    expect(short({ securedWithinIn: inches(9) })).toEqual(["cable-entry-unsecured 0", "sheath-not-inside 0"]);
    expect(short({ securedWithinIn: inches(8) }, { gangs: 2 })).toEqual([
      "cable-entry-unsecured 0",
      "sheath-not-inside 0",
    ]);
  });
});
