import type { StateName } from "../../model/project.ts";

/** Words that several lists share. */
export const STATE_NAMES: Readonly<Record<StateName, string>> = { "as-found": "as found", proposed: "proposed" };

export const CAUTION_TITLE = "Mind";
export const NOTHING_DRAWN = "Nothing is drawn yet. Draw what was found: a box, its cables and what is in it.";
export const NOTHING_PROPOSED =
  "Nothing is proposed yet. This list shows the difference between what was found and what is proposed.";

export const EVIDENCE_LEGEND =
  "How a fact is known: m measured, s seen, t told, a assumed, ? unknown. A fact without a letter has no source recorded.";

/** "a, b and c". */
export function listed(words: readonly string[]): string {
  const [last = "", ...rest] = [...words].reverse();
  return rest.length === 0 ? last : `${rest.reverse().join(", ")} and ${last}`;
}
