import { catalogue, type Part } from "../lib/catalogue.ts";
import type { OutletKey } from "../model/ids.ts";
import type { Reading } from "../model/project.ts";
import type { ExpectedTest } from "../model/test-record.ts";
import { RESULT_TITLES } from "./record-words.ts";
import { figureOf } from "./recorded-value.ts";

const wording = catalogue({
  expected: (result: Part) => `expected ${result}`,
  not: (outlets: Part) => `not ${outlets}`,
  above: (by: Part, unit: Part) => `${by} ${unit} above what was expected`,
  also: (outlets: Part) => `also ${outlets}`,
  below: (by: Part, unit: Part) => `${by} ${unit} below what was expected`,
  but: (outlets: Part) => `but ${outlets}`,
});

/** How what was found stands to what was expected. */
export type TestOutcome =
  | { readonly kind: "agrees" }
  /** `says` is by how much, or in what. */
  | { readonly kind: "differs"; readonly says: string }
  /** Nothing was expected, or the two cannot be laid side by side. */
  | { readonly kind: "not-compared" };

const AGREES: TestOutcome = { kind: "agrees" };
const NOT_COMPARED: TestOutcome = { kind: "not-compared" };
const differs = (says: string): TestOutcome => ({ kind: "differs", says });

/** A limit is met by a reading that stands on it, whatever the last binary digit. */
const EVEN = 1e-9;

/**
 * Compares the result of a test with what the drawing leads to expect.
 * @param nameOf Name of an outlet now; undefined for one that is drawn no longer.
 */
export function compareTest(
  { value, unit, record }: Pick<Reading, "value" | "unit" | "record">,
  expected: ExpectedTest | undefined,
  nameOf: (outlet: OutletKey) => string | undefined,
): TestOutcome {
  if (expected === undefined) return NOT_COMPARED;
  switch (expected.kind) {
    case "figure":
      return compareFigure(value, unit, expected);
    case "word":
      return value === expected.word
        ? AGREES
        : differs(wording.expected(RESULT_TITLES[expected.word] ?? expected.word));
    case "outlets":
      return record?.outlets === undefined ? NOT_COMPARED : compareOutlets(record.outlets, expected, nameOf);
  }
}

function compareFigure(
  value: string,
  unit: string | undefined,
  expected: Extract<ExpectedTest, { readonly kind: "figure" }>,
): TestOutcome {
  const figure = figureOf(value);
  if (figure === undefined || unit !== expected.unit) return NOT_COMPARED;
  const off = figure - expected.value;
  if (Math.abs(off) <= expected.within + EVEN) return AGREES;
  const by = Number(Math.abs(off).toFixed(2));
  return differs(off > 0 ? wording.above(by, unit) : wording.below(by, unit));
}

function compareOutlets(
  found: readonly OutletKey[],
  { outlets, names }: Extract<ExpectedTest, { readonly kind: "outlets" }>,
  nameOf: (outlet: OutletKey) => string | undefined,
): TestOutcome {
  const missing = outlets.flatMap((key, index) =>
    found.includes(key) ? [] : [nameOf(key) ?? names[index] ?? (key as string)],
  );
  const more = found.filter((key) => !outlets.includes(key)).map((key) => nameOf(key) ?? (key as string));
  if (missing.length === 0 && more.length === 0) return AGREES;
  const parts = [
    missing.length > 0 ? wording.not(missing.join(", ")) : "",
    more.length > 0 ? (missing.length > 0 ? wording.but : wording.also)(more.join(", ")) : "",
  ];
  return differs(parts.filter(Boolean).join(", "));
}
