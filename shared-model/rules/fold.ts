import type { CannotTell, Finding, ScopeAnswers, Subject } from "../answers/finding.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Edition, StateName } from "../model/project.ts";
import { severityRank } from "../model/severity.ts";
import { getEdition, standInFor } from "./editions/editions.ts";
import type { Report, Rule, SharedQuestion } from "./rule.ts";
import { listed } from "./rule-parts.ts";
import type { RawAnswers } from "./run-rules.ts";

const wording = catalogue({
  cannotTell: (lead: Part, waiting: Part) =>
    `${lead} So nothing here can tell ${waiting}; what follows the current is not judged.`,
});

/** Equal for the same statement about the same things, in both states and whatever the words. */
export const findingKey = (ruleId: string, subjects: readonly Subject[]): string =>
  [ruleId, ...subjects.map(({ kind, id }) => `${kind}:${id}`)].join("|");

/**
 * Findings of one section (or of the document) from the raw answers of its boxes and its own: consequences folded under
 * their root cause, then sorted by severity, rule and key. Equal input gives equal text whatever the order of the parts.
 */
export function fold(state: StateName, edition: Edition, parts: readonly RawAnswers[]): ScopeAnswers {
  const reports = parts.flatMap((part) => part.reports);
  const roots = new Map<Report, Subject[]>();
  const hiddenBy = findHidden(reports);
  for (const { report } of reports) if (!hiddenBy.has(report)) roots.set(report, []);
  for (const { report } of reports) {
    const root = rootOf(report, hiddenBy);
    if (root !== report) roots.get(root)?.push(...report.subjects.slice(0, 1));
  }
  const findings: Finding[] = [];
  for (const reported of reports) {
    const folded = roots.get(reported.report);
    if (folded !== undefined) findings.push(asFinding(reported, state, edition, folded));
  }
  for (const report of parts.flatMap((part) => part.ownReports)) {
    findings.push({
      key: findingKey(report.ruleId, report.subjects),
      rule: report.ruleId,
      severity: report.severity ?? "advice",
      status: "stable",
      state,
      subjects: report.subjects,
      message: report.message,
      numbers: report.data ?? {},
      folded: 0,
      foldedSubjects: [],
      ...(report.offers !== undefined && state === "proposed" && { offers: report.offers }),
    });
  }
  const asked = new Set(
    reports.flatMap(({ report }) =>
      (report.asks ?? []).flatMap(({ rule, subjects }) => subjects.map((id) => `${rule}|${id}`)),
    ),
  );
  const open = parts
    .flatMap((part) => part.couldNotTell)
    .filter(({ rule, report }) => !asked.has(`${rule.id}|${report.subjects[0]?.id}`));
  return { findings: findings.sort(bySeverity), couldNotTell: askedOnce(state, open).sort(byKey) };
}

type Asking = Pick<Rule, "id">;

/** Questions with one answer become one, under the first of their rules; all others stand as they are. */
function askedOnce(state: StateName, open: RawAnswers["couldNotTell"]): CannotTell[] {
  const shared = new Map<string, { readonly rule: Asking; readonly question: SharedQuestion }[]>();
  const questions: CannotTell[] = [];
  for (const { rule, report } of open) {
    const { subjects, message, missing, enterAt, toDo, shared: question } = report;
    if (question !== undefined) {
      const same = shared.get(question.id);
      if (same === undefined) shared.set(question.id, [{ rule, question }]);
      else same.push({ rule, question });
      continue;
    }
    questions.push(cannotTell(state, rule, { subjects, message, missing, enterAt, toDo }));
  }
  for (const same of shared.values()) {
    same.sort((a, b) => (a.rule.id + a.question.cannot < b.rule.id + b.question.cannot ? -1 : 1));
    const [first] = same;
    if (first === undefined) continue;
    const { subjects, lead, missing, enterAt, toDo } = first.question;
    const waiting = listed([...new Set(same.map(({ question }) => question.cannot))]);
    const message = wording.cannotTell(lead, waiting);
    questions.push(cannotTell(state, first.rule, { subjects, message, missing, enterAt, toDo }));
  }
  return questions;
}

