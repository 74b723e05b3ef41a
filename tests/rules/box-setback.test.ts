import { expect, test } from "vitest";
import type { Box } from "../../shared-model/model/enclosure.ts";
import { boxSetback } from "../../shared-model/rules/checks/box-setback.ts";
import { inches } from "../../shared-model/units/quantity.ts";
import { Drawing } from "./drawing.ts";
import { tryFix } from "./fix-tester.ts";
import { ruleTester } from "./rule-tester.ts";

const back = (setback: number | undefined, wallCombustible?: boolean, more: Partial<Box> = {}): Drawing =>
  new Drawing().box("B", 20, {
    ...(setback !== undefined && { setbackIn: inches(setback) }),
    ...(wallCombustible !== undefined && { wallCombustible }),
    ...more,
  });

ruleTester(boxSetback, {
  passes: [
    { name: "not measured", drawing: () => back(undefined, true) },
    { name: "flush with gypsum board", drawing: () => back(0, false) },
    { name: "flush, wall not recorded", drawing: () => back(0) },
    { name: "1/4 in. in plaster", drawing: () => back(0.25, false) },
    { name: "flush with wood", drawing: () => back(0, true) },
    { name: "proud of the wall", drawing: () => back(-0.125, true) },
  ],
  finds: [
    {
      name: "1/2 in. behind gypsum board",
      drawing: () => back(0.5, false),
      findings: [
        {
          on: "B",
          severity: "violation",
          data: { setbackIn: 0.5 },
          says: ["The front of B is 1/2 in. behind the surface, 1/4 in. is the most. Fit an extender."],
        },
      ],
    },
    { name: "just past 1/4 in.", drawing: () => back(0.3125, false), findings: [{ on: "B", says: ["5/16 in."] }] },
    {
      name: "1/16 in. behind wood",
      drawing: () => back(0.0625, true),
      findings: [{ on: "B", says: ["1/16 in. behind a surface that burns, where it must be flush"] }],
    },
    {
      name: "too far whatever the wall is made of, on an assumed distance",
      drawing: () => back(0.5, undefined, { evidence: { setbackIn: "assumed" } }),
      findings: [{ on: "B", basis: "assumed" }],
    },
  ],
  cannotTell: [
    {
      name: "1/4 in., and what the wall is made of",
      drawing: () => back(0.25),
      on: ["B"],
      missing: "whether the wall at B is combustible",
    },
  ],
});

test("its offer is an extender as deep as the box is set back", () => {
  const { project } = tryFix(back(0.5, true), "box-setback", "B", { offer: "extender" });
  const box = project.proposed?.enclosures["B" as never] as Box | undefined;
  expect(box?.setbackIn).toBe(0);
  expect(Object.values(box?.rings ?? {})).toMatchObject([
    { kind: "extension", depthIn: 0.5, volume: { kind: "unknown" } },
  ]);
});
