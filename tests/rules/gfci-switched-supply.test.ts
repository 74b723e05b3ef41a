import { expect, test } from "vitest";
import { gfciSwitchedSupply } from "../../shared-model/rules/checks/gfci-switched-supply.ts";
import { about, checkDocument, inShort } from "./check-drawing.ts";
import type { Drawing } from "./drawing.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { trySectionFix } from "./section-fix-tester.ts";

/** A switch in the pigtail to LINE of R1b: X60 of our list of slips. */
const switched = (type = "switch-single-pole"): Drawing =>
  laundryProposed()
    .setBox("B1", { gangs: 2 })
    .removeJumper("a")
    .device("S9", type, "B1")
    .jumper("y", "B1", "HL", "S9.C")
    .jumper("z", "B1", "S9.L", "R1b.LINE_H")
    .jumper("x", "B1", "E2", "S9.G", { colour: "bare" });

/** Two 3-way switches with a wire across, so that one or the other way always leads there. */
const alwaysOn = (): Drawing =>
  laundryProposed()
    .removeJumper("a")
    .device("S9", "switch-3way", "B1")
    .jumper("y", "B1", "HL", "S9.C")
    .jumper("z", "B1", "S9.T1", "R1b.LINE_H")
    .jumper("w", "B1", "S9.T2", "R1b.LINE_H");

ruleTester(gfciSwitchedSupply, {
  passes: [
    { name: "R1b is always fed", drawing: () => laundryProposed() },
    { name: "both positions of a switch lead there", drawing: alwaysOn },
    {
      name: "a switch behind it, on LOAD",
      drawing: () =>
        laundryProposed()
          .device("S9", "switch-single-pole", "B6")
          .put({ "C5.bk@B6": "S9.C" })
          .jumper("y", "B6", "S9.L", "R5.H1"),
    },
    {
      name: "a disconnect is not a switch",
      drawing: () =>
        laundryProposed()
          .removeJumper("a")
          .device("D9", "disconnect-fused", "B1")
          .jumper("y", "B1", "HL", "D9.IN")
          .jumper("z", "B1", "D9.OUT", "R1b.LINE_H"),
    },
    { name: "no supply at all: another matter", drawing: () => laundryProposed().put({ "C1.bk@P": "cap" }) },
    {
      name: "the switch is in the neutral: another matter",
      drawing: () =>
        laundryProposed()
          .removeJumper("b")
          .device("S9", "switch-single-pole", "B1")
          .jumper("y", "B1", "NL", "S9.C")
          .jumper("z", "B1", "S9.L", "R1b.LINE_N"),
    },
  ],
  finds: [
    {
      name: "a switch before LINE",
      drawing: () => switched(),
      findings: [
        {
          on: "R1b",
          severity: "caution",
          data: { switches: "S9" },
          says: ["S9 can turn off the supply of R1b in B1", "R1b, R2, R3 and R5 are dead"],
        },
      ],
    },
    {
      name: "a disconnect and a switch: the switch is told",
      drawing: () =>
        laundryProposed()
          .removeJumper("a")
          .device("D9", "disconnect-fused", "B1")
          .device("S9", "switch-single-pole", "B1")
          .jumper("w", "B1", "HL", "D9.IN")
          .jumper("y", "B1", "D9.OUT", "S9.C")
          .jumper("z", "B1", "S9.L", "R1b.LINE_H"),
      findings: [{ on: "R1b", data: { switches: "S9" } }],
    },
    {
      name: "a dimmer before LINE",
      drawing: () => switched("dimmer"),
      findings: [{ on: "R1b", data: { switches: "S9" } }],
    },
    {
      name: "the switch is in another box",
      drawing: () =>
        laundryProposed()
          .device("R8b", "gfci-receptacle-15", "B7")
          .jumper("y", "B7", "L1.H", "R8b.LINE_H")
          .jumper("z", "B7", "L1.N", "R8b.LINE_N", { colour: "white" }),
      findings: [{ on: "R8b", data: { switches: "S1" } }],
    },
  ],
  cannotTell: { never: "past the bound the session says so for every rule of the section" },
});

test("fed from before the switch: it is fed all the time, and the switch stays on its feed", () => {
  const { title, project, left } = trySectionFix(switched(), "gfci-switched-supply", "R1b", "Feed R1b from before S9");
  expect(title).toMatch(/^Feed R1b from before S9/);
  expect(left).not.toContain("gfci-switched-supply R1b");
  expect(project.proposed?.enclosures["B1" as never]?.places["z.a" as never]).toMatchObject({ at: { splice: "HL" } });
});

test("a dimmer that feeds its face is told once", () => {
  const said = about(/gfci|dimmer/, checkDocument(switched("dimmer").project()).findings);
  expect(inShort(said).filter((one) => one.endsWith("R1b"))).toEqual(["dimmer-feeds-receptacle R1b"]);
});
