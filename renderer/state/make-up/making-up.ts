import type { FitAnswer, FitAsk, MakeUpAnswer, MakeUpAsk } from "../../../shared-model/answers/make-up.ts";
import type { TypedCall } from "../../../shared-model/commands/command-args.ts";
import type { EnclosureId, OutletKey } from "../../../shared-model/model/ids.ts";
import { dispatch, documentStore, followDocument, setShownState } from "../document-store.ts";
import { goTo, notify, sessionStore, showPane, turnTo } from "../session-store.ts";
import { type MakeUpJob, type MakeUpTold, madeOf, makeUpStore, NO_MAKE_UP } from "./make-up-store.ts";
import { wording } from "./words.ts";

type AskMakeUp = (ask: MakeUpAsk) => Promise<MakeUpAnswer | undefined>;
type AskFit = (ask: FitAsk) => Promise<FitAnswer | undefined>;

let askMakeUp: AskMakeUp | undefined;
let askFit: AskFit | undefined;

/** Says who is to be asked; the state folder does not know the worker. */
export function makeUpBy(makeUp: AskMakeUp, fit: AskFit): void {
  askMakeUp = makeUp;
  askFit = fit;
}

/** What is typed is asked when the hand rests. */
const REST_MS = 120;
/** An answer that does not come is asked for again so often: a worker may be starting, the document may have moved on. */
const TRIES = 20;
const AGAIN_AFTER_MS = 150;

let stopFollowing: (() => void) | undefined;
let timer: ReturnType<typeof setTimeout> | undefined;
/** Counts what was asked: an answer to what was asked before is none. */
let asked = 0;
/** Where the focus was when it began, and goes back to. */
let opener: Element | null = null;

/** Begins the make-up of a box of proposed. */
export const beginMakeUp = (box: EnclosureId): void => begin({ kind: "make-up", box, left: [] });

/** Begins to fit a ground-fault device in the place of a receptacle of proposed. */
export const beginFit = (outlet: OutletKey): void => begin({ kind: "fit", outlet, decided: [], left: [] });

function begin(job: MakeUpJob): void {
  if (documentStore.get().readOnly) return;
  if (makeUpStore.get().job === undefined) opener = document.activeElement;
  makeUpStore.set({ ...NO_MAKE_UP, job, busy: true });
  showPane("make-up");
  stopFollowing ??= followDocument(({ patches }) => {
    if (patches === undefined) leaveMakeUp();
    else askSoon(0);
  });
  askSoon(0);
}

/** Changes what was answered, and asks anew. */
export function changeMakeUp(job: MakeUpJob): void {
  makeUpStore.merge({ job, busy: true });
  askSoon(REST_MS);
}

/** Asks again after nobody could answer. */
export const askAgain = (): void => askSoon(0);

export function showPreview(preview: boolean): void {
  makeUpStore.merge({ preview });
}

function askSoon(after: number): void {
  clearTimeout(timer);
  makeUpStore.merge({ busy: true, trouble: undefined });
  const number = ++asked;
  timer = setTimeout(() => void askNow(number), after);
}

async function askNow(number: number): Promise<void> {
  for (let tries = 0; tries < TRIES; tries += 1) {
    const { job } = makeUpStore.get();
    if (job === undefined || number !== asked) return;
    const told = await toldOf(job);
    if (number !== asked) return;
    if (told !== undefined) {
      makeUpStore.merge({ told, busy: false, trouble: undefined });
      return;
    }
    await new Promise((done) => setTimeout(done, AGAIN_AFTER_MS));
  }
  if (number === asked) makeUpStore.merge({ told: undefined, busy: false, trouble: wording.nobodyAnswers });
}

async function toldOf(job: MakeUpJob): Promise<MakeUpTold | undefined> {
  if (job.kind === "make-up") {
    const { kind, ...ask } = job;
    const answer = await askMakeUp?.({ ...ask, state: "proposed" });
    return answer && { kind, answer };
  }
  const { kind, ...ask } = job;
  const answer = await askFit?.(ask);
  return answer && { kind, answer };
}

/** Runs the make-up that is shown, as one step, and shows the box as it is then. @returns Whether it was run. */
export function acceptMakeUp(): boolean {
  const state = makeUpStore.get();
  const made = madeOf(state);
  if (made === undefined || state.busy) return false;
  const box = made.box;
  // What is run is no reason to ask anew.
  stopFollowing?.();
  stopFollowing = undefined;
  // The call is data from the worker: the command looks at its form.
  const done = dispatch({ command: made.call.command, args: made.call.args } as TypedCall);
  if (!done.ok) {
    notify("problem", wording.notDone, [done.refusal.message]);
    leaveMakeUp();
    return false;
  }
  setShownState("proposed");
  leaveMakeUp();
  // The box has grown by what it now holds: all of it comes into view.
  goTo({ kind: "enclosure", id: box }, "details");
  return true;
}

/** Leaves it without a change; the focus goes back to where it was. */
export function leaveMakeUp(): void {
  clearTimeout(timer);
  asked += 1;
  stopFollowing?.();
  stopFollowing = undefined;
  const wasOpen = makeUpStore.get().job !== undefined;
  makeUpStore.set(NO_MAKE_UP);
  if (sessionStore.get().pane === "make-up") turnTo("details");
  const back = opener;
  opener = null;
  if (!wasOpen) return;
  // Its button stands in a pane that is only now drawn again: another one, that does the same. The command field would open
  // its list again; where it was begun from there, that button is the nearest thing.
  requestAnimationFrame(() => {
    const byField = back?.closest(".command") != null;
    const stays = back instanceof HTMLElement && back.isConnected && back !== document.body && !byField;
    const own = stays ? back : undefined;
    const again =
      byField || back?.matches("[data-make-up]") ? document.querySelector<HTMLElement>("[data-make-up]") : null;
    (own ?? again ?? document.querySelector<HTMLElement>("[data-sheet-stop]"))?.focus();
  });
}
