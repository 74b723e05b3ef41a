import { browserJournals } from "../platform/journal-store.ts";
import { browserPictures } from "../platform/picture-store.ts";
import { journalId } from "./journal-here.ts";
import { keepPictures, type PictureTools, refreshPictures } from "./pictures.ts";

/** Keeps pictures of what this window shows from now on. @param maker Fetches what draws them. */
export function startPictures(maker: PictureTools["maker"]): void {
  keepPictures({ store: browserPictures, journal: journalId, maker, later });
}

function later(work: () => void, afterMs: number): () => void {
  let idle: number | undefined;
  const timer = setTimeout(() => {
    idle = requestIdleCallback(work, { timeout: 5000 });
  }, afterMs);
  return () => {
    clearTimeout(timer);
    if (idle !== undefined) cancelIdleCallback(idle);
  };
}

/** Reads the pictures of recent drawings and of unsaved work. @param files What is on the list; undefined where nobody can tell. */
export async function refreshPicturesHere(files: readonly string[] | undefined): Promise<void> {
  const journals = await browserJournals.list().catch(() => undefined);
  await refreshPictures(browserPictures, { files, journals: journals?.map(({ id }) => id) });
}
