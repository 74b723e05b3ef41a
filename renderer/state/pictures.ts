import type { PictureStore } from "../platform/picture-store.ts";
import { type DocumentState, documentStore, isDirty } from "./document-store.ts";
import { type DrawingPicture, readPicture, writePicture } from "./drawing-picture.ts";
import { nothingDrawn } from "./nothing-drawn.ts";
import { createStore, type Store } from "./store.ts";

export interface Pictures {
  /** By line of the list of recent files, or by `workPicture`. */
  readonly of: ReadonlyMap<string, DrawingPicture>;
}

export const picturesStore: Store<Pictures> = createStore<Pictures>({ of: new Map() });

const WORK = "work ";

/** Under what the picture of unsaved work is kept. @param journal Id of its journal. */
export const workPicture = (journal: string): string => WORK + journal;

export interface PictureTools {
  readonly store: PictureStore;
  /** Journal of this window. */
  readonly journal: string;
  /** Draws; fetched when there is something to draw. */
  maker(): Promise<{ pictureOf(document: DocumentState): DrawingPicture | undefined }>;
  /** Runs the work a while later, when nothing more urgent is to be done. @returns Calls it off. */
  later(work: () => void, afterMs: number): () => void;
}

/** After an open or a save the sheet is drawn first; while somebody edits, pictures wait for a pause. */
const AFTER_MS = { file: 700, edit: 4000 } as const;

/**
 * Keeps a picture of what this window shows: that of a file when it was opened or saved, that of unsaved work when the
 * person pauses. Until the returned function is called.
 */
export function keepPictures({ store, journal, maker, later }: PictureTools): () => void {
  let seen = documentStore.get();
  let callOff: () => void = () => undefined;
  async function draw(): Promise<void> {
    const document = documentStore.get();
    if (nothingDrawn(document.project)) return;
    const id = isDirty(document) ? workPicture(journal) : await document.target?.recent?.();
    if (id === undefined) return;
    const picture = (await maker()).pictureOf(document);
    if (picture !== undefined) await store.keep(id, writePicture(picture));
  }
  const stop = documentStore.subscribe(() => {
    const now = documentStore.get();
    const same = now.project === seen.project && now.file === seen.file && now.target === seen.target;
    seen = now;
    if (same) return;
    callOff();
    callOff = later(
      () => {
        // A list without a picture is still a list.
        draw().catch(() => undefined);
      },
      AFTER_MS[isDirty(now) ? "edit" : "file"],
    );
  });
  return () => {
    callOff();
    stop();
  };
}

/** What may have a picture; undefined where nobody can tell. */
export interface PictureOwners {
  readonly files: readonly string[] | undefined;
  readonly journals: readonly string[] | undefined;
}

/** Reads the pictures anew, and throws away those whose file or unsaved work is no longer on any list. */
export async function refreshPictures(store: PictureStore, { files, journals }: PictureOwners): Promise<void> {
  const all = await store.all().catch(() => []);
  const works = journals?.map(workPicture);
  const isGone = (id: string): boolean => (id.startsWith(WORK) ? works : files)?.includes(id) === false;
  const of = new Map<string, DrawingPicture>();
  for (const { id, text } of all) {
    const picture = isGone(id) ? undefined : readPicture(text);
    if (picture !== undefined) of.set(id, picture);
  }
  picturesStore.set({ of });
  const gone = all.flatMap(({ id }) => (of.has(id) ? [] : [id]));
  if (gone.length > 0) await store.remove(gone).catch(() => undefined);
}
