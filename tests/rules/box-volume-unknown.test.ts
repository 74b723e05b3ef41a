import { expect, test } from "vitest";
import type { Box } from "../../shared-model/model/enclosure.ts";
import type { Edition } from "../../shared-model/model/project.ts";
import { boxVolumeUnknown } from "../../shared-model/rules/checks/box-volume-unknown.ts";
import { cubicInches } from "../../shared-model/units/volume.ts";
import { checkDocument } from "./check-drawing.ts";
import { Drawing } from "./drawing.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

/** One 12/2 with ground and one receptacle: 4.50 + 2.25 (clamps) + 4.50 + 2.25 = 13.50 in³, by hand. */
const hall = (volume: Box["volume"], more: Partial<Box> = {}, edition: Edition = 2020): Drawing =>
  new Drawing(edition)
    .box("B6", undefined, { volume, ...more })
    .cable("C5", "nm-12-2-g", "B6", "country")
    .device("R5", "receptacle-15", "B6");

ruleTester(boxVolumeUnknown, {
  passes: [
    { name: "marked", drawing: () => hall({ kind: "marked", volumeIn3: cubicInches(14) }) },
    {
      name: "marked far too small is another matter",
      drawing: () => hall({ kind: "marked", volumeIn3: cubicInches(0.0001) }),
    },
    { name: "a standard size", drawing: () => hall({ kind: "table", size: "3x2x2-3/4 device" }) },
    {
      name: "a size that Table 23 has",
      drawing: () => hall({ kind: "table", size: "4x1-1/2 square" }, {}, "CSA-C22.1"),
    },
    { name: "empty", drawing: () => new Drawing().box("B6", undefined) },
    { name: "the laundry circuit", drawing: () => laundryProposed() },
    { name: "a panel", drawing: () => new Drawing().panel() },
  ],
  finds: [
    {
      name: "not recorded",
      drawing: () => hall({ kind: "unknown" }),
      findings: [
        {
          on: "B6",
          data: { neededIn3: 13.5 },
          // The square boxes of NFPA 70 Table 314.16(A): 18, 21, 25.5, 29.5, 30.3 and 42 in³.
          says: [
            "at least 13.5 in³",
            "Of the standard boxes of its shape 18, 21, 25.5, 29.5, 30.3 and 42 in³ would hold it",
          ],
        },
      ],
    },
    {
      name: "a size that no table holds",
      drawing: () => hall({ kind: "table", size: "home made" }),
      findings: [{ on: "B6" }],
    },
    {
      // By CSA C22.1: 2 × 1.75, 2 × 1.75 for the device, and the three capped ends are a pair of connectors: 8.75 in³.
      name: "a size of the stock that Table 23 does not have",
      drawing: () => hall({ kind: "table", size: "4x1-1/4 square" }, {}, "CSA-C22.1"),
      findings: [
        {
          on: "B6",
          data: { neededIn3: 8.75 },
          says: [
            "at least 8.75 in³",
            "Table 23 of this rule set has no box 4 × 1-1/4 square",
            "Of the standard boxes of its shape 21, 30 and 42 in³ would hold it.",
          ],
        },
      ],
    },
    {
      name: "one conductor is enough to ask",
      drawing: () =>
        new Drawing().box("B6", undefined, { internalClamps: "none" }).cable("K1", "knob-tube-14", "B6", "country"),
      findings: [{ on: "B6", data: { neededIn3: 2 } }],
    },
    {
      name: "it rests on what is known of the clamps",
      drawing: () => hall({ kind: "unknown" }, { evidence: { internalClamps: "told" } }),
      findings: [{ on: "B6", basis: "told" }],
    },
  ],
  cannotTell: [
    {
      name: "how much it needs hangs on the clamps",
      drawing: () => hall({ kind: "unknown" }, { internalClamps: "unknown" }),
      on: ["B6"],
      missing: "whether B6 has internal clamps",
    },
  ],
});

test("a box without a volume is told once: whether it is overfull is the same question", () => {
  const { findings, couldNotTell } = checkDocument(hall({ kind: "unknown" }).project());
  expect(findings.map(({ rule }) => rule)).toContain("box-volume-unknown");
  expect(couldNotTell.map(({ rule }) => rule)).not.toContain("box-overfull");
});

test("with this rule switched off the question is asked", () => {
  const drawing = hall({ kind: "unknown" });
  drawing.extra.amendments = [{ rule: "box-volume-unknown", change: { kind: "off" }, reason: "Volumes come later." }];
  const { findings, couldNotTell } = checkDocument(drawing.project());
  expect(findings.map(({ rule }) => rule)).not.toContain("box-volume-unknown");
  expect(couldNotTell.map(({ rule }) => rule)).toContain("box-overfull");
});
