import { expect, test } from "vitest";
import { lineLoadSwapped } from "../../shared-model/rules/checks/line-load-swapped.ts";
import { checkDocument, inShort } from "./check-drawing.ts";
import type { Drawing } from "./drawing.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

const swapped = (): Drawing =>
  laundryProposed().exchange("R1b", "LINE_H", "LOAD_H").exchange("R1b", "LINE_N", "LOAD_N");

ruleTester(lineLoadSwapped, {
  passes: [
    { name: "supply on LINE", drawing: () => laundryProposed() },
    {
      name: "only the neutrals exchanged is another matter",
      drawing: () => laundryProposed().exchange("R1b", "LINE_N", "LOAD_N"),
    },
    {
      name: "only the hots exchanged is another matter",
      drawing: () => laundryProposed().exchange("R1b", "LINE_H", "LOAD_H"),
    },
    {
      name: "supply on both sides is another matter",
      drawing: () => laundryProposed().jumper("y", "B1", "HL", "HD").jumper("z", "B1", "NL", "ND"),
    },
    { name: "a device without supply", drawing: () => swapped().put({ "C1.bk@P": "cap" }) },
    {
      name: "exchanged twice",
      drawing: () => swapped().exchange("R1b", "LINE_H", "LOAD_H").exchange("R1b", "LINE_N", "LOAD_N"),
    },
    {
      name: "a hot on LOAD and no neutral anywhere: another matter",
      drawing: () => swapped().put({ "C1.wh@B1": "cap" }),
    },
  ],
  finds: [
    {
      name: "it rests on who says where the supply is",
      drawing: () => swapped().knownBy("C1.bk@B1", "assumed"),
      findings: [{ on: "R1b", basis: "assumed" }],
    },
    {
      name: "supply on LOAD",
      drawing: swapped,
      findings: [{ on: "R1b", severity: "danger", says: ["The supply C1 is on LOAD of R1b in B1"] }],
    },
    {
      name: "a device at the end of a run, fed on LOAD",
      drawing: () => laundryProposed().exchange("R4b", "LINE_H", "LOAD_H").exchange("R4b", "LINE_N", "LOAD_N"),
      findings: [{ on: "R4b", says: ["The supply C3"] }],
    },
    {
      name: "a blank-face device",
      drawing: () => swapped().setDevice("R1b", { type: "gfci-blank" }),
      findings: [{ on: "R1b" }],
    },
  ],
  cannotTell: { never: "terminals and conductors are drawn or they are not" },
});

test("what follows from it is folded under it: its face and what its contacts cut off", () => {
  const { findings } = checkDocument(swapped().project());
  expect(inShort(findings)).toEqual(["line-load-swapped R1b"]);
  expect(findings[0]?.folded).toBe(3);
  expect(findings[0]?.foldedSubjects.map(({ name }) => name)).toEqual(["R1b", "R2", "R3"]);
});
