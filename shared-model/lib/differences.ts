/** One thing that another object has otherwise: a path of keys with its new value, or without one where it is gone. */
export type Difference = readonly [path: readonly string[], value?: unknown];

type Tree = { [key: string]: unknown };

/** A copy of plain data with some differences: what they do not touch is shared. A path goes through objects only. */
export function withDifferences<T extends object>(base: T, differences: readonly Difference[]): T {
  const copies = new Set<unknown>();
  const copyOf = (tree: unknown): Tree => {
    if (typeof tree !== "object" || tree === null || Array.isArray(tree)) throw new Error("A path ends too early.");
    if (copies.has(tree)) return tree as Tree;
    const copy: Tree = { ...tree };
    copies.add(copy);
    return copy;
  };
  const root = copyOf(base);
  for (const [path, ...value] of differences) {
    const last = path.at(-1);
    if (last === undefined) throw new Error("A difference without a path.");
    let at = root;
    for (const key of path.slice(0, -1)) {
      const next = copyOf(at[key]);
      at[key] = next;
      at = next;
    }
    if (value.length === 0) delete at[last];
    else at[last] = value[0];
  }
  return root as T;
}
