import { answerOf, kept, openDatabase } from "./database.ts";

/** A journal that is kept, as a list of them shows it. */
export interface KeptJournal {
  readonly id: string;
  readonly name: string;
  /** When the last change in it was made, in milliseconds since 1970. */
  readonly at: number;
}

/** Keeps journals, each under an id, beyond the end of the window. Whatever it does is done whole or not at all. */
export interface JournalStore {
  /** Puts these lines in the place of what the journal held. */
  begin(about: KeptJournal, lines: readonly string[]): Promise<void>;
  append(about: KeptJournal, lines: string): Promise<void>;
  remove(id: string): Promise<void>;
  list(): Promise<readonly KeptJournal[]>;
  /** All lines of a journal; empty when there is none. */
  read(id: string): Promise<string>;
}

const JOURNALS = "journals";
const LINES = "lines";
/** At most so often a write waits until the disk has it. A killed window loses nothing by not waiting, a power cut may. */
const STRICT_EVERY_MS = 1000;

let database: Promise<IDBDatabase> | undefined;
let strictAt = Number.NEGATIVE_INFINITY;

async function open(): Promise<IDBDatabase> {
  database ??= openDatabase("loadside-journals", {
    [JOURNALS]: { keyPath: "id" },
    [LINES]: {},
  });
  try {
    return await database;
  } catch (error) {
    database = undefined;
    throw error;
  }
}

async function write(work: (transaction: IDBTransaction) => void): Promise<void> {
  const now = performance.now();
  const strict = now - strictAt >= STRICT_EVERY_MS;
  if (strict) strictAt = now;
  const transaction = (await open()).transaction([JOURNALS, LINES], "readwrite", {
    durability: strict ? "strict" : "relaxed",
  });
  const done = kept(transaction);
  work(transaction);
  // What is on its way goes out now, not when the window has time.
  transaction.commit();
  await done;
}

/** Lines of a journal lie under [id, serial]. */
const linesOf = (id: string): IDBKeyRange => IDBKeyRange.bound([id], [id, []]);

let serial = 0;

function put(transaction: IDBTransaction, about: KeptJournal, lines: readonly string[]): void {
  transaction.objectStore(JOURNALS).put(about);
  for (const each of lines) {
    transaction.objectStore(LINES).put(each, [about.id, serial]);
    serial += 1;
  }
}

/** Journals in the private database of the window: it lives in another process, and is whole after the window died. */
export const browserJournals: JournalStore = {
  begin: (about, lines) =>
    write((transaction) => {
      transaction.objectStore(LINES).delete(linesOf(about.id));
      put(transaction, about, lines);
    }),
  append: (about, lines) => write((transaction) => put(transaction, about, [lines])),
  remove: (id) =>
    write((transaction) => {
      transaction.objectStore(JOURNALS).delete(id);
      transaction.objectStore(LINES).delete(linesOf(id));
    }),
  async list() {
    const transaction = (await open()).transaction(JOURNALS);
    const all: readonly KeptJournal[] = await answerOf(transaction.objectStore(JOURNALS).getAll());
    return [...all].sort((a, b) => b.at - a.at);
  },
  async read(id) {
    const transaction = (await open()).transaction(LINES);
    const lines: readonly string[] = await answerOf(transaction.objectStore(LINES).getAll(linesOf(id)));
    return lines.join("");
  },
};

const LOCK = "loadside-journal ";

/** Marks a journal as that of a living window, until the window is gone, however it goes. */
export function holdJournal(id: string): void {
  navigator.locks?.request(LOCK + id, () => new Promise(() => undefined)).catch(() => undefined);
}

/** Journals of windows that live, this one included. */
export async function liveJournals(): Promise<ReadonlySet<string>> {
  const held = (await navigator.locks?.query())?.held ?? [];
  return new Set(held.flatMap(({ name }) => (name?.startsWith(LOCK) ? [name.slice(LOCK.length)] : [])));
}

/**
 * Runs `work` while no other window can do so for the same journal.
 * @returns Undefined, without having run it, while another window has the journal.
 */
export async function withJournal<T>(id: string, work: () => Promise<T>): Promise<T | undefined> {
  if (navigator.locks === undefined) return work();
  return navigator.locks.request(LOCK + id, { ifAvailable: true }, (lock) => (lock === null ? undefined : work()));
}

/** SHA-256 of a text as UTF-8, in hexadecimal; undefined where the host has no such thing. */
export async function sha256Of(text: string): Promise<string | undefined> {
  try {
    const sum = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text));
    return Array.from(new Uint8Array(sum), (byte) => byte.toString(16).padStart(2, "0")).join("");
  } catch {
    return undefined;
  }
}
