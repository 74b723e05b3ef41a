/** The files that windows may read and write: those that the person named, each under a token that only its window knows. */
import { basename, dirname, join } from "node:path";
import type { ReplyOf, RequestOf } from "../ipc/contract.ts";
import { fileAt, type OpenedFile, openFile, type ReplaceFile } from "../opened-file.mjs";
import type { DocumentWindow } from "./document-window.ts";
import { safeName, withEnding } from "./policies/save-name.ts";
import { recentId } from "./recent-files.ts";

export type OpenedReply = NonNullable<ReplyOf<"openDropped">>;

export interface Documents {
  /** @param path From a dialog, the command line, the list of recent files, the operating system, or a dropped file. */
  open(path: string, window: DocumentWindow): Promise<OpenedReply>;
  save(request: RequestOf<"saveFile">, window: DocumentWindow): Promise<ReplyOf<"saveFile">>;
  /** @param path As a save dialog gave it. */
  saveTo(path: string, text: string, window: DocumentWindow): Promise<ReplyOf<"saveFileAs">>;
  /**
   * Saves something made of a drawing; no window holds the file afterwards.
   * @param path As a save dialog gave it.
   */
  saveCopyTo(path: string, copy: Pick<RequestOf<"saveCopyAs">, "kind" | "bytes">): Promise<ReplyOf<"saveCopyAs">>;
  /** What a save dialog suggests. `ending` with its dot; that of a document where it is left out. */
  suggestion(name: string, window: DocumentWindow, ending?: string): string;
  /** Path behind a token of this window. */
  pathOf(token: string, window: DocumentWindow): string | undefined;
  /** For a window that is gone: its tokens open nothing any more. */
  forgetAll(window: DocumentWindow): void;
}

interface Grant {
  readonly path: string;
  readonly file: OpenedFile;
  readonly window: number;
}

export interface DocumentsOptions {
  readonly replaceFile: ReplaceFile;
  /** Where a drawing without a file is suggested to be saved. */
  readonly folder: string;
  /** A file was opened or saved. */
  readonly onUse: (path: string) => void;
}

const tooLarge = (name: string, limit: number): ReplyOf<"saveFile"> => ({
  kind: "failed",
  message: `${name} was not saved: a document holds at most ${limit} bytes.`,
});

export function createDocuments({ replaceFile, folder, onUse }: DocumentsOptions): Documents {
  const grants = new Map<string, Grant>();

  const grant = (path: string, file: OpenedFile, window: DocumentWindow): void => {
    grants.set(file.token, { path, file, window: window.id });
    onUse(path);
  };

  const grantOf = (token: string, window: DocumentWindow): Grant | undefined => {
    const found = grants.get(token);
    return found?.window === window.id ? found : undefined;
  };

  async function write(file: OpenedFile, text: string, overwrite: boolean): Promise<ReplyOf<"saveFile">> {
    const bytes = Buffer.from(text);
    if (bytes.length > file.limit) return tooLarge(file.name, file.limit);
    const saved = await file.save(bytes, overwrite);
    if (saved.ok) return saved.note === undefined ? { kind: "saved" } : { kind: "saved", note: saved.note };
    return { kind: saved.status === 409 ? "changed-elsewhere" : "failed", message: saved.message };
  }

  return {
    async open(path, window) {
      const opened = await openFile(path, replaceFile);
      if (!opened.ok) return opened;
      grant(path, opened.file, window);
      return { ok: true, name: opened.file.name, text: opened.text, file: opened.file.token, recent: recentId(path) };
    },
    async save({ file: token, text, overwrite }, window) {
      const found = grantOf(token, window);
      if (found !== undefined) return write(found.file, text, overwrite);
      return { kind: "failed", message: "The file was not saved: it is not one of this window. Use Save as." };
    },
    async saveTo(chosen, text, window) {
      const { path, asChosen } = withEnding(chosen);
      // A name that the dialog has not shown: the person was not asked whether a file of that name may go.
      let onlyNew = !asChosen;
      const file = fileAt(path, (target, bytes, options) =>
        replaceFile(target, bytes, onlyNew ? { ...options, onlyNew } : options),
      );
      const outcome = await write(file, text, true);
      if (outcome.kind !== "saved") return { outcome, file: null };
      onlyNew = false;
      grant(path, file, window);
      return { outcome, file: { file: file.token, name: file.name, recent: recentId(path) } };
    },
    async saveCopyTo(chosen, { kind, bytes }) {
      const { path, asChosen } = withEnding(chosen, `.${kind}`);
      const shownAs = basename(path);
      const saved = await replaceFile(path, bytes, { shownAs, ...(!asChosen && { onlyNew: true }) });
      if (!saved.saved) return { kind: "failed", message: saved.message };
      return { kind: "saved", name: shownAs, ...(saved.note !== undefined && { note: saved.note }) };
    },
    suggestion: (name, { file }, ending) => join(file === undefined ? folder : dirname(file), safeName(name, ending)),
    pathOf: (token, window) => grantOf(token, window)?.path,
    forgetAll(window) {
      for (const [token, { window: owner }] of grants) if (owner === window.id) grants.delete(token);
    },
  };
}
