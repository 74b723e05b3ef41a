import {
  asId,
  type CableId,
  type ConductorKey,
  type EntryId,
  type PassThroughId,
} from "../../shared-model/model/ids.ts";
import { boxNotAccessible } from "../../shared-model/rules/checks/box-not-accessible.ts";
import { Drawing } from "./drawing.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

const buried = (box: string) => laundryProposed().setBox(box, { accessible: false });

const passing = (): Drawing => {
  const drawing = new Drawing()
    .box("A", 30)
    .box("M", 30, { accessible: false })
    .box("Z", 30)
    .cable("C", "nm-12-2", "A", "Z");
  const id = asId<PassThroughId>("pass");
  const passThrough = {
    id,
    cable: asId<CableId>("C"),
    conductors: [asId<ConductorKey>("bk")],
    entryIn: asId<EntryId>("in"),
    entryOut: asId<EntryId>("out"),
  };
  return drawing.setBox("M", { passThroughs: { [id]: passThrough } });
};

ruleTester(boxNotAccessible, {
  passes: [
    { name: "not recorded", drawing: () => laundryProposed() },
    { name: "within reach", drawing: () => laundryProposed().setBox("B5", { accessible: true }) },
    { name: "a cable that only passes", drawing: () => passing() },
    { name: "an empty box", drawing: () => new Drawing().box("B", 20, { accessible: false }) },
  ],
  finds: [
    {
      name: "X12: the box of the stair switch",
      drawing: () => buried("B5"),
      findings: [
        {
          on: "B5",
          severity: "violation",
          says: ["B5 cannot be reached without damage to the building, and 2 splices and S1 are in it"],
        },
      ],
    },
    {
      name: "joints alone",
      drawing: () => new Drawing().box("J", 20, { accessible: false }).splice("X", "J", "twist-medium"),
      findings: [{ on: "J", says: ["and 1 splice is in it"] }],
    },
    {
      name: "capped ends, as told",
      drawing: () =>
        new Drawing()
          .box("J", 20, { accessible: false, evidence: { accessible: "told" } })
          .cable("C", "nm-12-2-g", "country", "J"),
      findings: [{ on: "J", basis: "told", says: ["3 conductor ends are in it"] }],
    },
  ],
  cannotTell: { never: "what nobody recorded as out of reach is taken as within" },
});
