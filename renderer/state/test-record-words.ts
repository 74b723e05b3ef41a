import type { Reading } from "../../shared-model/model/project.ts";
import type { ExpectedTest, RecordStage, RecordTest } from "../../shared-model/model/test-record.ts";
import type { TestOutcome } from "../../shared-model/queries/compare-test.ts";
import { RESULT_TITLES, STAGE_WORDS, TEST_WORDS } from "../../shared-model/queries/record-words.ts";
import { laterWording } from "./later-words.ts";

/** Words of the test record. */
export const RECORD_WORDS = {
  title: laterWording.testRecord,
  about: laterWording.whatIsExpectedIsComputedFrom,
  lines: laterWording.linesOfTheTestRecord,
  nothing: laterWording.nothingIsDrawnYetThatCould,
  noneLeft: laterWording.noLineIsLeftToShow,
  by: laterWording.testedBy,
  day: laterWording.day,
  instrument: laterWording.voltsMeasuredWith,
  instrumentId: laterWording.itsNumber,
  show: laterWording.show,
  all: laterWording.allLines,
  open: laterWording.linesNotMeasuredAfterTheWork,
  differing: laterWording.linesThatDiffer,
  expected: laterWording.expected,
  asFound: laterWording.asFound2,
  notTold: laterWording.notComputed,
  computing: "…",
  gone: laterWording.noLongerDrawn,
  none: laterWording.none,
  record: "Record…",
  write: laterWording.writeItDown,
  more: laterWording.more,
  remark: laterWording.remark,
  remove: laterWording.remove,
  addTitle: laterWording.anotherTest,
  addItem: laterWording.at,
  addTest: laterWording.test,
  add: laterWording.addTheLine,
  agrees: laterWording.agrees,
  notFound: laterWording.theDrawingLeadsToNoneNothing,
  notRead: laterWording.noReadingYet,
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
  return outcome.kind === "agrees" ? RECORD_WORDS.agrees : laterWording.differs(outcome.says);
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
