import { expect, test } from "vitest";
import { laundryAsFound as laundryByCommands } from "../builders/drawing.ts";
import { checkDocument, inShort } from "./check-drawing.ts";
import { laundryAsFound, laundryProposed } from "./laundry.ts";

/**
 * Worked by hand from 314.16(B), see the ledger cases: 18.00 of 18.0 in B2 and B5, 13.50 of 14.0 in B6. Splices by the
 * illustrative table: large takes at most 5 × 12.
 */
const AS_FOUND = [
  "box-overfull B1",
  "fill-nearly-full B2",
  "fill-nearly-full B5",
  "fill-nearly-full B6",
  "laundry-circuit-mixed Q14",
  "outlet-not-protected R1",
  "splice-over-capacity X",
  "splice-over-capacity Y",
  "splice-over-capacity Z",
];

/** Five grounds enter B1. */
const FROM_2020 = [...AS_FOUND, "egc-edition-difference B1"].sort();

test.each([2020, 2023, 2026] as const)("the laundry box as found, edition %i", (edition) => {
  const { findings, couldNotTell } = checkDocument(laundryAsFound(edition).project());
  expect(inShort(findings)).toEqual(FROM_2020);
  expect(couldNotTell).toEqual([]);
  const overfull = findings.find(({ rule }) => rule === "box-overfull");
  expect(overfull?.numbers).toEqual({ neededIn3: 32.0625, volumeIn3: 30.3, overIn3: 1.7625 });
});

test("the laundry box as found, edition 2017, counts grounds once", () => {
  const { findings } = checkDocument(laundryAsFound(2017).project());
  expect(inShort(findings)).toEqual(AS_FOUND);
  const overfull = findings.find(({ rule }) => rule === "box-overfull");
  expect(overfull?.numbers).toEqual({ neededIn3: 31.5, volumeIn3: 30.3, overIn3: 1.2 });
});

test("the same box drawn by commands says the same", () => {
  const { findings } = checkDocument(laundryByCommands());
  // Its cables have lengths: 95 ft of 12 AWG to R3, 4.8 V at 16 A.
  expect(inShort(findings)).toEqual([...FROM_2020, "voltage-drop-advice R3", "wish-not-protected R5"]);
});

test("as proposed nothing is left but boxes without room for more, B1 with 0.4875 in³", () => {
  const { findings, couldNotTell } = checkDocument(laundryProposed().project());
  const full = ["B1", "B2", "B5", "B6"].map((box) => `fill-nearly-full ${box}`);
  expect(inShort(findings)).toEqual(["egc-edition-difference B1", ...full, "laundry-circuit-mixed Q14"]);
  expect(findings.flatMap(({ numbers }) => numbers.spareIn3 ?? [])).toEqual([0.4875, 0, 0, 0.5]);
  expect(couldNotTell).toEqual([]);
});
