import { expect, test } from "vitest";
import { standingLeakBudget } from "../../shared-model/rules/checks/standing-leak-budget.ts";
import { buildCircuit } from "../../shared-model/solver/circuit/build-circuit.ts";
import { runTrips } from "../../shared-model/solver/circuit/trips.ts";
import { milliamps } from "../../shared-model/units/quantity.ts";
import { about, checkDocument } from "./check-drawing.ts";
import type { Drawing } from "./drawing.ts";
import { laundryAsFound, laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

/** Leaks at the porch and in the hall, mA: X68 of our list of slips has 1.5 and 0.5. */
const leaking = (porch: number, hall: number): Drawing =>
  laundryProposed()
    .load("F1", "appliance-600", "R3", { leakMa: milliamps(porch) })
    .load("F2", "appliance-600", "R5", { leakMa: milliamps(hall) });

ruleTester(standingLeakBudget, {
  passes: [
    { name: "nothing leaks", drawing: () => laundryProposed() },
    { name: "exactly the budget: 1.8 mA of 6 mA", drawing: () => leaking(1.3, 0.5) },
    { name: "what leaks is not recorded", drawing: () => laundryProposed().load("F1", "appliance-600", "R3") },
    {
      name: "it leaks where no ground takes it away",
      drawing: () => leaking(1.5, 0.5).put({ "C6.cu@B3": "cap" }),
    },
    {
      name: "part of it is before the device",
      drawing: () => leaking(1.5, 0.3).load("F3", "freezer-180", "R4b", { leakMa: milliamps(1.7) }),
    },
    {
      name: "an ordinary breaker sums nothing",
      drawing: () => laundryAsFound().load("F1", "appliance-600", "R3", { leakMa: milliamps(5) }),
    },
    {
      name: "an arc-fault breaker does not trip at milliamperes",
      drawing: () =>
        laundryAsFound()
          .breaker("QG", 20, {}, "breaker-afci-1")
          .put({ "C1.bk@P": "QG.OUT", "C1.wh@P": "QG.LOAD_N" })
          .load("F1", "appliance-600", "R3", { leakMa: milliamps(5) }),
    },
  ],
  finds: [
    {
      name: "2.0 mA behind R1b",
      drawing: () => leaking(1.5, 0.5),
      findings: [
        {
          on: "R1b",
          severity: "caution",
          data: { leakMa: 2, budgetMa: 1.8, tripsAtMa: 6 },
          says: ["2.0 mA", "F1 at R3 1.5 and F2 at R5 0.5", "more than 1.8 mA standing"],
        },
      ],
    },
    {
      name: "one thousandth of a milliampere too much",
      drawing: () => leaking(1.301, 0.5),
      findings: [{ on: "R1b", data: { leakMa: 1.801, budgetMa: 1.8, tripsAtMa: 6 }, says: ["1.801 mA"] }],
    },
    {
      name: "a breaker sums the whole circuit, the lamp that is wired in too",
      drawing: () =>
        laundryAsFound()
          .breaker("QG", 20, {}, "breaker-gfci-1")
          .put({ "C1.bk@P": "QG.OUT", "C1.wh@P": "QG.LOAD_N" })
          .load("F1", "appliance-600", "R3", { leakMa: milliamps(1.75), evidence: { leakMa: "assumed" } }),
      findings: [{ on: "QG", data: { leakMa: 1.85, budgetMa: 1.8, tripsAtMa: 6 }, basis: "assumed", says: ["L1 0.1"] }],
    },
  ],
  cannotTell: { never: "a leak that is not recorded counts as none: it would be asked at every load" },
});

test("the sensor of R1b reads what the rule adds up", () => {
  const drawing = leaking(1.5, 0.5).load("F3", "appliance-600", "R2", { leakMa: milliamps(0.2) });
  const { supply, asFound } = drawing.project();
  const seen = runTrips(buildCircuit(asFound, supply)).devices.find(({ device }) => device === "R1b");
  const told = about(/leak/, checkDocument(drawing.project()).findings)[0]?.numbers.leakMa;
  expect(told).toBe(2.2);
  // Cables leak by their capacitance as well, at right angles to what the loads do.
  expect(seen?.residualMa).toBeCloseTo(2.2, 1);
});
