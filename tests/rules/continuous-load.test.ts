import { continuousLoad } from "../../shared-model/rules/checks/continuous-load.ts";
import { watts } from "../../shared-model/units/quantity.ts";
import { Drawing } from "./drawing.ts";
import { multiwire } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { inRoom } from "./two-states.ts";

const heater = (loadW: number, ratingA = 15, continuous = true): Drawing =>
  inRoom(["hallway"], { ratingA }).load("Heater", "heater-1200", "R1", { loadW: watts(loadW), continuous });

/** By hand, at 120 V: 1440 W are 12 A, which is 80 % of 15 A; 1680 W are 14 A. */
ruleTester(continuousLoad, {
  passes: [
    { name: "12 A on 15 A", drawing: () => heater(1440) },
    { name: "14 A that do not run for hours", drawing: () => heater(1680, 15, false) },
    { name: "14 A on 20 A", drawing: () => heater(1680, 20) },
    {
      name: "a two-pole breaker with 12 A on each leg",
      drawing: () =>
        twoLegs(15)
          .load("One", "heater-1200", "RA", { loadW: watts(1440) })
          .load("Two", "heater-1200", "RB", { loadW: watts(1440) }),
    },
  ],
  finds: [
    {
      name: "14 A on 15 A",
      drawing: () => heater(1680),
      findings: [
        {
          on: "Q1",
          severity: "caution",
          data: { loadA: 14, mostA: 12 },
          says: ["14 A of continuous load on Q1 of 15 A in P: 12 A is the most (80 %)", "Heater run"],
        },
      ],
    },
    {
      name: "one watt too much",
      drawing: () => heater(1441),
      findings: [{ on: "Q1", data: { loadA: 12.01, mostA: 12 } }],
    },
    {
      name: "one leg of a two-pole breaker too much",
      drawing: () =>
        twoLegs(15)
          .load("One", "heater-1200", "RA", { loadW: watts(1680) })
          .load("Two", "heater-1200", "RB", { loadW: watts(600) }),
      findings: [{ on: "QA", data: { loadA: 14, mostA: 12 } }],
    },
    {
      name: "a heater wired in, 240 V: 3600 W are 15 A",
      drawing: () => wired240(15),
      findings: [{ on: "Q1", data: { loadA: 15, mostA: 12 } }],
    },
  ],
  cannotTell: [
    {
      name: "the breaker has no rating",
      drawing: () => heater(1440).breaker("Q1", undefined),
      on: ["Q1"],
      missing: "the rating of Q1",
    },
  ],
});

/** The multiwire circuit on one two-pole breaker. */
function twoLegs(ratingA: number): Drawing {
  const drawing = multiwire();
  drawing.put({ "M3.bk@P": "cap", "M3.rd@P": "cap" });
  drawing.breaker("QA", ratingA, { legs: ["A", "B"] }, "breaker-2");
  return drawing.put({ "M3.bk@P": "QA.OUT1", "M3.rd@P": "QA.OUT2" });
}

function wired240(ratingA: number): Drawing {
  return new Drawing()
    .panel("P")
    .breaker("Q1", ratingA, { legs: ["A", "B"] }, "breaker-2")
    .box("A", 42)
    .cable("C1", "nm-12-2-g", "P", "A")
    .device("H1", "appliance-240", "A", { loadW: watts(3600), continuous: true })
    .put({ "C1.bk@P": "Q1.OUT1", "C1.wh@P": "Q1.OUT2", "C1.bk@A": "H1.L1", "C1.wh@A": "H1.L2" });
}
