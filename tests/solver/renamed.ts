import type { EndKey } from "../../shared-model/model/ids.ts";
import type { Installation } from "../../shared-model/model/project.ts";

/** Every record of a document with its keys the other way round. */
export function reversed<T>(value: T): T {
  if (Array.isArray(value) || typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([key, item]) => [key, reversed(item)]),
  ) as T;
}

/** The same drawing with other ids, in the opposite order of names. */
export function renamed(installation: Installation): Installation {
  const ids = new Set<string>(Object.keys(installation.cables));
  for (const { id, devices, splices, jumpers, entries } of Object.values(installation.enclosures))
    for (const one of [id, ...[devices, splices, jumpers, entries].flatMap((table) => Object.keys(table))])
      ids.add(one);
  const word = (text: string): string =>
    text
      .split(".")
      .map((part) => (ids.has(part) ? newName(part) : part))
      .join(".");
  const turn = (value: unknown): unknown => {
    if (typeof value === "string") return word(value);
    if (Array.isArray(value)) return value.map(turn);
    if (typeof value !== "object" || value === null) return value;
    // "B1" is a terminal of a 4-way switch too.
    return Object.fromEntries(
      Object.entries(value).map(([key, item]) => [word(key), key === "terminal" ? item : turn(item)]),
    );
  };
  return turn(installation) as Installation;
}

export const renamedEnd = (end: EndKey): EndKey => {
  const [owner = "", ...rest] = end.split(".");
  return [newName(owner), ...rest].join(".") as EndKey;
};

/** "B0" becomes "n900-B0" and "B1" "n899-B1", so that sorting them turns round. */
export const newName = (id: string): string =>
  `n${900 - [...id].reduce((sum, letter) => (sum * 7 + letter.charCodeAt(0)) % 800, 0)}-${id}`;
