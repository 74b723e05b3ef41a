import type { ArrangedMove, ArrangeProgress, ArrangeWhat } from "../../shared-model/analysis/protocol.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { StateName } from "../../shared-model/model/project.ts";
import { type DocumentState, documentStore, followDocument, installationOf } from "./document-store.ts";
import { notify } from "./session-store.ts";
import { createStore, type Store } from "./store.ts";
import { wording } from "./words.ts";

/** A layout that takes long enough to be told about. */
export interface LayingOut {
  readonly title: string;
  /** The furthest it has come: boxes that grew are fitted in again, but nobody likes a bar that goes back. */
  readonly progress: ArrangeProgress;
}

export interface LayingOutState {
  readonly running: LayingOut | undefined;
  /** Boxes that were moved by the layout that ended last, and whether they are to be shown then. */
  readonly moved: { readonly ids: readonly EnclosureId[]; readonly shows: boolean };
}

export const layingOutStore: Store<LayingOutState> = createStore<LayingOutState>({
  running: undefined,
  moved: { ids: [], shows: false },
});

/** Asks the worker. */
type Arrange = (
  state: StateName,
  what: ArrangeWhat,
  tell: (progress: ArrangeProgress) => void,
) => { readonly moves: Promise<readonly ArrangedMove[] | undefined>; stop(): void };

let arrange: Arrange | undefined;

/** Says who is to be asked; the state folder does not know the worker. */
export function arrangeBy(asked: Arrange): void {
  arrange = asked;
}

export interface Layout {
  readonly title: string;
  /** What is arranged of a document; asked anew where that changes on the way. */
  readonly what: (now: DocumentState) => ArrangeWhat;
  /** Where boxes stood before has no say, so that they have to be shown; else the view stays. */
  readonly shows: boolean;
  /** Called once, unless it is cancelled. */
  readonly end: (moves: readonly ArrangedMove[]) => void;
}

/** What a person does not notice is not told. */
const UNNOTICED_MS = 150;
/** An edit on the way begins it anew, so often: a person who goes on editing does not want it now. */
const TRIES = 4;

interface Run {
  readonly stop: () => void;
}

let run: Run | undefined;

/**
 * Has the worker find where boxes go while the window goes on answering. Nothing of the document is touched before the
 * end, so that a layout that is cancelled leaves everything as it was. Of two layouts the later counts.
 */
export function layOut({ title, what, shows, end }: Layout): void {
  run?.stop();
  const { state } = documentStore.get();
  let stopAsking = (): void => {};
  const tell = (progress: ArrangeProgress): void => {
    layingOutStore.merge({ running: { title, progress: further(progress) } });
  };
  const timer = setTimeout(() => tell({ done: 0, of: 1 }), UNNOTICED_MS);
  // A change without patches is another document.
  const unfollow = followDocument(({ patches }) => {
    if (patches === undefined) mine.stop();
  });
  const mine: Run = {
    stop() {
      if (run !== mine) return;
      run = undefined;
      clearTimeout(timer);
      unfollow();
      stopAsking();
      if (layingOutStore.get().running !== undefined) layingOutStore.merge({ running: undefined });
    },
  };
  run = mine;
  ask(TRIES);

  async function ask(left: number): Promise<void> {
    const from = documentStore.get();
    const asked = arrange?.(state, what(from), tell);
    stopAsking = () => asked?.stop();
    const moves = await asked?.moves;
    if (run !== mine) return;
    const now = documentStore.get();
    const stays = !now.readOnly && now.state === state;
    if (stays && moves !== undefined && isSameSheet(now, from)) {
      mine.stop();
      layingOutStore.merge({ moved: { ids: moves.map(({ id }) => id), shows } });
      end(moves);
    } else if (stays && left > 1 && now !== from) ask(left - 1);
    else {
      mine.stop();
      if (stays) notify("problem", wording.notDone(title), [wording.checkingDoesNotAnswerNowTry]);
    }
  }
}

/** Ends a layout without a trace. @returns False when none was running that a person has seen. */
export function cancelLayOut(): boolean {
  const { running } = layingOutStore.get();
  if (running === undefined) return false;
  run?.stop();
  notify("note", wording.cancelled(running.title), [wording.nothingWasMoved]);
  return true;
}

/** Where boxes go follows from what is drawn and where it stands, and from nothing else. */
const isSameSheet = (a: DocumentState, b: DocumentState): boolean =>
  a.project.layout === b.project.layout &&
  a.project.rooms === b.project.rooms &&
  installationOf(a) === installationOf(b);

function further(now: ArrangeProgress): ArrangeProgress {
  const before = layingOutStore.get().running?.progress;
  return before !== undefined && before.of === now.of && before.done > now.done ? before : now;
}
