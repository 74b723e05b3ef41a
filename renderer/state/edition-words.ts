import type { Edition } from "../../shared-model/model/project.ts";
import { wording } from "./words.ts";

const NOTES: Readonly<Partial<Record<Edition, string>>> = {
  2011: wording.countingOnly,
  2014: wording.countingOnly,
  2026: wording.notVerified,
  "CSA-C22.1": wording.countingOnly,
};

/** "2026, not verified": never without what must be known before its answers are taken. */
export const editionWords = (edition: Edition): string => `${edition}${NOTES[edition] ?? ""}`;
