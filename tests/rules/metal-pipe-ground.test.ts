import { expect, test } from "vitest";
import type { Cable } from "../../shared-model/model/cable.ts";
import { metalPipeGround } from "../../shared-model/rules/checks/metal-pipe-ground.ts";
import { feet } from "../../shared-model/units/quantity.ts";
import { rawAnswers } from "./check-drawing.ts";
import { Drawing } from "./drawing.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

/** A ground wire of its own from a receptacle to somewhere that is not drawn. */
function groundWire(facts: Partial<Cable>): Drawing {
  const drawing = new Drawing()
    .box("A", 60)
    .cable("G", "single-12-black", "A", "cellar", { colour: "green", grounding: true })
    .device("R", "receptacle-15", "A")
    .put({ "G.bk@A": "R.G" });
  drawing.cables.G = { ...(drawing.cables.G as Cable), ...facts };
  return drawing;
}

const onPipe = (distance?: number): Drawing =>
  groundWire({ groundClampedTo: "water-pipe", ...(distance !== undefined && { pipeFromEntryFt: feet(distance) }) });

ruleTester(metalPipeGround, {
  passes: [
    { name: "grounds to the bar of the panel", drawing: () => laundryProposed() },
    { name: "a ground that leaves the drawing, nothing recorded", drawing: () => groundWire({}) },
    { name: "to the panel", drawing: () => groundWire({ groundClampedTo: "panel" }) },
    { name: "to the grounding electrode", drawing: () => groundWire({ groundClampedTo: "grounding-electrode" }) },
    { name: "to a pipe, exactly 5 ft from its entry", drawing: () => onPipe(5) },
    {
      name: "a cable without a ground",
      drawing: () => onPipe(30).setConductors("G", { grounding: false, colour: "black" }),
    },
  ],
  finds: [
    {
      name: "to the cold pipe of the kitchen",
      drawing: () => onPipe(30),
      findings: [
        {
          on: "G",
          severity: "violation",
          data: { feet: 30, mostFt: 5 },
          says: ["The ground G of A (R) is clamped to a water pipe 30 ft from where", "5 ft is the most"],
        },
      ],
    },
    { name: "a little more than 5 ft", drawing: () => onPipe(5.1), findings: [{ on: "G" }] },
    {
      name: "it rests on who measured",
      drawing: () => {
        const drawing = onPipe(30);
        drawing.cables.G = { ...(drawing.cables.G as Cable), evidence: { pipeFromEntryFt: "told" } };
        return drawing;
      },
      findings: [{ on: "G", basis: "told" }],
    },
  ],
  cannotTell: [
    { name: "the distance is not recorded", drawing: () => onPipe(), on: ["G"], missing: "how far along the pipe" },
  ],
});

test("a local amendment of the distance counts", () => {
  const drawing = onPipe(9);
  drawing.extra.amendments = [
    { rule: "metal-pipe-ground", change: { kind: "value", name: "pipeFromEntryFt", value: 10 }, reason: "town" },
  ];
  const found = rawAnswers(drawing.project())
    .flat()
    .flatMap(({ reports }) => reports)
    .filter(({ rule }) => rule === metalPipeGround);
  expect(found).toEqual([]);
});
