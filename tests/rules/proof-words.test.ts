import { describe, expect, test } from "vitest";
import { decisiveProof, proofWords } from "../../shared-model/rules/proof-words.ts";
import { fedPanel } from "../solver/circuit/fed-panel.ts";
import { proofOf, proofs } from "../solver/circuit/proofs.ts";
import type { Drawing } from "./drawing.ts";
import { laundryAsFound, laundryProposed, multiwire } from "./laundry.ts";

function words(drawing: Drawing, outlet: string): string {
  const proof = proofOf(proofs(drawing.installation()), outlet);
  return proofWords(proof.section, proof, decisiveProof(proof.section, proof));
}

const laundry = (): Drawing => laundryProposed();

describe("an outlet says why it is protected, or which test fails and where the path leaves", () => {
  test("by its device", () => {
    expect(words(laundry(), "R3")).toBe("Both of its conductors pass R1b wherever it is live.");
    expect(words(laundryAsFound(), "R3")).toBe("No ground-fault device stands before it.");
    expect(words(laundry().put({ "C5.bk@B1": "cap" }), "R5")).toBe("No source reaches it in this drawing.");
  });

  test.each<readonly [string, Drawing, string, RegExp]>([
    [
      "white of C2 on LINE",
      laundry().put({ "C2.wh@B1": "NL" }),
      "R3",
      /^P1: its neutral goes round R1b: C2 WH leaves splice NL in B1; .* 100 % .* P6: R1b trips when something is used at R2 and R3\.$/,
    ],
    [
      "another outlet behind the device then",
      laundry().put({ "C2.wh@B1": "NL" }),
      "R5",
      /^Both of its conductors pass R1b wherever it is live\. P6: R1b trips when something is used at R2 and R3\.$/,
    ],
    [
      "both of C2 on LINE",
      laundry().put({ "C2.wh@B1": "NL", "C2.bk@B1": "HL" }),
      "R2",
      /^P1: neither its hot nor its neutral is behind R1b: C2 BK leaves splice HL in B1\.$/,
    ],
    [
      "LINE and LOAD exchanged",
      laundry().exchange("R1b", "LINE_H", "LOAD_H").exchange("R1b", "LINE_N", "LOAD_N"),
      "R2",
      /^P5: R1b is fed on its LOAD terminals\.$/,
    ],
    [
      "a jumper round the contacts",
      laundry().jumper("y", "B1", "HL", "HD"),
      "R3",
      /^P1: its hot comes round R1b: jumper y joins splice HD to splice HL in B1; of a leak R1b sees 2\d %\. P6/,
    ],
    [
      "a white on the ground",
      laundry().jumper("y", "B3", "R3.N2", "bond", { colour: "white" }),
      "R3",
      /^P2: 50 % of what it uses goes round R1b: jumper y joins .*the metal of B3.* in B3\. P6/,
    ],
    [
      "no neutral on LINE",
      laundry().put({ "b.2": "cap" }),
      "R2",
      /^P4: R1b has no neutral on its LINE to work with\. It stops .*B1/,
    ],
    [
      "a neutral that ends in B3",
      laundry().put({ "C6.wh@B3": "cap" }),
      "R3",
      /^P2: its neutral is joined to nothing, and what it uses does not come back\. It stops .* at C6 WH\.$/,
    ],
    [
      "a neutral of another cable",
      laundry()
        .cable("C9", "nm-12-2-g", "P", "B6")
        .put({ "C9.wh@P": "P-NB.BAR", "C5.wh@B6": "cap", "C9.wh@B6": "R5.N1" }),
      "R5",
      /^P1: its neutral goes round R1b: C9 WH leaves .* in P; .* 100 %/,
    ],
    [
      "the other leg of a multiwire circuit",
      multiwire()
        .device("G1", "gfci-receptacle-20", "JB")
        .put({ "M3.bk@JB": "G1.LINE_H", "M3.wh@JB": "G1.LINE_N" })
        .jumper("y", "JB", "G1.LOAD_H", "jA")
        .jumper("z", "JB", "G1.LOAD_N", "jN", { colour: "white" }),
      "RB",
      /^P1: its hot comes round G1: MB BK leaves splice jB in JB; of a leak G1 sees 0 %\. P6: G1 trips .* RB\.$/,
    ],
    [
      "one position of a switch",
      laundry()
        .device("SX", "switch-3way", "B1")
        .device("RX", "receptacle-15", "B1")
        .jumper("x", "B1", "HD", "SX.T1")
        .jumper("y", "B1", "HL", "SX.T2")
        .jumper("w", "B1", "SX.C", "RX.H1")
        .jumper("z", "B1", "ND", "RX.N1"),
      "RX",
      /^P1 with SX down: its hot comes round R1b: jumper \w leaves .* in B1; of a leak R1b sees 0 %\./,
    ],
    [
      "an arc-fault breaker, neutral on the breaker",
      laundryAsFound().setDevice("Q14", { type: "breaker-afci-1", function: "afci" }).put({ "C1.wh@P": "Q14.LOAD_N" }),
      "R4",
      /^P5: Q14 is not of the class that protects people\.$/,
    ],
    [
      "a ground-fault breaker, neutral on the bar",
      laundryAsFound().setDevice("Q14", { type: "breaker-gfci-1", function: "gfci" }),
      "R4",
      /^P2: 100 % of what it uses goes round Q14: .* in P\. P6/,
    ],
    [
      "a lamp between LINE hot and LOAD neutral",
      laundry().put({ "C4.wh@B1": "ND" }),
      "R2",
      /^P1: with R1b open, a load still brings a live conductor to it\. P6: R1b trips when something is used at L1\.$/,
    ],
  ])("%s", (_, drawing, outlet, expected) => {
    expect(words(drawing, outlet)).toMatch(expected);
  });
});

test("what makes a device trip is called by its name, in another circuit too", () => {
  const drawing = fedPanel().jumper("x", "B1", "R2.N2", "bond", { colour: "white" });
  for (const name of ["R1", "R2", "R3"]) drawing.setDevice(name, { name: `Name of ${name}` });
  expect(words(drawing, "R2")).toMatch(
    /P6: Name of R1 trips when something is used at Name of R1, Name of R2 and Name of R3\.$/,
  );
});
