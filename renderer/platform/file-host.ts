import type { Result } from "../../shared-model/lib/result.ts";

/** As large as a document may be, in bytes: a larger file is refused before it is read. */
export const FILE_LIMIT_BYTES = 64 * 1024 * 1024;

export const FILE_ENDING = ".loadside";

/** Where a document can be saved again without asking. What is behind it is known to the host alone. */
export interface FileTarget {
  readonly name: string;
  /** What the host calls it, where it wants to be told which file the window shows. */
  readonly token?: string;
  /** Its line in the list of recent files; undefined where it has none. */
  recent?(): Promise<string | undefined>;
  /** Its drawing is shown now: it goes on the list of recent files. What is only read, and then refused, does not. */
  shown?(): void;
  /**
   * Replaces the whole file. `changed-elsewhere` means that another program wrote to it since it was last read or
   * saved here; nothing was written then. `note` is a sentence worth showing after a save.
   */
  write(text: string, overwrite: boolean): Promise<SaveOutcome>;
}

export type SaveOutcome =
  | { readonly kind: "saved"; readonly note?: string }
  | { readonly kind: "changed-elsewhere"; readonly message: string }
  | { readonly kind: "failed"; readonly message: string };

/** A file that a person chose: its text, and where to save it again if the host allows that. */
export interface ChosenFile {
  readonly name: string;
  readonly text: string;
  readonly target?: FileTarget;
}

/** What is made of a drawing and never opened again, by the ending of its file. */
export type CopyKind = "pdf" | "svg" | "png" | "csv" | "xlsx";

export type CopyOutcome =
  /** `name` is that of the file, as far as the host knows it. */
  | { readonly kind: "saved"; readonly name: string; readonly note?: string }
  | { readonly kind: "failed"; readonly message: string }
  /** The browser asks for a place to save only right after a press, and making the file took longer than that. */
  | { readonly kind: "press-again" };

/** Opening and saving as this host can do it. Undefined: the person changed their mind. */
export interface FileHost {
  chooseFile(): Promise<Result<ChosenFile> | undefined>;
  /** Asks where to save, then saves. No target comes back where the file went out as a download. */
  saveAs(
    name: string,
    text: string,
  ): Promise<{ readonly outcome: SaveOutcome; readonly target?: FileTarget } | undefined>;
  /**
   * Asks where to save something made of the drawing, then saves it: whole or not at all.
   * @param name Suggested, without an ending.
   */
  saveCopy(name: string, kind: CopyKind, bytes: Uint8Array<ArrayBuffer>): Promise<CopyOutcome | undefined>;
  /** The file that the window was started with, or that was given to it from outside since. */
  startFile(): Promise<Result<ChosenFile> | undefined>;
  /** Leaves that file unopened: the person keeps what they have. */
  refuseStartFile?(): Promise<void>;
  /**
   * A file that was dropped on the window; undefined when what was dropped is none. Call it within the drop event,
   * which forgets its files afterwards; what comes back reads the file whenever it is called.
   */
  takeDropped(dropped: DataTransfer): (() => Promise<Result<ChosenFile> | undefined>) | undefined;
  /** Files opened or saved lately, where the host keeps a list of them. */
  readonly recent?: RecentFiles;
}

/** One line of the list of recent files. */
export interface RecentFile {
  /** Names the file to the host; it is no path. */
  readonly id: string;
  readonly name: string;
  /** Where it is, in words for a person, where the host can tell. */
  readonly folder?: string;
  /** ISO 8601, when it was opened or saved last. */
  readonly usedAt: string;
  /** False: it has been moved or deleted, or its disk is away. */
  readonly isThere: boolean;
}

export interface RecentFiles {
  /** Newest first, at most 20. */
  list(): Promise<readonly RecentFile[]>;
  /** Undefined where the person did not allow it. */
  open(id: string): Promise<Result<ChosenFile> | undefined>;
  /** Takes a file off the list; the file itself stays. */
  forget(id: string): Promise<void>;
}
