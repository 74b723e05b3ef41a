/** Lengths, values and results as they are written and read in a language that is not English. */

import { afterAll, beforeAll, expect, test, vi } from "vitest";
import type { OutletKey } from "../../shared-model/model/ids.ts";
import type { Project, Reading } from "../../shared-model/model/project.ts";
import { emptyProject } from "../../shared-model/model/project.ts";

async function loadCore() {
  const { INCHES } = await import("../../shared-model/units/inch-words.ts");
  const { lengthInField, lengthWords, readLength } = await import("../../shared-model/units/length-words.ts");
  const { unitOfValue, valueWords } = await import("../../shared-model/model/value-unit.ts");
  const { editions } = await import("../../shared-model/rules/editions/editions.ts");
  const { outletsValue } = await import("../../shared-model/queries/recorded-value.ts");
  const { isRecorded } = await import("../../shared-model/analysis/read-record.ts");
  return {
    INCHES,
    lengthInField,
    lengthWords,
    readLength,
    unitOfValue,
    valueWords,
    editions,
    outletsValue,
    isRecorded,
  };
}

let english: Awaited<ReturnType<typeof loadCore>>;
let other: Awaited<ReturnType<typeof loadCore>>;
beforeAll(async () => {
  vi.resetModules();
  english = await loadCore();
  vi.resetModules();
  vi.stubGlobal("name", "values pseudo");
  other = await loadCore();
});
afterAll(() => {
  vi.unstubAllGlobals();
  vi.resetModules();
});

test("a length is read again as it is written, in English too", () => {
  expect(other.INCHES).not.toBe(english.INCHES);
  for (const unit of ["ft", "in"] as const)
    for (let sixteenths = 0; sixteenths <= 400; sixteenths += 1) {
      const length = sixteenths / 16;
      const { lengthInField, lengthWords, readLength } = other;
      for (const text of [lengthInField(length, unit, "feet-inches"), lengthWords(length, unit, "feet-inches")])
        expect(readLength(text, unit, "feet-inches"), text).toBeCloseTo(length, 9);
      const text = english.lengthWords(length, unit, "feet-inches");
      expect(readLength(text, unit, "feet-inches"), text).toBeCloseTo(
        english.readLength(text, unit, "feet-inches") ?? NaN,
        9,
      );
    }
  expect(other.lengthInField(6.5, "in", "feet-inches")).toBe("6-1/2");
});

test("every value of every edition has a name in words", () => {
  const names = new Set(Object.values(english.editions).flatMap(({ values }) => Object.keys(values)));
  expect(names.size).toBeGreaterThan(50);
  expect(new Set([...names].map(english.valueWords)).size).toBe(names.size);
  for (const name of names) {
    expect(english.valueWords(name)).toMatch(/^[A-Z][a-z-]+( ([a-z-]+|\d+|AWG|mL))*$/);
    expect(other.valueWords(name)).not.toMatch(/[A-Za-z]/);
  }
  expect(other.unitOfValue("loopLengthIn")).toBe(other.INCHES);
});

test("a result that was recorded in another language is known again", () => {
  const reading = (value: string, ...outlets: string[]): Omit<Reading, "id" | "order"> => ({
    state: "as-found",
    instrument: "own-test",
    points: ["d1"],
    value,
    record: { test: "own-test", stage: "after", item: "G1", outlets: outlets as OutletKey[] },
  });
  const project: Project = {
    ...emptyProject("Test", 2023),
    readings: { r1: { ...reading(english.outletsValue("own-test", ["R2"]), "d2"), id: "r1", order: 0 } } as never,
  };
  const value = other.outletsValue("own-test", ["R2"]);
  expect(value).not.toBe(english.outletsValue("own-test", ["R2"]));
  expect(other.isRecorded(project, reading(value, "d2"))).toBe(true);
  expect(other.isRecorded(project, reading(value, "d3"))).toBe(false);
});
