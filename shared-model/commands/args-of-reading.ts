import { catalogue, type Part } from "../lib/catalogue.ts";
import { isId } from "../model/ids.ts";
import { READING_INSTRUMENTS, type Reading } from "../model/project.ts";
import { type ExpectedTest, RECORD_STAGES, RECORD_TESTS, type RecordedTest } from "../model/test-record.ts";
import { TEST_WORDS } from "../queries/record-words.ts";
import { recordedProblem } from "../queries/recorded-value.ts";
import { surveyedShape } from "./args-of-survey.ts";
import {
  byKind,
  type Check,
  endText,
  evidenceMark,
  flag,
  idText,
  listOf,
  numberFrom,
  oneOf,
  optional,
  outletText,
  record,
  stateName,
  tableOf,
  textUpTo,
} from "./args-shape.ts";
import { argsWording } from "./args-words.ts";
import type { CommandArgs } from "./command-args.ts";
import { type Refusal, refusal } from "./define-command.ts";

const wording = catalogue({
  add: (read: Part) => `Add reading ${read}`.trimEnd(),
  addTest: (test: Part, item: Part) => `Record “${test}” of ${item}`,
  computed: "A computed reading is no test: nothing was measured. Measure it, and record what was found.",
  correct: (read: Part) => `Correct reading ${read}`.trimEnd(),
  correctTest: (test: Part, item: Part) => `Correct “${test}” of ${item}`,
  points: "A reading is taken at one point or between two. Pick one or two points.",
  remove: (read: Part) => `Remove reading ${read}`.trimEnd(),
  removeTest: (test: Part, item: Part) => `Remove “${test}” of ${item}`,
});

type Taken = CommandArgs["add-reading"]["reading"];
type Arrangement = NonNullable<Reading["arrangement"]>;
type Figure = Extract<ExpectedTest, { readonly kind: "figure" }>;

const evidence: Check = (value, at) => {
  const wrong = tableOf(evidenceMark)(value, at);
  return wrong ?? (Object.keys(value as object).every(isId) ? undefined : argsWording.keyNoField(at));
};

const MOST = 1_000_000_000;

const expected: Check = byKind({
  figure: {
    value: numberFrom(-MOST, MOST),
    within: numberFrom(0, MOST),
    unit: oneOf(["V", "ohm"] satisfies readonly Figure["unit"][]),
  },
  word: { word: textUpTo(200) },
  outlets: { outlets: listOf(outletText), names: listOf(textUpTo(200)) },
});

/** Form of a reading without its id and its place in the order. */
export const readingShape: Check = record<Taken>({
  instrument: oneOf(READING_INSTRUMENTS),
  points: listOf(textUpTo(130)),
  value: textUpTo(200),
  unit: optional(textUpTo(20)),
  state: optional(stateName),
  arrangement: optional(
    record<Arrangement>({
      switches: optional(tableOf(textUpTo(40))),
      off: optional(listOf(idText)),
      capped: optional(listOf(endText)),
      idle: optional(listOf(idText)),
    }),
  ),
  computed: optional(flag),
  takenAt: optional(textUpTo(40)),
  by: optional(textUpTo(100)),
  instrumentId: optional(textUpTo(100)),
  remark: optional(textUpTo(500)),
  record: optional(
    record<RecordedTest>({
      test: oneOf(RECORD_TESTS),
      stage: oneOf(RECORD_STAGES),
      item: textUpTo(200),
      box: optional(textUpTo(200)),
      expected: optional(expected),
      outlets: optional(listOf(outletText)),
    }),
  ),
  survey: optional(surveyedShape),
  evidence: optional(evidence),
});

/** Why a reading cannot be kept as it is given. */
export function refuseReading(reading: Taken): Refusal | undefined {
  if (reading.points.length < 1 || reading.points.length > 2) return refusal("reading-needs-points", wording.points);
  if (reading.record === undefined) return undefined;
  if (reading.computed === true) return refusal("computed-is-no-test", wording.computed);
  const wrong = recordedProblem(reading.record, reading.value, reading.unit);
  return wrong === undefined ? undefined : refusal("not-a-result", wrong);
}

/** "Record “Hot to neutral” of R2", "Add reading 118 V". */
export function readingLabel({ record: line, value, unit }: Taken, step: "add" | "correct" | "remove"): string {
  const read = [value, unit].filter(Boolean).join(" ");
  return line === undefined ? wording[step](read) : wording[`${step}Test`](TEST_WORDS[line.test], line.item);
}
