import type { WindowCommandId } from "../../shared-model/commands/catalog/commands.ts";
import { clipboard } from "./clipboard.ts";
import { askForCommandField } from "./command-field-store.ts";
import { openDialog } from "./dialog-store.ts";
import { redo, undo } from "./document-store.ts";
import { toggleEnergise } from "./energise/door.ts";
import { files } from "./files.ts";
import { toggleFold } from "./folding.ts";
import { preferencesStore } from "./preferences-store.ts";
import { toggleScope } from "./scope/scoping.ts";
import { showOtherState } from "./shown-state.ts";
import { openStart } from "./start.ts";
import { startTour } from "./tour.ts";

/** What the window does itself, by the ids of the catalogue. */
const RUN: Readonly<Record<WindowCommandId, () => unknown>> = {
  undo,
  redo,
  cut: clipboard.cut,
  copy: clipboard.copy,
  paste: clipboard.paste,
  duplicate: clipboard.duplicate,
  "copy-picture": async () => (await import("./copy-picture.ts")).copyPicture(),
  "new-document": files.startNew,
  "open-document": files.open,
  "save-document": files.save,
  "save-document-as": files.saveAs,
  "print-export": () => openDialog({ kind: "print" }),
  "start-page": openStart,
  energise: toggleEnergise,
  "add-seen-box": () => openDialog({ kind: "new-box" }),
  "find-anything": askForCommandField,
  "other-state": showOtherState,
  "show-scope": toggleScope,
  overview: () => preferencesStore.merge({ overview: !preferencesStore.get().overview }),
  "fold-left": () => toggleFold("left"),
  "fold-right": () => toggleFold("right"),
  "show-keys": () => openDialog({ kind: "keys" }),
  "show-signs": () => openDialog({ kind: "legend" }),
  "show-rules": () => openDialog({ kind: "rule-book" }),
  "show-cautions": () => openDialog({ kind: "cautions" }),
  "take-tour": startTour,
};

export const runWindowCommand = (id: WindowCommandId): void => {
  RUN[id]();
};
