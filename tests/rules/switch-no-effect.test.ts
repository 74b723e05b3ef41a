import { expect, test } from "vitest";
import { switchNoEffect } from "../../shared-model/rules/checks/switch-no-effect.ts";
import { checkDocument } from "./check-drawing.ts";
import { ofConductors } from "./conductor-findings.ts";
import type { Drawing } from "./drawing.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { threeWay } from "./three-way.ts";

/** Feed and load of the stair light under one screw. */
const bothOnFeed = (): Drawing => laundryProposed().put({ "C7.bk@B5": "S1.C" });

/** A switch for the lower half of R5, whose tab is in or out. */
const half = (tab: "intact" | "removed"): Drawing =>
  laundryProposed()
    .setDevice("R5", { hotTab: tab })
    .device("S9", "switch-single-pole", "B6")
    .splice("k", "B6", "twist-medium")
    .put({ "C5.bk@B6": "k" })
    .jumper("u", "B6", "k", "R5.H1")
    .jumper("v", "B6", "k", "S9.C")
    .jumper("w", "B6", "S9.L", "R5.H2");

ruleTester(switchNoEffect, {
  passes: [
    { name: "it turns a light on", drawing: () => laundryProposed() },
    { name: "it turns a half on", drawing: () => half("removed") },
    { name: "two three-ways", drawing: () => threeWay() },
    { name: "no hot comes to it", drawing: () => bothOnFeed().put({ "C4.bk@B1": "cap" }) },
    {
      name: "what it feeds is broken behind it, which is told",
      drawing: () => laundryProposed().put({ "C7.bk@B7": "cap" }),
    },
    {
      name: "what it feeds is not joined yet, which is told",
      drawing: () => laundryProposed().put({ "C7.bk@B5": "cap" }),
    },
    {
      name: "what it feeds is on the ground, which is told",
      drawing: () => laundryProposed().put({ "C7.bk@B7": "bond" }),
    },
    { name: "its box is being surveyed", drawing: () => bothOnFeed().setBox("B5", { beingSurveyed: true }) },
    {
      name: "a switch in the neutral does something",
      drawing: () =>
        laundryProposed().put({ "C4.bk@B5": "B5n", "C7.bk@B5": "B5n", "C4.wh@B5": "S1.C", "C7.wh@B5": "S1.L" }),
    },
    {
      name: "of two switches on one yoke, each its own light",
      drawing: () =>
        laundryProposed()
          .setDevice("S1", { type: "switch-two" })
          .put({ "C4.bk@B5": "S1.C1", "C7.bk@B5": "S1.L1" })
          .device("L2", "luminaire-60", "B5")
          .jumper("u", "B5", "S1.L2", "L2.H")
          .jumper("v", "B5", "B5n", "L2.N", { colour: "white" }),
    },
  ],
  finds: [
    {
      name: "feed and load under one screw",
      drawing: bothOnFeed,
      findings: [{ on: "S1", severity: "caution", says: ["S1 in B5"] }],
    },
    { name: "a tab that was left in", drawing: () => half("intact"), findings: [{ on: "S9" }] },
    {
      name: "a way round it, and by whom it is known",
      drawing: () =>
        laundryProposed()
          .jumper("y", "B5", "S1.C", "S1.L")
          .setDevice("S1", { evidence: { type: "told" } }),
      findings: [{ on: "S1", basis: "told" }],
    },
    {
      name: "the second of two switches on one yoke",
      drawing: () =>
        laundryProposed().setDevice("S1", { type: "switch-two" }).put({ "C4.bk@B5": "S1.C1", "C7.bk@B5": "S1.L1" }),
      findings: [{ on: "S1 S1 L2" }],
    },
  ],
  cannotTell: [
    {
      name: "its load is not drawn",
      drawing: () => bothOnFeed().cable("C9", "nm-12-2-g", "B5", "the attic").put({ "C9.bk@B5": "S1.L" }),
      on: ["C9"],
      missing: "the other end of C9",
    },
  ],
});

test("a light that is dead for a break behind the switch is the one finding", () => {
  const drawing = laundryProposed().put({ "C7.bk@B7": "cap" });
  expect(ofConductors(checkDocument(drawing.project()).findings)).toEqual(["open-hot L1"]);
});
