import { catalogue } from "../lib/catalogue.ts";
import type { RecordStage, RecordTest } from "../model/test-record.ts";

const wording = catalogue({
  hotToNeutral: "Hot to neutral",
  hotToGround: "Hot to ground",
  neutralToGround: "Neutral to ground",
  polarity: "Plug-in tester",
  ownTest: "TEST pressed",
  reset: "RESET pressed",
  plugInButton: "Button of a plug-in tester",
  verifiedDead: "Verified dead, breaker off",
  openGround: "open ground",
  openNeutral: "open neutral",
  openHot: "open hot / dead",
  hotGroundReversed: "hot/ground reversed",
  hotNeutralReversed: "hot/neutral reversed",
  unnamed: "no name on the label",
  doesNotWork: "does not work",
  worksTest: "Works",
  continuity: "Continuity",
  note: "Note",
  before: "Before",
  after: "After",
  correct: "correct",
  works: "works",
  dead: "dead",
  live: "live",
  open: "open",
});

/** Tests as they stand on a test record. */
export const TEST_WORDS: Readonly<Record<RecordTest, string>> = {
  "hot-neutral": wording.hotToNeutral,
  "hot-ground": wording.hotToGround,
  "neutral-ground": wording.neutralToGround,
  polarity: wording.polarity,
  works: wording.worksTest,
  "own-test": wording.ownTest,
  reset: wording.reset,
  "plug-in-button": wording.plugInButton,
  dead: wording.verifiedDead,
  continuity: wording.continuity,
  note: wording.note,
};

export const STAGE_WORDS: Readonly<Record<RecordStage, string>> = { before: wording.before, after: wording.after };

/** Results that are kept as a word, as a person says them. */
export const RESULT_TITLES: Readonly<Record<string, string>> = {
  correct: wording.correct,
  "open-ground": wording.openGround,
  "open-neutral": wording.openNeutral,
  "open-hot": wording.openHot,
  "hot-ground-reversed": wording.hotGroundReversed,
  "hot-neutral-reversed": wording.hotNeutralReversed,
  unnamed: wording.unnamed,
  works: wording.works,
  "does-not-work": wording.doesNotWork,
  dead: wording.dead,
  live: wording.live,
  open: wording.open,
};
