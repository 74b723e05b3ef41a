import type { ScopeWork } from "../../../shared-model/answers/scope.ts";
import { documentStore, followDocument, hasProposed, setShownState } from "../document-store.ts";
import { leaveEnergise } from "../energise/ending.ts";
import { energiseStore } from "../energise/energise-store.ts";
import { notify, type Pane, sessionStore, showPane, takeTool, turnTo } from "../session-store.ts";
import { askScope } from "./ask-scope.ts";
import { hideScope, resetScope, scopeStore } from "./scope-store.ts";
import { wording } from "./words.ts";

/** An answer that does not come is asked for again so often: a worker may be starting. */
const TRIES = 40;
const AGAIN_AFTER_MS = 150;
/** One that was worked at for longer and came to nothing is not asked for again: it would come to nothing again. */
const PATIENCE_MS = 5000;

/** Of an answer whose work is still being worked out. */
const NO_WORK_YET: ScopeWork = { steps: [], signOffs: [], cautions: [], assumptions: [] };

/** What shows it in this window; fetched when it is asked for first, before anything changes on the screen. */
const needs = new Set<() => Promise<unknown>>();
/** The pane that its list took the place of. */
let before: Pane = "details";
let stops: readonly (() => void)[] = [];
let asking = false;
/** Whether it was asked for and what shows it is still being fetched. */
let coming = false;
/** Counts how often it was asked for or ended: what was on its way before is about something else. */
let round = 0;

/** Says what has to be fetched before the difference can be shown, until the returned function is called. */
export function needForScope(fetch: () => Promise<unknown>): () => void {
  needs.add(fetch);
  return () => needs.delete(fetch);
}

/** Panes that are there whatever is done. */
const ALWAYS: ReadonlySet<Pane> = new Set<Pane>(["details", "findings", "rooms"]);

/** Shows the difference of as found and proposed; where it is shown, or was asked for just now, goes back. */
export async function toggleScope(): Promise<void> {
  if (scopeStore.get().on || coming) leaveScope();
  else await showScope();
}

/** Shows as found and proposed over each other. Looking only: nothing is edited meanwhile. */
export async function showScope(): Promise<void> {
  if (scopeStore.get().on) return;
  if (!hasProposed(documentStore.get())) {
    notify("note", wording.nothingToCompare, [wording.startProposedFirst]);
    return;
  }
  const asked = ++round;
  coming = true;
  try {
    await Promise.all([...needs].map((fetch) => fetch()));
  } catch {
    if (asked === round) notify("problem", wording.couldNotBeFetched, [wording.tryAgain]);
    return;
  } finally {
    if (asked === round) coming = false;
  }
  // Meanwhile another document was opened, or proposed was given up.
  if (asked !== round || !setShownState("proposed")) return;
  leaveEnergise();
  takeTool(undefined);
  before = sessionStore.get().pane;
  scopeStore.merge({ on: true, trouble: undefined });
  showPane("scope");
  stops = [
    documentStore.subscribe(() => {
      if (documentStore.get().state !== "proposed") leaveScope();
    }),
    energiseStore.subscribe(() => {
      if (energiseStore.get().on) leaveScope();
    }),
    followDocument(({ patches }) => {
      if (patches === undefined) {
        leaveScope();
        resetScope();
      } else if (scopeStore.get().on) ask();
    }),
  ];
  const { about, working } = scopeStore.get();
  if (working || about !== documentStore.get().revision) ask();
}

/** Ends it; proposed is shown and edited again, unless as found is shown already. */
export function leaveScope(): void {
  round += 1;
  coming = false;
  if (!scopeStore.get().on) return;
  for (const stop of stops) stop();
  stops = [];
  hideScope();
  if (sessionStore.get().pane === "scope") turnTo(ALWAYS.has(before) ? before : "details");
}

/** Asks for the difference of the document as it is now. While an answer is on its way the next is asked after it. */
export function ask(): void {
  scopeStore.merge({ trouble: undefined });
  if (!asking) void askUntilTold();
}

async function askUntilTold(): Promise<void> {
  asking = true;
  try {
    for (let tries = 0; scopeStore.get().on; ) {
      const { revision } = documentStore.get();
      const begun = performance.now();
      const answer = await askScope((part) => {
        if (scopeStore.get().on && documentStore.get().revision === revision)
          scopeStore.merge({ answer: { ...part, ...NO_WORK_YET }, about: revision, working: true });
      });
      if (!scopeStore.get().on) return;
      if (answer !== undefined && documentStore.get().revision === revision) {
        scopeStore.merge({ answer, about: revision, working: false, trouble: undefined });
        return;
      }
      if (documentStore.get().revision !== revision) continue;
      if (++tries > TRIES || performance.now() - begun > PATIENCE_MS) {
        // What was found before says nothing of the drawing as it is now.
        scopeStore.merge({
          answer: undefined,
          about: undefined,
          working: false,
          trouble: wording.cannotBeWorkedOut,
        });
        return;
      }
      await new Promise((done) => setTimeout(done, AGAIN_AFTER_MS));
    }
  } finally {
    asking = false;
  }
}
