import { failed, problem, type Result } from "../../shared-model/lib/result.ts";
import { answerOf, kept, openDatabase } from "./database.ts";
import type { ChosenFile, RecentFile, RecentFiles } from "./file-host.ts";
import { wording } from "./words.ts";

const FILES = "files";
const MOST = 20;

interface KeptFile {
  readonly id: string;
  readonly handle: FileSystemFileHandle;
  readonly usedAt: string;
}

/** Asking whether a file may be read; TypeScript's window types do not know it, and some browsers neither. */
interface Permissions {
  queryPermission?(what: { readonly mode: "read" }): Promise<PermissionState>;
  requestPermission?(what: { readonly mode: "read" }): Promise<PermissionState>;
}

let database: Promise<IDBDatabase> | undefined;

async function open(): Promise<IDBDatabase> {
  database ??= openDatabase("loadside-recent", { [FILES]: { keyPath: "id" } });
  try {
    return await database;
  } catch (error) {
    database = undefined;
    throw error;
  }
}

async function keptFiles(): Promise<readonly KeptFile[]> {
  const transaction = (await open()).transaction(FILES);
  const all: readonly KeptFile[] = await answerOf(transaction.objectStore(FILES).getAll());
  return [...all].sort((a, b) => (a.usedAt < b.usedAt ? 1 : -1));
}

/** Puts a file at the head of the list. A browser that keeps nothing has no list; nothing else is lost. */
export async function rememberFile(handle: FileSystemFileHandle): Promise<void> {
  try {
    const before = await keptFiles();
    const same: string[] = [];
    for (const each of before) if (await each.handle.isSameEntry(handle)) same.push(each.id);
    const gone = [...same.slice(1), ...before.slice(MOST - 1).map(({ id }) => id)];
    const transaction = (await open()).transaction(FILES, "readwrite");
    const files = transaction.objectStore(FILES);
    for (const id of gone) if (id !== same[0]) files.delete(id);
    files.put({ id: same[0] ?? crypto.randomUUID(), handle, usedAt: new Date().toISOString() } satisfies KeptFile);
    await kept(transaction);
  } catch {
    // As said above.
  }
}

/** Id of a file on the list; undefined when it is not there. */
export async function rememberedAs(handle: FileSystemFileHandle): Promise<string | undefined> {
  for (const each of await keptFiles().catch(() => [])) if (await each.handle.isSameEntry(handle)) return each.id;
  return undefined;
}

/** The list of recent files of a browser: handles that it lets pages keep. */
export const browserRecentFiles = (
  read: (handle: FileSystemFileHandle) => Promise<Result<ChosenFile>>,
): RecentFiles => ({
  async list() {
    const files = await keptFiles().catch(() => []);
    return Promise.all(files.slice(0, MOST).map(asRecent));
  },
  async open(id) {
    const found = (await keptFiles().catch(() => [])).find((each) => each.id === id);
    if (found === undefined) return failed(problem("file-unreadable", "", wording.itIsNoLongerOnThe));
    const { handle } = found;
    const asked = (await (handle as Permissions).requestPermission?.({ mode: "read" })) ?? "granted";
    if (asked !== "granted")
      return failed(problem("file-not-allowed", "", wording.theBrowserWasNotAllowedTo(handle.name)));
    return read(handle);
  },
  async forget(id) {
    const transaction = (await open()).transaction(FILES, "readwrite");
    transaction.objectStore(FILES).delete(id);
    await kept(transaction);
  },
});

/** Whether a file is there can be told only where it may be read without asking; elsewhere it is taken to be. */
async function asRecent({ id, handle, usedAt }: KeptFile): Promise<RecentFile> {
  let isThere = true;
  try {
    const may = (await (handle as Permissions).queryPermission?.({ mode: "read" })) ?? "granted";
    if (may === "granted") await handle.getFile();
  } catch {
    isThere = false;
  }
  return { id, name: handle.name, usedAt, isThere };
}
