import { answerOf, kept, openDatabase } from "./database.ts";

/** Keeps small pictures of drawings, each as text under the line that it belongs to. A host that keeps nothing rejects. */
export interface PictureStore {
  keep(id: string, text: string): Promise<void>;
  all(): Promise<readonly KeptPicture[]>;
  remove(ids: readonly string[]): Promise<void>;
}

export interface KeptPicture {
  readonly id: string;
  readonly text: string;
}

const PICTURES = "pictures";

let database: Promise<IDBDatabase> | undefined;

async function open(): Promise<IDBDatabase> {
  database ??= openDatabase("loadside-pictures", { [PICTURES]: { keyPath: "id" } });
  try {
    return await database;
  } catch (error) {
    database = undefined;
    throw error;
  }
}

async function write(work: (pictures: IDBObjectStore) => void): Promise<void> {
  const transaction = (await open()).transaction(PICTURES, "readwrite");
  work(transaction.objectStore(PICTURES));
  await kept(transaction);
}

/** Pictures in the private database of the window, in either host: no file is read for them. */
export const browserPictures: PictureStore = {
  keep: (id, text) => write((pictures) => pictures.put({ id, text } satisfies KeptPicture)),
  async all() {
    return answerOf((await open()).transaction(PICTURES).objectStore(PICTURES).getAll());
  },
  remove: (ids) =>
    write((pictures) => {
      for (const id of ids) pictures.delete(id);
    }),
};
