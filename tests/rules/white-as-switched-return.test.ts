import { expect, test } from "vitest";
import { whiteAsSwitchedReturn } from "../../shared-model/rules/checks/white-as-switched-return.ts";
import { checkDocument, inShort } from "./check-drawing.ts";
import type { Drawing } from "./drawing.ts";
import { laundryProposed } from "./laundry.ts";
import { markEnd, switchLoop } from "./loop.ts";
import { ruleTester } from "./rule-tester.ts";
import { trySectionFix } from "./section-fix-tester.ts";
import { threeWay } from "./three-way.ts";

/** Black feeds the switch, white comes back. */
const turned = (): Drawing => switchLoop().swap("LP.bk@B1", "LP.wh@B1").swap("LP.bk@B2", "LP.wh@B2");
const turnedAndMarked = (): Drawing => markEnd(markEnd(turned(), "LP.wh@B1", "black"), "LP.wh@B2", "black");

ruleTester(whiteAsSwitchedReturn, {
  passes: [
    { name: "no loop", drawing: () => laundryProposed() },
    { name: "the white is the feed", drawing: switchLoop },
    { name: "the white is the feed, marked", drawing: () => markEnd(switchLoop(), "LP.wh@B1", "black") },
    { name: "no source", drawing: () => turned().put({ "C1.bk@P": "cap" }) },
    {
      name: "another switch before it: both are switched, and the white is its feed",
      drawing: () =>
        switchLoop()
          .device("S0", "switch-single-pole", "B1")
          .put({ "C1.bk@B1": "S0.C" })
          .jumper("y", "B1", "S0.L", "F", { awg: "14" }),
    },
    {
      name: "the same beside a hot that goes on",
      drawing: () =>
        switchLoop()
          .device("S0", "switch-single-pole", "B1")
          .cable("X", "nm-14-2-g", "B1", "B2")
          .put({ "C1.bk@B1": "S0.C" })
          .jumper("y", "B1", "S0.L", "F", { awg: "14" })
          .put({ "LP.bk@B1": "S0.C", "LP.bk@B2": "cap", "X.bk@B1": "L1.H", "X.bk@B2": "S1.L" }),
    },
  ],
  finds: [
    {
      name: "not marked",
      drawing: turned,
      findings: [{ on: "LP", severity: "violation", says: ["its black the feed", "exchange the two at both ends"] }],
    },
    {
      name: "marked, and by whom it is known",
      drawing: () => turnedAndMarked().knownBy("LP.bk@B1", "seen").knownBy("LP.wh@B2", "told"),
      findings: [{ on: "LP", basis: "told" }],
    },
    {
      name: "by a pigtail from the switch",
      drawing: () =>
        turned()
          .splice("k", "B2", "twist-medium")
          .put({ "LP.wh@B2": "k" })
          .jumper("y", "B2", "k", "S1.L", { awg: "14" }),
      findings: [{ on: "LP" }],
    },
    {
      name: "the way back from a three-way switch",
      drawing: () => threeWay({ returns: "wh" }),
      findings: [{ on: "V2", says: ["its black the traveller"] }],
    },
  ],
  cannotTell: { never: "what a switch does to a conductor follows from the drawing" },
});

test("it stands for the missing mark as well", () => {
  const said = inShort(checkDocument(turned().project()).findings).filter((one) => one.startsWith("white"));
  expect(said).toEqual(["white-as-switched-return LP"]);
});

test("exchanged at both ends, and the white marked as the feed", () => {
  for (const drawing of [turned(), turnedAndMarked()]) {
    const { title, left, project } = trySectionFix(drawing, "white-as-switched-return", "LP");
    expect(title).toBe("Exchange WH and BK of LP at both ends");
    expect(left.filter((one) => one.startsWith("white"))).toEqual([]);
    const { places } = project.proposed?.enclosures["B2" as never] ?? { places: {} };
    const at = Object.entries(places).find(([end]) => end.startsWith("LP.wh."))?.[1];
    expect(at).toMatchObject({ at: { kind: "terminal", terminal: "C" }, markedAs: "black" });
  }
});
