import type { Fix, RuleStatus, SectionPointer, Severity, Subject } from "../answers/finding.ts";
import { templates } from "../lib/catalogue.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { EvidenceMark } from "../model/evidence.ts";
import type { Edition, Installation, Project, StateName } from "../model/project.ts";
import type { Section } from "../solver/section.ts";
import type { EditionData, ValueName } from "./editions/edition-data.ts";

export interface Report {
  readonly subjects: readonly Subject[];
  readonly message: string;
  readonly severity?: Severity;
  readonly data?: Readonly<Record<string, number | string>>;
  readonly basis?: EvidenceMark;
  /** Where the rule's own section of the edition is not the one that this finding rests on. */
  readonly section?: SectionPointer;
  /** The one plain repair; `offers` where a person must choose. Both are dropped as found. */
  readonly fix?: Fix;
  readonly offers?: readonly Fix[];
  /** Findings of these rules whose first subject is one of these are consequences of this one and are folded under it. */
  readonly hides?: readonly { readonly rule: string; readonly subjects: readonly string[] }[];
  /** What these rules cannot tell of one of these is what this finding asks for: it is not asked twice. */
  readonly asks?: readonly { readonly rule: string; readonly subjects: readonly string[] }[];
}

export interface CannotTellReport {
  readonly subjects: readonly Subject[];
  readonly message: string;
  readonly missing: string;
  /** Where a person enters the missing fact, where that is not at the first subject. */
  readonly enterAt?: Subject;
  /** What to do instead of entering it: "Judge it by hand." One sentence. */
  readonly toDo?: string;
  /** Questions of several rules with one answer: they are asked once, with all that waits for it. */
  readonly shared?: SharedQuestion;
}

/** One missing fact that keeps several rules of a section from telling. */
export interface SharedQuestion {
  /** Equal for the same fact. */
  readonly id: string;
  readonly subjects: readonly Subject[];
  /** What is missing, as a sentence. */
  readonly lead: string;
  readonly missing: string;
  readonly enterAt?: Subject;
  readonly toDo: string;
  /** What this rule cannot tell: "the polarity of R1". */
  readonly cannot: string;
}

export interface ProjectContext {
  readonly project: Project;
  readonly installation: Installation;
  readonly state: StateName;
  /** The edition with the document's amendments of this rule applied. */
  readonly edition: EditionData;
  report(finding: Report): void;
  cannotTell(missing: CannotTellReport): void;
}

/** One enclosure, without what lies beyond its cables. */
export type BoxContext = ProjectContext & { readonly enclosure: Enclosure };

/** All enclosures joined by cables without passing through a panel, with what the conduction graph says of them. */
export type SectionContext = ProjectContext & { readonly section: Section };

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
  /** What a finding says, with its values in braces; those of "cannot tell" begin with these words. */
  readonly messages: Readonly<Record<M, string>>;
  /** Section numbers by edition with how well each is backed; an edition left out has none. */
  readonly sections: Readonly<Partial<Record<Edition, SectionPointer>>>;
  /** Names of the edition values it reads, for the help page and for amendments. */
  readonly values?: readonly ValueName[];
}

/** Its scope is the smallest part of a drawing that a rule must see, and so what makes it run again. */
export type Rule<M extends string = string> =
  | (RuleCommon<M> & { readonly scope: "box"; check(context: BoxContext): void })
  | (RuleCommon<M> & {
      readonly scope: "section";
      check(context: SectionContext): void;
      /** What it says of a panel by itself, which belongs to no section: it sees what a box rule sees. */
      checkPanel?(context: BoxContext): void;
    })
  | (RuleCommon<M> & { readonly scope: "project"; check(context: ProjectContext): void });

/** A rule is the catalogue of its own words; its messages, which its findings say as well, come as `templates`. */
export const defineRule = <M extends string>(rule: Rule<M>): Rule<M> => ({
  ...rule,
  ...templates({ summary: rule.summary, why: rule.why }),
});