interface Question extends Pick<CannotTell, "subjects" | "message" | "missing"> {
  readonly enterAt: Subject | undefined;
  readonly toDo: string | undefined;
}

const cannotTell = (state: StateName, rule: Asking, { enterAt, toDo, ...rest }: Question): CannotTell => ({
  key: findingKey(rule.id, rest.subjects),
  rule: rule.id,
  state,
  ...rest,
  ...(enterAt !== undefined && { enterAt }),
  ...(toDo !== undefined && { toDo }),
});

/** How many checks the answers stand on. */
export const checksRunIn = (parts: readonly RawAnswers[]): number =>
  parts.reduce((sum, { checksRun }) => sum + checksRun, 0);

type Reported = RawAnswers["reports"][number];

/** The first report, in stable order, that claims another as its consequence. */
function findHidden(reports: readonly Reported[]): ReadonlyMap<Report, Report> {
  const byRuleAndSubject = new Map<string, Report[]>();
  for (const { rule, report } of reports) {
    const key = `${rule.id}|${report.subjects[0]?.id}`;
    const list = byRuleAndSubject.get(key);
    if (list === undefined) byRuleAndSubject.set(key, [report]);
    else list.push(report);
  }
  const hiddenBy = new Map<Report, Report>();
  const causes = reports
    .filter(({ report }) => report.hides !== undefined)
    .sort((a, b) => (keyOf(a) < keyOf(b) ? -1 : 1));
  for (const { report } of causes) {
    for (const { rule, subjects } of report.hides ?? []) {
      for (const id of subjects) {
        for (const hidden of byRuleAndSubject.get(`${rule}|${id}`) ?? []) {
          if (hidden !== report && !hiddenBy.has(hidden) && !leadsTo(report, hidden, hiddenBy))
            hiddenBy.set(hidden, report);
        }
      }
    }
  }
  return hiddenBy;
}

/** Whether following causes from `from` arrives at `to`: two reports may not hide each other. */
function leadsTo(from: Report, to: Report, hiddenBy: ReadonlyMap<Report, Report>): boolean {
  for (let at: Report | undefined = from; at !== undefined; at = hiddenBy.get(at)) if (at === to) return true;
  return false;
}

function rootOf(report: Report, hiddenBy: ReadonlyMap<Report, Report>): Report {
  let root = report;
  for (let next = hiddenBy.get(root); next !== undefined; next = hiddenBy.get(root)) root = next;
  return root;
}

const keyOf = ({ rule, report }: Reported): string => findingKey(rule.id, report.subjects);

function asFinding(
  { rule, report, amendments }: Reported,
  state: StateName,
  edition: Edition,
  folded: readonly Subject[],
): Finding {
  const section = report.section ?? rule.sections[edition];
  // A check of our own rests on no text.
  const textOf = section?.confidence === "own-rule" ? undefined : standInFor(getEdition(edition), rule.id);
  const once = new Map(folded.map((one) => [`${one.kind}:${one.id}`, one]));
  const foldedSubjects = [...once.values()].sort((a, b) =>
    a.name < b.name ? -1 : a.name > b.name ? 1 : a.id < b.id ? -1 : 1,
  );
  return {
    key: findingKey(rule.id, report.subjects),
    rule: rule.id,
    severity: report.severity ?? rule.severity,
    status: rule.status,
    state,
    subjects: report.subjects,
    message: report.message,
    numbers: report.data ?? {},
    ...(section !== undefined && { section }),
    ...(textOf !== undefined && { textOf }),
    ...(amendments !== undefined && { amendments }),
    ...(report.basis !== undefined && { basis: report.basis }),
    folded: folded.length,
    foldedSubjects,
    ...(report.fix !== undefined && state === "proposed" && { fix: report.fix }),
    ...(report.offers !== undefined && report.offers.length > 0 && state === "proposed" && { offers: report.offers }),
  };
}

const byKey = (a: { readonly key: string }, b: { readonly key: string }): number =>
  a.key < b.key ? -1 : a.key > b.key ? 1 : 0;

const bySeverity = (a: Finding, b: Finding): number =>
  severityRank(a.severity) - severityRank(b.severity) || byKey(a, b);
