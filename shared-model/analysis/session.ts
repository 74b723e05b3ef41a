import type { Patch } from "immer";
import type { CommandCall } from "../answers/command-call.ts";
import type { Finding, ScopeAnswers, ScopeKey } from "../answers/finding.ts";
import { sameValue } from "../lib/same-value.ts";
import type { EnclosureId } from "../model/ids.ts";
import type { Edition, Project, StateName } from "../model/project.ts";
import { currentState, findInstallation } from "../queries/installation-of.ts";
import type { RuleWatch } from "../rules/run-rules.ts";
import { type CheckDelta, type CheckState, checkAll, checkEdit, takeOver } from "./check-state.ts";
import { type Comparison, compareStates, renewedBy } from "./compare-states.ts";
import { concerns } from "./find-changes.ts";
import { createMirror } from "./mirror.ts";
import type { AnswersMessage, PreviewResult } from "./protocol.ts";
import { findingsOf, type Report, reportOf } from "./report.ts";
import { seenOfAsFound } from "./seen-of-as-found.ts";
import { stateAnswers } from "./state-answers.ts";
import { type TriedCall, tryCall } from "./try-call.ts";

/** What the host sends on, with the time it took. */
export type Answers = Omit<AnswersMessage, "tookMs">;

/** A mirror of a document with everything that the rules say about its states, and how these stand to each other. */
export interface Session {
  readonly project: Project;
  /** The document as it stands, for commands to be tried on: the project itself changes in place. */
  copy(): Project;
  /** The states that the document has now. */
  readonly states: readonly StateName[];
  /** All answers about the document as it stands. */
  answers(revision: number): Answers;
  /** Follows an edit and answers what is different now. Throws when the patches do not fit the mirror. */
  applyPatches(patches: readonly Patch[], revision: number): Answers;
  /**
   * What each command would bring in a state, tried on a copy: nothing is kept of it. `mends` is the key of the finding
   * that they are to mend, `fillOf` an enclosure whose box fill is asked for. Throws when the document does not have the
   * state.
   */
  preview(
    state: StateName,
    calls: readonly CommandCall[],
    mends?: string,
    fillOf?: EnclosureId,
  ): readonly PreviewResult[];
  /** As `preview` of one command, with the edit that it made of the copy. */
  tryCall(state: StateName, call: CommandCall, mends?: string): TriedCall;
  /** Proposed once it was started, else as found, unless told. Throws when the document does not have the state. */
  report(state?: StateName): Report;
  /** The findings of a report alone, which cost less. Throws when the document does not have the state. */
  findings(state: StateName): readonly Finding[];
}

export interface SessionOptions {
  /** Checks by another edition than the one that the document names. */
  readonly edition?: Edition;
  readonly watch?: RuleWatch;
}

const STATES: readonly StateName[] = ["as-found", "proposed"];

/** Something of as found that rules see while they judge proposed is another now. */
function seesOtherwise({ state, stood }: CheckState, next: Project, patches: readonly Patch[]): boolean {
  if (state === "as-found") return false;
  const seen = seenOfAsFound(stood, next, patches);
  return seen.enclosures === undefined || seen.stood.size + seen.enclosures.size > 0;
}

/** The check of one state, and what of it an edit changed: all of it when that is the check itself. */
interface Step {
  readonly checked: CheckState;
  readonly delta: CheckDelta | undefined;
}

type Restated = Readonly<Record<StateName, ReadonlySet<ScopeKey>>>;
const NOTHING: Restated = { "as-found": new Set(), proposed: new Set() };

const isFollowed = (step: Step | undefined): step is Step => step !== undefined && step.delta !== step.checked;

