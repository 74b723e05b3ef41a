import type { RuleStatus, SectionPointer, Severity } from "./finding.ts";

/** A plain number that a rule reads, as an edition has it: what a local amendment can replace. */
export interface BookValue {
  readonly name: string;
  /** Absent where the edition sets no number: an amendment then adds one. */
  readonly value?: number;
  /** "in."; absent for a count. */
  readonly unit?: string;
  readonly section?: SectionPointer;
  readonly source?: string;
}

/** A rule that runs by an edition, as the person sees it who looks it up or amends it. */
export interface BookRule {
  readonly id: string;
  readonly summary: string;
  /** At worst. */
  readonly severity: Severity;
  readonly status: RuleStatus;
  readonly section?: SectionPointer;
  readonly values: readonly BookValue[];
}
