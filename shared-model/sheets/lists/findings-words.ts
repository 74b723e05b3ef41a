import type { AppliedAmendment, SectionPointer, Severity } from "../../answers/finding.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import { inSentence } from "../../lib/in-sentence.ts";
import type { EvidenceMark } from "../../model/evidence.ts";
import { unitOfValue, valueWords } from "../../model/value-unit.ts";

export const FINDINGS = catalogue({
  title: "Findings",
  none: "No findings.",
  noneOfThese: "None.",
  existing: "there before, at a box that nobody opens: shown as a caution.",
  at: "at",
  what: "what, and what to do",
  section: "section",
  finding: "finding",
  weakestFact: "weakest fact",
  whatUntold: "what",
  missing: "missing",
});

const wording = catalogue({
  acknowledged: (by: Part, on: Part, reason: Part) => `Acknowledged by ${by}, ${on}: ${reason}`,
  acknowledgedOther: (by: Part, on: Part, reason: Part) =>
    `Acknowledged when it said something else or less by ${by}, ${on}: ${reason}`,
  amended: (value: Part, is: Part, reason: Part) => `Amended locally, ${value} ${is}: ${reason}`,
  draft: (rule: Part) => `${rule}, draft rule`,
  follow: (count: Part) => `${count} more follow from it.`,
  followAt: (count: Part, names: Part) => `${count} more follow from it: ${names}.`,
  run: (checks: Part, untold: Part) => `${checks} checks run, ${untold} could not be told.`,
  toCheck: (section: Part) => `${section}, check`,
});

/** What may be said where nothing is shown: never a verdict. */
export const runWords = wording.run;

const GROUP_TITLES = catalogue({
  introduced: "Introduced by this work",
  touched: "Inherited where the work opens a box",
  inherited: "Inherited, not touched",
  repaired: "Repaired by this work",
  found: "As found",
  assuming: "Resting on assumptions",
  untold: "Could not be told",
});

const GROUP_NOTES = catalogue({
  introduced: "not there as found: ours to mend before anything is built",
  touched: "there before; an inspector treats it as ours",
  inherited: "there before, at boxes that nobody opens",
  repaired: "there as found, gone in proposed",
  found: "nothing is proposed yet",
  assuming: "find out before you rely on it, or price for it",
  untold: "treat as failing until known",
});

const GROUP_CAPTIONS = catalogue({
  introduced: "introduced",
  touched: "inherited, touched",
  inherited: "inherited",
  repaired: "repaired",
  found: "as found",
  untold: "could not be told",
});

const groupOf = (key: keyof typeof GROUP_CAPTIONS) => ({
  title: GROUP_TITLES[key],
  note: GROUP_NOTES[key],
  caption: GROUP_CAPTIONS[key],
});

/** Groups in the order of the talk that each leads to. */
export const GROUPS = {
  introduced: groupOf("introduced"),
  touched: groupOf("touched"),
  inherited: groupOf("inherited"),
  repaired: groupOf("repaired"),
  found: groupOf("found"),
} as const;

export const ASSUMING = { title: GROUP_TITLES.assuming, note: GROUP_NOTES.assuming } as const;

export const UNTOLD = groupOf("untold");

export const SEVERITY_WORDS: Readonly<Record<Severity, string>> = catalogue({
  danger: "danger",
  violation: "violation",
  caution: "caution",
  advice: "advice",
});

export const SEVERITY_LEGEND: Readonly<Record<Severity | "cannot-tell", string>> = catalogue({
  danger: "danger: shock or fire now",
  violation: "violation: breaks a rule of the edition",
  caution: "caution: will not work, or depends",
  advice: "advice",
  "cannot-tell": "could not be told",
});

export const BASIS_WORDS: Readonly<Record<EvidenceMark, string>> = catalogue({
  measured: "measured",
  seen: "seen",
  told: "told",
  assumed: "assumed",
  unknown: "not recorded how it is known",
});

/** Of the lists for writers of tables. */
export const FINDING_TABLES = catalogue({
  findings: "Findings",
  untold: "Could not be told",
  standing: "Standing",
  severity: "Severity",
  at: "At",
  rule: "Rule",
  finding: "Finding",
  section: "Section",
  weakestFact: "Weakest fact",
  folded: "Folded under it",
  acknowledgedBy: "Acknowledged by",
  acknowledgedOn: "Acknowledged on",
  reason: "Reason",
  what: "What",
  missing: "Missing",
});

export const acknowledged = (by: string, on: string, reason: string, covers: boolean): string =>
  (covers ? wording.acknowledged : wording.acknowledgedOther)(by, on, reason);

export const foldedWords = (count: number, names: readonly string[]): string =>
  names.length === 0 ? wording.follow(count) : wording.followAt(count, names.join(", "));

export const draftRule = wording.draft;

/** "Amended locally, free length 8 in.: long hands." */
export function amendedBy({ value, is, reason }: AppliedAmendment): string {
  const unit = unitOfValue(value);
  return wording.amended(inSentence(valueWords(value)), unit === undefined ? is : `${is} ${unit}`, reason);
}

/** "210.8(A)"; "408.4(A), check" of one that no source text was read for. */
export const sectionWords = ({ section, confidence }: SectionPointer): string =>
  confidence === "sourced" || confidence === "own-rule" ? section : wording.toCheck(section);

/** What a finding says, without what to do about it. */
export const firstSentence = (message: string): string => message.split(SENTENCE_END)[0] ?? message;

/** No sentence ends at "90 in. above" or at "No. 6". */
const SENTENCE_END = /(?<=[.!?])(?<!\bNo[.])\s(?!\p{Ll})/u;
