import type { GenericSchema } from "valibot";
import { deferField } from "../lib/deferred-fields.ts";
import { freezeThrough } from "../lib/freeze-through.ts";
import type { Json } from "./json.ts";
import { compileQuickCheck, type Lacking, newTally } from "./quick-check.ts";
import { DEFERRED } from "./schema/wiring.ts";

/** A table that stands in the text of a document and was not read with it. */
interface TableText {
  /** Where it belongs: "asFound", "enclosures", "b1", "places". */
  readonly installation: string;
  readonly table: string;
  readonly record: string;
  readonly field: string;
  readonly text: string;
}

/** The text of a document in two: what has to be known to see it, and what a look at single boxes asks for. */
export interface PartedText {
  readonly text: string;
  readonly tables: readonly TableText[];
}

const INSTALLATIONS = ["asFound", "proposed"];

const FIELDS: Readonly<Record<string, readonly string[]>> = Object.fromEntries(
  DEFERRED.map(({ table, fields }) => [table, Object.keys(fields)]),
);

/** For a quick check of a text without these tables. */
export const LACKING: Lacking = new Map(
  DEFERRED.flatMap(({ records, fields }) => records.map((record) => [record, new Set(Object.keys(fields))] as const)),
);

/**
 * Takes the tables that are most of a long text out of it, so that the rest can be read at a third of the cost. It goes by
 * the line ends and indents of a text that this program wrote; in any other it finds fewer tables, or none. A cut at a
 * wrong place leaves a text that is not JSON, or a table that is not: both together are JSON just where the whole is.
 */
export function partText(text: string): PartedText {
  const tables: TableText[] = [];
  const pieces: string[] = [];
  let from = 0;
  for (const { start, end, installation, table } of sections(text)) {
    const heads = (FIELDS[table] ?? []).map((field) => ({ field, head: `\n    "${field}": ` }));
    let open = start;
    for (const { at, next, record } of records(text, start, end)) {
      open = Math.max(open, at);
      for (open = placeOf(text, OPEN, open); open < next; open = placeOf(text, OPEN, open + 1)) {
        const own = heads.find(({ head }) => text.startsWith(head, open - head.length));
        if (own === undefined) continue;
        const close = placeOf(text, CLOSE, open);
        if (close >= next) continue;
        const after = close + CLOSED;
        tables.push({ installation, table, record, field: own.field, text: text.slice(open, close + 1) });
        pieces.push(text.slice(from, open - own.head.length));
        from = after;
        open = close;
      }
    }
  }
  if (tables.length === 0) return { text, tables };
  pieces.push(text.slice(from));
  return { text: pieces.join(""), tables };
}

// Every search begins with a brace: there are far fewer of them than of line ends.
/** The beginning of a table of a record. */
const OPEN = '{\n     "';
/** The end of a field of a record that another follows: the last one of a record is left where it is. */
const CLOSE = '},\n    "';
/** The end of a record that another follows. */
const NEXT = '},\n   "';
/** The brace and the comma. */
const CLOSED = 2;

function placeOf(text: string, words: string, from: number): number {
  const at = text.indexOf(words, from);
  return at < 0 ? Number.POSITIVE_INFINITY : at;
}

interface Section {
  readonly start: number;
  readonly end: number;
  readonly installation: string;
  readonly table: string;
}

/** Where the tables of both installations stand, in the order of the text. */
function sections(text: string): readonly Section[] {
  return INSTALLATIONS.flatMap((installation) => {
    const from = text.indexOf(`\n "${installation}": {\n`);
    const to = from < 0 ? -1 : text.indexOf("\n }", from);
    if (to < 0) return [];
    return Object.keys(FIELDS).flatMap((table): readonly Section[] => {
      const head = `\n  "${table}": {`;
      const start = text.indexOf(`${head}\n`, from);
      const end = start < 0 ? -1 : text.indexOf("\n  }", start);
      return end < 0 || end > to ? [] : [{ start: start + head.length, end, installation, table }];
    });
  }).sort((a, b) => a.start - b.start);
}

interface RecordText {
  readonly at: number;
  readonly next: number;
  readonly record: string;
}

/** Where each record of a table begins, and where the next one does. */
function* records(text: string, start: number, end: number): Iterable<RecordText> {
  for (let at = start; at < end && text.startsWith(RECORD, at); ) {
    const next = Math.min(end, placeOf(text, NEXT, at) + CLOSED);
    const close = text.indexOf('"', at + RECORD.length);
    const record = text.slice(at + RECORD.length, close);
    // A key that holds something escaped is rare; its record is read with the rest.
    if (close < next && !record.includes("\\")) yield { at, next, record };
    at = next;
  }
}

const RECORD = '\n   "';

/**
 * Gives a document the tables that were taken out of its text: each is read when it is first asked for, and is from then
 * on as if it had been read with the rest. One that is not what its schema says is empty: whoever judges the whole text
 * refuses it.
 *
 * @returns False where one finds no place, so that the text is to be read as a whole.
 */
export function putTables(document: Json, tables: readonly TableText[]): boolean {
  return tables.every(({ installation, table, record, field, text }) => {
    const owner = ((document[installation] as Json | undefined)?.[table] as Json | undefined)?.[record];
    if (typeof owner !== "object" || owner === null || Object.hasOwn(owner, field)) return false;
    deferField(owner, field, text, READERS[field] as TableReader);
    return true;
  });
}

/** Whether every record has all tables that the quick check of the rest did not ask for. */
export function hasAllTables(document: Json): boolean {
  return INSTALLATIONS.every((installation) => {
    const tables = (document[installation] ?? {}) as Readonly<Record<string, Readonly<Record<string, object>>>>;
    return Object.entries(FIELDS).every(([table, fields]) =>
      Object.values(tables[table] ?? {}).every((record) => fields.every((field) => Object.hasOwn(record, field))),
    );
  });
}

type TableReader = (text: string) => object;

const READERS: Readonly<Record<string, TableReader>> = Object.fromEntries(
  DEFERRED.flatMap(({ fields }) =>
    Object.entries<GenericSchema>(fields).map(([field, schema]) => [field, tableReader(schema)]),
  ),
);

function tableReader(schema: GenericSchema): TableReader {
  let check: ReturnType<typeof compileQuickCheck> | undefined;
  return (text) => {
    check ??= compileQuickCheck(schema);
    try {
      const table: unknown = JSON.parse(text);
      if (check(table, newTally())) return freezeThrough(table as object);
    } catch {
      // What is wrong with it is said of the whole text.
    }
    return Object.freeze({});
  };
}
