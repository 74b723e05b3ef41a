import type { Box } from "../../shared-model/model/enclosure.ts";
import { boxVolumeUnknown } from "../../shared-model/rules/checks/box-volume-unknown.ts";
import { cubicInches } from "../../shared-model/units/volume.ts";
import { Drawing } from "./drawing.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

/** One 12/2 with ground and one receptacle: 4.50 + 2.25 (clamps) + 4.50 + 2.25 = 13.50 in³, by hand. */
const hall = (volume: Box["volume"], more: Partial<Box> = {}): Drawing =>
  new Drawing()
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
    { name: "empty", drawing: () => new Drawing().box("B6", undefined) },
    { name: "the laundry circuit", drawing: () => laundryProposed() },
    { name: "a panel", drawing: () => new Drawing().panel() },
  ],
  finds: [
    {
      name: "not recorded",
      drawing: () => hall({ kind: "unknown" }),
      findings: [{ on: "B6", data: { neededIn3: 13.5 }, says: ["at least 13.5 in³"] }],
    },
    {
      name: "a size that no table holds",
      drawing: () => hall({ kind: "table", size: "home made" }),
      findings: [{ on: "B6" }],
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
