import type { AnswersMessage, StateAnswers } from "../../shared-model/analysis/protocol.ts";
import type { BoxRoles, OutletAnswer } from "../../shared-model/answers/circuit.ts";
import type { FillLedger } from "../../shared-model/answers/fill.ts";
import type { CannotTell, Finding, ScopeAnswers, ScopeKey } from "../../shared-model/answers/finding.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { StateName } from "../../shared-model/model/project.ts";
import { severityRank } from "../../shared-model/model/severity.ts";
import { createStore, type Store } from "./store.ts";
import { wording } from "./words.ts";

/** What the checks said last of one state, kept by the part of the drawing it belongs to. */
export interface StateFindings {
  /** Revision of the document that the answers belong to; -1 before the first. */
  readonly revision: number;
  readonly byScope: ReadonlyMap<ScopeKey, ScopeAnswers>;
  /** All findings, worst first, then by rule and subject. */
  readonly findings: readonly Finding[];
  readonly couldNotTell: readonly CannotTell[];
  readonly ledgers: Readonly<Record<EnclosureId, FillLedger>>;
  readonly roles: Readonly<Record<EnclosureId, BoxRoles>>;
  readonly outlets: Readonly<Record<EnclosureId, readonly OutletAnswer[]>>;
  readonly checksRun: number;
}

/** The answers about the state that is shown, and beside them those about the other one. */
export interface FindingsState extends StateFindings {
  readonly shown: StateName;
  /** As found while proposed is shown, and the other way round; undefined while nothing is proposed. */
  readonly other: StateFindings | undefined;
  readonly tookMs: number;
  /** Set while checking has stopped or a rule is off; a sentence for the person. */
  readonly trouble: string | undefined;
}

const NONE: StateFindings = {
  revision: -1,
  byScope: new Map(),
  findings: [],
  couldNotTell: [],
  ledgers: {},
  roles: {},
  outlets: {},
  checksRun: 0,
};

const EMPTY: FindingsState = { ...NONE, shown: "as-found", other: undefined, tookMs: 0, trouble: undefined };

export const findingsStore: Store<FindingsState> = createStore(EMPTY);

/** Worst first; within a severity by rule, then by the name of what it is about, numbers counted as numbers. */
export function compareFindings(a: Finding, b: Finding): number {
  return (
    severityRank(a.severity) - severityRank(b.severity) ||
    compareText(a.rule, b.rule) ||
    compareText(a.subjects[0]?.name ?? "", b.subjects[0]?.name ?? "") ||
    compareText(a.key, b.key)
  );
}

const compareText = new Intl.Collator("en", { numeric: true }).compare;

/** Takes over what was checked again. Answers older than those held are dropped. */
export function receiveAnswers({ revision, states, changed, tookMs }: AnswersMessage): void {
  const now = findingsStore.get();
  if (revision < newestOf(now)) return;
  const renewed = (state: StateName): StateFindings | undefined => {
    if (!states.includes(state)) return undefined;
    const before = findingsOf(now, state) ?? NONE;
    const answers = changed.find((one) => one.state === state);
    return answers === undefined ? { ...before, revision } : withAnswers(before, answers, revision);
  };
  const { shown } = now;
  findingsStore.set({ ...now, ...(renewed(shown) ?? NONE), other: renewed(otherState(shown)), tookMs });
}

/** Shows what the checks said of the other state; the window calls it whenever it changes the state that it shows. */
export function showFindingsOf(state: StateName): void {
  const now = findingsStore.get();
  if (now.shown === state) return;
  findingsStore.set({ ...now, ...(now.other ?? NONE), shown: state, other: now.revision < 0 ? undefined : own(now) });
}

/** Selector: the answers about one state, whether it is shown or not; undefined before it was checked. */
export function findingsOf(now: FindingsState, state: StateName): StateFindings | undefined {
  if (state !== now.shown) return now.other;
  return now.revision < 0 ? undefined : own(now);
}

