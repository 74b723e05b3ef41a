import type { Reading } from "../../shared-model/model/project.ts";
import type { ExpectedTest, RecordStage, RecordTest } from "../../shared-model/model/test-record.ts";
import type { TestOutcome } from "../../shared-model/queries/compare-test.ts";
import { RESULT_TITLES, STAGE_WORDS, TEST_WORDS } from "../../shared-model/queries/record-words.ts";
import { wording } from "./words.ts";

/** Words of the test record. */
export const RECORD_WORDS = {
  title: wording.testRecord,
  about: wording.whatIsExpectedIsComputedFrom,
  lines: wording.linesOfTheTestRecord,
  nothing: wording.nothingIsDrawnYetThatCould,
  noneLeft: wording.noLineIsLeftToShow,
  by: wording.testedBy,
  day: wording.day,
  instrument: wording.voltsMeasuredWith,
  instrumentId: wording.itsNumber,
  show: wording.show,
  all: wording.allLines,
  open: wording.linesNotMeasuredAfterTheWork,
  differing: wording.linesThatDiffer,
  expected: wording.expected,
  asFound: wording.asFound2,
  notTold: wording.notComputed,
  computing: "…",
  gone: wording.noLongerDrawn,
  none: wording.none,
  record: "Record…",
  write: wording.writeItDown,
  more: wording.more,
  remark: wording.remark,
  remove: wording.remove,
  addTitle: wording.anotherTest,
  addItem: wording.at,
  addTest: wording.test,
  add: wording.addTheLine,
  agrees: wording.agrees,
  notFound: wording.theDrawingLeadsToNoneNothing,
  notRead: wording.noReadingYet,
} as const;

export const TEST_TITLES: Readonly<Record<RecordTest, string>> = TEST_WORDS;
export const STAGE_TITLES: Readonly<Record<RecordStage, string>> = STAGE_WORDS;

const unitWords = (unit: string | undefined): string => (unit === undefined ? "" : unit === "ohm" ? " Ω" : ` ${unit}`);

/** "119.6 V ± 5", "correct", "R1b, R2 dark". */
export function expectedWords(expected: ExpectedTest, test: RecordTest): string {
  switch (expected.kind) {
    case "figure":
      return `${figureWords(expected.value)}${unitWords(expected.unit)} ± ${expected.within}`;
    case "word":
      return RESULT_TITLES[expected.word] ?? expected.word;
    case "outlets":
      return outletsWords(expected.names, test);
  }
}

/** A meter of the trade shows tenths, and hundredths of little. */
const figureWords = (value: number): string => value.toFixed(Math.abs(value) < 10 ? 2 : 1);

const outletsWords = (names: readonly string[], test: RecordTest): string =>
  `${names.length === 0 ? RECORD_WORDS.none : names.join(", ")} ${test === "reset" ? "on" : "dark"}`;

/** What was found: "121.8 V", "correct", "R1b, R2 dark". */
export function foundWords({ value, unit, record }: Reading, nameOf: (outlet: string) => string): string {
  if (record?.outlets !== undefined) return outletsWords(record.outlets.map(nameOf), record.test);
  return `${RESULT_TITLES[value] ?? value}${unitWords(unit)}`;
}

/** "agrees", "3.3 V above what was expected"; nothing where it was not compared. */
export const outcomeWords = (outcome: TestOutcome | undefined): string => {
  if (outcome === undefined || outcome.kind === "not-compared") return "";
  return outcome.kind === "agrees" ? RECORD_WORDS.agrees : wording.differs(outcome.says);
};

/** Who measured with what, and when. */
export function whoWords({ by, takenAt, instrumentId }: Reading, instrument: string): string {
  return [`${instrument}${instrumentId === undefined ? "" : ` ${instrumentId}`}`, by, takenAt?.slice(0, 10)]
    .filter((one) => one !== undefined && one !== "")
    .join(", ");
}

/** Names a field to who cannot see its row and column: "R2, Hot to neutral, after". */
export const cellName = (item: string, test: RecordTest, stage: RecordStage): string =>
  `${item}, ${TEST_TITLES[test]}, ${STAGE_TITLES[stage].toLowerCase()}`;
