import type { RecordCellLine } from "../../answers/sheet-input.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { ReadingInstrument } from "../../model/project.ts";
import type { RecordStage } from "../../model/test-record.ts";

export const RECORD = catalogue({
  title: "Test record",
  noTests: "Nothing is drawn that can be tested.",
  how: "Expected values are computed from the drawing: before the work from what was found, after it from what is proposed. Voltages: lamps lit, nothing running at receptacles. TEST, RESET and buttons: everything in use. Write what the meter shows, not what it should show.",
  at: "at",
  test: "test",
  expectedBefore: "before: expected",
  foundBefore: "before: found",
  expectedAfter: "after: expected",
  foundAfter: "after: found",
  instrument: "instrument",
  date: "date",
  by: "by",
  testedBy: "tested by",
  licence: "licence or company",
  receivedBy: "received by",
  signature: "signature",
});

type Outcome = NonNullable<RecordCellLine["outcome"]>;

export const OUTCOMES: Readonly<Record<Outcome, string>> = {
  ...catalogue({ agrees: "agrees", differs: "DIFFERS" }),
  "not-compared": "",
};

/** The same in cells of tables. */
const QUIET_OUTCOMES: Readonly<Record<Outcome, string>> = catalogue({
  agrees: "agrees",
  differs: "differs",
  "not-compared": "not compared",
});

export const outcomeWords = (outcome: Outcome | undefined): string | undefined =>
  outcome === undefined ? undefined : QUIET_OUTCOMES[outcome];

export const STAGES: Readonly<Record<RecordStage, string>> = catalogue({ before: "before", after: "after" });

/** What only one of the stages says. */
export const ofStage: Readonly<Record<RecordStage, (words: Part) => string>> = catalogue({
  before: (words: Part) => `before: ${words}`,
  after: (words: Part) => `after: ${words}`,
});

/** As short as the column is narrow. */
const INSTRUMENTS: Readonly<Record<ReadingInstrument, string>> = catalogue({
  meter: "meter",
  "low-impedance-meter": "low-impedance meter",
  "plug-in-tester": "plug-in tester",
  noncontact: "noncontact tester",
  continuity: "continuity tester",
  insulation: "insulation tester",
  "own-test": "its TEST button",
  reset: "its RESET button",
  "plug-in-button": "tester's button",
  "clamp-meter": "clamp meter",
  "test-lamp": "test lamp",
  leak: "leak",
  "by-eye": "by eye",
});

/** "plug-in tester 4711". */
export const instrumentWords = ({ instrument, instrumentId }: RecordCellLine): string | undefined =>
  instrument === undefined ? undefined : [INSTRUMENTS[instrument], instrumentId].filter(Boolean).join(" ");

/** Lines to sign on. */
export const SIGNATURES = [RECORD.testedBy, RECORD.licence, RECORD.date, RECORD.signature] as const;
export const HANDED_OVER = [RECORD.receivedBy, RECORD.date, RECORD.signature] as const;

/** Of the list for writers of tables. */
export const RECORD_TABLE = catalogue({
  name: "Test record",
  box: "Box",
  at: "At",
  test: "Test",
  stage: "Stage",
  expected: "Expected",
  found: "Found",
  outcome: "Outcome",
  instrument: "Instrument",
  date: "Date",
  by: "By",
  remark: "Remark",
});
