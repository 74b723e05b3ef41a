import type { AppliedAmendment, Subject } from "../answers/finding.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { Installation, Project, StateName } from "../model/project.ts";
import type { Section } from "../solver/section.ts";
import { type AmendmentReport, amendmentReports } from "./amendment-reports.ts";
import { amendedEdition, appliedAmendments, isSwitchedOff } from "./amendments.ts";
import { voltageDropAdvice } from "./checks/voltage-drop-advice.ts";
import type { EditionData, ValueName } from "./editions/edition-data.ts";
import { coversRule, getEdition } from "./editions/editions.ts";
import { fixBy } from "./fix-parts.ts";
import { boxRules, projectRules, rules, sectionRules } from "./registry.ts";
import type { BoxContext, CannotTellReport, ProjectContext, Report, Rule, SectionContext } from "./rule.ts";
import { wording } from "./run-rules-words.ts";

/** Rule id under which a rule that threw is reported: a bug of ours, never a statement about the wiring. */
export const INTERNAL_ERROR = "internal-error";
/** Rule id under which it is told that a rule set does not cover all the other rules. */
const NOT_COVERED = "not-covered";
/** Rule id under which an as-found edit is reported that could not be carried over into proposed. */
export const NOT_CARRIED_OVER = "not-carried-over";

/** What is reported without a rule of the catalogue. */
export interface OwnReport extends Report {
  readonly ruleId: typeof INTERNAL_ERROR | AmendmentReport["ruleId"] | typeof NOT_CARRIED_OVER;
}

/**
 * What the rules of one scope said about one box, section or document, before consequences are folded. Plain values: it
 * may be kept as long as what it was made from is the same object.
 */
export interface RawAnswers {
  readonly reports: readonly {
    readonly rule: Rule;
    readonly report: Report;
    /** Local amendments by which the rule judged; absent where there are none. */
    readonly amendments?: readonly AppliedAmendment[];
  }[];
  readonly ownReports: readonly OwnReport[];
  readonly couldNotTell: readonly { readonly rule: Pick<Rule, "id">; readonly report: CannotTellReport }[];
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
  /** Called when it has ended, for who measures. */
  ends?(): void;
}

/**
 * Runs the box rules on one enclosure, and on a panel also what section rules say of a panel by itself. They read the enclosure, the cables that enter or pass through it, and the edition
 * and amendments of the project; nothing else, so the answer holds while these are the same objects.
 */
