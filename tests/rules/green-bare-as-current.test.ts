import { expect, test } from "vitest";
import { greenBareAsCurrent } from "../../shared-model/rules/checks/green-bare-as-current.ts";
import { checkDocument } from "./check-drawing.ts";
import { ofConductors } from "./conductor-findings.ts";
import { Drawing } from "./drawing.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { threeWay } from "./three-way.ts";

/** The bare wire of C5 in the joint of the LOAD hots and on the second hot screw of R5. */
const asHot = (): Drawing =>
  laundryProposed().removeJumper("B6g").removeJumper("B6b").put({ "C5.cu@B1": "HD", "C5.cu@B6": "R5.H2" });

/** A receptacle on a cable that brings its supply from out of the drawing, with black and white where they belong. */
const fromOutside = (ends: Readonly<Record<string, string>>): Drawing =>
  new Drawing()
    .box("B", 30)
    .device("R", "receptacle-15", "B")
    .cable("C2", "nm-12-2-g", "country", "B")
    .put({ "C2.bk@B": "R.H1", "C2.wh@B": "R.N1", ...ends });

ruleTester(greenBareAsCurrent, {
  passes: [
    { name: "grounds are grounds", drawing: () => laundryProposed() },
    {
      name: "a hot that touches the ground is told as that",
      drawing: () => laundryProposed().jumper("y", "B3", "R3.H2", "bond"),
    },
    {
      name: "a neutral on the ground is told as that",
      drawing: () => laundryProposed().jumper("y", "B3", "R3.N2", "bond", { colour: "bare" }),
    },
    { name: "no source, and it is on the ground screw", drawing: () => fromOutside({ "C2.cu@B": "R.G" }) },
    { name: "no source, and it is capped", drawing: () => fromOutside({}) },
    {
      name: "no source: a black pigtail of the grounds on a hot screw is the slip, not the bare wire",
      drawing: () =>
        fromOutside({})
          .splice("E", "B", "lever-3")
          .put({ "C2.cu@B": "E" })
          .jumper("b", "B", "E", "bond", { colour: "bare" })
          .jumper("y", "B", "E", "R.H1", { colour: "black" }),
    },
  ],
  finds: [
    {
      name: "as a hot, and by whom it is known",
      drawing: () => asHot().knownBy("C5.cu@B6", "told"),
      findings: [{ on: "C5", severity: "danger", basis: "told", says: ["The bare wire of C5", "a hot in B1 and B6"] }],
    },
    {
      name: "no source of a circuit that is drawn",
      drawing: () => asHot().put({ "C1.bk@P": "cap", "C1.wh@P": "cap" }),
      findings: [{ on: "C5", severity: "violation", says: ["leads to a terminal for a hot in B1 and B6"] }],
    },
    {
      name: "no supply drawn: on a brass screw, and by whom it is known",
      drawing: () => fromOutside({ "C2.cu@B": "R.H1" }).knownBy("C2.cu@B", "told"),
      findings: [{ on: "C2", severity: "violation", basis: "told", says: ["a terminal for a hot in B", "whatever"] }],
    },
    {
      name: "no supply drawn: on a silver screw",
      drawing: () => fromOutside({ "C2.cu@B": "R.N1" }),
      findings: [{ on: "C2", severity: "violation", says: ["a terminal for a neutral in B"] }],
    },
    {
      name: "no supply drawn: a green pigtail from the grounds to a brass screw",
      drawing: () =>
        fromOutside({})
          .splice("E", "B", "lever-3")
          .put({ "C2.cu@B": "E" })
          .jumper("b", "B", "E", "bond", { colour: "bare" })
          .jumper("y", "B", "E", "R.H1", { colour: "green" }),
      findings: [
        { on: "y", severity: "violation", says: ["Jumper y in B is green and leads to a terminal for a hot"] },
      ],
    },
    {
      name: "as a neutral",
      drawing: () =>
        laundryProposed()
          .removeJumper("B6g")
          .removeJumper("B6b")
          .put({ "C5.wh@B1": "cap", "C5.wh@B6": "cap", "C5.cu@B1": "ND", "C5.cu@B6": "R5.N1" }),
      findings: [{ on: "C5", says: ["as a neutral"] }],
    },
    {
      name: "as a traveller",
      drawing: () => threeWay().put({ "V2.rd@A": "cap", "V2.rd@B": "cap", "V2.cu@A": "SA.T2", "V2.cu@B": "SB.T2" }),
      findings: [{ on: "V2", says: ["as a traveller"] }],
    },
    {
      name: "a green jumper",
      drawing: () => laundryProposed().setJumper("c", { colour: "green" }),
      findings: [{ on: "c", says: ["Jumper c in B1 is green"] }],
    },
  ],
  cannotTell: { never: "what a conductor is made for is always given" },
});

test("what lost its ground by it is told with it", () => {
  const said = ofConductors(checkDocument(asHot().project()).findings);
  expect(said).toEqual(["green-bare-as-current C5"]);
});
