import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { EvidenceMark } from "../../model/evidence.ts";
import type { StateName } from "../../model/project.ts";

/** Words that several lists share. */
export const LIST = catalogue({
  cautionTitle: "Mind",
  onlyCaution: (words: Part) => `Mind: ${words}`,
  nothingDrawn: "Nothing is drawn yet. Draw what was found: a box, its cables and what is in it.",
  nothingProposed:
    "Nothing is proposed yet. This list shows the difference between what was found and what is proposed.",
  evidenceLegend:
    "How a fact is known: m measured, s seen, t told, a assumed, ? unknown. A fact without a letter has no source recorded.",
  and: (rest: Part, last: Part) => `${rest} and ${last}`,
});

export const STATE_NAMES: Readonly<Record<StateName, string>> = catalogue({
  "as-found": "as found",
  proposed: "proposed",
});

/** The same where it begins a sentence. */
export const STATE_TITLES: Readonly<Record<StateName, string>> = catalogue({
  "as-found": "As found",
  proposed: "Proposed",
});

/** How a fact is known, in cells of tables. */
export const EVIDENCE_WORDS: Readonly<Record<EvidenceMark, string>> = catalogue({
  measured: "measured",
  seen: "seen",
  told: "told",
  assumed: "assumed",
  unknown: "unknown",
});

/** "a, b and c". */
export function listed(words: readonly string[]): string {
  const [last = "", ...rest] = [...words].reverse();
  return rest.length === 0 ? last : LIST.and(rest.reverse().join(", "), last);
}
