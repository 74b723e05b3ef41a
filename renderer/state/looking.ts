import { documentStore } from "./document-store.ts";
import { scopeStore } from "./scope/scope-store.ts";
import { wording } from "./scope/words.ts";
import { notify } from "./session-store.ts";
import { useStore } from "./use-store.ts";

/** Whether the drawing can only be looked at now: it was written by a newer version, or the difference is shown. */
export const isLooking = (): boolean => documentStore.get().readOnly || scopeStore.get().on;

export function useLooking(): boolean {
  const readOnly = useStore(documentStore, (document) => document.readOnly);
  const scope = useStore(scopeStore, (state) => state.on);
  return readOnly || scope;
}

/** Answers a gesture that would edit while the difference is shown. @returns Whether it was one. */
export function refuseWhileScoped(): boolean {
  if (!scopeStore.get().on) return false;
  notify("note", wording.onlyLooked);
  return true;
}
