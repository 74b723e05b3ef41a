import type { EnclosureId } from "../../../shared-model/model/ids.ts";
import { createStore, type Store } from "../../state/store.ts";

/**
 * From afar all boxes of a house are elements of the page, so that a pointer, keys and people who hear the sheet find each.
 * Of more boxes than this only those are that somebody is at: they are selected, on the move, under the pointer, or where
 * the keys are. The outline has all.
 */
export const MOST_SHELLS = 450;

/** The box under the pointer, where boxes are painted only. */
export const pointedStore: Store<{ readonly box: EnclosureId | undefined }> = createStore<{
  readonly box: EnclosureId | undefined;
}>({ box: undefined });

export function pointAt(box: EnclosureId | undefined): void {
  if (pointedStore.get().box !== box) pointedStore.set({ box });
}