/** Opens a document for checking. */
export function openSession(document: Project, options: SessionOptions = {}): Session {
  const { edition, watch } = options;
  const mirror = createMirror(edition === undefined ? document : { ...document, edition });
  const checks = new Map<StateName, CheckState>();
  let comparison: Comparison | undefined;

  for (const state of STATES)
    if (findInstallation(mirror.project, state) !== undefined)
      checks.set(state, checkAll(mirror.project, state, watch));
  compareAnew();

  function compareAnew(): void {
    const asFound = checks.get("as-found");
    const proposed = checks.get("proposed");
    comparison = asFound === undefined || proposed === undefined ? undefined : compareStates(asFound, proposed);
  }

  function checkOf(state: StateName): CheckState {
    const checked = checks.get(state);
    if (checked === undefined) throw new Error(`The document has no ${state} state.`);
    return checked;
  }

  /** The answers of a scope as they are shown. */
  const shown = (state: StateName, scope: ScopeKey): ScopeAnswers | undefined =>
    comparison === undefined ? checks.get(state)?.scopes.get(scope)?.answers : comparison.answers(state, scope);

  function follow(state: StateName, next: Project, patches: readonly Patch[]): Step | undefined {
    if (findInstallation(next, state) === undefined) {
      checks.delete(state);
      return undefined;
    }
    const known = checks.get(state);
    if (known !== undefined && !concerns(state, patches) && !seesOtherwise(known, next, patches)) {
      known.project = next;
      return { checked: known, delta: undefined };
    }
    const delta = known && checkEdit(known, next, patches);
    if (known !== undefined && delta !== undefined) {
      takeOver(known, delta);
      return { checked: known, delta };
    }
    const checked = checkAll(next, state, watch);
    checks.set(state, checked);
    return { checked, delta: checked };
  }

  /** Compares the states again as far as they changed. @returns What stands otherwise without having been checked again. */
  function compare(steps: ReadonlyMap<StateName, Step>): Restated {
    const former = comparison;
    const asFound = steps.get("as-found");
    const proposed = steps.get("proposed");
    if (former === undefined && proposed === undefined) return NOTHING;
    if (former !== undefined && isFollowed(asFound) && isFollowed(proposed))
      return former.follow({ "as-found": renewedBy(asFound.delta), proposed: renewedBy(proposed.delta) });
    compareAnew();
    const restated = { "as-found": new Set<ScopeKey>(), proposed: new Set<ScopeKey>() };
    for (const [state, { checked, delta }] of steps) {
      for (const scope of checked.scopes.keys()) {
        if (delta?.scopes.has(scope)) continue;
        const before = former === undefined ? checked.scopes.get(scope)?.answers : former.answers(state, scope);
        if (!sameValue(before, shown(state, scope))) restated[state].add(scope);
      }
    }
    return restated;
  }

  function message(revision: number, steps: ReadonlyMap<StateName, Step>, restated: Restated): Answers {
    const changed = [...steps].flatMap(
      ([state, step]) =>
        stateAnswers({ ...step, restated: restated[state], shown: (scope) => shown(state, scope) }) ?? [],
    );
    return { type: "answers", revision, states: [...steps.keys()], changed };
  }

  const tried = (state: StateName, call: CommandCall, mends?: string, fillOf?: EnclosureId): TriedCall =>
    tryCall(checkOf(state), comparison?.former(state) ?? new Map(), mirror.copy(), call, mends, fillOf);

  return {
    get project() {
      return mirror.project;
    },
    copy: mirror.copy,
    get states() {
      return [...checks.keys()];
    },
    answers(revision) {
      const steps = new Map([...checks].map(([state, checked]) => [state, { checked, delta: checked }]));
      return message(revision, steps, NOTHING);
    },
    applyPatches(patches, revision) {
      const next = mirror.follow(patches);
      const steps = new Map<StateName, Step>();
      for (const state of STATES) {
        const step = follow(state, next, patches);
        if (step !== undefined) steps.set(state, step);
      }
      return message(revision, steps, compare(steps));
    },
    preview: (state, calls, mends, fillOf) =>
      calls.map((call) => {
        const result = tried(state, call, mends, fillOf);
        return result.done ? result.brings : { refused: result.refused };
      }),
    tryCall: tried,
    report(state = currentState(mirror.project)) {
      const checked = checkOf(state);
      return reportOf(checked, (scope) => shown(state, scope));
    },
    findings: (state) => findingsOf(checkOf(state), (scope) => shown(state, scope)),
  };
}
