import { LONGEST_TITLE } from "../lib/shorten.ts";
import { EVIDENCE_MARKS } from "../model/evidence.ts";
import { isId, parseEnd } from "../model/ids.ts";
import { COLOURS } from "../units/colour.ts";
import { WIRE_SIZES } from "../units/wire-size.ts";
import { argsWording, forms } from "./args-words.ts";

/** Says what is wrong with a value at a place of the arguments, or nothing. Never throws on plain data. */
export type Check = (value: unknown, at: string) => string | undefined;

/** A check for every argument, so that the compiler notices a forgotten one. */
export type Checks<A> = { readonly [K in keyof A]-?: Check };

const OPTIONAL = new WeakSet<Check>();

/** The argument may be left out; when it is there, it has this form. */
export function optional(check: Check): Check {
  const own: Check = (value, at) => check(value, at);
  OPTIONAL.add(own);
  return own;
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** A record with exactly these keys. */
export function record<A>(checks: Checks<A>): Check {
  const entries: [string, Check][] = Object.entries(checks);
  return (value, at) => {
    if (!isRecord(value)) return argsWording.isNot(at, forms.record);
    for (const key of Object.keys(value)) if (!Object.hasOwn(checks, key)) return argsWording.unknown(`${at}.${key}`);
    for (const [key, check] of entries) {
      const own = Object.hasOwn(value, key) ? value[key] : undefined;
      if (own === undefined) {
        if (!OPTIONAL.has(check)) return argsWording.missing(`${at}.${key}`);
        continue;
      }
      const wrong = check(own, `${at}.${key}`);
      if (wrong !== undefined) return wrong;
    }
    return undefined;
  };
}

/** The first form that fits; otherwise what is wrong with the last one. */
export const either =
  (...checks: readonly Check[]): Check =>
  (value, at) => {
    let wrong: string | undefined;
    for (const check of checks) {
      wrong = check(value, at);
      if (wrong === undefined) return undefined;
    }
    return wrong;
  };

/** A record whose `kind` picks the form of the rest. */
export function byKind(kinds: Readonly<Record<string, Readonly<Record<string, Check>>>>): Check {
  const kindForms = new Map(
    Object.entries(kinds).map(([kind, rest]) => [kind, record({ kind: oneOf([kind]), ...rest })]),
  );
  return (value, at) => {
    if (!isRecord(value)) return argsWording.isNot(at, forms.record);
    const form = typeof value.kind === "string" ? kindForms.get(value.kind) : undefined;
    return form === undefined
      ? argsWording.isNot(`${at}.kind`, forms.oneOf([...kindForms.keys()].join(", ")))
      : form(value, at);
  };
}

/** At most 10 000 items of one form. */
export const listOf =
  (check: Check, least = 0): Check =>
  (value, at) => {
    if (!Array.isArray(value)) return argsWording.isNot(at, forms.list);
    if (value.length < least) return argsWording.fewer(at, least);
    if (value.length > 10_000) return argsWording.items(at, 10_000);
    for (let index = 0; index < value.length; index++) {
      const wrong = check(value[index], `${at}[${index}]`);
      if (wrong !== undefined) return wrong;
    }
    return undefined;
  };

/** A table by id, at most 10 000 entries. */
export const tableOf =
  (check: Check): Check =>
  (value, at) => {
    if (!isRecord(value)) return argsWording.isNot(at, forms.table);
    const entries = Object.entries(value);
    if (entries.length > 10_000) return argsWording.entries(at, 10_000);
    for (const [key, item] of entries) {
      const wrong = isId(key) ? check(item, `${at}.${key}`) : argsWording.keyNoId(at);
      if (wrong !== undefined) return wrong;
    }
    return undefined;
  };

const unless =
  (good: (value: unknown) => boolean, what: string): Check =>
  (value, at) =>
    good(value) ? undefined : argsWording.isNot(at, what);

export const oneOf = (values: readonly (string | number | boolean | null)[]): Check =>
  unless((value) => values.some((one) => one === value), forms.oneOf(values.join(", ")));

/** A line or paragraph as a person writes it: no lone surrogate, which no file could hold, and no control character but tab and newline. */
export const isPlainText = (text: string): boolean => !/\p{Surrogate}|(?![\t\n])\p{Cc}/u.test(text);

export const textUpTo = (longest: number): Check =>
  unless((value) => typeof value === "string" && value.length <= longest && isPlainText(value), forms.plain(longest));

const isSaid = (value: unknown, longest: number): value is string =>
  typeof value === "string" && value.trim() !== "" && value.length <= longest && isPlainText(value);

/** What a person calls an item: not blank, one line. */
export const nameText: Check = unless((value) => isSaid(value, 80) && !/[\t\n]/.test(value), forms.name);

/** What a step of several commands is called: a sentence of the program, around names that their own commands judge. */
export const titleText: Check = unless((value) => isSaid(value, LONGEST_TITLE), forms.title(LONGEST_TITLE));

export const idText: Check = unless((value) => typeof value === "string" && isId(value), forms.id);
/** Id of something in the catalogue, or a name inside its type; looked up later. */
export const catalogText: Check = unless(
  (value) => typeof value === "string" && value.length > 0 && value.length <= 80 && isPlainText(value),
  forms.catalogId,
);
export const endText: Check = unless(
  (value) => typeof value === "string" && parseEnd(value) !== undefined,
  forms.endKey,
);
export const outletText: Check = unless((value) => {
  if (typeof value !== "string") return false;
  const [device = "", half, ...rest] = value.split("/");
  return isId(device) && rest.length === 0 && (half === undefined || half === "upper" || half === "lower");
}, forms.outletKey);
export const stateName: Check = oneOf(["as-found", "proposed"]);
export const evidenceMark: Check = oneOf(EVIDENCE_MARKS);
export const colourName: Check = oneOf(COLOURS);
export const wireSize: Check = oneOf(WIRE_SIZES);
export const flag: Check = unless((value) => typeof value === "boolean", forms.flag);

/** A finite number within a range, ends included. */
export const numberFrom = (least: number, most: number): Check =>
  unless(
    (value) => typeof value === "number" && Number.isFinite(value) && value >= least && value <= most,
    forms.number(least, most),
  );

export const wholeFrom = (least: number, most: number): Check =>
  unless(
    (value) => typeof value === "number" && Number.isInteger(value) && value >= least && value <= most,
    forms.whole(least, most),
  );

/** Place on the sheet, in drawing units. */
export const sheetPoint: Check = record({ x: numberFrom(-1_000_000, 1_000_000), y: numberFrom(-1_000_000, 1_000_000) });

export const orNull =
  (check: Check): Check =>
  (value, at) =>
    value === null ? undefined : check(value, at);
