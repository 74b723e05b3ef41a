/** How a fact is known, strongest first. A field without a mark is unknown. */
export const EVIDENCE_MARKS = ["measured", "seen", "told", "assumed", "unknown"] as const;

export type EvidenceMark = (typeof EVIDENCE_MARKS)[number];

/** Marks by field name of the entity that carries them. */
export type Evidence = Readonly<Record<string, EvidenceMark>>;

export interface WithEvidence {
  readonly evidence?: Evidence;
}

/** The weakest of some marks; undefined for none. Derived things inherit it. */
export function weakestMark(marks: Iterable<EvidenceMark>): EvidenceMark | undefined {
  let weakest = -1;
  for (const mark of marks) weakest = Math.max(weakest, EVIDENCE_MARKS.indexOf(mark));
  return weakest < 0 ? undefined : EVIDENCE_MARKS[weakest];
}
