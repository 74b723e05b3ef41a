import type { Subject } from "../answers/finding.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { Installation, Project, StateName } from "../model/project.ts";
import type { Section } from "../solver/section.ts";
import { amendedEdition, amendmentProblem, isSwitchedOff } from "./amendments.ts";
import { boxOverfull } from "./checks/box-overfull.ts";
import type { EditionData, ValueName } from "./editions/edition-data.ts";
import { getEdition } from "./editions/editions.ts";
import { fixBy } from "./fix-parts.ts";
import { boxRules, projectRules, rules, sectionRules } from "./registry.ts";
import type { BoxContext, CannotTellReport, ProjectContext, Report, Rule, SectionContext } from "./rule.ts";

/** Rule id under which a rule that threw is reported: a bug of ours, never a statement about the wiring. */
export const INTERNAL_ERROR = "internal-error";
/** Rule id under which an amendment that changes nothing is reported. */
export const AMENDMENT_IGNORED = "amendment-ignored";
/** Rule id under which an as-found edit is reported that could not be carried over into proposed. */
export const NOT_CARRIED_OVER = "not-carried-over";

/** What is reported without a rule of the catalogue. */
export interface OwnReport extends Report {
  readonly ruleId: typeof INTERNAL_ERROR | typeof AMENDMENT_IGNORED | typeof NOT_CARRIED_OVER;
}

/**
 * What the rules of one scope said about one box, section or document, before consequences are folded. Plain values: it
 * may be kept as long as what it was made from is the same object.
 */
export interface RawAnswers {
  readonly reports: readonly { readonly rule: Rule; readonly report: Report }[];
  readonly ownReports: readonly OwnReport[];
  readonly couldNotTell: readonly { readonly rule: Rule; readonly report: CannotTellReport }[];
  /** Rules that ran, those that threw included; one box and one rule is one check. */
  readonly checksRun: number;
}

export interface InState {
  readonly project: Project;
  readonly installation: Installation;
  readonly state: StateName;
  readonly watch?: RuleWatch;
}

/** Lets a host leave rules out and learn which one is running, so that one that hangs can be named. */
export interface RuleWatch {
  skips(ruleId: string): boolean;
  begins(ruleId: string): void;
}

/**
 * Runs the box rules on one enclosure, and on a panel also what section rules say of a panel by itself. They read the enclosure, the cables that enter or pass through it, and the edition
 * and amendments of the project; nothing else, so the answer holds while these are the same objects.
 */
export function checkBox(context: InState & { readonly enclosure: Enclosure }): RawAnswers {
  const { enclosure } = context;
  const where: Subject = { kind: "enclosure", id: enclosure.id, name: enclosure.name };
  const own = run(boxRules, context, where, (rule, common) =>
    rule.check({ ...common, enclosure } satisfies BoxContext),
  );
  if (enclosure.kind !== "panel") return own;
  const ofPanel = run(panelRules, context, where, (rule, common) =>
    rule.checkPanel?.({ ...common, enclosure } satisfies BoxContext),
  );
  return {
    reports: [...own.reports, ...ofPanel.reports],
    ownReports: [...own.ownReports, ...ofPanel.ownReports],
    couldNotTell: [...own.couldNotTell, ...ofPanel.couldNotTell],
    checksRun: own.checksRun + ofPanel.checksRun,
  };
}

const panelRules = sectionRules.filter(({ checkPanel }) => checkPanel !== undefined);

/**
 * Runs the section rules on one section. They read the section, the rooms, edition and amendments of the project, and
 * the intent and the loads of the installation.
 */
export function checkSection(context: InState & { readonly section: Section }): RawAnswers {
  const { section } = context;
  const [first] = section.enclosures;
  const where: Subject =
    first === undefined
      ? { kind: "project", id: "project", name: context.project.title }
      : { kind: "enclosure", id: first.id, name: first.name };
  const answers = run(sectionRules, context, where, (rule, common) =>
    rule.check({ ...common, section } satisfies SectionContext),
  );
  if (!section.bounded) return answers;
  const unknown = running(sectionRules, context).map((rule) => ({ rule, report: tooManySwitches(rule, where) }));
  return { ...answers, couldNotTell: [...answers.couldNotTell, ...unknown] };
}

const tooManySwitches = (rule: Rule, where: Subject): CannotTellReport => ({
  subjects: [where],
  message: `Cannot tell for every switch position: more switches bear on the circuits at ${where.name} than are tried, so a finding of "${rule.id}" may be missing. Judge these circuits by hand.`,
  missing: `the positions of all switches on the circuits at ${where.name}`,
  toDo: "Judge these circuits by hand.",
});

