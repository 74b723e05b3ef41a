import { expect, test } from "vitest";
import { invariantProblems } from "../../shared-model/queries/invariants.ts";
import { laundryAsFound } from "../builders/drawing.ts";

test("the laundry circuit can be drawn by commands alone", () => {
  const project = laundryAsFound();
  expect(invariantProblems(project)).toEqual([]);
  expect(Object.keys(project.asFound.cables)).toEqual([
    "cable-C1",
    "cable-C2",
    "cable-C3",
    "cable-C4",
    "cable-C5",
    "cable-C6",
    "cable-C7",
  ]);
});
