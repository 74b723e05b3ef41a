import type { RecordStage, RecordTest } from "../model/test-record.ts";

/** Tests as they stand on a test record. */
export const TEST_WORDS: Readonly<Record<RecordTest, string>> = {
  "hot-neutral": "Hot to neutral",
  "hot-ground": "Hot to ground",
  "neutral-ground": "Neutral to ground",
  polarity: "Plug-in tester",
  works: "Works",
  "own-test": "TEST pressed",
  reset: "RESET pressed",
  "plug-in-button": "Button of a plug-in tester",
  dead: "Verified dead, breaker off",
  continuity: "Continuity",
  note: "Note",
};

export const STAGE_WORDS: Readonly<Record<RecordStage, string>> = { before: "Before", after: "After" };

/** Results that are kept as a word, as a person says them. */
export const RESULT_TITLES: Readonly<Record<string, string>> = {
  correct: "correct",
  "open-ground": "open ground",
  "open-neutral": "open neutral",
  "open-hot": "open hot / dead",
  "hot-ground-reversed": "hot/ground reversed",
  "hot-neutral-reversed": "hot/neutral reversed",
  unnamed: "no name on the label",
  works: "works",
  "does-not-work": "does not work",
  dead: "dead",
  live: "live",
  open: "open",
};
