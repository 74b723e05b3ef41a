import { describe, expect, test } from "vitest";
import { amps } from "../../shared-model/units/quantity.ts";
import { checkDocument, inShort, ofWiring } from "./check-drawing.ts";
import type { Drawing } from "./drawing.ts";
import { laundryAsFound, laundryProposed, multiwire } from "./laundry.ts";
import { twoCircuits } from "./two-circuits.ts";

/** Findings with what is folded under each: "open-neutral R2: C2 WH, R3". */
const toldOf = (drawing: Drawing): readonly string[] => {
  const findings = ofWiring(checkDocument(drawing.project()).findings);
  const before = new Set(inShort(ofWiring(checkDocument(laundryProposed().project()).findings)));
  return findings
    .filter((one) => !before.has(inShort([one])[0] ?? ""))
    .map((one) => [inShort([one]), one.foldedSubjects.map(({ name }) => name).join(", ")].join(": "));
};

describe("one mistake is one finding, with what follows from it folded under it", () => {
  test.each<[string, () => Drawing, readonly string[]]>([
    [
      "a white off its joint: the first outlet tells of those behind it",
      () => laundryProposed().put({ "C6.wh@B2": "cap", "C6.wh@B3": "cap" }),
      ["open-neutral R3: "],
    ],
    ["a black capped", () => laundryProposed().put({ "C2.bk@B1": "cap" }), ["open-hot R2: C2 BK, R3"]],
    [
      "hot and neutral exchanged in the panel",
      () => laundryAsFound().put({ "C1.bk@P": "P-NB.BAR", "C1.wh@P": "Q14.OUT" }),
      ["polarity-swapped R1: L1, R1, R2, R3, R4, R5"],
    ],
    [
      "the supply of a ground-fault device without its neutral",
      () => laundryProposed().put({ "b.1": "cap" }),
      ["gfci-no-neutral R1b: R1b, R2, R3, R5"],
    ],
    [
      "one breaker too large for everything behind it",
      () => laundryProposed().setDevice("Q14", { breakerRatingA: amps(40) }),
      ["conductor-too-small C1: C1, C2, C3, C4, C5, C6, C7, R1b, R2, R3, R4b, R5, a, b, c, d"],
    ],
    [
      "a thin jumper is no reason to doubt the breaker: two are two",
      () => laundryProposed().setJumper("c", { awg: "14" }).setJumper("d", { awg: "14" }),
      ["conductor-too-small c: ", "conductor-too-small d: "],
    ],
    [
      "the ground of the circuit left capped in the panel",
      () => laundryProposed().put({ "C1.cu@P": "cap" }),
      ["egc-not-spliced-all C1: R1b"],
    ],
    [
      "one leg of a multiwire circuit broken: the receptacle on it and the 240 V appliance that has the other",
      () =>
        multiwire()
          .device("W1", "appliance-240", "JB")
          .jumper("w1", "JB", "jA", "W1.L1")
          .jumper("w2", "JB", "jB", "W1.L2")
          .jumper("w3", "JB", "jE", "W1.G", { colour: "bare" })
          .put({ "M3.bk@JB": "cap" }),
      ["open-hot RA: M3 BK, W1"],
    ],
    ["a live end that came loose", () => laundryProposed().put({ "C4.bk@B5": "loose" }), ["live-loose-end C4 BK: L1"]],
    [
      "a white among the grounds",
      () => laundryProposed().put({ "C2.wh@B2": "E-B2" }),
      ["neutral-ground-joined C2: C2, R1b, R2, R3"],
    ],
    [
      "the neutral in place of a ground that is parted: the receptacles that it serves have none",
      () => multiwire().put({ "M3.cu@P": "QA.OUT" }).jumper("x", "BA", "RA.H2", "RA.N2"),
      ["hot-ground-joined M3: ", "hot-neutral-joined x: ", "neutral-ground-joined x: RA, RB"],
    ],
    [
      "neutrals of two arc-fault breakers joined",
      () => {
        const drawing = twoCircuits();
        for (const name of ["Q1", "Q2"]) drawing.setDevice(name, { type: "breaker-afci-1", function: "afci" });
        return drawing
          .put({ "C1.wh@P": "Q1.LOAD_N", "C2.wh@P": "Q2.LOAD_N", "X.wh@B1": "n1", "X.wh@B2": "n2" })
          .put({ "X.cu@B1": "cap", "X.cu@B2": "cap" });
      },
      ["neutrals-joined Q1: Q1, Q2"],
    ],
  ])("%s", (_name, drawing, told) => {
    expect(toldOf(drawing()).filter((one) => !/^(metal-box-unbonded|egc-not-spliced-all B)/.test(one))).toEqual(told);
  });
});
