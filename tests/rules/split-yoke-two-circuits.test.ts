import { expect, test } from "vitest";
import type { Device } from "../../shared-model/model/device.ts";
import { splitYokeTwoCircuits } from "../../shared-model/rules/checks/split-yoke-two-circuits.ts";
import type { Drawing } from "./drawing.ts";
import { multiwire } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { trySectionFix } from "./section-fix-tester.ts";
import { twoCircuits } from "./two-circuits.ts";

/** The halves of R1 on Q1 and Q2. */
const split = (facts: Partial<Device> = {}): Drawing =>
  twoCircuits()
    .setDevice("R1", { hotTab: "removed", neutralTab: "removed" })
    .put({ "X.bk@B1": "R1.H2", "X.bk@B2": "h2", "X.wh@B1": "R1.N2", "X.wh@B2": "n2" })
    .setDevice("Q2", facts);

/** A heater on Q1 and Q2. */
const between = (): Drawing =>
  twoCircuits()
    .device("A1", "appliance-240", "B1")
    .put({ "X.bk@B2": "h2", "X.bk@B1": "A1.L2" })
    .jumper("u", "B1", "h1", "A1.L1");

ruleTester(splitYokeTwoCircuits, {
  passes: [
    { name: "each device on one circuit", drawing: () => twoCircuits() },
    { name: "handles tied, from the one", drawing: () => split({ tiedTo: "Q1" as never }) },
    { name: "handles tied, from the other", drawing: () => split().setDevice("Q1", { tiedTo: "Q2" as never }) },
    {
      name: "a two-pole breaker",
      drawing: () =>
        split()
          .breaker("Q9", 20, { legs: ["A", "B"] }, "breaker-2")
          .put({ "C1.bk@P": "Q9.OUT1", "C2.bk@P": "Q9.OUT2" }),
    },
    { name: "the tab is in: joined hots", drawing: () => split({}).setDevice("R1", { hotTab: "intact" }) },
    { name: "multiwire with one device a leg", drawing: () => multiwire() },
    { name: "a 240 V load, handles tied", drawing: () => between().setDevice("Q2", { tiedTo: "Q1" as never }) },
    {
      name: "a fan-light hangs on no yoke",
      drawing: () =>
        twoCircuits()
          .device("F1", "fan-light", "B1")
          .put({ "X.bk@B2": "h2", "X.bk@B1": "F1.H_FAN" })
          .jumper("u", "B1", "h1", "F1.H_LIGHT")
          .jumper("v", "B1", "n1", "F1.N", { colour: "white" }),
    },
  ],
  finds: [
    {
      // NFPA 70 240.15(B)(2), as quoted in two trade forums: what works between two hots has them opened together.
      name: "a 240 V load between two breakers that are not tied",
      drawing: () => between(),
      findings: [{ on: "A1", severity: "violation", says: ["A1 in B1 works between Q1 and Q2", "still live"] }],
    },
    {
      name: "two breakers on one duplex",
      drawing: split,
      findings: [{ on: "R1", severity: "violation", says: ["R1 in B1 is fed by Q1 and Q2", "still live"] }],
    },
    {
      name: "two switches on one yoke, and by whom it is known",
      drawing: () =>
        twoCircuits()
          .device("S2", "switch-two", "B1", { hotTab: "removed", evidence: { hotTab: "told" } })
          .put({ "X.bk@B2": "h2", "X.bk@B1": "S2.C2" })
          .jumper("u", "B1", "h1", "S2.C1"),
      findings: [{ on: "S2", basis: "told" }],
    },
    { name: "on one leg it is the same", drawing: () => split({ legs: ["A"] }), findings: [{ on: "R1" }] },
  ],
  cannotTell: { never: "a tie that is not recorded is none" },
});

test("the handles are tied where the breakers stand one above the other", () => {
  const above = split({ slot: 3 }).setDevice("Q1", { slot: 1 });
  expect(trySectionFix(above, "split-yoke-two-circuits", "R1").title).toBe("Tie the handles of Q1 and Q2");
});

test("without their spaces it is offered; apart it is not", () => {
  const offered = trySectionFix(split(), "split-yoke-two-circuits", "R1", "Tie");
  expect(offered.title).toBe("Tie the handles of Q1 and Q2, if they stand one above the other");
  const apart = split({ slot: 4 }).setDevice("Q1", { slot: 1 });
  expect(() => trySectionFix(apart, "split-yoke-two-circuits", "R1")).toThrow("No such fix");
  const unlisted = split({ slot: 3, listedForPanel: false }).setDevice("Q1", { slot: 1 });
  expect(() => trySectionFix(unlisted, "split-yoke-two-circuits", "R1")).toThrow("No such fix");
});
