import type { RecentFile } from "../platform/file-host.ts";
import { fileHost } from "./files.ts";
import { refreshPicturesHere } from "./pictures-here.ts";
import { notify } from "./session-store.ts";
import { createStore, type Store } from "./store.ts";
import { wording } from "./words.ts";

export interface RecentState {
  /** Newest first. */
  readonly files: readonly RecentFile[];
}

export const recentStore: Store<RecentState> = createStore<RecentState>({ files: [] });

/** Asks the host anew: another window may have opened something since. */
export async function refreshRecent(): Promise<void> {
  // A host that cannot tell has no list; opening goes on without one.
  const files = await fileHost.recent?.list().catch(() => undefined);
  recentStore.set({ files: files ?? [] });
  await refreshPicturesHere(files?.map(({ id }) => id));
}

export async function forgetRecent(id: string): Promise<void> {
  try {
    await fileHost.recent?.forget(id);
  } catch {
    notify("problem", wording.itStaysOnTheList, [wording.theListOfRecentDrawingsCould]);
  }
  await refreshRecent();
}
