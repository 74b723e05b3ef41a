import type { Device } from "../../shared-model/model/device.ts";
import { dimmerLoad } from "../../shared-model/rules/checks/dimmer-load.ts";
import { watts } from "../../shared-model/units/quantity.ts";
import { Drawing } from "./drawing.ts";
import { ruleTester } from "./rule-tester.ts";

/** A dimmer of 600 W, 150 W of LED, before a luminaire of so many watts. */
function dimmed(loadW: number, type: "luminaire-led-9" | "luminaire-60", more: Partial<Device> = {}): Drawing {
  return new Drawing()
    .panel("P")
    .breaker("Q1", 15)
    .box("A", 42)
    .box("B", 42)
    .cable("C1", "nm-14-2-g", "P", "A")
    .cable("C2", "nm-14-2-g", "A", "B")
    .device("D1", "dimmer", "A", more)
    .device("L1", type, "B", { loadW: watts(loadW) })
    .splice("n", "A", "twist-medium")
    .splice("i", "A", "twist-medium")
    .splice("o", "A", "twist-medium")
    .put({ "C1.bk@P": "Q1.OUT", "C1.wh@P": "P-NB.BAR", "C1.bk@A": "i", "C2.bk@A": "o" })
    .put({ "C1.wh@A": "n", "C2.wh@A": "n", "C2.bk@B": "L1.H", "C2.wh@B": "L1.N" })
    .jumper("ji", "A", "i", "D1.C", { awg: "14" })
    .jumper("jo", "A", "o", "D1.L", { awg: "14" });
}

/** By hand: 5 A at 120 V are 600 W. */
ruleTester(dimmerLoad, {
  passes: [
    { name: "60 W of LED on a rating of 150", drawing: () => dimmed(60, "luminaire-led-9") },
    { name: "150 W of LED", drawing: () => dimmed(150, "luminaire-led-9") },
    { name: "600 W of lamps", drawing: () => dimmed(600, "luminaire-60") },
    {
      name: "no LED rating recorded: 200 W of LED are held against 600",
      drawing: () => dimmed(200, "luminaire-led-9", { ledRatingW: undefined as never }),
    },
    {
      name: "400 W with both side sections off, where its instructions say 400",
      drawing: () => dimmed(400, "luminaire-60", { sideSectionsRemoved: 2, ratingW: watts(400) }),
    },
  ],
  finds: [
    {
      name: "200 W of LED on a rating of 150",
      drawing: () => dimmed(200, "luminaire-led-9"),
      findings: [
        {
          on: "D1",
          severity: "violation",
          data: { loadW: 200, ratingW: 150 },
          says: ["D1 in A has 200 W of LED on an LED rating of 150 W: L1"],
        },
      ],
    },
    {
      name: "601 W of lamps",
      drawing: () => dimmed(601, "luminaire-60"),
      findings: [{ on: "D1", data: { loadW: 601, ratingW: 600 } }],
    },
    {
      name: "500 W with one side section off",
      drawing: () => dimmed(500, "luminaire-60", { sideSectionsRemoved: 1, ratingW: watts(450) }),
      findings: [{ on: "D1", says: ["500 W on a rating of 450 W (1 side section taken off)"] }],
    },
    {
      name: "it rests on the rating",
      drawing: () => dimmed(601, "luminaire-60", { evidence: { ratingA: "told" } }),
      findings: [{ on: "D1", basis: "told" }],
    },
  ],
  cannotTell: [
    {
      name: "side sections off, and the lower rating not recorded",
      drawing: () => dimmed(400, "luminaire-60", { sideSectionsRemoved: 2 }),
      on: ["D1"],
      missing: "the rating of D1 as it is mounted",
    },
  ],
});
