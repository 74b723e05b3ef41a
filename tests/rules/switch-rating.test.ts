import { expect, test } from "vitest";
import type { Device } from "../../shared-model/model/device.ts";
import { switchRating } from "../../shared-model/rules/checks/switch-rating.ts";
import { amps, watts } from "../../shared-model/units/quantity.ts";
import { Drawing } from "./drawing.ts";
import { ruleTester } from "./rule-tester.ts";
import { press, unchanged } from "./two-states.ts";

/** A switch before something wired in of so many watts. */
function switched(loadW: number, type = "appliance-120", more: Partial<Device> = {}): Drawing {
  return new Drawing()
    .panel("P")
    .breaker("Q1", 20)
    .box("A", 42)
    .box("B", 42)
    .cable("C1", "nm-12-2-g", "P", "A")
    .cable("C2", "nm-12-2-g", "A", "B")
    .device("S1", "switch-single-pole", "A", { fastenedTo: "box" })
    .device("A1", type, "B", { loadW: watts(loadW), ...more })
    .splice("n", "A", "twist-medium")
    .put({ "C1.bk@P": "Q1.OUT", "C1.wh@P": "P-NB.BAR", "C1.bk@A": "S1.C", "C2.bk@A": "S1.L" })
    .put({ "C1.wh@A": "n", "C2.wh@A": "n", "C2.bk@B": "A1.H", "C2.wh@B": "A1.N" });
}

/** By hand, at 120 V: 1800 W are 15 A, 1920 W are 16 A, 1440 W are 12 A or 80 % of 15 A. */
ruleTester(switchRating, {
  passes: [
    { name: "15 A switch, 15 A", drawing: () => switched(1800) },
    { name: "15 A switch, a small light", drawing: () => switched(600, "luminaire-led-9") },
    { name: "15 A switch, 12 A of motor", drawing: () => switched(1440, "fan-exhaust") },
    {
      name: "a load without watts is left out",
      drawing: () => switched(0).setDevice("A1", { loadW: undefined as never }),
    },
    {
      name: "16 A beside the switch and not through it",
      drawing: () => switched(1920).splice("h", "A", "twist-medium").put({ "C1.bk@A": "h", "C2.bk@A": "h" }),
    },
  ],
  finds: [
    {
      name: "15 A switch, 16 A heater",
      drawing: () => switched(1920),
      findings: [
        {
          on: "S1",
          severity: "violation",
          data: { ratingA: 15, loadA: 16 },
          says: ["S1 in A is rated 15 A and switches 16 A: A1", "Fit one of 16 A or more"],
        },
      ],
    },
    {
      name: "more than 80 % of it in motors",
      drawing: () => switched(1560, "fan-exhaust"),
      findings: [
        { on: "S1", data: { ratingA: 15, loadA: 13 }, says: ["80 % of its rating, 12 A", "Fit one of 16.25 A"] },
      ],
    },
    {
      name: "it rests on the watts of the load",
      drawing: () => switched(1920, "appliance-120", { evidence: { loadW: "assumed" } }),
      findings: [{ on: "S1", basis: "assumed" }],
    },
  ],
  cannotTell: [
    {
      name: "a switch without a rating",
      drawing: () => switched(1800).setDevice("S1", { ratingA: undefined as never }),
      on: ["S1"],
      missing: "the rating of S1",
    },
  ],
});

test("a switch that bears it is offered, and mends it", () => {
  const { title, project } = press(unchanged(switched(1920)), "switch-rating", "S1", "20 A");
  expect(title).toBe("Fit a switch of 20 A at S1");
  expect(project.proposed?.enclosures["A" as never]?.devices["S1" as never]?.ratingA).toBe(amps(20));
});
