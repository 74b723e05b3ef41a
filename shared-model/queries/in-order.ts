/** Values of a table in their explicit order, then by id: undo puts a deleted key back last, so key order means nothing. */
export function inOrder<T extends { readonly id: string; readonly order: number }>(
  table: Readonly<Record<string, T>>,
): readonly T[] {
  return Object.values(table).sort((a, b) => a.order - b.order || (a.id < b.id ? -1 : 1));
}

/** One more than the highest order in a table; 0 when it is empty. */
export function nextOrder(table: Readonly<Record<string, { readonly order: number }>>): number {
  let next = 0;
  for (const value of Object.values(table)) next = Math.max(next, value.order + 1);
  return next;
}
