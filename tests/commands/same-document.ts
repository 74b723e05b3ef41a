/** Equal plain data down to the set of keys, whatever their order. What two documents share is not walked. */
export function sameDocument(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const keys = Object.keys(a);
  if (keys.length !== Object.keys(b).length) return false;
  const first = a as Readonly<Record<string, unknown>>;
  const second = b as Readonly<Record<string, unknown>>;
  return keys.every((key) => Object.hasOwn(second, key) && sameDocument(first[key], second[key]));
}

export function isFrozenThrough(value: unknown): boolean {
  if (typeof value !== "object" || value === null) return true;
  return Object.isFrozen(value) && Object.values(value).every(isFrozenThrough);
}
