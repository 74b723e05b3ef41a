import { expect, test } from "vitest";
import { openSession } from "../../shared-model/analysis/session.ts";
import { parseEnd } from "../../shared-model/model/ids.ts";
import { invariantProblems } from "../../shared-model/queries/invariants.ts";
import { bigHouse } from "../bench/big-house.ts";

test("the building that is measured is a sound drawing of the size it claims, wired well enough to have no findings", () => {
  const house = bigHouse(200);
  expect(invariantProblems(house)).toEqual([]);
  const boxes = Object.values(house.asFound.enclosures).filter(({ kind }) => kind === "box");
  const conductors = new Set(
    boxes.flatMap((box) => Object.keys(box.places)).map((end) => end.slice(0, end.lastIndexOf("."))),
  );
  expect(boxes).toHaveLength(200);
  expect(conductors.size).toBe(2000);
  for (const end of conductors) expect(parseEnd(`${end}.a`)).toBeDefined();
  const { findings, couldNotTell, checksRun } = openSession(house).report();
  // Its circuits are long: that much voltage is lost at their ends is true of it.
  expect(findings.filter(({ rule }) => rule !== "voltage-drop-advice")).toEqual([]);
  expect(couldNotTell).toEqual([]);
  expect(checksRun).toBeGreaterThan(1000);
});
