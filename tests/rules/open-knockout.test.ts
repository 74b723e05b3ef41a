import { expect, test } from "vitest";
import { openKnockout } from "../../shared-model/rules/checks/open-knockout.ts";
import { Drawing } from "./drawing.ts";
import { tryFix } from "./fix-tester.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

const withOpenings = (openKnockouts: number) => laundryProposed().setBox("B2", { openKnockouts });

ruleTester(openKnockout, {
  passes: [
    { name: "not counted", drawing: () => laundryProposed() },
    { name: "none open", drawing: () => withOpenings(0) },
  ],
  finds: [
    {
      name: "one",
      drawing: () => withOpenings(1),
      findings: [
        { on: "B2", severity: "violation", says: ["B2 has 1 unused opening that nothing closes. Fit a plug"] },
      ],
    },
    {
      name: "three, as told, in an empty box",
      drawing: () => new Drawing().box("B", undefined, { openKnockouts: 3, evidence: { openKnockouts: "told" } }),
      findings: [{ on: "B", data: { openings: 3 }, basis: "told", says: ["3 unused openings", "Fit 3 plugs"] }],
    },
  ],
  cannotTell: { never: "openings that nobody counted are not asked about" },
});

test("its fix closes them", () => {
  const { title, project } = tryFix(withOpenings(2), "open-knockout", "B2");
  expect(title).toBe("Close the open knockouts of B2");
  expect(project.proposed?.enclosures["B2" as never]).toMatchObject({ openKnockouts: 0 });
});
