import type { Patch } from "immer";
import { crc32 } from "./crc32.ts";

/** Raised when a reader must know of a change. A reader refuses what is newer and keeps it. */
export const JOURNAL_VERSION = 1;
const FORMAT = "loadside-journal";

/** The file that the work belongs to, as it was when it was read or saved last. */
export interface JournalBase {
  readonly name: string;
  /** SHA-256 of its text as UTF-8, in hexadecimal; absent where the host cannot tell. */
  readonly sha256?: string;
}

export interface JournalHead {
  /** What the drawing was called. */
  readonly name: string;
  /** Absent for work that no file holds yet. */
  readonly base?: JournalBase;
}

/** Unsaved work: the text of a document, and what was done to it since. */
export interface Journal {
  readonly head: JournalHead;
  readonly snapshot: string;
  /** Each is one change of the document, whole. */
  readonly steps: readonly (readonly Patch[])[];
  /** When the last change was made, in milliseconds since 1970. */
  readonly at: number;
  /** Whether something at its end could not be read, and was left out. */
  readonly torn: boolean;
}

export type ReadJournal =
  | { readonly ok: true; readonly journal: Journal }
  /** `newer`: written by a newer version. `damaged`: not even its beginning can be read. */
  | { readonly ok: false; readonly why: "newer" | "damaged" };

type Entry =
  | { readonly kind: "head"; readonly format: string; readonly version: number; readonly head: JournalHead }
  | { readonly kind: "snapshot"; readonly at: number; readonly text: string }
  | { readonly kind: "patches"; readonly at: number; readonly patches: readonly Patch[] };

const utf8 = new TextEncoder();

/** One line: checksum, length in bytes, and an entry that carries its place. JSON has no line break of its own. */
function line(place: number, entry: Entry): string {
  const body = JSON.stringify({ place, ...entry });
  const bytes = utf8.encode(body);
  return `${crc32(bytes).toString(16).padStart(8, "0")} ${bytes.length} ${body}\n`;
}

/** The beginning of a journal: its head and the document. Patches follow from place 2. */
export const journalStart = (head: JournalHead, snapshot: string, at: number): readonly [string, string] => [
  line(0, { kind: "head", format: FORMAT, version: JOURNAL_VERSION, head }),
  line(1, { kind: "snapshot", at, text: snapshot }),
];

export const journalPatches = (place: number, patches: readonly Patch[], at: number): string =>
  line(place, { kind: "patches", at, patches });

/**
 * Reads a journal up to the first line that is not whole, not true to its checksum, or not in its place: what follows
 * would belong to another document. Never throws.
 */
export function readJournal(text: string): ReadJournal {
  const lines = text.split("\n");
  if (lines.at(-1) === "") lines.pop();
  const head = lines[0] === undefined ? undefined : entryOf(lines[0], 0);
  if (head?.kind !== "head" || head.format !== FORMAT) return { ok: false, why: "damaged" };
  if (!(head.version <= JOURNAL_VERSION)) return { ok: false, why: "newer" };
  const snapshot = lines[1] === undefined ? undefined : entryOf(lines[1], 1);
  if (snapshot?.kind !== "snapshot") return { ok: false, why: "damaged" };
  const steps: (readonly Patch[])[] = [];
  let { at } = snapshot;
  let place = 2;
  for (; place < lines.length; place += 1) {
    const entry = entryOf(lines[place] ?? "", place);
    if (entry?.kind !== "patches") break;
    steps.push(entry.patches);
    at = entry.at;
  }
  const journal = { head: head.head, snapshot: snapshot.text, steps, at, torn: place < lines.length };
  return { ok: true, journal };
}

/** An entry in its place; undefined where the line is not what was written. */
function entryOf(text: string, place: number): Entry | undefined {
  const [, sum = "", length = "", body = ""] = /^([0-9a-f]{8}) (\d{1,12}) (.*)$/s.exec(text) ?? [];
  const bytes = utf8.encode(body);
  if (bytes.length !== Number(length) || crc32(bytes) !== Number.parseInt(sum, 16)) return undefined;
  try {
    const entry = JSON.parse(body) as Entry & { readonly place: number };
    return entry.place === place ? entry : undefined;
  } catch {
    return undefined;
  }
}
