import { expect, test } from "vitest";
import type { Edition } from "../../shared-model/model/project.ts";
import { egcEditionDifference } from "../../shared-model/rules/checks/egc-edition-difference.ts";
import { checkDocument } from "./check-drawing.ts";
import { Drawing } from "./drawing.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

/** So many 12/2 cables with ground into one box without clamps or device. */
function cables(
  count: number,
  volumeIn3: number | undefined = 60,
  item = "nm-12-2-g",
  edition: Edition = 2020,
): Drawing {
  const drawing = new Drawing(edition).box("B", volumeIn3, { internalClamps: "none" });
  for (let index = 1; index <= count; index += 1) drawing.cable(`C${index}`, item, "country", "B");
  return drawing;
}

/** Volumes by hand from NFPA 70 Table 314.16(B), 12 AWG 2.25 in³: a quarter of it is 0.5625. */
ruleTester(egcEditionDifference, {
  passes: [
    { name: "four grounds share one allowance in every edition", drawing: () => cables(4) },
    { name: "five cables without a ground", drawing: () => cables(5, 60, "nm-12-2") },
    { name: "2017: all grounds share one", drawing: () => laundryProposed(2017) },
    { name: "4 AWG, where allowances end", drawing: () => cables(5).setConductors("C1", { awg: "4" }) },
  ],
  finds: [
    {
      name: "five grounds: the fifth adds a quarter",
      drawing: () => cables(5),
      findings: [
        {
          on: "B",
          severity: "advice",
          data: { grounds: 5, moreIn3: 0.5625 },
          says: ["5 grounds enter B", "the first 4 share one allowance", "0.5625 in³ in all"],
        },
      ],
    },
    {
      name: "seven of 14 AWG: three quarters of 2.00",
      drawing: () => cables(7, 60, "nm-14-2-g"),
      findings: [{ on: "B", data: { grounds: 7, moreIn3: 1.5 } }],
    },
    { name: "the laundry box as proposed", drawing: () => laundryProposed(), findings: [{ on: "B1" }] },
    {
      name: "2026, which answers with the text of 2023",
      drawing: () => laundryProposed(2026),
      findings: [{ on: "B1" }],
    },
    {
      // 10 × 2.25 + 2.25 = 24.75 by 2017, 25.3125 from 2020.
      name: "what tips a box over",
      drawing: () => cables(5, 25),
      findings: [{ on: "B", says: ["B was large enough; by this edition it is not"] }],
    },
    {
      name: "exactly full by the newer count is large enough by both",
      drawing: () => cables(5, 25.3125),
      findings: [{ on: "B", says: ["Compare counts of this box only within one edition."] }],
    },
    {
      name: "volume not recorded",
      drawing: () => cables(5).setBox("B", { volume: { kind: "unknown" } }),
      findings: [{ on: "B", says: ["Compare counts"] }],
    },
  ],
  cannotTell: { never: "cables and their grounds are drawn, not recorded" },
});

test("a local amendment of the count moves it", () => {
  const drawing = cables(5);
  drawing.extra.amendments = [
    {
      rule: "egc-edition-difference",
      change: { kind: "value", name: "quartersPerFurtherGround", value: 0 },
      reason: "Counted as before here.",
    },
  ];
  const found = checkDocument(drawing.project()).findings.filter(({ rule }) => rule === "egc-edition-difference");
  expect(found).toEqual([]);
});
