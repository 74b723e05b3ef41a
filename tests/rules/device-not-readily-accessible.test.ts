import { expect, test } from "vitest";
import { deviceNotReadilyAccessible } from "../../shared-model/rules/checks/device-not-readily-accessible.ts";
import { inches } from "../../shared-model/units/quantity.ts";
import { about, checkDocument, inShort } from "./check-drawing.ts";
import type { Drawing } from "./drawing.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

/** R4b so many inches above the floor: X66 of our list of slips has 84. */
const high = (height: number): Drawing => laundryProposed().setDevice("R4b", { reachHeightIn: inches(height) });

ruleTester(deviceNotReadilyAccessible, {
  passes: [
    { name: "nothing is recorded", drawing: () => laundryProposed() },
    { name: "48 in. above the floor", drawing: () => high(48) },
    { name: "exactly 79 in.: 6 ft 7 in., NFPA 70 404.8(A), from memory", drawing: () => high(79) },
    { name: "beside an appliance", drawing: () => laundryProposed().setDevice("R4b", { behindAppliance: false }) },
    {
      name: "an ordinary receptacle has no buttons",
      drawing: () => laundryProposed().setDevice("R3", { reachHeightIn: inches(90), behindAppliance: true }),
    },
  ],
  finds: [
    {
      name: "84 in. above the floor",
      drawing: () => high(84),
      findings: [
        { on: "R4b", severity: "caution", data: { heightIn: 84, limitIn: 79 }, says: ["5 in. higher", "(79 in.)"] },
      ],
    },
    {
      name: "a quarter of an inch too high, by a guess",
      drawing: () => high(79.25).setDevice("R4b", { evidence: { reachHeightIn: "assumed" } }),
      findings: [{ on: "R4b", basis: "assumed", says: ["0.25 in. higher"] }],
    },
    {
      name: "behind the freezer, high or low",
      drawing: () => high(84).setDevice("R4b", { behindAppliance: true }),
      findings: [{ on: "R4b", says: ["behind an appliance"] }],
    },
    {
      name: "a blank-face device and an arc-fault receptacle have buttons too",
      drawing: () =>
        laundryProposed()
          .device("G5", "gfci-blank", "B6", { behindAppliance: true })
          .device("G6", "afci-receptacle-15", "B6", { reachHeightIn: inches(90) }),
      findings: [{ on: "G5" }, { on: "G6" }],
    },
  ],
  cannotTell: { never: "the height is hardly ever recorded: it would be asked at every device" },
});

test("a place may have its own height", () => {
  const drawing = high(60);
  drawing.extra.amendments = [
    {
      rule: "device-not-readily-accessible",
      change: { kind: "value", name: "readilyReachedToIn", value: 54.5 },
      reason: "reach of a wheelchair user",
    },
  ];
  const said = about(/accessible|amendment/, checkDocument(drawing.project()).findings);
  expect([inShort(said), said[0]?.numbers]).toEqual([
    ["device-not-readily-accessible R4b"],
    { heightIn: 60, limitIn: 54.5 },
  ]);
});
