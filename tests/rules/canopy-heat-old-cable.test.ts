import {
  asId,
  type CableId,
  type ConductorKey,
  type EntryId,
  type PassThroughId,
} from "../../shared-model/model/ids.ts";
import { canopyHeatOldCable } from "../../shared-model/rules/checks/canopy-heat-old-cable.ts";
import type { Celsius } from "../../shared-model/units/quantity.ts";
import { Drawing } from "./drawing.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

/** A luminaire that is marked for so much, fed by a cable that is made for so much. */
function under(supplyC: number | undefined, ...cables: readonly (number | undefined)[]): Drawing {
  const drawing = new Drawing().box("B", 21).device("L", "luminaire-60", "B", supplyC === undefined ? {} : { supplyC });
  cables.forEach((made, index) => {
    const name = `C${index + 1}`;
    drawing.cable(name, "nm-12-2", "country", "B");
    const cable = drawing.cables[name];
    if (cable !== undefined && made !== undefined) cable.insulationC = made as Celsius;
  });
  return drawing;
}

const passing = (): Drawing => {
  const drawing = under(90).cable("C9", "nm-12-2", "country", "elsewhere");
  const cable = drawing.cables.C9;
  if (cable !== undefined) cable.insulationC = 60 as Celsius;
  const id = asId<PassThroughId>("pass");
  const passThrough = {
    id,
    cable: asId<CableId>("C9"),
    conductors: [asId<ConductorKey>("bk")],
    entryIn: asId<EntryId>("in"),
    entryOut: asId<EntryId>("out"),
  };
  return drawing.setBox("B", { passThroughs: { [id]: passThrough } });
};

ruleTester(canopyHeatOldCable, {
  passes: [
    { name: "marking not recorded", drawing: () => laundryProposed() },
    { name: "90 °C wire at a luminaire for 90 °C", drawing: () => under(90, 90) },
    { name: "a luminaire for 60 °C asks for nothing", drawing: () => under(60, undefined) },
    { name: "75 °C wire at one for 75 °C", drawing: () => under(75, 75) },
  ],
  finds: [
    {
      name: "old 60 °C wire at a luminaire for 90 °C",
      drawing: () => under(90, 60),
      findings: [
        {
          on: "L C1",
          severity: "caution",
          data: { wantedC: 90, hasC: 60 },
          says: ["L is marked for supply conductors of 90 °C, and C1 in B is for 60 °C"],
        },
      ],
    },
    { name: "just below", drawing: () => under(90, 89), findings: [{ on: "L C1" }] },
    { name: "the old one of two", drawing: () => under(75, 60, 90), findings: [{ on: "L C1" }] },
    {
      name: "both, told by the lower",
      drawing: () => under(90, 75, 60),
      findings: [{ on: "L C1 C2", data: { wantedC: 90, hasC: 60 }, says: ["C1 and C2 in B are for 60 °C"] }],
    },
    { name: "one that passes through", drawing: () => passing(), findings: [{ on: "L C9" }] },
  ],
  cannotTell: [
    {
      name: "what the cable is made for",
      drawing: () => under(90, undefined, 90),
      on: ["L C1"],
      missing: "the temperature that C1 is made for",
    },
  ],
});
