import { neutralsJoined } from "../../shared-model/rules/checks/neutrals-joined.ts";
import type { Drawing } from "./drawing.ts";
import { laundryProposed, multiwire } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { twoCircuits } from "./two-circuits.ts";

/** The white of X joins the two. */
const joined = (): Drawing => twoCircuits().put({ "X.wh@B1": "n1", "X.wh@B2": "n2" });

ruleTester(neutralsJoined, {
  passes: [
    { name: "one circuit", drawing: () => laundryProposed() },
    { name: "two, apart", drawing: () => twoCircuits() },
    { name: "one neutral for two hots is a multiwire circuit", drawing: () => multiwire() },
    { name: "a borrowed neutral has one return", drawing: () => joined().put({ "C1.wh@B1": "cap" }) },
    {
      name: "two cables of one breaker are parallel, which is told elsewhere",
      drawing: () => joined().put({ "C2.bk@P": "Q1.OUT" }),
    },
    { name: "joined hots: nothing can be told", drawing: () => joined().put({ "X.bk@B1": "h1", "X.bk@B2": "h2" }) },
    {
      name: "joined in the panel, on the bar, where they belong",
      drawing: () =>
        twoCircuits()
          .splice("s", "P", "twist-large")
          .put({ "C1.wh@P": "s", "C2.wh@P": "s" })
          .jumper("y", "P", "s", "P-NB.BAR"),
    },
  ],
  finds: [
    {
      name: "over a cable between two boxes",
      drawing: joined,
      findings: [{ on: "Q1 Q2", severity: "danger", says: ["of Q1 and that of Q2 are joined at splice n1 in B1"] }],
    },
    {
      name: "in one box, and by whom it is known",
      drawing: () =>
        twoCircuits()
          .box("B3", 30)
          .cable("Y1", "nm-12-2-g", "B1", "B3")
          .cable("Y2", "nm-12-2-g", "B2", "B3")
          .device("S1", "receptacle-15", "B3")
          .device("S2", "receptacle-15", "B3")
          .splice("n3", "B3", "twist-large")
          .put({ "Y1.bk@B1": "h1", "Y1.wh@B1": "n1", "Y2.bk@B2": "h2", "Y2.wh@B2": "n2" })
          .put({ "Y1.bk@B3": "S1.H1", "Y2.bk@B3": "S2.H1", "Y1.wh@B3": "n3", "Y2.wh@B3": "n3" })
          .jumper("u", "B3", "n3", "S1.N1", { colour: "white" })
          .jumper("v", "B3", "n3", "S2.N1", { colour: "white" })
          .knownBy("Y2.wh@B3", "assumed"),
      findings: [{ on: "Q1 Q2", basis: "assumed", says: ["joined at splice n3 in B3"] }],
    },
    {
      name: "on one leg too, and with tied handles",
      drawing: () => joined().setDevice("Q2", { legs: ["A"], tiedTo: "Q1" as never }),
      findings: [{ on: "Q1 Q2" }],
    },
    {
      name: "two multiwire circuits",
      drawing: () => {
        const drawing = multiwire();
        return drawing
          .breaker("QC", 20, { legs: ["A"] })
          .breaker("QD", 20, { legs: ["B"], tiedTo: "QC" as never })
          .cable("M4", "nm-12-3-g", "P", "JB")
          .device("RC", "receptacle-15", "JB")
          .device("RD", "receptacle-15", "JB")
          .put({ "M4.bk@P": "QC.OUT", "M4.rd@P": "QD.OUT", "M4.wh@P": "P-NB.BAR" })
          .put({ "M4.bk@JB": "RC.H1", "M4.rd@JB": "RD.H1", "M4.wh@JB": "jN" })
          .jumper("u", "JB", "jN", "RC.N1", { colour: "white" })
          .jumper("v", "JB", "jN", "RD.N1", { colour: "white" });
      },
      findings: [{ on: "QA QB QC QD", says: ["QA and QB and that of QC and QD", "at splice jN in JB"] }],
    },
  ],
  cannotTell: { never: "what is joined is drawn" },
});
