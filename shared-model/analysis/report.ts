import type { OutletAnswer } from "../answers/circuit.ts";
import type { FillLedger } from "../answers/fill.ts";
import type { CannotTell, Finding, ScopeAnswers, ScopeKey } from "../answers/finding.ts";
import type { EnclosureId } from "../model/ids.ts";
import type { Edition, StateName } from "../model/project.ts";
import { type StatedAmendment, statedAmendments } from "../rules/amendment-reports.ts";
import type { CheckState } from "./check-state.ts";
import { worstFirst } from "./compare-states.ts";
import { checksRun } from "./state-answers.ts";

/** Everything about one state at once, sorted worst first, for the command line. */
export interface Report {
  readonly edition: Edition;
  /** Local amendments of the document, and which of them change nothing. */
  readonly amendments: readonly StatedAmendment[];
  readonly state: StateName;
  readonly findings: readonly Finding[];
  readonly couldNotTell: readonly CannotTell[];
  readonly checksRun: number;
  readonly ledgers: Readonly<Record<EnclosureId, FillLedger>>;
  readonly outlets: readonly OutletAnswer[];
}

type Shown = (scope: ScopeKey) => ScopeAnswers | undefined;

/** All findings about one state, worst first. */
export const findingsOf = (checked: CheckState, shown: Shown): readonly Finding[] =>
  worstFirst([...checked.scopes.keys()].flatMap((scope) => shown(scope)?.findings ?? []));

/** @param shown The answers of a scope as they are shown. */
export function reportOf(checked: CheckState, shown: Shown): Report {
  const answers = [...checked.scopes.keys()].flatMap((scope) => shown(scope) ?? []);
  const ids = [...checked.own.keys()].sort();
  return {
    edition: checked.project.edition,
    amendments: statedAmendments(checked.project),
    state: checked.state,
    findings: findingsOf(checked, shown),
    couldNotTell: answers.flatMap(({ couldNotTell }) => couldNotTell).sort((a, b) => (a.key < b.key ? -1 : 1)),
    checksRun: checksRun(checked),
    ledgers: Object.fromEntries(ids.map((id) => [id, checked.own.get(id)?.ledger])) as Report["ledgers"],
    outlets: ids.flatMap((id) => checked.outlets.get(id) ?? []),
  };
}
