import { dimmerFeedsReceptacle } from "../../shared-model/rules/checks/dimmer-feeds-receptacle.ts";
import type { Drawing } from "./drawing.ts";
import { laundryAsFound } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

/** A device of a type between the feed and the receptacle of the hall. */
const hallBehind = (type: string): Drawing =>
  laundryAsFound().device("D1", type, "B6").put({ "C5.bk@B6": "D1.C" }).jumper("y", "B6", "D1.L", "R5.H1");

/** One half behind it, the other fed as before. */
const half = (): Drawing =>
  laundryAsFound()
    .setDevice("R5", { hotTab: "removed" })
    .device("D1", "dimmer", "B6")
    .splice("H6", "B6", "twist-medium")
    .put({ "C5.bk@B6": "H6" })
    .jumper("v", "B6", "H6", "R5.H1")
    .jumper("w", "B6", "H6", "D1.C")
    .jumper("y", "B6", "D1.L", "R5.H2");

ruleTester(dimmerFeedsReceptacle, {
  passes: [
    { name: "no dimmer", drawing: () => laundryAsFound() },
    { name: "a switch before the receptacle", drawing: () => hallBehind("switch-single-pole") },
    {
      name: "a dimmer before a luminaire",
      drawing: () => laundryAsFound().device("D1", "dimmer", "B5").put({ "C4.bk@B5": "D1.C", "C7.bk@B5": "D1.L" }),
    },
    { name: "the hot goes round the dimmer as well", drawing: () => half().jumper("x", "B6", "H6", "R5.H2") },
    {
      name: "even by a longer way than that through the dimmer",
      drawing: () => {
        const drawing = half();
        for (const name of ["HA", "HB", "HC"]) drawing.splice(name, "B6", "twist-medium");
        return drawing
          .jumper("x1", "B6", "H6", "HA")
          .jumper("x2", "B6", "HA", "HB")
          .jumper("x3", "B6", "HB", "HC")
          .jumper("x4", "B6", "HC", "R5.H2");
      },
    },
    { name: "no supply: another matter", drawing: () => hallBehind("dimmer").put({ "C1.bk@P": "cap" }) },
  ],
  finds: [
    {
      name: "a dimmer before the receptacle",
      drawing: () => hallBehind("dimmer"),
      findings: [{ on: "R5 D1", severity: "violation", says: ["D1 in B6 dims the receptacle R5 in B6"] }],
    },
    {
      name: "a dimmer before one half, by a guess",
      drawing: () => half().knownBy("y.1", "assumed"),
      findings: [{ on: "R5/lower D1", basis: "assumed" }],
    },
  ],
  cannotTell: { never: "terminals and conductors are drawn or they are not" },
});