/** Runs the project rules, and says which amendments change nothing and, in proposed, which as-found edits are not in it. */
export function checkProject(context: InState): RawAnswers {
  const { project } = context;
  const where: Subject = { kind: "project", id: "project", name: project.title };
  const answers = run(projectRules, context, where, (rule, common) => rule.check(common));
  return {
    ...answers,
    ownReports: [...answers.ownReports, ...ignoredAmendments(project), ...notCarriedOver(context)],
    couldNotTell: [...answers.couldNotTell, ...notHeld(context)],
  };
}

/** The edition by which the box-fill ledger of a document counts: that of the rule that judges it, amendments included. */
export const fillEdition = (project: Project): EditionData => editionFor(boxOverfull, project);

/** Rules that an edition held for counting only has no table for. */
const NEEDS_TABLE: readonly { readonly id: string; readonly table: ValueName }[] = [
  { id: "outlet-not-protected", table: "protectedPlaces" },
];

function notHeld(context: InState): RawAnswers["couldNotTell"] {
  const { project } = context;
  const { values, year } = getEdition(project.edition);
  return running(rules, context).flatMap((rule) => {
    const needs = NEEDS_TABLE.find(({ id }) => id === rule.id);
    if (needs === undefined || values[needs.table] !== undefined) return [];
    const missing = `the list of protected places of edition ${year}`;
    return {
      rule,
      report: {
        subjects: [{ kind: "project", id: "project", name: project.title }],
        message: `Cannot tell which outlets need ground-fault protection: edition ${year} is held for counting box fill only. Look its list up, or choose the edition that is adopted.`,
        missing,
        toDo: "Judge them by hand, or choose another edition.",
      },
    } as const;
  });
}

const editionFor = (rule: Rule, project: Project): EditionData =>
  amendedEdition(getEdition(project.edition), rule, project.amendments);

const running = <R extends Rule>(all: readonly R[], { project, watch }: InState): readonly R[] =>
  all.filter((rule) => rule.status !== "retired" && !isSwitchedOff(rule, project.amendments) && !watch?.skips(rule.id));

type Scoped<S extends Rule["scope"]> = Extract<Rule, { readonly scope: S }>;

function run<R extends Scoped<Rule["scope"]>>(
  rulesOfScope: readonly R[],
  context: InState,
  where: Subject,
  check: (rule: R, common: ProjectContext) => void,
): RawAnswers {
  const reports: { readonly rule: Rule; readonly report: Report }[] = [];
  const couldNotTell: { readonly rule: Rule; readonly report: CannotTellReport }[] = [];
  const ownReports: OwnReport[] = [];
  const { project, installation, state, watch } = context;
  const toRun = running(rulesOfScope, context);
  for (const rule of toRun) {
    watch?.begins(rule.id);
    // A rule that throws half-way must not leave half of its reports behind.
    const own: Report[] = [];
    const unknown: CannotTellReport[] = [];
    try {
      check(rule, {
        project,
        installation,
        state,
        edition: editionFor(rule, project),
        report: (finding) => own.push(finding),
        cannotTell: (missing) => unknown.push(missing),
      });
      for (const report of own) reports.push({ rule, report });
      for (const report of unknown) couldNotTell.push({ rule, report });
    } catch (error) {
      ownReports.push(internalError(rule, where, error));
    }
  }
  return { reports, ownReports, couldNotTell, checksRun: toRun.length };
}

function internalError(rule: Rule, where: Subject, error: unknown): OwnReport {
  const reason = error instanceof Error ? error.message : String(error);
  return {
    ruleId: INTERNAL_ERROR,
    severity: "advice",
    subjects: [where, { kind: "project", id: rule.id, name: rule.id }],
    message: `The check "${rule.id}" failed at ${where.name} because of a fault in this program: ${reason} The other checks ran; judge ${where.name} by hand.`,
    data: { rule: rule.id },
  };
}

function ignoredAmendments(project: Project): readonly OwnReport[] {
  const edition: EditionData = getEdition(project.edition);
  return project.amendments.flatMap((amendment, index) => {
    const problem = amendmentProblem(amendment, rules, edition);
    if (problem === undefined) return [];
    return {
      ruleId: AMENDMENT_IGNORED,
      severity: "caution",
      subjects: [{ kind: "project", id: `amendment-${index}`, name: amendment.rule }],
      message: `A local amendment changes nothing: ${problem} Correct or remove it.`,
      data: { rule: amendment.rule },
    } satisfies OwnReport;
  });
}

function notCarriedOver({ project, state }: InState): readonly OwnReport[] {
  if (state !== "proposed") return [];
  return (project.heldBack ?? []).map(
    ({ id, title, items, because }): OwnReport => ({
      ruleId: NOT_CARRIED_OVER,
      severity: "caution",
      subjects: [{ kind: "project", id, name: title }, ...items],
      message: `“${title}” was done as found and not carried over into proposed. ${because} Look at both, make proposed agree where it should, then settle this.`,
      data: { title },
      offers: [fixBy("I have looked", "settle-held-back", { id })],
    }),
  );
}