export function checkBox(context: InState & { readonly enclosure: Enclosure }): RawAnswers {
  const { enclosure } = context;
  const where: Subject = { kind: "enclosure", id: enclosure.id, name: enclosure.name };
  const own = run<BoxContext, (typeof boxRules)[number]>(boxRules, context, where, { enclosure }, (rule, all) =>
    rule.check(all),
  );
  if (enclosure.kind !== "panel") return own;
  const ofPanel = run<BoxContext, (typeof panelRules)[number]>(panelRules, context, where, { enclosure }, (rule, all) =>
    rule.checkPanel?.(all),
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
  const answers = run<SectionContext, (typeof sectionRules)[number]>(
    sectionRules,
    context,
    where,
    { section },
    (rule, all) => rule.check(all),
  );
  if (!section.bounded) return answers;
  const unknown = running(sectionRules, context).map((rule) => ({ rule, report: tooManySwitches(rule, where) }));
  return { ...answers, couldNotTell: [...answers.couldNotTell, ...unknown] };
}

const tooManySwitches = (rule: Rule, where: Subject): CannotTellReport => ({
  subjects: [where],
  message: wording.tooManySwitches(where.name, rule.id),
  missing: wording.allPositions(where.name),
  toDo: wording.judgeCircuits,
});

/** Runs the project rules, and says which amendments change nothing and, in proposed, which as-found edits are not in it. */
export function checkProject(context: InState): RawAnswers {
  const { project } = context;
  const where: Subject = { kind: "project", id: "project", name: project.title };
  const answers = run<ProjectContext, (typeof projectRules)[number]>(projectRules, context, where, {}, (rule, all) =>
    rule.check(all),
  );
  return {
    ...answers,
    ownReports: [...answers.ownReports, ...amendmentReports(project), ...notCarriedOver(context)],
    couldNotTell: [...answers.couldNotTell, ...notCovered(context), ...notHeld(context)],
  };
}

/** The edition by which voltage drop is judged, amendments included. */
export const dropEdition = (project: Project): EditionData => editionFor(voltageDropAdvice, project);

/** Rules that an edition held for counting only has no table for. */
const NEEDS_TABLE: readonly { readonly id: string; readonly table: ValueName }[] = [
  { id: "outlet-not-protected", table: "protectedPlaces" },
];

/** One statement for all the rules that a rule set does not cover. */
function notCovered({ project }: InState): RawAnswers["couldNotTell"] {
  const edition = getEdition(project.edition);
  if (edition.covers === undefined) return [];
  const all = rules.filter(({ status }) => status !== "retired");
  const count = all.filter(({ id }) => !coversRule(edition, id)).length;
  if (count === 0) return [];
  return [
    {
      rule: { id: NOT_COVERED },
      report: {
        subjects: [{ kind: "project", id: "project", name: project.title }],
        message: wording.notCovered(edition.year, count, all.length),
        missing: wording.allButBoxFill(edition.year),
        toDo: wording.judgeElse,
      },
    },
  ];
}

function notHeld(context: InState): RawAnswers["couldNotTell"] {
  const { project } = context;
  const { values, year } = getEdition(project.edition);
  const lacking = NEEDS_TABLE.filter(({ table }) => values[table] === undefined);
  if (lacking.length === 0) return [];
  return running(rules, context).flatMap((rule) => {
    if (!lacking.some(({ id }) => id === rule.id)) return [];
    const missing = wording.placesOf(year);
    return {
      rule,
      report: {
        subjects: [{ kind: "project", id: "project", name: project.title }],
        message: wording.placesNotHeld(year),
        missing,
        toDo: wording.judgeOrChoose,
      },
    } as const;
  });
}

const editionFor = (rule: Rule, project: Project): EditionData =>
  amendedEdition(getEdition(project.edition), rule, project.amendments);

function running<R extends Rule>(all: readonly R[], { project, watch }: InState): readonly R[] {
  const edition = getEdition(project.edition);
  return all.filter(
    (rule) =>
      rule.status !== "retired" &&
      coversRule(edition, rule.id) &&
      !isSwitchedOff(rule, project.amendments) &&
      !watch?.skips(rule.id),
  );
}

/** @param own What a context has of its scope beside what all have. */
function run<C extends ProjectContext, R extends Rule>(
  rulesOfScope: readonly R[],
  context: InState,
  where: Subject,
  own: Omit<C, keyof ProjectContext>,
  check: (rule: R, context: C) => void,
): RawAnswers {
  const reports: RawAnswers["reports"][number][] = [];
  const couldNotTell: { readonly rule: Rule; readonly report: CannotTellReport }[] = [];
  const ownReports: OwnReport[] = [];
  const { project, installation, state, watch } = context;
  const toRun = running(rulesOfScope, context);
  // A rule that throws half-way must not leave half of its reports behind.
  let said: Report[] = [];
  let unknown: CannotTellReport[] = [];
  const contextOf = (edition: EditionData): C => {
    const common: ProjectContext = {
      project,
      installation,
      state,
      edition,
      report: (finding) => said.push(finding),
      cannotTell: (missing) => unknown.push(missing),
    };
    return { ...common, ...own } as C;
  };
  const edition = getEdition(project.edition);
  // One for all rules that no amendment touches: a context for every rule and box costs more than many rules do.
  const usual = contextOf(edition);
  for (const rule of toRun) {
    watch?.begins(rule.id);
    said = [];
    unknown = [];
    try {
      const amended = amendedEdition(edition, rule, project.amendments);
      check(rule, amended === edition ? usual : contextOf(amended));
      const amendments = appliedAmendments(edition, rule, project.amendments);
      const judged = amendments.length === 0 ? { rule } : { rule, amendments };
      for (const report of said) reports.push({ ...judged, report });
      for (const report of unknown) couldNotTell.push({ rule, report });
    } catch (error) {
      ownReports.push(internalError(rule, where, error));
    }
    watch?.ends?.();
  }
  return { reports, ownReports, couldNotTell, checksRun: toRun.length };
}

function internalError(rule: Rule, where: Subject, error: unknown): OwnReport {
  const reason = error instanceof Error ? error.message : String(error);
  return {
    ruleId: INTERNAL_ERROR,
    severity: "advice",
    subjects: [where, { kind: "project", id: rule.id, name: rule.id }],
    message: wording.failed(rule.id, where.name, reason),
    data: { rule: rule.id },
  };
}

function notCarriedOver({ project, state }: InState): readonly OwnReport[] {
  if (state !== "proposed") return [];
  return (project.heldBack ?? []).map(
    ({ id, title, items, because }): OwnReport => ({
      ruleId: NOT_CARRIED_OVER,
      severity: "caution",
      subjects: [{ kind: "project", id, name: title }, ...items],
      message: wording.notCarriedOver(title, because),
      data: { title },
      offers: [fixBy(wording.iHaveLooked, "settle-held-back", { id })],
    }),
  );
}
