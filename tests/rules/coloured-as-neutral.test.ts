import { expect, test } from "vitest";
import { colouredAsNeutral } from "../../shared-model/rules/checks/coloured-as-neutral.ts";
import { checkDocument } from "./check-drawing.ts";
import { ofConductors } from "./conductor-findings.ts";
import { Drawing } from "./drawing.ts";
import { laundryProposed, multiwire } from "./laundry.ts";
import { markEnd } from "./loop.ts";
import { ruleTester } from "./rule-tester.ts";

const exchanged = (): Drawing => laundryProposed().swap("C4.bk@B1", "C4.wh@B1").swap("C4.bk@B5", "C4.wh@B5");

/** A lamp on two single conductors of a construction and size. */
function singles(item: string, awg: "6" | "4"): Drawing {
  const drawing = new Drawing()
    .panel("P")
    .breaker("Q1", 15)
    .box("B1", 21)
    .cable("H", item, "P", "B1")
    .cable("N", item, "P", "B1")
    .device("L1", "luminaire-60", "B1")
    .put({ "H.bk@P": "Q1.OUT", "N.bk@P": "P-NB.BAR", "H.bk@B1": "L1.H", "N.bk@B1": "L1.N" });
  drawing.setConductors("N", { awg });
  return drawing;
}

ruleTester(colouredAsNeutral, {
  passes: [
    { name: "neutrals are white", drawing: () => laundryProposed() },
    { name: "thicker than the limit, marked or not", drawing: () => singles("single-12-black", "4") },
    { name: "knob-and-tube has one colour", drawing: () => singles("knob-tube-12", "6") },
    {
      name: "a spare that lies on the neutral",
      drawing: () => multiwire().put({ "M3.rd@P": "P-NB.BAR", "M3.rd@JB": "cap", "MB.bk@JB": "cap" }),
    },
    {
      name: "a black that is on the neutral by mistake leads to hot terminals",
      drawing: () => laundryProposed().put({ "C1.bk@P": "P-NB.BAR" }),
    },
    {
      name: "a white jumper, and a black one that is marked",
      drawing: () => {
        const drawing = laundryProposed().setJumper("b", { colour: "black" });
        const { places } = drawing.at("B1");
        for (const end of ["b.a", "b.b"] as never[]) {
          const place = places[end];
          if (place !== undefined) places[end] = { ...(place as object), markedAs: "white" } as never;
        }
        return drawing;
      },
    },
  ],
  finds: [
    {
      name: "the black of a cable",
      drawing: () => exchanged().knownBy("C4.bk@B1", "told"),
      findings: [{ on: "C4", severity: "violation", basis: "told", says: ["The black of C4", "6 AWG or thinner"] }],
    },
    {
      name: "marked white: a caution",
      drawing: () => markEnd(markEnd(exchanged(), "C4.bk@B1", "white"), "C4.bk@B5", "white"),
      findings: [{ on: "C4", severity: "caution", says: ["marked as one"] }],
    },
    { name: "exactly at the limit", drawing: () => singles("single-12-black", "6"), findings: [{ on: "N" }] },
    {
      name: "a black jumper",
      drawing: () => laundryProposed().setJumper("b", { colour: "black" }),
      findings: [{ on: "b", says: ["Jumper b in B1 is black"] }],
    },
  ],
  cannotTell: { never: "the colour of a conductor is always given" },
});

test("where black and white are exchanged before a receptacle, that is the one finding", () => {
  const crossed = laundryProposed().put({ "C5.bk@B1": "ND", "C5.wh@B1": "HD" });
  expect(ofConductors(checkDocument(crossed.project()).findings)).toEqual(["polarity-swapped R5"]);
});
