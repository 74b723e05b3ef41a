import { describe, expect, test } from "vitest";
import { sectionRules } from "../../shared-model/rules/registry.ts";
import { amps, milliamps } from "../../shared-model/units/quantity.ts";
import { checkDocument, inShort } from "./check-drawing.ts";
import type { Drawing } from "./drawing.ts";
import { laundryProposed } from "./laundry.ts";

/**
 * One slip in a sound drawing and everything that the rules of wiring then say, no more. Expected lists: our catalogue of
 * rules, agreed with an independent implementation that searches every switch setting; where a subject differs from its
 * list (a short circuit and a contact are told at what makes them) it is said beside the row.
 */
const SLIPS: readonly (readonly [slip: string, make: (drawing: Drawing) => unknown, findings: readonly string[]])[] = [
  ["nothing", () => undefined, []],
  [
    "a switch in the neutral",
    (one) => one.put({ "C4.bk@B5": "B5n", "C7.bk@B5": "B5n", "C4.wh@B5": "S1.C", "C7.wh@B5": "S1.L" }),
    ["switch-in-neutral S1"],
  ],
  [
    "a black capped",
    (one) => one.put({ "C2.bk@B1": "cap" }),
    // The list has C2 BK and R3 as well: folded under R2.
    ["open-hot R2"],
  ],
  ["a black capped at LOAD", (one) => one.put({ "C5.bk@B1": "loose" }), ["open-hot R5"]],
  // The list has R5 as well: folded under the loose end.
  ["a black loose at its end", (one) => one.put({ "C5.bk@B6": "loose" }), ["live-loose-end C5 BK"]],
  // The list has C5 WH as well: folded under R5.
  ["a white capped", (one) => one.put({ "C5.wh@B1": "cap" }), ["open-neutral R5"]],
  // The list names no subject.
  ["a jumper behind a switch", (one) => one.jumper("y", "B5", "S1.L", "B5n"), ["hot-neutral-joined y"]],
  ["a white on the box", (one) => one.jumper("y", "B3", "R3.N2", "bond"), ["neutral-ground-joined y"]],
  ["a hot on the box", (one) => one.jumper("y", "B3", "R3.H2", "bond"), ["hot-ground-joined y"]],
  // The list has R5/lower as well: folded under the tab, which a rule of boxes tells.
  ["a tab taken out", (one) => one.setDevice("R5", { hotTab: "removed" }), []],
  [
    "LINE and LOAD exchanged",
    (one) => one.exchange("R1b", "LINE_H", "LOAD_H").exchange("R1b", "LINE_N", "LOAD_N"),
    ["line-load-swapped R1b"],
  ],
  ["their neutrals exchanged", (one) => one.exchange("R1b", "LINE_N", "LOAD_N"), ["line-load-half-swapped R1b"]],
  ["a jumper between the hots", (one) => one.jumper("y", "B1", "HL", "HD"), ["hot-both-sides R1b"]],
  [
    "a jumper between the neutrals",
    (one) => one.jumper("y", "B1", "NL", "ND", { colour: "white" }),
    ["neutral-both-sides R1b"],
  ],
  [
    "one white in the LINE joint",
    (one) => one.put({ "C2.wh@B1": "NL" }),
    ["downstream-neutral-on-line R2", "downstream-neutral-on-line R3"],
  ],
  ["the same of a hall", (one) => one.put({ "C5.wh@B1": "NL" }), ["downstream-neutral-on-line R5"]],
  ["one white in the LOAD joint", (one) => one.put({ "C4.wh@B1": "ND" }), ["downstream-hot-on-line L1"]],
  [
    "a cable on LINE",
    (one) => one.put({ "C2.bk@B1": "HL", "C2.wh@B1": "NL" }),
    // R3 hangs on the same cable and is folded.
    ["outlet-not-protected R2"],
  ],
  ["no neutral on LINE", (one) => one.put({ "b.2": "cap" }), ["gfci-no-neutral R1b"]],
  [
    "a ground on the screw of a device, on the way to the hall",
    (one) => one.put({ "C5.cu@B1": "R1b.G" }),
    ["egc-broken-by-removal R1b"],
  ],
  [
    "a breaker of 15 A for one cable of 14 AWG",
    (one) => one.setConductors("C6", { awg: "14" }).setDevice("Q14", { breakerRatingA: amps(15) }),
    ["mixed-gauge Q14"],
  ],
  [
    "a second white beside that of C5",
    (one) =>
      one
        .cable("C8", "single-12-white", "B1", "B6")
        .splice("w", "B6", "twist-medium")
        .put({ "C8.wh@B1": "ND", "C8.wh@B6": "w", "C5.wh@B6": "w" })
        .jumper("k", "B6", "w", "R5.N1", { colour: "white" }),
    ["parallel-small C5"],
  ],
  ["hot and neutral exchanged", (one) => one.swap("C5.bk@B6", "C5.wh@B6"), ["polarity-swapped R5"]],
  [
    "a cable on LINE whose protection is a wish",
    (one) => one.wish({ R5: "protect" }).put({ "C5.bk@B1": "HL", "C5.wh@B1": "NL" }),
    ["wish-not-protected R5"],
  ],
  [
    "a device behind a device, with the freezer at it",
    (one) => one.load("Freezer", "freezer-180", "R4b").put({ "C3.bk@B1": "HD", "C3.wh@B1": "ND" }),
    ["freezer-shares-trip R1b", "gfci-behind-gfci R4b"],
  ],
  [
    "the freezer without a device of its own",
    (one) =>
      one
        .load("Freezer", "freezer-180", "R4")
        .put({ "C3.bk@B1": "HD", "C3.wh@B1": "ND" })
        .device("R4", "receptacle-15", "B4")
        .put({ "C3.bk@B4": "R4.H1", "C3.wh@B4": "R4.N1", "B4g.2": "R4.G" })
        .removeDevice("R4b"),
    ["freezer-shares-trip R1b"],
  ],
  [
    "a switch before LINE",
    (one) =>
      one
        .removeJumper("a")
        .device("S9", "switch-single-pole", "B1")
        .jumper("y", "B1", "HL", "S9.C")
        .jumper("z", "B1", "S9.L", "R1b.LINE_H"),
    ["gfci-switched-supply R1b"],
  ],
  [
    "LOAD left under its tape",
    (one) =>
      one
        .wish({ R5: "protect" })
        .put({ "C2.bk@B1": "HL", "C2.wh@B1": "NL", "C5.bk@B1": "HL", "C5.wh@B1": "NL" })
        .removeJumper("c")
        .removeJumper("d"),
    ["gfci-load-empty-tape R1b", "outlet-not-protected R2", "wish-not-protected R5"],
  ],
  [
    "a breaker said to sense, its white on the bar",
    (one) => one.setDevice("Q14", { function: "gfci" }),
    ["gfci-breaker-neutral-on-bar Q14"],
  ],
  [
    "an alarm behind it",
    (one) =>
      one
        .device("A1", "smoke-alarm", "B6")
        .jumper("y", "B6", "R5.H2", "A1.H")
        .jumper("z", "B6", "R5.N2", "A1.N", { colour: "white" }),
    ["alarm-behind-gfci A1"],
  ],
  [
    "the stair light on LOAD",
    (one) => one.put({ "C4.bk@B1": "HD", "C4.wh@B1": "ND" }),
    ["lighting-behind-gfci-egress L1"],
  ],
  [
    "2.0 mA that leak for good",
    (one) =>
      one
        .load("F1", "appliance-600", "R3", { leakMa: milliamps(1.5) })
        .load("F2", "appliance-600", "R5", { leakMa: milliamps(0.5) }),
    ["standing-leak-budget R1b"],
  ],
];

const OURS: ReadonlySet<string> = new Set(sectionRules.map(({ id }) => id));

describe.each(SLIPS)("%s", (_slip, make, findings) => {
  test.each(["as-found", "proposed"] as const)("%s", (state) => {
    const saidOf = (drawing: Drawing): readonly string[] => {
      const project = { ...drawing.project(), proposed: drawing.installation() };
      return inShort(checkDocument(project, state).findings.filter(({ rule }) => OURS.has(rule)));
    };
    const drawing = laundryProposed();
    const before = saidOf(drawing);
    expect(before).toEqual(["laundry-circuit-mixed Q14"]);
    make(drawing);
    expect(saidOf(drawing).filter((one) => !before.includes(one))).toEqual(findings);
  });
});
