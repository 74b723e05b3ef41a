import { expect, test } from "vitest";
import type { Device } from "../../shared-model/model/device.ts";
import type { Box } from "../../shared-model/model/enclosure.ts";
import { luminaireBoxNotListed } from "../../shared-model/rules/checks/luminaire-box-not-listed.ts";
import { Drawing } from "./drawing.ts";
import { tryFix } from "./fix-tester.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

const hung = (box: Partial<Box>, luminaire: Partial<Device> = {}): Drawing =>
  new Drawing().box("B", 20, box).device("L", "luminaire-60", "B", luminaire);

const DEVICE_BOX: Partial<Box> = { shape: "device", listedFor: ["device"] };
const ROUND: Partial<Box> = { shape: "round", listedFor: ["luminaire"] };

ruleTester(luminaireBoxNotListed, {
  passes: [
    { name: "an octagonal box, nothing else recorded", drawing: () => laundryProposed() },
    { name: "a round box of 50 lb", drawing: () => hung(ROUND, { weightLb: 50 }) },
    { name: "a fan box", drawing: () => hung({ ...ROUND, listedFor: ["fan"] }, { weightLb: 20 }) },
    {
      name: "6 lb on a device box in a wall",
      drawing: () => hung({ ...DEVICE_BOX, mountedOn: "wall" }, { weightLb: 6 }),
    },
    { name: "80 lb, held by the building", drawing: () => hung(ROUND, { weightLb: 80, heldByBuilding: true }) },
    {
      name: "80 lb on a box that is marked for it",
      drawing: () => hung({ ...ROUND, luminaireWeightLb: 80 }, { weightLb: 80 }),
    },
    {
      name: "a device box that holds only a switch",
      drawing: () => new Drawing().box("B", 20, DEVICE_BOX).device("S", "switch-single-pole", "B"),
    },
  ],
  finds: [
    {
      name: "20 lb on a device box",
      drawing: () => hung(DEVICE_BOX, { weightLb: 20 }),
      findings: [
        {
          on: "L B",
          severity: "violation",
          data: { weightLb: 20 },
          says: ["L hangs on B, which is a box for devices, and it weighs 20 lb. In a wall such a box may hold"],
        },
      ],
    },
    {
      name: "just over 6 lb in a wall",
      drawing: () => hung({ ...DEVICE_BOX, mountedOn: "wall" }, { weightLb: 6.5 }),
      findings: [{ on: "L B" }],
    },
    {
      name: "in a ceiling, however light",
      drawing: () => hung({ ...DEVICE_BOX, mountedOn: "ceiling" }, { weightLb: 2 }),
      findings: [{ on: "L B", says: ["a box for devices, in a ceiling. In a wall"] }],
    },
    {
      name: "shaped for devices, listing not recorded",
      drawing: () => hung({ shape: "device", mountedOn: "ceiling" }, { weightLb: 20 }),
      findings: [{ on: "L B", says: ["a box for devices, in a ceiling, and it weighs 20 lb."] }],
    },
    {
      name: "just over 50 lb that the building does not hold, on an assumed weight",
      drawing: () => hung(ROUND, { weightLb: 51, heldByBuilding: false, evidence: { weightLb: "assumed" } }),
      findings: [
        {
          on: "L B",
          data: { weightLb: 51, mostLb: 50 },
          basis: "assumed",
          says: ["L weighs 51 lb, and B may hold 50 lb"],
        },
      ],
    },
    {
      name: "over what the box is marked for",
      drawing: () => hung({ ...ROUND, luminaireWeightLb: 10 }, { weightLb: 11, heldByBuilding: false }),
      findings: [{ on: "L B", says: ["B may hold 10 lb"] }],
    },
  ],
  cannotTell: [
    {
      name: "a device box, nothing else",
      drawing: () => hung(DEVICE_BOX),
      on: ["L B"],
      missing: "what L weighs and whether B is in a wall",
    },
    {
      name: "light, where it is mounted",
      drawing: () => hung(DEVICE_BOX, { weightLb: 3 }),
      on: ["L B"],
      missing: "whether B is in a wall or a ceiling",
    },
    {
      name: "in a wall, its weight",
      drawing: () => hung({ ...DEVICE_BOX, mountedOn: "wall" }),
      on: ["L B"],
      missing: "what L weighs",
    },
    {
      name: "heavy, what holds it",
      drawing: () => hung(ROUND, { weightLb: 60 }),
      on: ["L B"],
      missing: "whether the building holds L",
    },
  ],
});

test.each([
  ["listed for luminaires", hung(DEVICE_BOX, { weightLb: 20 })],
  ["from the building", hung(DEVICE_BOX, { weightLb: 20 })],
  ["from the building", hung(ROUND, { weightLb: 60, heldByBuilding: false })],
])("its offer clears it: %s", (offer, drawing) => {
  const { left } = tryFix(drawing, "luminaire-box-not-listed", "L", { offer });
  expect(left).not.toContain("luminaire-box-not-listed L");
});
