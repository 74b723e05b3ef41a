import type { SectionPointer, Severity } from "../../answers/finding.ts";
import type { EvidenceMark } from "../../model/evidence.ts";

export const FINDINGS = "Findings";
export const NO_FINDINGS = "No findings.";

/** What may be said where nothing is shown: never a verdict. */
export const runWords = (checks: number, untold: number): string =>
  `${checks} checks run, ${untold} could not be told.`;

/** Groups in the order of the talk that each leads to. */
export const GROUPS = {
  introduced: { title: "Introduced by this work", note: "not there as found: ours to mend before anything is built" },
  touched: { title: "Inherited where the work opens a box", note: "there before; an inspector treats it as ours" },
  inherited: { title: "Inherited, not touched", note: "there before, at boxes that nobody opens" },
  repaired: { title: "Repaired by this work", note: "there as found, gone in proposed" },
  found: { title: "As found", note: "nothing is proposed yet" },
} as const;

export const NONE_OF_THESE = "None.";

export const ASSUMING = {
  title: "Resting on assumptions",
  note: "find out before you rely on it, or price for it",
} as const;

export const UNTOLD = {
  title: "Could not be told",
  note: "treat as failing until known",
} as const;

export const SEVERITY_WORDS: Readonly<Record<Severity, string>> = {
  danger: "danger",
  violation: "violation",
  caution: "caution",
  advice: "advice",
};

export const SEVERITY_LEGEND: Readonly<Record<Severity | "cannot-tell", string>> = {
  danger: "danger: shock or fire now",
  violation: "violation: breaks a rule of the edition",
  caution: "caution: will not work, or depends",
  advice: "advice",
  "cannot-tell": "could not be told",
};

export const BASIS_WORDS: Readonly<Record<EvidenceMark, string>> = {
  measured: "measured",
  seen: "seen",
  told: "told",
  assumed: "assumed",
  unknown: "not recorded how it is known",
};

export const acknowledged = (by: string, on: string, reason: string, covers: boolean): string =>
  `${covers ? "Acknowledged" : "Acknowledged when it said something else or less"} by ${by}, ${on}: ${reason}`;

export const foldedWords = (count: number, names: readonly string[]): string =>
  `${count} more follow from it${names.length === 0 ? "" : `: ${names.join(", ")}`}.`;

export const existingWords = "there before, at a box that nobody opens: shown as a caution";
export const draftWords = "draft rule";
const CHECK_SECTION = "check";
export const amendedBy = (value: string, is: number, reason: string): string =>
  `Amended locally: ${value} is ${is}. ${reason}`;

/** "210.8(A)"; "408.4(A), check" of one that no source text was read for. */
export const sectionWords = ({ section, confidence }: SectionPointer): string =>
  confidence === "sourced" || confidence === "own-rule" ? section : `${section}, ${CHECK_SECTION}`;

/** What a finding says, without what to do about it. */
export const firstSentence = (message: string): string => message.split(/(?<=[.!?])\s/)[0] ?? message;
