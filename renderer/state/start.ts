import { followDocument } from "./document-store.ts";
import { sessionStore } from "./session-store.ts";
import { createStore, type Store } from "./store.ts";

export interface StartState {
  /** Whether the start page is shown in the place of the sheet. */
  readonly open: boolean;
  /** A file that the window is started with may be on its way: the start page waits, so that it does not flash up. */
  readonly awaiting: boolean;
  /** Unsaved work that the person left for later, in this window. */
  readonly left: ReadonlySet<string>;
}

export const startStore: Store<StartState> = createStore<StartState>({
  open: true,
  awaiting: false,
  left: new Set(),
});

export const openStart = (): void => startStore.merge({ open: true });
export const closeStart = (): void => startStore.merge({ open: false });

/** Holds the start page back until `opening` has ended, however it ends. */
export async function awaitStartFile(opening: Promise<void>): Promise<void> {
  startStore.merge({ awaiting: true });
  try {
    await opening;
  } finally {
    startStore.merge({ awaiting: false });
  }
}

/** Puts unsaved work aside, or shows it again. It is kept either way. */
export function leaveWork(id: string, aside = true): void {
  const left = new Set(startStore.get().left);
  if (aside) left.add(id);
  else left.delete(id);
  startStore.merge({ left });
}

let isKept = false;

/** The start page stays, whatever `act` opens: it has still something to do with it. */
export async function keepStart<T>(act: () => Promise<T>): Promise<T> {
  isKept = true;
  try {
    return await act();
  } finally {
    isKept = false;
  }
}

/** The start page gives way as soon as there is something to see on the sheet. Until the returned function is called. */
export function leaveStartWhenWorking(): () => void {
  let { goTo, tool, pane } = sessionStore.get();
  const leave = (): void => {
    if (!isKept) closeStart();
  };
  const stops = [
    followDocument(leave),
    sessionStore.subscribe(() => {
      const now = sessionStore.get();
      const asked = (now.goTo !== undefined && now.goTo !== goTo) || (now.tool !== undefined && now.tool !== tool);
      if (asked || now.pane !== pane) leave();
      ({ goTo, tool, pane } = now);
    }),
  ];
  return () => {
    for (const stop of stops) stop();
  };
}
