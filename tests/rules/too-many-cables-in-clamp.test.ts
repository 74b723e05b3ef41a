import { expect, test } from "vitest";
import type { Entry } from "../../shared-model/model/enclosure.ts";
import { asId } from "../../shared-model/model/ids.ts";
import { tooManyCablesInClamp } from "../../shared-model/rules/checks/too-many-cables-in-clamp.ts";
import { Drawing } from "./drawing.ts";
import { tryFix } from "./fix-tester.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

/** So many cables by one opening of a box. */
function sharing(count: number, facts: Partial<Entry>, item = "nm-12-2-g"): Drawing {
  const drawing = new Drawing().box("B", 60);
  for (let index = 1; index <= count; index += 1) {
    drawing.cable(`C${index}`, item, "country", "B");
    const cable = drawing.cables[`C${index}`];
    if (cable !== undefined) cable.sides = { ...cable.sides, b: { enclosure: asId("B"), entry: asId("C1-B") } };
  }
  return drawing.setEntry("C1", "B", facts);
}

ruleTester(tooManyCablesInClamp, {
  passes: [
    { name: "one cable an opening", drawing: () => laundryProposed() },
    { name: "one cable, marked for one", drawing: () => sharing(1, { means: "internal-clamp", markedForCables: 1 }) },
    { name: "as many as marked", drawing: () => sharing(2, { means: "external-connector", markedForCables: 2 }) },
    { name: "nothing holds them: another rule", drawing: () => sharing(3, { means: "none", markedForCables: 1 }) },
    { name: "conductors of one raceway", drawing: () => sharing(3, { markedForCables: 1 }, "single-12-black") },
  ],
  finds: [
    {
      name: "one more than marked",
      drawing: () => sharing(3, { means: "internal-clamp", markedForCables: 2 }),
      findings: [
        {
          on: "C1 C2 C3 B",
          severity: "caution",
          data: { cables: 3, marked: 2 },
          says: ["C1, C2 and C3 go through one clamp of B, which is marked for 2 cables"],
        },
      ],
    },
    {
      name: "three in a connector for one",
      drawing: () => sharing(3, { means: "external-connector", markedForCables: 1 }),
      findings: [{ on: "C1 C2 C3 B", says: ["one connector of B, which is marked for one cable"] }],
    },
    {
      name: "armoured cables",
      drawing: () => sharing(2, { means: "internal-clamp", markedForCables: 1 }, "armoured-12-2-g"),
      findings: [{ on: "C1 C2 B" }],
    },
  ],
  cannotTell: [
    {
      name: "marking not recorded",
      drawing: () => sharing(2, { means: "internal-clamp" }),
      on: ["C1 C2 B"],
      missing: "how many cables the clamp for C1 and C2 is marked for",
    },
  ],
});

test("its offer is one connector for all of them, outside, which adds nothing to box fill", () => {
  const drawing = sharing(3, { means: "internal-clamp", markedForCables: 2 });
  const { project } = tryFix(drawing, "too-many-cables-in-clamp", "C1", { offer: "marked for 3 cables" });
  expect(project.proposed?.enclosures["B" as never]?.entries["C1-B" as never]).toMatchObject({
    means: "external-connector",
    markedForCables: 3,
  });
});
