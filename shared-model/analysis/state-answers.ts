import type { ScopeAnswers, ScopeKey } from "../answers/finding.ts";
import type { EnclosureId } from "../model/ids.ts";
import type { CheckDelta, CheckState } from "./check-state.ts";
import type { StateAnswers } from "./protocol.ts";

/** What is to be sent about one state. */
export interface Sending {
  readonly checked: CheckState;
  /** What was checked again; the check itself when all of it was. */
  readonly delta: CheckDelta | undefined;
  /** Scopes that were not, and whose findings stand otherwise to the other state. */
  readonly restated: ReadonlySet<ScopeKey>;
  /** The answers of a scope as they are shown. */
  readonly shown: (scope: ScopeKey) => ScopeAnswers | undefined;
}

/** @returns Undefined when nothing about the state is different. */
export function stateAnswers({ checked, delta, restated, shown }: Sending): StateAnswers | undefined {
  if (delta === undefined && restated.size === 0) return undefined;
  const scopes: { key: ScopeKey; answers: ScopeAnswers }[] = [];
  const removed: ScopeKey[] = [];
  for (const key of new Set([...(delta?.scopes.keys() ?? []), ...restated])) {
    const answers = shown(key);
    if (answers === undefined) removed.push(key);
    else scopes.push({ key, answers });
  }
  return {
    state: checked.state,
    whole: delta === checked,
    scopes,
    removed,
    ledgers: table(delta?.own, ({ ledger }) => ledger),
    roles: table(delta?.roles, (roles) => roles),
    outlets: table(delta?.outlets, (outlets) => outlets),
    checksRun: checksRun(checked),
  };
}

function table<V, T>(
  changes: ReadonlyMap<EnclosureId, V | undefined> = new Map(),
  pick: (value: V) => T,
): Record<EnclosureId, T | null> {
  const entries: Record<EnclosureId, T | null> = {};
  for (const [id, value] of changes) entries[id] = value === undefined ? null : pick(value);
  return entries;
}

export function checksRun(checked: CheckState): number {
  let sum = 0;
  for (const scope of checked.scopes.values()) sum += scope.checksRun;
  return sum;
}
