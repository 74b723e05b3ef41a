import { catalogue } from "../lib/catalogue.ts";

const wording = catalogue({
  list: "a list",
  missing: "missing",
  object: "an object",
});

/** One step of a path inside a document: the key of a field or the index of an item. */
export type Step = string | number;

/** A place inside a document as problems name it: `/asFound/enclosures/b1`; "" for the whole. As RFC 6901 escapes. */
export const jsonPath = (steps: readonly Step[]): string =>
  steps.map((step) => `/${String(step).replaceAll("~", "~0").replaceAll("/", "~1")}`).join("");

/** A value in a sentence: short, on one line, and never so strange that it breaks the line. */
export function shown(value: unknown): string {
  if (Array.isArray(value)) return wording.list;
  if (typeof value === "object" && value !== null) return wording.object;
  if (value === undefined) return wording.missing;
  if (typeof value !== "string") return String(value);
  const short = value.length > 60 ? `${value.slice(0, 60)}…` : value;
  return onOneLine(JSON.stringify(short));
}

/** Shows as escapes what would break a line or turn its direction. */
export const onOneLine = (text: string): string =>
  text.replace(UNPRINTABLE, (char) => `\\u${char.charCodeAt(0).toString(16).padStart(4, "0")}`);

const UNPRINTABLE = /[\p{Cc}\u2028-\u202e\u2066-\u2069\ufeff]/gu;
