import { createStore, type Store } from "../../state/store.ts";

/** How the outline is seen; kept while another tab is shown, gone with the window. */
export interface OutlineState {
  /** Keys of the places that are open. */
  readonly open: ReadonlySet<string>;
  /** Key of the row that keys go from. */
  readonly active: string | undefined;
  /** Key of the row whose name is being changed. */
  readonly renaming: string | undefined;
  /** Row whose menu is open, and where. */
  readonly menu: { readonly key: string; readonly x: number; readonly y: number } | undefined;
  /** Why the last thing was not done. */
  readonly refusal: string | undefined;
}

export const outlineStore: Store<OutlineState> = createStore<OutlineState>({
  open: new Set<string>(),
  active: undefined,
  renaming: undefined,
  menu: undefined,
  refusal: undefined,
});

/** Opens or closes places. */
export function setOpen(keys: readonly string[], isOpen: boolean): void {
  const open = new Set(outlineStore.get().open);
  for (const key of keys) {
    if (isOpen) open.add(key);
    else open.delete(key);
  }
  outlineStore.merge({ open });
}
