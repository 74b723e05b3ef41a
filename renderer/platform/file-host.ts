import type { Result } from "../../shared-model/lib/result.ts";

/** As large as a document may be, in bytes: a larger file is refused before it is read. */
export const FILE_LIMIT_BYTES = 64 * 1024 * 1024;

export const FILE_ENDING = ".loadside";

/** Where a document can be saved again without asking. What is behind it is known to the host alone. */
export interface FileTarget {
  readonly name: string;
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

/** Opening and saving as this host can do it. Undefined: the person changed their mind. */
export interface FileHost {
  chooseFile(): Promise<Result<ChosenFile> | undefined>;
  /** Asks where to save, then saves. No target comes back where the file went out as a download. */
  saveAs(
    name: string,
    text: string,
  ): Promise<{ readonly outcome: SaveOutcome; readonly target?: FileTarget } | undefined>;
  /** The file that the window was started with. */
  startFile(): Promise<Result<ChosenFile> | undefined>;
}
