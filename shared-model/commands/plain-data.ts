import { freezeThrough } from "../lib/freeze-through.ts";

/** A copy of plain data that shares nothing with it: a document freezes what it holds, and a caller keeps its arguments. */
export function copyOf<T>(value: T): T {
  if (Array.isArray(value)) return value.map(copyOf) as T;
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, copyOf(item)])) as T;
}

/**
 * Freezes what an edit made anew: the containers on the way to each patch, and the values that it brought. All else in
 * the document was frozen before, so that a large table is not looked through for the sake of one entry.
 */
export function freezeAlong(
  document: object,
  patches: readonly { readonly path: readonly (string | number)[] }[],
): void {
  for (const { path } of patches) {
    let at: unknown = document;
    for (const step of path) {
      if (typeof at !== "object" || at === null) break;
      Object.freeze(at);
      at = (at as Record<string | number, unknown>)[step];
    }
    freezeThrough(at);
  }
}
