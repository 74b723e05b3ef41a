import { parseText } from "../analysis/checks.ts";
import { browserJournals, holdJournal, liveJournals, sha256Of, withJournal } from "../platform/journal-store.ts";
import { ask } from "./dialog-store.ts";
import { documentStore } from "./document-store.ts";
import { fileHost, files } from "./files.ts";
import { type JournalKeeper, journalStore, keepJournal } from "./journal.ts";
import { createRecovery, unsavedStore } from "./journal-recovery.ts";
import { notify } from "./session-store.ts";
import { whenWords } from "./when-words.ts";
import { wording } from "./words.ts";

/** Of this window. */
export const journalId = crypto.randomUUID();

let keeper: JournalKeeper | undefined;

/** Keeps the unsaved work of this window from now on, and says once when it cannot. */
export function startJournal(): void {
  holdJournal(journalId);
  keeper = keepJournal({ store: browserJournals, id: journalId, sha256: sha256Of, now: Date.now });
  let said: string | undefined;
  journalStore.subscribe(() => {
    const { trouble } = journalStore.get();
    if (trouble !== undefined && trouble !== said) notify("problem", wording.unsavedWorkIsNotKept, [trouble]);
    said = trouble;
  });
}

/** Unsaved work of windows that are gone. */
export const recovery = createRecovery({
  store: browserJournals,
  host: fileHost,
  live: liveJournals,
  alone: withJournal,
  sha256: sha256Of,
  parse: parseText,
  takeOver: (document) => files.takeOver(document),
  async keptHere() {
    await keeper?.settled();
    return keeper !== undefined && journalStore.get().trouble === undefined;
  },
});

/** For a window that was started with a file, where no start page offers unsaved work. */
export async function offerUnsavedWork(): Promise<void> {
  await recovery.refresh();
  const { fileName } = documentStore.get();
  const { works } = unsavedStore.get();
  const own = works.find(({ name }) => name === fileName);
  if (fileName === undefined || works[0] === undefined) return;
  if (own === undefined) {
    notify("note", wording.unsavedWorkIsKept, [wording.ofForExampleTheStartPage(works[0].name)]);
    return;
  }
  const go = wording.continueWithThem;
  const lines = [wording.lastChange(whenWords(own.at)), wording.cancelLeavesThemWhereTheyAre];
  if ((await ask(wording.unsavedChangesOfWereKept(fileName), lines, [go])) === go) await recovery.continueWith(own.id);
}
