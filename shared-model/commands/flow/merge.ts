import { sameValue } from "../../lib/same-value.ts";
import type { Evidence } from "../../model/evidence.ts";
import { copyOf } from "../plain-data.ts";
import type { Path, Writing } from "./writing.ts";

/** An entity before an edit as found, after it, and as proposed has it. Absent where it does not exist. */
export interface Three {
  readonly was: object | undefined;
  readonly is: object | undefined;
  readonly theirs: object | undefined;
}

type Fields = Readonly<Record<string, unknown>>;
const NONE: Fields = {};

/** Fields that hold further entities by id, wherever they stand. */
const TABLES: ReadonlySet<string> = new Set([
  "entries",
  "devices",
  "splices",
  "jumpers",
  "passThroughs",
  "places",
  "rings",
  "conductors",
]);

/** Told by neither state about the thing itself: where it stands among others, and how its facts are known. */
const ABOUT = new Set(["order", "evidence"]);

/** Whether two records tell the same of a thing, whatever its place in order and the marks of its facts. */
export function sameThing(one: object, other: object): boolean {
  const a = one as Fields;
  const b = other as Fields;
  return bothKeys(a, b).every((key) => {
    if (ABOUT.has(key)) return true;
    if (!TABLES.has(key)) return sameValue(a[key], b[key]);
    const first = (a[key] ?? NONE) as Readonly<Record<string, object>>;
    const second = (b[key] ?? NONE) as Readonly<Record<string, object>>;
    return bothKeys(first, second).every((id) => {
      const x = first[id];
      const y = second[id];
      return x === y || (x !== undefined && y !== undefined && sameThing(x, y));
    });
  });
}

export interface EntityRules {
  /** Makes the copy for proposed; undefined where the thing has no place there. */
  readonly add?: (thing: object, id: string) => object | undefined;
  /** Whether a thing that went as found goes from proposed; where proposed tells the same of it, unless told. */
  readonly remove?: (id: string, was: object, theirs: object) => boolean;
  readonly merge?: (path: Path, three: Required<Three>) => void;
  readonly skips?: ReadonlySet<string>;
  /** Keys that may differ; those that do, unless told. */
  readonly only?: ReadonlySet<string>;
}

/** Key by key: what came comes, what went goes where proposed had it alike, what changed is merged. */
export function mergeTable(writing: Writing<object>, path: Path, three: Three, rules: EntityRules = {}): void {
  const was = (three.was ?? NONE) as Readonly<Record<string, object>>;
  const is = (three.is ?? NONE) as Readonly<Record<string, object>>;
  const theirs = (three.theirs ?? NONE) as Readonly<Record<string, object>>;
  for (const id of rules.only ?? changedKeys(was, is)) {
    if (rules.skips?.has(id) || was[id] === is[id]) continue;
    mergeEntry(writing, [...path, id], { was: was[id], is: is[id], theirs: theirs[id] }, rules);
  }
}

function mergeEntry(
  writing: Writing<object>,
  path: Path,
  { was, is, theirs }: Three,
  { add = copyOf, remove = (_id, one, other) => sameThing(one, other), merge }: EntityRules,
): void {
  const id = path[path.length - 1] as string;
  if (is === undefined) {
    if (was !== undefined && theirs !== undefined && remove(id, was, theirs)) writing.set(path, undefined);
  } else if (was === undefined) {
    const made = theirs === undefined ? add(is, id) : undefined;
    if (made !== undefined) writing.set(path, made);
  } else if (theirs !== undefined) {
    if (merge === undefined) mergeEntity(writing, path, { was, is, theirs });
    else merge(path, { was, is, theirs });
  }
}

export const mergeEntity = (writing: Writing<object>, path: Path, three: Three): void => {
  mergeFields(writing, path, three);
  mergeMarks(writing, path, three);
};

/** Field by field; those named in `skips` and tables of entities are merged by somebody else. */
export function mergeFields(
  writing: Writing<object>,
  path: Path,
  three: Three,
  skips: ReadonlySet<string> = NO_SKIPS,
): void {
  const was = (three.was ?? NONE) as Fields;
  const is = (three.is ?? NONE) as Fields;
  const theirs = (three.theirs ?? NONE) as Fields;
  for (const field of changedKeys(was, is)) {
    if (field === "evidence" || TABLES.has(field) || skips.has(field)) continue;
    if (takesNew(was[field], is[field], theirs[field])) writing.set([...path, field], copyOf(is[field]));
  }
}

const NO_SKIPS: ReadonlySet<string> = new Set();

/** A table of single values by key: each is one field. */
export function mergeValues(writing: Writing<object>, path: Path, three: Three, only?: ReadonlySet<string>): void {
  const was = (three.was ?? NONE) as Fields;
  const is = (three.is ?? NONE) as Fields;
  const theirs = (three.theirs ?? NONE) as Fields;
  for (const key of only ?? changedKeys(was, is))
    if (takesNew(was[key], is[key], theirs[key])) writing.set([...path, key], copyOf(is[key]));
}

/** Proposed held what as found held, and as found holds something else now. */
export const takesNew = (was: unknown, is: unknown, theirs: unknown): boolean =>
  !sameValue(was, is) && sameValue(theirs, was);

/**
 * A mark says how a value is known. It comes along with a value that proposed took just now; otherwise it is a field
 * like others, for as long as both states hold the value that it is about.
 */
export function mergeMarks(writing: Writing<object>, path: Path, three: Three): void {
  const was = marksOf(three.was);
  const is = marksOf(three.is);
  const theirs = marksOf(three.theirs);
  const merged = writing.at(path) as Fields;
  const marks: Record<string, unknown> = { ...theirs };
  for (const field of new Set([...Object.keys(was), ...Object.keys(is), ...Object.keys(theirs)])) {
    const now = factOf(merged, field);
    if (!sameValue(now, factOf(three.is, field))) continue;
    const cameNow = !sameValue(now, factOf(three.theirs, field));
    if (!cameNow && !takesNew(was[field], is[field], theirs[field])) continue;
    if (is[field] === undefined) delete marks[field];
    else marks[field] = is[field];
  }
  if (sameValue(marks, theirs)) return;
  writing.set([...path, "evidence"], Object.keys(marks).length === 0 ? undefined : marks);
}

const marksOf = (entity: object | undefined): Evidence =>
  (entity as { evidence?: Evidence } | undefined)?.evidence ?? {};

/** What a mark is about: a field of its entity, or a field of one conductor of a cable ("conductors-bk-colour"). */
function factOf(entity: object | undefined, field: string): unknown {
  const fields = (entity ?? NONE) as Fields;
  const ofConductor = /^conductors-(.+)-([^-]+)$/.exec(field);
  if (ofConductor === null) return fields[field];
  const conductors = fields.conductors as Readonly<Record<string, Fields>> | undefined;
  return conductors?.[ofConductor[1] as string]?.[ofConductor[2] as string];
}

function changedKeys(a: Fields, b: Fields): readonly string[] {
  return a === b ? [] : bothKeys(a, b).filter((key) => a[key] !== b[key]);
}

function bothKeys(a: Fields, b: Fields): readonly string[] {
  const keys = Object.keys(a);
  for (const key of Object.keys(b)) if (!Object.hasOwn(a, key)) keys.push(key);
  return keys;
}
