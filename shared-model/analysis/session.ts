import type { Patch } from "immer";
import type { OutletAnswer } from "../answers/circuit.ts";
import type { CommandCall } from "../answers/command-call.ts";
import type { FillLedger } from "../answers/fill.ts";
import type { CannotTell, Finding, ScopeKey } from "../answers/finding.ts";
import { runCommand } from "../commands/run-command.ts";
import type { EnclosureId } from "../model/ids.ts";
import type { Edition, Project, StateName } from "../model/project.ts";
import { currentState } from "../queries/installation-of.ts";
import type { RuleWatch } from "../rules/run-rules.ts";
import { type CheckDelta, type CheckState, checkAll, checkEdit, takeOver } from "./check-state.ts";
import { createMirror } from "./mirror.ts";
import type { AnswersMessage, PreviewResult } from "./protocol.ts";

/** What the host sends on, with the time it took. */
export type Answers = Omit<AnswersMessage, "tookMs">;

/** A mirror of a document with everything that the rules say about one state of it. */
export interface Session {
  readonly project: Project;
  readonly state: StateName;
  /** All answers about the document as it stands. */
  answers(revision: number): Answers;
  /** Follows an edit and answers what is different now. Throws when the patches do not fit the mirror. */
  applyPatches(patches: readonly Patch[], revision: number): Answers;
  /** What each command would bring, tried on a copy: nothing is kept of it. */
  preview(calls: readonly CommandCall[]): readonly PreviewResult[];
  report(): Report;
}

/** Everything at once, sorted worst first, for the command line. */
export interface Report {
  readonly edition: Edition;
  readonly state: StateName;
  readonly findings: readonly Finding[];
  readonly couldNotTell: readonly CannotTell[];
  readonly checksRun: number;
  readonly ledgers: Readonly<Record<EnclosureId, FillLedger>>;
  readonly outlets: readonly OutletAnswer[];
}

export interface SessionOptions {
  /** Proposed once it was started, else as found, unless given. */
  readonly state?: StateName;
  /** Checks by another edition than the one that the document names. */
  readonly edition?: Edition;
  readonly watch?: RuleWatch;
}

/** Opens a document for checking. Throws when it does not have the state asked for: look at `findInstallation` first. */
export function openSession(document: Project, options: SessionOptions = {}): Session {
  const project = options.edition === undefined ? document : { ...document, edition: options.edition };
  const state = options.state ?? currentState(project);
  const mirror = createMirror(project);
  let checked = checkAll(mirror.project, state, options.watch);

  return {
    get project() {
      return checked.project;
    },
    state,
    answers: (revision) => message(revision, state, checked, everything(checked), true),
    applyPatches(patches, revision) {
      const next = mirror.follow(patches);
      const delta = checkEdit(checked, next, patches);
      if (delta === undefined) {
        checked = checkAll(next, state, options.watch);
        return message(revision, state, checked, everything(checked), true);
      }
      takeOver(checked, delta);
      return message(revision, state, checked, delta, false);
    },
    preview: (calls) => calls.map((call) => previewOf(checked, mirror.copy(), call)),
    report: () => reportOf(checked),
  };
}

/** The whole of a check as a difference from nothing. */
const everything = (checked: CheckState): CheckDelta => checked;

function message(
  revision: number,
  state: StateName,
  checked: CheckState,
  { own, roles, outlets, scopes }: CheckDelta,
  whole: boolean,
): Answers {
  const present: { key: ScopeKey; answers: AnswersMessage["scopes"][number]["answers"] }[] = [];
  const removed: ScopeKey[] = [];
  for (const [key, scope] of scopes) {
    if (scope === undefined) removed.push(key);
    else present.push({ key, answers: scope.answers });
  }
  return {
    type: "answers",
    revision,
    state,
    whole,
    scopes: present,
    removed,
    ledgers: table(own, (answers) => answers.ledger),
    roles: table(roles, (value) => value),
    outlets: table(outlets, (value) => value),
    checksRun: checksRun(checked),
  };
}

function table<V, T>(
  changes: ReadonlyMap<EnclosureId, V | undefined>,
  pick: (value: V) => T,
): Record<EnclosureId, T | null> {
  const entries: Record<EnclosureId, T | null> = {};
  for (const [id, value] of changes) entries[id] = value === undefined ? null : pick(value);
  return entries;
}

function checksRun(checked: CheckState): number {
  let sum = 0;
  for (const scope of checked.scopes.values()) sum += scope.checksRun;
  return sum;
}

function previewOf(checked: CheckState, copy: Project, call: CommandCall): PreviewResult {
  const done = runCommand(copy, call);
  if (!done.ok) return { refused: done.refusal.message };
  const delta = checkEdit(checked, done.project, done.patches);
  const after = delta ?? checkAll(done.project, checked.state, checked.watch);
  const was = new Map<string, Finding>();
  const is = new Map<string, Finding>();
  for (const key of new Set([...after.scopes.keys(), ...(delta === undefined ? checked.scopes.keys() : [])])) {
    for (const finding of checked.scopes.get(key)?.answers.findings ?? []) was.set(finding.key, finding);
    for (const finding of after.scopes.get(key)?.answers.findings ?? []) is.set(finding.key, finding);
  }
  const introduces = [...is.values()].filter(({ key }) => !was.has(key));
  return {
    introduces: introduces.map(({ rule, severity, message: words }) => ({ rule, severity, message: words })),
    repairs: [...was.keys()].filter((key) => !is.has(key)).length,
  };
}

const SEVERITY_RANK = { danger: 0, violation: 1, caution: 2, advice: 3 } as const;
const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

function reportOf(checked: CheckState): Report {
  const scopes = [...checked.scopes.values()];
  const ids = [...checked.own.keys()].sort();
  return {
    edition: checked.project.edition,
    state: checked.state,
    findings: scopes
      .flatMap((scope) => scope.answers.findings)
      .sort((a, b) => SEVERITY_RANK[a.severity] - SEVERITY_RANK[b.severity] || byText(a.key, b.key)),
    couldNotTell: scopes.flatMap((scope) => scope.answers.couldNotTell).sort((a, b) => byText(a.key, b.key)),
    checksRun: checksRun(checked),
    ledgers: Object.fromEntries(ids.map((id) => [id, checked.own.get(id)?.ledger])) as Report["ledgers"],
    outlets: ids.flatMap((id) => checked.outlets.get(id) ?? []),
  };
}
