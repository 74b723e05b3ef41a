import type { CommandCall } from "../answers/command-call.ts";
import type { RuleStatus, SectionPointer, Severity, Subject } from "../answers/finding.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { EvidenceMark } from "../model/evidence.ts";
import type { Edition, Installation, Project, StateName } from "../model/project.ts";
import type { Section } from "../solver/section.ts";
import type { EditionData } from "./editions/edition-data.ts";

/** Smallest part of a drawing that a rule must see, and so what makes it run again. */
export type RuleScope = "box" | "section" | "project";

export interface Report {
  readonly subjects: readonly Subject[];
  readonly message: string;
  readonly severity?: Severity;
  readonly data?: Readonly<Record<string, number | string>>;
  readonly basis?: EvidenceMark;
  readonly fix?: CommandCall;
  /** Findings of these rules about these subjects are consequences of this one and are folded under it. */
  readonly hides?: readonly { readonly rule: string; readonly subjects: readonly string[] }[];
}

export interface CannotTellReport {
  readonly subjects: readonly Subject[];
  readonly message: string;
  readonly missing: string;
}

interface ContextCommon {
  readonly project: Project;
  readonly installation: Installation;
  readonly state: StateName;
  readonly edition: EditionData;
  report(finding: Report): void;
  cannotTell(missing: CannotTellReport): void;
}

/** One enclosure, without what lies beyond its cables. */
export type BoxContext = ContextCommon & { readonly enclosure: Enclosure };

/** All enclosures joined by cables without passing through a panel, with what the conduction graph says of them. */
export type SectionContext = ContextCommon & { readonly section: Section };

interface RuleCommon<M extends string> {
  /** Permanent. */
  readonly id: string;
  readonly status: RuleStatus;
  /** Highest severity that it can report. */
  readonly severity: Severity;
  /** One sentence: what must hold. */
  readonly summary: string;
  /** Why it matters and what commonly goes wrong, for the help page. */
  readonly why: string;
  readonly messages: Readonly<Record<M, string>>;
  /** Section numbers by edition with how well each is backed; an edition left out has none. */
  readonly sections: Readonly<Partial<Record<Edition, SectionPointer>>>;
  /** Names of the edition values it reads, for the help page. */
  readonly values?: readonly (keyof EditionData["values"])[];
}

export type Rule<M extends string = string> =
  | (RuleCommon<M> & { readonly scope: "box"; check(context: BoxContext): void })
  | (RuleCommon<M> & { readonly scope: "section"; check(context: SectionContext): void })
  | (RuleCommon<M> & { readonly scope: "project"; check(context: ContextCommon): void });

export const defineRule = <M extends string>(rule: Rule<M>): Rule<M> => rule;
