/** A visible row of a tree, with where it stands among its like. */
export interface TreeRow {
  readonly key: string;
  /** Key of the row it stands in; undefined at the top. */
  readonly parent: string | undefined;
  /** 1 at the top. */
  readonly level: number;
  readonly position: number;
  readonly count: number;
  /** Undefined for a row that nothing can stand in. */
  readonly open: boolean | undefined;
  /** What typing goes by. */
  readonly text: string;
}

/** What a key means on a row. */
export type TreeMove =
  | { readonly to: number }
  | { readonly open: string }
  | { readonly close: string }
  | { readonly openLike: string };

/** Index of the row that has a key; -1 when it is not visible. */
export const indexOfRow = (rows: readonly TreeRow[], key: string | undefined): number =>
  key === undefined ? -1 : rows.findIndex((row) => row.key === key);

/**
 * Where a key leads from a row, as in trees everywhere: right opens, then goes in; left closes, then goes out.
 * @param page How many rows are seen at once.
 */
export function moveInTree(rows: readonly TreeRow[], at: number, key: string, page: number): TreeMove | undefined {
  const row = rows[at];
  const last = rows.length - 1;
  const to = (index: number): TreeMove => ({ to: Math.max(0, Math.min(index, last)) });
  switch (key) {
    case "ArrowDown":
      return to(at + 1);
    case "ArrowUp":
      return to(at - 1);
    case "PageDown":
      return to(at + page);
    case "PageUp":
      return to(at - page);
    case "Home":
      return to(0);
    case "End":
      return to(last);
    case "ArrowRight":
      if (row?.open === undefined) return undefined;
      return row.open ? to(at + 1) : { open: row.key };
    case "ArrowLeft":
      if (row?.open === true) return { close: row.key };
      return row?.parent === undefined ? undefined : to(indexOfRow(rows, row.parent));
    case "*":
      return row === undefined ? undefined : { openLike: row.key };
    default:
      return undefined;
  }
}

/**
 * The next row whose words begin with what was typed, round the end; -1 when there is none. One letter goes on to the next
 * row; more letters stay on a row that still fits.
 */
export function findTyped(rows: readonly TreeRow[], from: number, typed: string): number {
  const wanted = typed.toLowerCase();
  const first = typed.length > 1 ? Math.max(from, 0) : from + 1;
  for (let step = 0; step < rows.length; step += 1) {
    const at = (first + step) % rows.length;
    if (rows[at]?.text.toLowerCase().startsWith(wanted) === true) return at;
  }
  return -1;
}

/** Key of the row that takes over from one that leaves: the next beside it, the one before, what it stood in. */
export function heirOf(rows: readonly TreeRow[], key: string): string | undefined {
  const row = rows[indexOfRow(rows, key)];
  if (row === undefined) return undefined;
  const beside = rows.filter(({ parent }) => parent === row.parent);
  const own = beside.indexOf(row);
  return (beside[own + 1] ?? beside[own - 1])?.key ?? row.parent;
}
