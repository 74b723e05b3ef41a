import { expect, test } from "vitest";
import { neutralFromOtherCircuit } from "../../shared-model/rules/checks/neutral-from-other-circuit.ts";
import { checkDocument } from "./check-drawing.ts";
import { ofConductors } from "./conductor-findings.ts";
import { Drawing } from "./drawing.ts";
import { laundryProposed, multiwire } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { twoCircuits } from "./two-circuits.ts";

/** R1 has its hot of Q1, its neutral over X from the joint of Q2; the white of C1 is left capped. */
const borrowed = (): Drawing => twoCircuits().put({ "C1.wh@B1": "cap", "X.wh@B1": "n1", "X.wh@B2": "n2" });

/** Hot and neutral on single conductors, each by its own route or by one. */
function singles(routes: readonly [hot: string, neutral: string]): Drawing {
  const drawing = new Drawing()
    .panel("P")
    .breaker("Q1", 20)
    .breaker("Q2", 20, { legs: ["B"] })
    .box("B1", 30)
    .cable("H1", "single-12-black", "P", "B1")
    .cable("H2", "single-12-black", "P", "B1")
    .cable("N2", "single-12-white", "P", "B1")
    .device("R1", "receptacle-15", "B1")
    .device("R2", "receptacle-15", "B1")
    .splice("n", "B1", "twist-medium")
    .put({ "H1.bk@P": "Q1.OUT", "H2.bk@P": "Q2.OUT", "N2.wh@P": "P-NB.BAR" })
    .put({ "H1.bk@B1": "R1.H1", "H2.bk@B1": "R2.H1", "N2.wh@B1": "n" })
    .jumper("a", "B1", "n", "R1.N1", { colour: "white" })
    .jumper("b", "B1", "n", "R2.N1", { colour: "white" });
  for (const [name, route] of [
    ["H1", routes[0]],
    ["H2", routes[1]],
    ["N2", routes[1]],
  ] as const) {
    const cable = drawing.cables[name];
    if (cable !== undefined) cable.route = route;
  }
  return drawing;
}

ruleTester(neutralFromOtherCircuit, {
  passes: [
    { name: "one circuit", drawing: () => laundryProposed() },
    { name: "two, each with its own neutral", drawing: () => twoCircuits() },
    { name: "a multiwire circuit: both hots in the cable of the neutral", drawing: () => multiwire() },
    {
      name: "joined neutrals: each has its own as well",
      drawing: () => twoCircuits().put({ "X.wh@B1": "n1", "X.wh@B2": "n2" }),
    },
    {
      name: "a neutral by a cable of its own is another matter",
      drawing: () => borrowed().put({ "C2.bk@P": "cap" }),
    },
    { name: "no neutral at all", drawing: () => borrowed().put({ "C2.wh@P": "cap" }) },
    { name: "joined hots: nothing can be told", drawing: () => borrowed().put({ "X.bk@B1": "h1", "X.bk@B2": "h2" }) },
    { name: "single conductors of one raceway", drawing: () => singles(["raceway 1", "raceway 1"]) },
  ],
  finds: [
    {
      name: "over a cable between two boxes, and by whom it is known",
      drawing: () => borrowed().knownBy("X.wh@B2", "told"),
      findings: [
        {
          on: "Q1 Q2",
          severity: "danger",
          data: { outlets: 1 },
          basis: "told",
          says: ["R1: the hot is of Q1, the neutral of Q2 and comes back by C2"],
        },
      ],
    },
    {
      name: "every outlet that hangs on it, once",
      drawing: () =>
        borrowed()
          .device("R3", "receptacle-15", "B1")
          .jumper("u", "B1", "h1", "R3.H1")
          .jumper("v", "B1", "n1", "R3.N1", { colour: "white" }),
      findings: [{ on: "Q1 Q2", data: { outlets: 2 }, says: ["R1 and R3"] }],
    },
    {
      name: "through a ground-fault receptacle of the other circuit",
      drawing: () =>
        borrowed()
          .device("G2", "gfci-receptacle-20", "B2")
          .put({ "X.wh@B2": "G2.LOAD_N" })
          .jumper("u", "B2", "h2", "G2.LINE_H")
          .jumper("v", "B2", "n2", "G2.LINE_N", { colour: "white" }),
      findings: [{ on: "Q1 Q2" }],
    },
    {
      name: "single conductors by two routes",
      drawing: () => singles(["raceway 1", "raceway 2"]),
      findings: [{ on: "Q1 Q2" }],
    },
  ],
  cannotTell: { never: "a route that nobody recorded is taken to be one" },
});

test("it stands for what a ground-fault device on its way says", () => {
  const drawing = borrowed()
    .device("G2", "gfci-receptacle-20", "B2")
    .put({ "X.wh@B2": "G2.LOAD_N" })
    .jumper("u", "B2", "h2", "G2.LINE_H")
    .jumper("v", "B2", "n2", "G2.LINE_N", { colour: "white" });
  const said = ofConductors(checkDocument(drawing.project()).findings).filter((one) => /Q1|G2|R1/.test(one));
  expect(said.filter((one) => !/egc/.test(one))).toEqual(["neutral-from-other-circuit Q1"]);
});
