import { expect, test } from "vitest";
import type { Room } from "../../shared-model/model/room.ts";
import { knobTubeInInsulation } from "../../shared-model/rules/checks/knob-tube-in-insulation.ts";
import { rawAnswers } from "./check-drawing.ts";
import { Drawing } from "./drawing.ts";
import { ruleTester } from "./rule-tester.ts";

const IN = { roomId: "Attic" as never };

/** Two boxes in one room with an open run of two conductors between them. */
const runs = (facts: Partial<Room>, count = 2): Drawing => {
  const drawing = new Drawing().room("Attic", ["attic"], facts).box("A", 60, IN).box("B", 60, IN);
  for (let index = 1; index <= count; index += 1) drawing.cable(`K${index}`, "knob-tube-14", "A", "B");
  return drawing;
};

ruleTester(knobTubeInInsulation, {
  passes: [
    { name: "open joists", drawing: () => runs({ insulatedCavity: false }) },
    {
      name: "sheathed cable in a filled wall",
      drawing: () =>
        new Drawing()
          .room("Attic", ["attic"], { insulatedCavity: true })
          .box("A", 60, IN)
          .box("B", 60, IN)
          .cable("C", "nm-14-2", "A", "B"),
    },
    {
      name: "boxes without a room",
      drawing: () => new Drawing().box("A", 60).box("B", 60).cable("K1", "knob-tube-14", "A", "B"),
    },
  ],
  finds: [
    {
      name: "a filled cavity",
      drawing: () => runs({ insulatedCavity: true }),
      findings: [
        {
          on: "Attic K1 K2",
          severity: "violation",
          data: { runs: 2 },
          says: ["(K1 and K2)", "cavities of Attic"],
        },
      ],
    },
    {
      name: "one room of two",
      drawing: () =>
        runs({ insulatedCavity: true }, 1)
          .room("Cellar", ["utility"], { insulatedCavity: false })
          .box("Z", 60, { roomId: "Cellar" as never })
          .cable("K9", "knob-tube-14", "B", "Z"),
      findings: [{ on: "Attic K1 K9" }],
    },
    {
      name: "many runs are counted",
      drawing: () => runs({ insulatedCavity: true }, 9),
      findings: [
        { on: "Attic K1 K2 K3 K4 K5 K6 K7 K8 K9", data: { runs: 9 }, says: ["K1, K2, K3, K4, K5, K6 and 3 more"] },
      ],
    },
    {
      name: "it rests on who says that it is open wiring",
      drawing: () => {
        const drawing = runs({ insulatedCavity: true }, 1);
        const cable = drawing.cables.K1;
        if (cable !== undefined) cable.evidence = { construction: "told" };
        return drawing;
      },
      findings: [{ on: "Attic K1", basis: "told" }],
    },
  ],
  cannotTell: [
    {
      name: "whether the cavities are filled is not recorded: asked once a room",
      drawing: () => runs({}),
      on: ["Attic K1 K2"],
      missing: "whether the cavities of Attic are insulated",
    },
  ],
});

test("the question leads to the room", () => {
  const asked = rawAnswers(runs({}).project())
    .flat()
    .flatMap(({ couldNotTell }) => couldNotTell)
    .find(({ rule }) => rule === knobTubeInInsulation);
  expect(asked?.report.enterAt).toMatchObject({ kind: "room", id: "Attic" });
});
