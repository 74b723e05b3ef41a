import { expect, test } from "vitest";
import { plateMetalNoGround } from "../../shared-model/rules/checks/plate-metal-no-ground.ts";
import { ruleTester } from "./rule-tester.ts";
import { inRoom, press, unchanged } from "./two-states.ts";
import { twoWire, withSwitch } from "./two-wire.ts";

const METAL = { metalPlate: true } as const;

ruleTester(plateMetalNoGround, {
  passes: [
    { name: "a plastic plate", drawing: () => withSwitch(twoWire(), "LINE", { metalPlate: false }) },
    { name: "not recorded", drawing: () => withSwitch(twoWire(), "LINE") },
    { name: "behind a ground-fault receptacle", drawing: () => withSwitch(twoWire(), "LOAD", METAL) },
    {
      name: "behind a ground-fault breaker",
      drawing: () => withSwitch(twoWire({ breaker: "breaker-gfci-1" }), "LINE", METAL),
    },
    {
      name: "a ground comes to the box",
      drawing: () => inRoom(["stair"]).device("S1", "switch-single-pole", "A", METAL).jumper("s", "A", "R1.H2", "S1.C"),
    },
    { name: "a metal plate on a receptacle", drawing: () => twoWire().setDevice("T2", METAL) },
  ],
  finds: [
    {
      name: "a metal plate, no ground, no protection",
      drawing: () => withSwitch(twoWire(), "LINE", METAL),
      findings: [{ on: "S1", severity: "violation", says: ["S1 in BT1 has a metal plate", "Fit a nonmetallic plate"] }],
    },
    {
      name: "an arc-fault breaker does not protect people",
      drawing: () => withSwitch(twoWire({ breaker: "breaker-afci-1" }), "LINE", METAL),
      findings: [{ on: "S1" }],
    },
    {
      name: "a switch that is not wired",
      drawing: () =>
        twoWire().device("S1", "switch-single-pole", "BT1", { ...METAL, evidence: { metalPlate: "told" } }),
      findings: [{ on: "S1", basis: "told" }],
    },
  ],
  cannotTell: { never: "a plate of a material that is not recorded is not judged" },
});

test("the fix takes the metal plate away", () => {
  const { title, left } = press(unchanged(withSwitch(twoWire(), "LINE", METAL)), "plate-metal-no-ground", "S1");
  expect(title).toBe("Fit a nonmetallic plate and screws at S1");
  expect(left).not.toContain("plate-metal-no-ground S1");
});
