/** Whether two plain values (records, arrays, primitives) say the same; the order of keys does not matter. */
export function sameValue(one: unknown, other: unknown): boolean {
  if (one === other) return true;
  if (typeof one !== "object" || typeof other !== "object" || one === null || other === null)
    return Object.is(one, other);
  if (Array.isArray(one) !== Array.isArray(other)) return false;
  const a = one as Readonly<Record<string, unknown>>;
  const b = other as Readonly<Record<string, unknown>>;
  const keys = Object.keys(a);
  return keys.length === Object.keys(b).length && keys.every((key) => key in b && sameValue(a[key], b[key]));
}
