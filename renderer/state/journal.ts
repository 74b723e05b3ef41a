import type { Patch } from "immer";
import { textToSave } from "../../shared-model/format/text-to-save.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { type JournalHead, journalPatches, journalStart } from "../platform/journal-format.ts";
import type { JournalStore, KeptJournal } from "../platform/journal-store.ts";
import { type DocumentState, documentStore, followDocument, isDirty } from "./document-store.ts";
import { createStore, type Store } from "./store.ts";
import { wording } from "./words.ts";

/** Whether unsaved work is being kept. */
export interface JournalState {
  /** A sentence while it is not; undefined while it is. */
  readonly trouble: string | undefined;
}

export const journalStore: Store<JournalState> = createStore<JournalState>({ trouble: undefined });

export interface JournalTools {
  readonly store: JournalStore;
  /** Of this window. */
  readonly id: string;
  sha256(text: string): Promise<string | undefined>;
  /** Milliseconds since 1970. */
  now(): number;
}

export interface JournalKeeper {
  /** Resolves once everything done so far is kept, or could not be. */
  settled(): Promise<void>;
  stop(): void;
}

/** Patches past this, in characters and in sizes of the document, make the document be written anew. */
const MOST_PATCHES = { characters: 1_000_000, documents: 2 };
/** After a failure, so long nothing is tried: a full disk is not filled any sooner. */
const AGAIN_AFTER_MS = 10_000;
const NOT_KEPT = wording.unsavedWorkIsNotBeingKept;

type Job =
  | {
      readonly kind: "begin";
      readonly head: () => Promise<JournalHead>;
      readonly snapshot: string;
      readonly at: number;
    }
  | { readonly kind: "append"; readonly lines: string; readonly at: number }
  | { readonly kind: "remove" };

/**
 * Keeps unsaved work of this window in a journal: each change goes out at once, what comes while a write is under way goes
 * out with the next. The journal is given up when the document is saved, undone to what was saved, or left on purpose.
 */
export function keepJournal({ store, id, sha256, now }: JournalTools): JournalKeeper {
  let jobs: Job[] = [];
  let running: Promise<void> | undefined;
  let last: Project = documentStore.get().project;
  /** The file that the journal that has begun is about; undefined before one has. */
  let began: { readonly file: DocumentState["file"] } | undefined;
  let place = 2;
  let room = 0;
  /** Whether the store may hold something of this window. */
  let stored = false;
  let retry: ReturnType<typeof setTimeout> | undefined;

  function begin(document: DocumentState, snapshot: string): void {
    const { file, fileName } = document;
    began = { file };
    stored = true;
    clearTimeout(retry);
    retry = undefined;
    place = 2;
    room = Math.max(MOST_PATCHES.characters, snapshot.length * MOST_PATCHES.documents);
    const head = async (): Promise<JournalHead> => {
      const name = fileName ?? document.project.title;
      if (file === undefined || fileName === undefined) return { name };
      const sum = await sha256(file.text);
      return { name, base: { name: fileName, ...(sum !== undefined && { sha256: sum }) } };
    };
    jobs = [{ kind: "begin", head, snapshot, at: now() }];
    run();
  }

  function append(patches: readonly Patch[]): void {
    const at = now();
    const lines = journalPatches(place, patches, at);
    place += 1;
    room -= lines.length;
    const waiting = jobs.at(-1);
    if (waiting?.kind === "append") jobs[jobs.length - 1] = { kind: "append", lines: waiting.lines + lines, at };
    else jobs.push({ kind: "append", lines, at });
    run();
  }

  function remove(): void {
    clearTimeout(retry);
    retry = undefined;
    if (!stored) return;
    began = undefined;
    jobs = [{ kind: "remove" }];
    run();
  }

  function run(): void {
    running ??= work().finally(() => {
      running = undefined;
    });
  }

  async function work(): Promise<void> {
    for (let job = jobs.shift(); job !== undefined; job = jobs.shift()) {
      try {
        await write(job);
        if (job.kind === "remove") stored = began !== undefined;
        journalStore.merge({ trouble: undefined });
      } catch {
        if (job.kind === "remove") continue;
        // What was kept until now stays. A new journal begins once there is hope of room.
        jobs = jobs.filter(({ kind }) => kind !== "append");
        if (jobs.length > 0) continue;
        began = undefined;
        retry = setTimeout(again, AGAIN_AFTER_MS);
        journalStore.merge({ trouble: NOT_KEPT });
      }
    }
  }

  function again(): void {
    retry = undefined;
    const document = documentStore.get();
    if (isDirty(document)) begin(document, textToSave(document.project, document.file));
  }

  async function write(job: Job): Promise<void> {
    if (job.kind === "remove") return store.remove(id);
    const { fileName, project } = documentStore.get();
    const about = (at: number): KeptJournal => ({ id, name: fileName ?? project.title, at });
    if (job.kind === "append") return store.append(about(job.at), job.lines);
    return store.begin(about(job.at), journalStart(await job.head(), job.snapshot, job.at));
  }

  function follow(patches: readonly Patch[] | undefined): void {
    const document = documentStore.get();
    const before = last;
    last = document.project;
    if (patches === undefined || !isDirty(document)) remove();
    if (!isDirty(document)) return;
    if (began === undefined) {
      if (retry !== undefined) return;
      // The text of the file is at hand; writing one of a large document takes time.
      const { file } = document;
      if (patches === undefined || file === undefined || before !== file.project)
        begin(document, textToSave(last, file));
      else {
        begin(document, file.text);
        append(patches);
      }
    } else if (patches !== undefined && room > 0) append(patches);
    else begin(document, textToSave(last, document.file));
  }

  /** A save, which changes no wiring. */
  function look(): void {
    const document = documentStore.get();
    if (document.project !== last) return;
    if (!isDirty(document)) remove();
    else if (began !== undefined && document.file !== began.file) begin(document, textToSave(last, document.file));
  }

  const stops = [followDocument(({ patches }) => follow(patches)), documentStore.subscribe(look)];
  return {
    async settled() {
      while (running !== undefined) await running;
    },
    stop() {
      clearTimeout(retry);
      for (const stop of stops) stop();
    },
  };
}
