import { applyPatches } from "../../shared-model/commands/run-command.ts";
import type { FileText } from "../../shared-model/format/text-to-save.ts";
import type { Project } from "../../shared-model/model/project.ts";
import type { ParseOutcome } from "../analysis/client-contract.ts";
import type { ChosenFile, FileHost } from "../platform/file-host.ts";
import { type Journal, type JournalBase, readJournal } from "../platform/journal-format.ts";
import type { JournalStore, KeptJournal } from "../platform/journal-store.ts";
import { type DocumentState, documentStore, type OpenedDocument } from "./document-store.ts";
import { notify } from "./session-store.ts";
import { createStore, type Store } from "./store.ts";
import { wording } from "./words.ts";

/** Work of windows that are gone, which no file holds: newest first. */
export interface UnsavedWork {
  readonly works: readonly KeptJournal[];
}

export const unsavedStore: Store<UnsavedWork> = createStore<UnsavedWork>({ works: [] });

export interface RecoveryTools {
  readonly store: JournalStore;
  readonly host: FileHost;
  live(): Promise<ReadonlySet<string>>;
  /** Runs the work while no other window has the journal; undefined when one has. */
  alone<T>(id: string, work: () => Promise<T>): Promise<T | undefined>;
  sha256(text: string): Promise<string | undefined>;
  parse(text: string): Promise<ParseOutcome>;
  /** Takes a document into the window, once unsaved work there may go. @returns False when it may not. */
  takeOver(document: OpenedDocument): Promise<boolean>;
  /** Resolves once the journal of this window holds what it shows. @returns False when it could not be kept. */
  keptHere(): Promise<boolean>;
}

export interface Recovery {
  /** Looks again for unsaved work that no window has open. */
  refresh(): Promise<void>;
  /** Opens unsaved work. No file is written by it; the journal goes when this window keeps the same work in its own. */
  continueWith(id: string): Promise<void>;
  /** Throws unsaved work away; asking comes before this. */
  discard(id: string): Promise<void>;
}

export function createRecovery(tools: RecoveryTools): Recovery {
  const { store, alone, live } = tools;

  async function refresh(): Promise<void> {
    try {
      const [kept, living] = await Promise.all([store.list(), live()]);
      unsavedStore.set({ works: kept.filter(({ id }) => !living.has(id)) });
    } catch {
      // A browser that keeps nothing has nothing to offer.
      unsavedStore.set({ works: [] });
    }
  }

  async function opening(id: string): Promise<void> {
    const read = readJournal(await store.read(id));
    if (!read.ok) {
      const line = read.why === "newer" ? wording.aNewerVersionOfTheProgram : wording.itsBeginningCannotBeReadAny;
      notify("problem", wording.theUnsavedWorkWasNotOpened, [line]);
      return;
    }
    const made = await rebuild(read.journal, tools);
    if (made === undefined) return;
    const taken = await tools.takeOver(made.document);
    if (!taken) return;
    made.document.target?.shown?.();
    if (made.lines.length > 0) notify("note", made.title, made.lines);
    if (await tools.keptHere()) await store.remove(id);
  }

  return {
    refresh,
    async continueWith(id) {
      const done = await alone(id, async () => {
        await opening(id);
        return true;
      });
      if (done !== true) notify("note", wording.anotherWindowHasIt, [wording.thatUnsavedWorkIsOpenIn]);
      await refresh();
    },
    async discard(id) {
      await alone(id, () => store.remove(id));
      await refresh();
    },
  };
}

interface Rebuilt {
  readonly document: OpenedDocument;
  /** What the person should know about it. */
  readonly title: string;
  readonly lines: readonly string[];
}

/** The document of a journal; undefined, said to the person, when it is none. */
async function rebuild(journal: Journal, tools: RecoveryTools): Promise<Rebuilt | undefined> {
  const parsed = await tools.parse(journal.snapshot);
  if (!parsed.ok) {
    const lines = parsed.problems.slice(0, 3).map(({ message }) => message);
    notify("problem", wording.theUnsavedWorkWasNotOpened, [...lines, wording.itIsKeptUntilYouDiscard]);
    return undefined;
  }
  const { project, whole } = replay(parsed.project, journal);
  const { head } = journal;
  const lost = whole && !journal.torn ? [] : [wording.itsVeryLastChangeCouldNot];
  const title = wording.theUnsavedWorkOfIsOpen(head.name);
  if (head.base === undefined) return { document: { project, unsaved: { saved: undefined } }, title, lines: lost };
  const found = await baseFile(head.base, tools);
  if (!("chosen" in found))
    return { document: { project, unsaved: { saved: undefined } }, title, lines: [found.why, ...lost] };
  const { name, target } = found.chosen;
  return {
    document: { project, fileName: name, unsaved: { saved: found.saved }, ...(target && { target }) },
    title,
    lines: lost,
  };
}

/** Step after step; one that does not fit ends it, with everything before it kept. */
function replay(start: Project, { steps }: Journal): { readonly project: Project; readonly whole: boolean } {
  let project = start;
  try {
    for (const patches of steps) project = applyPatches(project, patches);
    return { project, whole: true };
  } catch {
    return { project, whole: false };
  }
}

type Base = { readonly chosen: ChosenFile; readonly saved: FileText } | { readonly why: string };

/**
 * The file that the work was begun on, if it is still what it was then: only then may a save go there. Looked for among
 * what is open here and what was opened lately; equal content is what counts.
 */
async function baseFile({ name, sha256 }: JournalBase, tools: RecoveryTools): Promise<Base> {
  const copy = wording.theWorkOpenedAsACopy;
  if (sha256 === undefined) return { why: wording.nobodyCanTellWhetherIsStill(name, copy) };
  let seen = false;
  for (const find of candidates(name, tools)) {
    const chosen = await find();
    if (chosen === undefined) continue;
    seen = true;
    if ((await tools.sha256(chosen.text)) !== sha256) continue;
    const parsed = await tools.parse(chosen.text);
    if (parsed.ok) return { chosen, saved: { text: chosen.text, project: parsed.project } };
  }
  return {
    why: seen ? wording.wasChangedByAnotherProgramSince(name, copy) : wording.couldNotBeReached(name, copy),
  };
}

function* candidates(name: string, { host }: RecoveryTools): Generator<() => Promise<ChosenFile | undefined>> {
  yield async () => openHere(documentStore.get(), name);
  let listed: Promise<readonly { readonly id: string }[]> | undefined;
  for (let index = 0; index < MOST_OF_ONE_NAME; index += 1) {
    yield async () => {
      listed ??= (host.recent?.list() ?? Promise.resolve([]))
        .then((files) => files.filter((file) => file.name === name && file.isThere))
        .catch(() => []);
      const file = (await listed)[index];
      const opened = file && (await host.recent?.open(file.id));
      return opened?.ok === true ? opened.value : undefined;
    };
  }
}

const MOST_OF_ONE_NAME = 3;

function openHere({ fileName, file, target }: DocumentState, name: string): ChosenFile | undefined {
  if (fileName !== name || file === undefined) return undefined;
  return { name, text: file.text, ...(target && { target }) };
}
