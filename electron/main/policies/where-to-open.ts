/** Of a window, as much as it takes to decide where a file goes. */
export interface OpenWindow {
  readonly id: number;
  readonly file: string | undefined;
  /** Whether it holds changes that no file holds. */
  readonly edited: boolean;
  /** When it had the focus last; larger is later. */
  readonly focusedAt: number;
}

export type WhereToOpen =
  /** The file is open already: that window comes to the front. */
  | { readonly kind: "show"; readonly id: number }
  /** A window without a file and without work takes it. */
  | { readonly kind: "reuse"; readonly id: number }
  | { readonly kind: "new-window" };

/** One file is open in one window, so that two cannot save over each other. */
export function whereToOpen(path: string, windows: readonly OpenWindow[]): WhereToOpen {
  const latestFirst = [...windows].sort((a, b) => b.focusedAt - a.focusedAt);
  const showing = latestFirst.find(({ file }) => file === path);
  if (showing !== undefined) return { kind: "show", id: showing.id };
  const free = latestFirst.find(({ file, edited }) => file === undefined && !edited);
  return free === undefined ? { kind: "new-window" } : { kind: "reuse", id: free.id };
}
