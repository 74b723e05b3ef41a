/** Equal plain data, whatever the order of keys; a key that holds undefined counts as absent. */
export function sameValue(one: unknown, other: unknown): boolean {
  if (Object.is(one, other)) return true;
  if (typeof one !== "object" || typeof other !== "object" || one === null || other === null) return false;
  if (Array.isArray(one) !== Array.isArray(other)) return false;
  const a = one as Readonly<Record<string, unknown>>;
  const b = other as Readonly<Record<string, unknown>>;
  if (Array.isArray(one) && one.length !== (other as readonly unknown[]).length) return false;
  for (const key in a) if (!sameValue(a[key], b[key])) return false;
  for (const key in b) if (!(key in a) && b[key] !== undefined) return false;
  return true;
}
