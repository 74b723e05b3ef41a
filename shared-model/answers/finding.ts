import type { EvidenceMark } from "../model/evidence.ts";
import type { Edition, StateName } from "../model/project.ts";
import type { Severity } from "../model/severity.ts";
import type { CommandCall } from "./command-call.ts";

export type { Severity };

/** Draft rules run and are shown as drafts; stable ones have earned it. */
export type RuleStatus = "draft" | "stable" | "retired";

/**
 * How well a section number is backed: a source text states it, it is in the reference data from memory, it is the
 * writer's knowledge only, it is doubtful, or the rule has no section because it is our own.
 */
export type SectionConfidence = "sourced" | "from-memory" | "unconfirmed" | "doubtful" | "own-rule";

export interface SectionPointer {
  readonly section: string;
  readonly confidence: SectionConfidence;
}

export type SubjectKind =
  | "enclosure"
  | "entry"
  | "cable"
  | "end"
  | "device"
  | "terminal"
  | "splice"
  | "jumper"
  | "outlet"
  | "load"
  | "room"
  | "project";

/** A thing that a finding is about. `id` is its id or key in the document; `name` is what a person calls it. */
export interface Subject {
  readonly kind: SubjectKind;
  readonly id: string;
  readonly name: string;
}

/** One way to mend what a finding says, for the proposed state. */
export interface Fix {
  /** What pressing it does: "Move C2 WH to the LOAD neutral of R1b". */
  readonly title: string;
  readonly call: CommandCall;
}

/**
 * How a finding stands between the states, once something is proposed. In proposed: introduced by the plan, inherited
 * from as found at a box that nobody opens, or inherited at a box that the work opens. As found: repaired by the plan, or
 * it stays.
 */
export type Standing = "introduced" | "inherited" | "inherited-touched" | "repaired" | "stays";

/** A local amendment of the document by which a rule judged: a value that it reads is another here. */
export interface AppliedAmendment {
  readonly value: string;
  readonly is: number;
  /** What the edition itself says; absent where it says nothing. */
  readonly was?: number;
  readonly reason: string;
  readonly by?: string;
}

/** One rule's statement about named items, at one revision of one state. */
export interface Finding {
  /** Rule id and subjects: equal in both states for the same statement about the same things. */
  readonly key: string;
  readonly rule: string;
  readonly severity: Severity;
  readonly status: RuleStatus;
  readonly state: StateName;
  readonly subjects: readonly Subject[];
  /** What, where, by how much, what to do: complete sentences. */
  readonly message: string;
  /** The values of the message, by name; volumes in decimal in³. */
  readonly numbers: Readonly<Record<string, number | string>>;
  readonly section?: SectionPointer;
  /** The edition whose text stands in, where the one that was asked for was not looked up for this rule. */
  readonly textOf?: Edition;
  /** Local amendments by which it was judged. */
  readonly amendments?: readonly AppliedAmendment[];
  /** Weakest mark among the facts that the finding rests on; absent when they carry no mark. */
  readonly basis?: EvidenceMark;
  /** How many consequences are folded under it, and what they are. */
  readonly folded: number;
  readonly foldedSubjects: readonly Subject[];
  /** Absent while nothing is proposed. */
  readonly standing?: Standing;
  /** A violation in proposed that was there before, at a box that nobody opens: shown as a caution. */
  readonly existing?: boolean;
  /** The one plain repair: electrically neutral or strictly better. Only in proposed. */
  readonly fix?: Fix;
  /** Ways to mend it between which a person chooses. Only in proposed. */
  readonly offers?: readonly Fix[];
}

/** A rule that could not answer for some item, with the fact that is missing and where to enter it. */
export interface CannotTell {
  readonly key: string;
  readonly rule: string;
  readonly state: StateName;
  readonly subjects: readonly Subject[];
  readonly message: string;
  /** The missing fact in words, e.g. "the volume of B6". */
  readonly missing: string;
  /** Where it is entered, where that is not at the first subject. */
  readonly enterAt?: Subject;
  /** What to do where it is not entered but drawn or judged by hand: one sentence. */
  readonly toDo?: string;
}

/** Which part of a drawing an answer belongs to: it is replaced as a whole when that part is checked again. */
export type ScopeKey = string & { readonly __id: "scope" };

export interface ScopeAnswers {
  readonly findings: readonly Finding[];
  readonly couldNotTell: readonly CannotTell[];
}
