import { isId } from "../model/ids.ts";
import { type Check, numberFrom, oneOf } from "./args-shape.ts";
import { argsWording, forms } from "./args-words.ts";

const MAGNITUDE = 10_000_000;
const MOST_IN_TABLE = 100_000;
const LONGEST = 64 * 1024;
/** Deep enough for a drawing and for what a later version may hang on it. */
const DEEPEST = 24;
const RESERVED: ReadonlySet<string> = new Set(["__proto__", "constructor", "prototype"]);

export const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

const isText = (value: unknown): boolean =>
  typeof value === "string" && value.length <= LONGEST && !/\p{Surrogate}/u.test(value);

export const words: Check = (value, at) => (isText(value) ? undefined : argsWording.isNot(at, forms.text(LONGEST)));

export const quantity: Check = numberFrom(-MAGNITUDE, MAGNITUDE);
export const notNegative: Check = numberFrom(0, MAGNITUDE);

/** A key that a file may have. */
export const isSavedKey = (key: string): boolean => isText(key) && !RESERVED.has(key);

/** Nothing that a file could not hold: no functions, no numbers without end, no keys that change what an object is. */
function plainData(value: unknown, at: string, deep = 0): string | undefined {
  if (deep > DEEPEST) return argsWording.tooDeep(at);
  if (value === null || typeof value === "boolean") return undefined;
  if (typeof value === "number") return quantity(value, at);
  if (typeof value === "string") return words(value, at);
  if (typeof value !== "object") return argsWording.isNot(at, forms.plainData);
  // Entry by entry, because a hole in a list has no value and is none of its items.
  const entries = Array.isArray(value)
    ? [...value.entries()].map(([key, item]) => [`${key}`, item] as const)
    : Object.entries(value);
  if (entries.length > MOST_IN_TABLE) return argsWording.tooLong(at);
  for (const [key, item] of entries) {
    if (!isSavedKey(key)) return argsWording.keyReserved(at);
    const wrong = plainData(item, `${at}.${key}`, deep + 1);
    if (wrong !== undefined) return wrong;
  }
  return undefined;
}

export type Form = Readonly<Record<string, Check>>;

/** A record that has all of `needs`, may have `may`, and may carry plain data beside. */
export function open(needs: Form, may: Form = {}): Check {
  const all = { ...needs, ...may };
  const required = Object.keys(needs);
  return (value, at) => {
    if (!isRecord(value)) return argsWording.isNot(at, forms.record);
    for (const key of required) if (!Object.hasOwn(value, key)) return argsWording.missing(`${at}.${key}`);
    for (const [key, item] of Object.entries(value)) {
      if (!isSavedKey(key)) return argsWording.keyReserved(at);
      const wrong = (Object.hasOwn(all, key) ? all[key] : plainData)?.(item, `${at}.${key}`);
      if (wrong !== undefined) return wrong;
    }
    return undefined;
  };
}

/** A table of many entries by keys of one form. */
export function table(isKey: (key: string) => boolean, check: Check): Check {
  return (value, at) => {
    if (!isRecord(value)) return argsWording.isNot(at, forms.table);
    const entries = Object.entries(value);
    if (entries.length > MOST_IN_TABLE) return argsWording.entries(at, MOST_IN_TABLE);
    for (const [key, item] of entries) {
      if (!isKey(key)) return argsWording.keyForm(at);
      const wrong = check(item, `${at}.${key}`);
      if (wrong !== undefined) return wrong;
    }
    return undefined;
  };
}

/** A table by id; longer than `tableOf` takes, for all the ids of a drawing. */
export const idTable = (check: Check): Check => table(isId, check);

export const list =
  (check: Check): Check =>
  (value, at) => {
    if (!Array.isArray(value)) return argsWording.isNot(at, forms.list);
    if (value.length > MOST_IN_TABLE) return argsWording.items(at, MOST_IN_TABLE);
    // Counted, because a hole in a list has no value and is none of the items.
    for (let index = 0; index < value.length; index++) {
      const wrong = check(value[index], `${at}[${index}]`);
      if (wrong !== undefined) return wrong;
    }
    return undefined;
  };

/** A record whose `kind` picks its form; open like the others. */
export function openByKind(kinds: Readonly<Record<string, Check>>): Check {
  return (value, at) => {
    const kind = isRecord(value) && Object.hasOwn(value, "kind") ? value.kind : undefined;
    const form = typeof kind === "string" && Object.hasOwn(kinds, kind) ? kinds[kind] : undefined;
    return form === undefined
      ? argsWording.isNot(`${at}.kind`, forms.oneOf(Object.keys(kinds).join(", ")))
      : form(value, at);
  };
}

export const kindOf = (kind: string): Form => ({ kind: oneOf([kind]) });
