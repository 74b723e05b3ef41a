import { describe, expect, test } from "vitest";
import { sectionRules } from "../../shared-model/rules/registry.ts";
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
  ["a black capped", (one) => one.put({ "C2.bk@B1": "cap" }), ["open-hot R2", "open-hot R3"]],
  ["a black capped at LOAD", (one) => one.put({ "C5.bk@B1": "loose" }), ["open-hot R5"]],
  ["a black loose at its end", (one) => one.put({ "C5.bk@B6": "loose" }), ["live-loose-end C5 BK", "open-hot R5"]],
  ["a white capped", (one) => one.put({ "C5.wh@B1": "cap" }), ["open-neutral R5"]],
  // The list names no subject.
  ["a jumper behind a switch", (one) => one.jumper("y", "B5", "S1.L", "B5n"), ["hot-neutral-joined y"]],
  ["a white on the box", (one) => one.jumper("y", "B3", "R3.N2", "bond"), ["neutral-ground-joined y"]],
  ["a hot on the box", (one) => one.jumper("y", "B3", "R3.H2", "bond"), ["hot-ground-joined y"]],
  ["a tab taken out", (one) => one.setDevice("R5", { hotTab: "removed" }), ["open-hot R5/lower"]],
  [
    "LINE and LOAD exchanged",
    (one) => one.exchange("R1b", "LINE_H", "LOAD_H").exchange("R1b", "LINE_N", "LOAD_N"),
    ["line-load-swapped R1b"],
  ],
  ["their neutrals exchanged", (one) => one.exchange("R1b", "LINE_N", "LOAD_N"), ["line-load-half-swapped R1b"]],
  ["a jumper between the hots", (one) => one.jumper("y", "B1", "HL", "HD"), ["hot-both-sides R1b"]],
  ["a jumper between the neutrals", (one) => one.jumper("y", "B1", "NL", "ND"), ["neutral-both-sides R1b"]],
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
    ["outlet-not-protected R2", "outlet-not-protected R3"],
  ],
  ["no neutral on LINE", (one) => one.put({ "b.2": "cap" }), ["gfci-no-neutral R1b"]],
  ["hot and neutral exchanged", (one) => one.swap("C5.bk@B6", "C5.wh@B6"), ["polarity-swapped R5"]],
];

const OURS: ReadonlySet<string> = new Set(sectionRules.map(({ id }) => id));

describe.each(SLIPS)("%s", (_slip, make, findings) => {
  test.each(["as-found", "proposed"] as const)("%s", (state) => {
    const drawing = laundryProposed();
    make(drawing);
    const project = { ...drawing.project(), proposed: drawing.installation() };
    const said = checkDocument(project, state).findings.filter(({ rule }) => OURS.has(rule));
    expect(inShort(said)).toEqual(findings);
  });
});
