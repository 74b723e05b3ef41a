import { expect, test } from "vitest";
import type { EndKey } from "../../shared-model/model/ids.ts";
import type { Place } from "../../shared-model/model/place.ts";
import { insulationDamaged } from "../../shared-model/rules/checks/insulation-damaged.ts";
import { checkDocument } from "./check-drawing.ts";
import type { Drawing } from "./drawing.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

const known = (drawing: Drawing, box: string, end: string, facts: Partial<Place>): Drawing => {
  const { places } = drawing.at(box);
  const key = end as EndKey;
  places[key] = { ...(places[key] as Place), ...facts };
  return drawing;
};

ruleTester(insulationDamaged, {
  passes: [
    { name: "no condition recorded", drawing: () => laundryProposed() },
    {
      name: "recorded as good",
      drawing: () => known(laundryProposed(), "B1", "C3.bk.a", { condition: "good" }),
    },
  ],
  finds: [
    {
      name: "one brittle end",
      drawing: () => known(laundryProposed(), "B1", "C3.bk.a", { condition: "brittle" }),
      findings: [
        {
          on: "C3 BK B1",
          severity: "danger",
          data: { conductors: 1, condition: "brittle" },
          says: ["The insulation of C3 BK in B1 is brittle"],
        },
      ],
    },
    {
      name: "several in one box are one finding, another kind of damage is one more",
      drawing: () => {
        const drawing = laundryProposed();
        for (const end of ["C3.bk.a", "C3.wh.a"]) known(drawing, "B1", end, { condition: "brittle" });
        return known(drawing, "B1", "C4.bk.a", { condition: "burnt", evidence: { condition: "told" } });
      },
      findings: [
        { on: "C3 BK C3 WH B1" },
        { on: "C4 BK B1", basis: "told", data: { conductors: 1, condition: "burnt" } },
      ],
    },
    {
      name: "a jumper in a panel",
      drawing: () => known(laundryProposed(), "P", "C1.wh.a", { condition: "nicked" }),
      findings: [{ on: "C1 WH P" }],
    },
    {
      name: "a bare ground has none: its metal counts",
      drawing: () => known(laundryProposed(), "B1", "C3.cu.a", { condition: "nicked" }),
      findings: [{ on: "C3 bare B1", severity: "caution", says: ["is nicked, and bare"] }],
    },
  ],
  cannotTell: { never: "a condition that nobody recorded is not asked for, end by end" },
});

test("the box rule does not look beyond its box", () => {
  const drawing = known(laundryProposed(), "B4", "C3.bk.b", { condition: "brittle" });
  const found = checkDocument(drawing.project()).findings.filter(({ rule }) => rule === "insulation-damaged");
  expect(found.map(({ subjects }) => subjects.map(({ name }) => name).join(" "))).toEqual(["C3 BK B4"]);
});
