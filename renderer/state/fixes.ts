import type { PreviewResult } from "../../shared-model/analysis/protocol.ts";
import type { Finding, Fix, Subject } from "../../shared-model/answers/finding.ts";
import type { TypedCall } from "../../shared-model/commands/command-args.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import { dispatch, documentStore, followDocument, shownInstallation } from "./document-store.ts";
import { findingsOf, findingsStore } from "./findings-store.ts";
import { laterWording } from "./later-words.ts";
import { stepTitle } from "./step-title.ts";
import { createStore, type Store } from "./store.ts";
import { enclosuresOfSubject } from "./subject-target.ts";

/** What came of the fixes that were pressed. All of it holds for one revision: the next change starts afresh. */
export interface FixState {
  /** Key of the fix that is being tried. */
  readonly trying: string | undefined;
  /** Why a fix was not applied, by its key: it is withdrawn. */
  readonly withdrawn: ReadonlyMap<string, string>;
  /** Name of the fix that the last change was. */
  readonly done: string | undefined;
  /** What the finding was about that it mended, and the boxes around that. */
  readonly doneAbout: readonly Subject[];
}

const NOTHING: FixState = { trying: undefined, withdrawn: new Map(), done: undefined, doneAbout: [] };

export const fixStore: Store<FixState> = createStore(NOTHING);

followDocument(() => fixStore.set(NOTHING));

export const keyOfFix = (finding: Finding, fix: Fix): string => `${finding.key}\n${fix.title}`;

/** What would follow from each fix of a finding, the plain one first, then its offers; undefined where nobody can tell. */
export type JudgeFixes = (finding: Finding) => Promise<readonly (PreviewResult | undefined)[]>;

const ATTEMPTS = 3;
const NO_ANSWER = laterWording.theChecksDidNotAnswerSo;
const GONE = laterWording.theDrawingChangedMeanwhileAndThis;

/**
 * Tries a fix on a copy and applies it as one step where nothing speaks against it; otherwise the fix is withdrawn with
 * the reason. When the drawing moves on during the trial, it is tried again on the drawing as it is then.
 * @returns Whether it was applied.
 */
export async function applyFix(pressed: Finding, fix: Fix, judge: JudgeFixes): Promise<boolean> {
  const key = keyOfFix(pressed, fix);
  if (fixStore.get().trying !== undefined) return false;
  fixStore.merge({ trying: key, done: undefined });
  let finding: Finding | undefined = pressed;
  for (let attempt = 0; attempt < ATTEMPTS; attempt += 1) {
    const base = documentStore.get().revision;
    const at: number = fixesOf(finding).findIndex(({ title }) => title === fix.title);
    const now = fixesOf(finding)[at];
    if (now === undefined) return withdraw(key, GONE);
    const result: PreviewResult | undefined = (await judge(finding))[at];
    if (documentStore.get().revision !== base) {
      finding = findAgain(pressed);
      if (finding === undefined) return withdraw(key, GONE);
      continue;
    }
    const why = whyNot(result);
    return why === undefined ? run(key, now, finding.subjects) : withdraw(key, why);
  }
  return withdraw(key, NO_ANSWER);
}

/** The plain fix first, then what a person may choose from. */
export const fixesOf = ({ fix, offers = [] }: Finding): readonly Fix[] =>
  fix === undefined ? offers : [fix, ...offers];

const findAgain = ({ key, state }: Finding): Finding | undefined =>
  findingsOf(findingsStore.get(), state)?.findings.find((one) => one.key === key);

function whyNot(result: PreviewResult | undefined): string | undefined {
  if (result === undefined) return NO_ANSWER;
  return "refused" in result ? result.refused : result.objection;
}

function withdraw(key: string, why: string): false {
  fixStore.set({ ...NOTHING, withdrawn: new Map(fixStore.get().withdrawn).set(key, why) });
  return false;
}

function run(key: string, fix: Fix, subjects: readonly Subject[]): boolean {
  // Asked before the fix, which may take away what the finding was about.
  const doneAbout = [...subjects, ...boxesAround(subjects)];
  const done = dispatch(asStep(fix));
  if (!done.ok) return withdraw(key, done.refusal.message);
  fixStore.set({ ...NOTHING, done: fix.title, doneAbout });
  return true;
}

function boxesAround(subjects: readonly Subject[]): readonly Subject[] {
  const installation = shownInstallation();
  const ids = new Set(subjects.flatMap((subject) => enclosuresOfSubject(installation, subject)));
  for (const { id } of subjects) ids.delete(id as EnclosureId);
  return [...ids].map((id) => ({ kind: "enclosure", id, name: installation.enclosures[id]?.name ?? "" }));
}

/** A person's own word, not a repair of the wiring: its command has a name of its own for the step. */
export const isWord = ({ call }: Fix): boolean => call.command === "settle-held-back";

/** Undo names the step as the button did. The call is data from the checks: the command looks at its form. */
function asStep(fix: Fix): TypedCall {
  const { title, call } = fix;
  const own = { command: call.command, args: call.args } as TypedCall;
  return own.command === "run-together" || isWord(fix)
    ? own
    : { command: "run-together", args: { title: stepTitle(title), calls: [own] } };
}
