import type { EnclosureId } from "../../shared-model/model/ids.ts";
import { followDocument } from "../state/document-store.ts";
import { createStore, type Store } from "../state/store.ts";

/** Boxes that show every conductor at a readable size, from wherever the sheet is seen; the one opened last on top. */
export const openStore: Store<{ readonly ids: readonly EnclosureId[] }> = createStore<{
  readonly ids: readonly EnclosureId[];
}>({ ids: [] });

export const isOpen = (id: EnclosureId): boolean => openStore.get().ids.includes(id);

/** Opens a box, or brings it to the top. */
export function openBox(id: EnclosureId): void {
  const { ids } = openStore.get();
  openStore.set({ ids: [...ids.filter((other) => other !== id), id] });
}

export function closeBox(id: EnclosureId): void {
  if (isOpen(id)) openStore.set({ ids: openStore.get().ids.filter((other) => other !== id) });
}

export const closeAllBoxes = (): void => openStore.set({ ids: [] });

/** Another document has other boxes. */
export const closeWithDocument = (): (() => void) =>
  followDocument(({ patches }) => {
    if (patches === undefined) closeAllBoxes();
  });
