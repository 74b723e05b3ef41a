import { failed, ok, problem, type Result } from "../../shared-model/lib/result.ts";
import { download, saveCopy } from "./browser-copies.ts";
import { type ChosenFile, FILE_ENDING, type FileHost, type FileTarget, type SaveOutcome } from "./file-host.ts";
import { readText } from "./read-file.ts";
import { browserRecentFiles, rememberedAs, rememberFile } from "./recent-files.ts";
import { readStartFile } from "./start-file.ts";
import { wording } from "./words.ts";

interface PickerOptions {
  readonly types: readonly {
    readonly description: string;
    readonly accept: Readonly<Record<string, readonly string[]>>;
  }[];
  readonly suggestedName?: string;
}

/** File pickers that only some browsers have; TypeScript's window types do not know them. */
interface Pickers {
  readonly showOpenFilePicker?: (options: PickerOptions) => Promise<readonly FileSystemFileHandle[]>;
  readonly showSaveFilePicker?: (options: PickerOptions) => Promise<FileSystemFileHandle>;
}

interface DroppedItem {
  readonly getAsFileSystemHandle?: () => Promise<FileSystemHandle | null>;
}

const TYPES: PickerOptions["types"] = [
  { description: wording.loadsideDrawing, accept: { "application/json": [FILE_ENDING] } },
];

const pickers = (): Pickers => globalThis as Pickers;

/** Opening and saving in a browser: in place through file handles where it has them, else by upload and download. */
export const browserFileHost: FileHost = {
  async chooseFile() {
    const { showOpenFilePicker } = pickers();
    if (showOpenFilePicker === undefined) return chooseUpload();
    const handles = await orNothing(showOpenFilePicker({ types: TYPES }));
    const handle = handles?.[0];
    return handle === undefined ? undefined : openHandle(handle);
  },

  async saveAs(name, text) {
    const { showSaveFilePicker } = pickers();
    if (showSaveFilePicker === undefined) {
      download(name, text, "application/json");
      return { outcome: { kind: "saved", note: wording.wasHandedToTheBrowserAs(name) } };
    }
    const handle = await orNothing(showSaveFilePicker({ types: TYPES, suggestedName: name }));
    if (handle === undefined) return undefined;
    const target = handleTarget(handle, undefined);
    return { outcome: await target.write(text, true), target };
  },

  saveCopy,

  startFile: readStartFile,

  takeDropped(dropped) {
    const file = dropped.files[0];
    if (file === undefined) return undefined;
    // Asked for at once: the event is over by the time the person has answered a question.
    const handle = handleOf(dropped).catch(() => undefined);
    return async () => {
      const found = await handle;
      if (found !== undefined) return openHandle(found);
      const text = await readText(file);
      return text.ok ? ok({ name: file.name, text: text.value }) : text;
    };
  },

  recent: browserRecentFiles(openHandle),
};

/** A handle of the file that was dropped, in a browser that gives handles: saving then goes to the file itself. */
async function handleOf(dropped: DataTransfer): Promise<FileSystemFileHandle | undefined> {
  const item = [...dropped.items].find(({ kind }) => kind === "file");
  const handle = await (item as DroppedItem | undefined)?.getAsFileSystemHandle?.();
  return handle instanceof FileSystemFileHandle ? handle : undefined;
}

/** A picker that the person closes rejects; that is an answer, not a fault. */
async function orNothing<T>(choice: Promise<T>): Promise<T | undefined> {
  try {
    return await choice;
  } catch (error) {
    if (error instanceof DOMException && error.name === "AbortError") return undefined;
    throw error;
  }
}

async function openHandle(handle: FileSystemFileHandle): Promise<Result<ChosenFile>> {
  try {
    const file = await handle.getFile();
    const text = await readText(file);
    if (!text.ok) return text;
    return ok({ name: handle.name, text: text.value, target: handleTarget(handle, file.lastModified) });
  } catch {
    return failed(problem("file-unreadable", "", wording.cannotBeReadCheckThatIt(handle.name)));
  }
}

/** @param seen When the file was last changed as far as we know; undefined before the first save to it. */
function handleTarget(handle: FileSystemFileHandle, seen: number | undefined): FileTarget {
  let known = seen;
  return {
    name: handle.name,
    recent: () => rememberedAs(handle),
    shown: () => void rememberFile(handle),
    async write(text, overwrite): Promise<SaveOutcome> {
      try {
        if (!overwrite && known !== undefined && (await handle.getFile()).lastModified !== known) {
          return {
            kind: "changed-elsewhere",
            message: wording.wasChangedByAnotherProgramSince(handle.name),
          };
        }
        // The browser writes beside the file and swaps the two when it is closed.
        const stream = await handle.createWritable();
        await stream.write(text);
        await stream.close();
        known = (await handle.getFile()).lastModified;
        void rememberFile(handle);
        return { kind: "saved" };
      } catch (error) {
        return { kind: "failed", message: whyNotSaved(handle.name, error) };
      }
    },
  };
}

function whyNotSaved(name: string, error: unknown): string {
  const kind = error instanceof DOMException ? error.name : "";
  if (kind === "NotAllowedError") return wording.wasNotSavedTheBrowserWas(name);
  if (kind === "QuotaExceededError") return wording.wasNotSavedThereIsNo(name);
  return wording.wasNotSavedTheDrawingIs(name);
}

function chooseUpload(): Promise<Result<ChosenFile> | undefined> {
  return new Promise((resolve) => {
    const input = document.createElement("input");
    input.type = "file";
    input.accept = FILE_ENDING;
    input.addEventListener("cancel", () => resolve(undefined));
    input.addEventListener("change", async () => {
      const file = input.files?.[0];
      if (file === undefined) return resolve(undefined);
      const text = await readText(file);
      resolve(text.ok ? ok({ name: file.name, text: text.value }) : text);
    });
    input.click();
  });
}
