import type { Edition } from "../../shared-model/model/project.ts";

const NOTES: Readonly<Partial<Record<Edition, string>>> = {
  2011: ", counting only",
  2014: ", counting only",
  2026: ", not verified",
  "CSA-C22.1": ", counting only",
};

/** "2026, not verified": never without what must be known before its answers are taken. */
export const editionWords = (edition: Edition): string => `${edition}${NOTES[edition] ?? ""}`;
