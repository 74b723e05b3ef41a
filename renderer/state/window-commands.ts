import type { WindowCommandId } from "../../shared-model/commands/catalog/commands.ts";
import { clipboard } from "./clipboard.ts";
import { openDialog } from "./dialog-store.ts";
import { redo, undo } from "./document-store.ts";
import { toggleEnergise } from "./energise/energising.ts";
import { files } from "./files.ts";
import { openStart } from "./start.ts";

/** What the window does itself, by the ids of the catalogue. */
const RUN: Readonly<Record<WindowCommandId, () => unknown>> = {
  undo,
  redo,
  cut: clipboard.cut,
  copy: clipboard.copy,
  paste: clipboard.paste,
  duplicate: clipboard.duplicate,
  "new-document": files.startNew,
  "open-document": files.open,
  "save-document": files.save,
  "save-document-as": files.saveAs,
  "start-page": openStart,
  energise: toggleEnergise,
  "add-seen-box": () => openDialog({ kind: "new-box" }),
};

export const runWindowCommand = (id: WindowCommandId): void => {
  RUN[id]();
};
