import { dialog } from "electron";
import { type ChosenKeys, soundKeys } from "../../shared-model/commands/catalog/keys.ts";
import type { RequestOf } from "../ipc/contract.ts";
import type { DocumentWindow } from "./document-window.ts";
import type { Documents } from "./documents.ts";
import { isDocumentPath } from "./policies/command-line.ts";
import type { RecentList } from "./recent-files.ts";
import type { Handlers } from "./serve-requests.ts";
import type { Windows } from "./windows.ts";

const FILTERS = [{ name: "Loadside drawing", extensions: ["loadside"] }];

/** What a save dialog calls each kind of copy. */
const COPY_NAMES: Readonly<Record<RequestOf<"saveCopyAs">["kind"], string>> = {
  pdf: "PDF document",
  svg: "SVG drawing",
  png: "PNG picture",
  csv: "Table as text (CSV)",
  xlsx: "Workbook (XLSX)",
};

export interface HandlerParts {
  readonly documents: Documents;
  readonly recent: RecentList;
  readonly windows: Windows;
  /** Chosen keys, by whatever window tells of them last: they are the same in all. */
  onKeys(keys: ChosenKeys): void;
}

/** What each request of a window does. */
export function createHandlers({ documents, recent, windows, onKeys }: HandlerParts): Handlers {
  /** Null where another window shows the file already, and has come to the front. */
  const open = async (path: string, window: DocumentWindow) =>
    windows.showElsewhere(path, window) ? null : documents.open(path, window);

  return {
    async chooseFile(_, window) {
      const { canceled, filePaths } = await dialog.showOpenDialog(window.browser, {
        filters: FILTERS,
        properties: ["openFile"],
      });
      const path = filePaths[0];
      return canceled || path === undefined ? null : open(path, window);
    },

    async takeWaitingFile({ wanted }, window) {
      const path = window.waiting;
      window.waiting = undefined;
      window.listens = true;
      if (!wanted) window.file = undefined;
      return path === undefined || !wanted ? null : documents.open(path, window);
    },

    async openDropped({ path }, window) {
      if (!isDocumentPath(path)) return { ok: false, message: "Documents have the ending .loadside." };
      return open(path, window);
    },

    saveFile: (request, window) => documents.save(request, window),

    async saveFileAs({ name, text }, window) {
      const { canceled, filePath } = await dialog.showSaveDialog(window.browser, {
        filters: FILTERS,
        defaultPath: documents.suggestion(name, window),
      });
      return canceled || filePath === "" ? null : documents.saveTo(filePath, text, window);
    },

    async saveCopyAs({ name, kind, bytes }, window) {
      const { canceled, filePath } = await dialog.showSaveDialog(window.browser, {
        filters: [{ name: COPY_NAMES[kind], extensions: [kind] }],
        defaultPath: documents.suggestion(name, window, `.${kind}`),
      });
      return canceled || filePath === "" ? null : documents.saveCopyTo(filePath, { kind, bytes });
    },

    recentFiles: () => recent.shown(),

    async openRecent({ id }, window) {
      const path = recent.pathOf(id);
      if (path !== undefined) return open(path, window);
      return { ok: false, message: "That file is no longer on the list. Open it with Open." };
    },

    forgetRecent({ id }) {
      recent.forget(id);
      return null;
    },

    showDocument({ file, edited }, window) {
      const path = file === null ? undefined : documents.pathOf(file, window);
      windows.showsDocument(window, path, edited);
      return null;
    },

    answerClose({ leave }, window) {
      windows.closeAnswered(window, leave);
      return null;
    },

    showKeys({ keys }) {
      onKeys(soundKeys(Object.fromEntries(keys.map(({ id, chord }) => [id, chord]))));
      return null;
    },
  };
}
