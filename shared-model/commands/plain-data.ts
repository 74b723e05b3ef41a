/** Equal plain data, whatever the order of keys; a key that holds undefined counts as absent. */
export function sameValue(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  if (Array.isArray(a) || Array.isArray(b))
    return (
      Array.isArray(a) &&
      Array.isArray(b) &&
      a.length === b.length &&
      a.every((item, index) => sameValue(item, b[index]))
    );
  const first = a as Record<string, unknown>;
  const second = b as Record<string, unknown>;
  const keys = new Set([...Object.keys(first), ...Object.keys(second)]);
  for (const key of keys) if (!sameValue(first[key], second[key])) return false;
  return true;
}

/** A copy of plain data that shares nothing with it: a document freezes what it holds, and a caller keeps its arguments. */
export function copyOf<T>(value: T): T {
  if (Array.isArray(value)) return value.map(copyOf) as T;
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, copyOf(item)])) as T;
}

/** Freezes plain data through and through, in place. Stops at what is frozen already: that was frozen the same way. */
export function freezeThrough<T>(value: T): T {
  if (typeof value !== "object" || value === null || Object.isFrozen(value)) return value;
  Object.freeze(value);
  for (const item of Object.values(value)) freezeThrough(item);
  return value;
}
