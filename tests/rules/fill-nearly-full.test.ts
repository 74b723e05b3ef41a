import { fillNearlyFull } from "../../shared-model/rules/checks/fill-nearly-full.ts";
import { cubicInches } from "../../shared-model/units/volume.ts";
import { Drawing } from "./drawing.ts";
import { laundryAsFound, laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

/** 12/2 with ground in and out, one receptacle, clamps: 4 × 2.25 + 2.25 + 2 × 2.25 + 2.25 = 18.00 in³, by hand. */
const inAndOut = (volumeIn3: number | undefined, more: Parameters<Drawing["box"]>[2] = {}): Drawing =>
  new Drawing()
    .box("B", volumeIn3, more)
    .cable("C1", "nm-12-2-g", "country", "B")
    .cable("C2", "nm-12-2-g", "B", "country")
    .device("R", "receptacle-15", "B")
    .put({ "C1.bk@B": "R.H1", "C1.wh@B": "R.N1", "C2.bk@B": "R.H2", "C2.wh@B": "R.N2" });

ruleTester(fillNearlyFull, {
  passes: [
    { name: "room for exactly one more of 12 AWG: 18.00 and 2.25", drawing: () => inAndOut(20.25) },
    { name: "overfull is another matter", drawing: () => inAndOut(17.9999) },
    { name: "so is a box without a volume", drawing: () => inAndOut(undefined) },
    { name: "an empty box", drawing: () => new Drawing().box("B", 1) },
    { name: "a panel", drawing: () => new Drawing().panel().cable("C", "nm-12-2-g", "P", "country") },
    { name: "clamps not recorded, and room either way", drawing: () => inAndOut(20.25, { internalClamps: "unknown" }) },
    { name: "4 AWG is beyond counting", drawing: () => inAndOut(18).setConductors("C1", { awg: "4" }) },
  ],
  finds: [
    {
      name: "exactly full",
      drawing: () => inAndOut(18),
      findings: [
        {
          on: "B",
          severity: "advice",
          data: { spareIn3: 0, volumeIn3: 18, allowanceIn3: 2.25 },
          says: ["B is exactly full (18 in³): one more conductor of 12 AWG"],
        },
      ],
    },
    {
      name: "a ten-thousandth short of one more",
      drawing: () => inAndOut(20.2499),
      findings: [{ on: "B", data: { spareIn3: 2.2499, volumeIn3: 20.2499, allowanceIn3: 2.25 } }],
    },
    {
      name: "by the largest conductor: 14 AWG beside 12 AWG, 4.50 + 4.00 + 2.25 + 4.50 + 2.25 = 17.50",
      drawing: () =>
        new Drawing()
          .box("B", 19.6)
          .cable("C1", "nm-12-2-g", "country", "B")
          .cable("C2", "nm-14-2-g", "B", "country")
          .device("R", "receptacle-15", "B")
          .put({ "C1.bk@B": "R.H1" }),
      findings: [{ on: "B", data: { spareIn3: 2.1, volumeIn3: 19.6, allowanceIn3: 2.25 }, says: ["12 AWG"] }],
    },
    {
      name: "the laundry circuit as found",
      drawing: () => laundryAsFound(),
      findings: [
        { on: "B2", data: { spareIn3: 0, volumeIn3: 18, allowanceIn3: 2.25 } },
        { on: "B5", data: { spareIn3: 0, volumeIn3: 18, allowanceIn3: 2.25 } },
        { on: "B6", data: { spareIn3: 0.5, volumeIn3: 14, allowanceIn3: 2.25 } },
      ],
    },
    {
      name: "the laundry circuit as proposed, with a larger box at the sink",
      drawing: () => laundryProposed().setBox("B2", { volume: { kind: "marked", volumeIn3: cubicInches(21) } }),
      findings: [
        {
          on: "B1",
          data: { spareIn3: 0.4875, volumeIn3: 30.3, allowanceIn3: 2.25 },
          says: ["0.4875 in³ left of 30.3"],
        },
        { on: "B5" },
        { on: "B6" },
      ],
    },
  ],
  cannotTell: [
    {
      name: "clamps not recorded, and they would decide",
      drawing: () => inAndOut(20, { internalClamps: "unknown" }),
      on: ["B"],
      missing: "whether B has internal clamps",
    },
  ],
});
