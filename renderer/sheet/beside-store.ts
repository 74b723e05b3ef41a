import { createStore, type Store } from "../state/store.ts";

/** Whether the legend stands beside the sheet, which is narrower then. */
export const besideStore: Store<{ readonly on: boolean }> = createStore({ on: false });

export function setBeside(on: boolean): void {
  if (besideStore.get().on !== on) besideStore.set({ on });
}
