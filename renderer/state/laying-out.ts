import type { BoxMove } from "../../shared-model/geometry/arrange.ts";
import type { InSteps, Progress } from "../../shared-model/geometry/circuit/settle.ts";
import { type DocumentState, documentStore, followDocument, installationOf } from "./document-store.ts";
import { notify } from "./session-store.ts";
import { createStore, type Store } from "./store.ts";

/** A layout that takes long enough to be told about. */
export interface LayingOut {
  readonly title: string;
  /** The furthest it has come: boxes that grew are fitted in again, but nobody likes a bar that goes back. */
  readonly progress: Progress;
}

export interface LayingOutState {
  readonly running: LayingOut | undefined;
}

export const layingOutStore: Store<LayingOutState> = createStore<LayingOutState>({ running: undefined });

export interface Layout {
  readonly title: string;
  /** Begins from a document; begun anew where that changes on the way. */
  readonly begin: (now: DocumentState) => InSteps<readonly BoxMove[]>;
  /** Called once, unless it is cancelled. */
  readonly end: (moves: readonly BoxMove[]) => void;
}

/** What a person does not notice is done in one go; the rest in slices, with a turn for the window after each. */
const AT_ONCE_MS = 60;
const SLICE_MS = 12;

let timer: ReturnType<typeof setTimeout> | undefined;
let unfollow: () => void = () => {};

/**
 * Works out where boxes go while the window goes on answering. Nothing of the document is touched before the end, so
 * that a layout that is cancelled leaves everything as it was. Of two layouts the later counts.
 */
export function layOut({ title, begin, end }: Layout): void {
  stop();
  let from = documentStore.get();
  let steps = begin(from);
  unfollow = followDocument(({ patches }) => {
    // A change without patches is another document.
    if (patches === undefined) stop();
  });
  const slice = (budget: number): void => {
    timer = undefined;
    const now = documentStore.get();
    if (now.readOnly || now.state !== from.state) {
      stop();
      return;
    }
    if (!isSameSheet(now, from)) {
      from = now;
      steps = begin(now);
    }
    const until = performance.now() + budget;
    for (;;) {
      const step = steps.next();
      if (step.done === true) {
        stop();
        end(step.value);
        return;
      }
      if (performance.now() < until) continue;
      layingOutStore.set({ running: { title, progress: further(step.value) } });
      timer = setTimeout(slice, 0, SLICE_MS);
      return;
    }
  };
  slice(AT_ONCE_MS);
}

/** Ends a layout without a trace. @returns False when none was running. */
export function cancelLayOut(): boolean {
  const { running } = layingOutStore.get();
  if (running === undefined) return false;
  stop();
  notify("note", `Cancelled: ${running.title}`, ["Nothing was moved."]);
  return true;
}

function stop(): void {
  clearTimeout(timer);
  timer = undefined;
  unfollow();
  if (layingOutStore.get().running !== undefined) layingOutStore.set({ running: undefined });
}

/** Where boxes go follows from what is drawn and where it stands, and from nothing else. */
const isSameSheet = (a: DocumentState, b: DocumentState): boolean =>
  a.project.layout === b.project.layout && installationOf(a) === installationOf(b);

function further(now: Progress): Progress {
  const before = layingOutStore.get().running?.progress;
  return before !== undefined && before.of === now.of && before.done > now.done ? before : now;
}