const otherState = (state: StateName): StateName => (state === "as-found" ? "proposed" : "as-found");

const newestOf = ({ revision, other }: FindingsState): number => Math.max(revision, other?.revision ?? -1);

/** Without what belongs to the window as a whole. */
function own({ shown: _shown, other: _other, tookMs: _tookMs, trouble: _trouble, ...rest }: FindingsState) {
  return rest satisfies StateFindings;
}

function withAnswers(known: StateFindings, answers: StateAnswers, revision: number): StateFindings {
  const before = answers.whole ? NONE : known;
  const byScope = new Map(before.byScope);
  const gone: ScopeAnswers[] = [];
  for (const key of [...answers.removed, ...answers.scopes.map((scope) => scope.key)]) {
    const former = byScope.get(key);
    if (former !== undefined) gone.push(former);
    byScope.delete(key);
  }
  for (const scope of answers.scopes) byScope.set(scope.key, scope.answers);
  const come = answers.scopes.map((scope) => scope.answers);
  return {
    revision,
    byScope,
    findings: replaced(before.findings, gone, come, ({ findings }) => findings, compareFindings),
    couldNotTell: replaced(before.couldNotTell, gone, come, ({ couldNotTell }) => couldNotTell, compareOpen),
    ledgers: mergeTable(before.ledgers, answers.ledgers),
    roles: mergeTable(before.roles, answers.roles),
    outlets: mergeTable(before.outlets, answers.outlets),
    checksRun: answers.checksRun,
  };
}

const compareOpen = (a: CannotTell, b: CannotTell): number => compareText(a.rule, b.rule) || compareText(a.key, b.key);

/**
 * A sorted list without what is gone and with what has come. A house has thousands of findings and an edit changes a
 * few, so the many are walked through, not sorted again; an unchanged list stays the same object.
 */
function replaced<T>(
  list: readonly T[],
  gone: readonly ScopeAnswers[],
  come: readonly ScopeAnswers[],
  part: (answers: ScopeAnswers) => readonly T[],
  compare: (a: T, b: T) => number,
): readonly T[] {
  const left = new Set(gone.flatMap(part));
  const added = come.flatMap(part).sort(compare);
  if (left.size === 0 && added.length === 0) return list;
  const merged: T[] = [];
  let next = 0;
  for (const item of list) {
    if (left.has(item)) continue;
    for (let one = added[next]; one !== undefined && compare(one, item) < 0; one = added[next]) {
      merged.push(one);
      next += 1;
    }
    merged.push(item);
  }
  return [...merged, ...added.slice(next)];
}

function mergeTable<T>(
  table: Readonly<Record<EnclosureId, T>>,
  changes: Readonly<Record<EnclosureId, T | null>>,
): Readonly<Record<EnclosureId, T>> {
  const entries = Object.entries(changes) as [EnclosureId, T | null][];
  if (entries.length === 0) return table;
  const merged: Record<EnclosureId, T> = { ...table };
  for (const [id, value] of entries) {
    if (value === null) delete merged[id];
    else merged[id] = value;
  }
  return merged;
}

/** For a document that was just opened: no answer about the one before may show. */
export function forgetAnswers(): void {
  const { shown, trouble } = findingsStore.get();
  findingsStore.set({ ...EMPTY, shown, trouble });
}

/** Tells the person that checking is hindered; undefined when it works again. */
export function reportTrouble(trouble: string | undefined): void {
  findingsStore.merge({ trouble });
}

/** Selector: one sentence about all of it. It never says more than what was checked. */
export function summaryOf({ findings, couldNotTell, checksRun, revision }: FindingsState): string {
  if (revision < 0) return wording.nothingWasCheckedYet;
  const unsure = wording.couldNotBeTold(couldNotTell.length);
  const checks = wording.run(checksRun, checksRun === 1 ? "check" : "checks");
  if (findings.length === 0) return wording.noFindingsIn(checks, unsure);
  return wording.inWord(findings.length, findings.length === 1 ? "finding" : "findings", checks, unsure);
}
