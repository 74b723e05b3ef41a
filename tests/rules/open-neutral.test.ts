import { openNeutral } from "../../shared-model/rules/checks/open-neutral.ts";
import { Drawing } from "./drawing.ts";
import { laundryProposed, multiwire } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

/** A hot from the panel and a two-wire cable from country that is not drawn, at one receptacle. */
const neutralFromOutside = (): Drawing =>
  new Drawing()
    .panel("P")
    .breaker("Q1", 15)
    .box("A", 30)
    .cable("C1", "nm-14-2-g", "P", "A")
    .cable("C2", "nm-14-2-g", "A", "country")
    .device("R1", "receptacle-15", "A")
    .put({ "C1.bk@P": "Q1.OUT", "C1.wh@P": "P-NB.BAR", "C1.bk@A": "R1.H1", "C2.wh@A": "R1.N1" });

const on240 = (): Drawing =>
  new Drawing()
    .panel("P")
    .breaker("Q1", 20, { legs: ["A", "B"] }, "breaker-2")
    .box("A", 30)
    .cable("C1", "nm-12-2-g", "P", "A")
    .device("W1", "appliance-240", "A")
    .put({ "C1.bk@P": "Q1.OUT1", "C1.wh@P": "Q1.OUT2", "C1.bk@A": "W1.L1", "C1.wh@A": "W1.L2" });

ruleTester(openNeutral, {
  passes: [
    { name: "every neutral joined", drawing: () => laundryProposed() },
    { name: "a neutral shared by two legs", drawing: () => multiwire() },
    {
      name: "an outlet without hot as well",
      drawing: () => laundryProposed().put({ "C5.bk@B1": "cap", "C5.wh@B1": "cap" }),
    },
    { name: "a 240 V appliance has none", drawing: on240 },
    {
      name: "loose ends of a box that is being surveyed",
      drawing: () => laundryProposed().put({ "C6.wh@B3": "loose" }).setBox("B3", { beingSurveyed: true }),
    },
  ],
  finds: [
    {
      name: "it rests on who says where the end is",
      drawing: () => laundryProposed().put({ "C6.wh@B3": "loose" }).knownBy("C6.wh@B3", "assumed"),
      findings: [{ on: "R3", basis: "assumed" }],
    },
    {
      name: "one white loose at the last receptacle",
      drawing: () => laundryProposed().put({ "C6.wh@B3": "loose" }),
      findings: [{ on: "R3", severity: "danger", says: ["It stops in B3 at C6 WH"] }],
    },
    {
      name: "one white capped where the cable leaves",
      drawing: () => laundryProposed().put({ "C5.wh@B1": "cap" }),
      findings: [{ on: "R5", says: ["B1"] }],
    },
    {
      name: "a survey of another box excuses nothing",
      drawing: () => laundryProposed().put({ "C6.wh@B3": "loose" }).setBox("B6", { beingSurveyed: true }),
      findings: [{ on: "R3" }],
    },
    {
      name: "reached through a load only",
      drawing: () => laundryProposed().put({ "C4.wh@B1": "cap" }),
      findings: [{ on: "L1", says: ["with L1 switched on, every contact of it can read live. It stops"] }],
    },
    {
      name: "nothing drawn to bring it: whatever is plugged in",
      drawing: () => laundryProposed().put({ "C5.wh@B1": "cap" }),
      findings: [{ on: "R5", says: ["with something switched on"] }],
    },
    {
      name: "brought by what is plugged in there",
      drawing: () => laundryProposed().load("Lamp", "lamp-60", "R5").put({ "C5.wh@B1": "cap" }),
      findings: [{ on: "R5", says: ["with Lamp switched on, every contact of it can read live. It stops"] }],
    },
    {
      name: "the neutral of two legs open before they part",
      drawing: () => multiwire().put({ "M3.wh@JB": "cap" }),
      findings: [
        { on: "RA", says: ["between two legs what is plugged in can get up to twice its voltage"] },
        { on: "RB", says: ["twice its voltage"] },
      ],
    },
    {
      name: "on the equipment ground instead",
      drawing: () => laundryProposed().put({ "C6.wh@B3": "cap" }).jumper("y", "B3", "R3.N2", "bond"),
      findings: [{ on: "R3", says: ["on the equipment ground"] }],
    },
    {
      name: "on the other leg instead",
      drawing: () => multiwire().put({ "MA.wh@JB": "jB" }),
      findings: [{ on: "RA", says: ["on another hot conductor"] }],
    },
  ],
  cannotTell: [
    {
      name: "its neutral leads into country that is not drawn",
      drawing: neutralFromOutside,
      on: ["C2"],
      missing: "what is at the other end of C2",
    },
  ],
});
