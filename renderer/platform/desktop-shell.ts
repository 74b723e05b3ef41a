import type { WindowCommandId } from "../../shared-model/commands/catalog/commands.ts";
import { type ChosenKeys, keyEntries } from "../../shared-model/commands/catalog/keys.ts";
import { documentStore, isDirty } from "../state/document-store.ts";
import { preferencesStore } from "../state/preferences-store.ts";
import { answerOf, type Bridge } from "./desktop-bridge.ts";
import { isTextField } from "./text-field.ts";

/** What the window does when the desktop program asks. */
export interface ShellActs {
  run(id: WindowCommandId): void;
  /** @returns Whether the document may go: saved, given up, or without changes. */
  mayLeave(): Promise<boolean>;
  /** Opens the file that waits, after asking about unsaved work. */
  openWaiting(): Promise<void>;
}

/** Ties the window to the desktop program around it: its menus, its closing, files from outside, the mark of edits. */
export function startDesktopShell(bridge: Bridge, acts: ShellActs): void {
  bridge.onRunCommand(({ id }) => {
    if (!runInField(id)) acts.run(id);
  });
  bridge.onFileWaiting(() => void acts.openWaiting());
  bridge.onCloseRequested(async () => {
    const leave = await acts.mayLeave().catch(() => false);
    await answerOf(bridge.answerClose({ leave }));
  });
  let shown = "";
  const show = (): void => {
    const state = documentStore.get();
    const now = { file: state.target?.token ?? null, edited: isDirty(state) };
    const key = JSON.stringify(now);
    if (key === shown) return;
    shown = key;
    void bridge.showDocument(now);
  };
  documentStore.subscribe(show);
  show();
  let told: ChosenKeys = {};
  const tellKeys = (): void => {
    const { keys } = preferencesStore.get();
    if (keys === told) return;
    told = keys;
    const list = keyEntries.flatMap(({ id }) => {
      const chord = keys[id];
      return chord === undefined ? [] : [{ id, chord }];
    });
    void bridge.showKeys({ keys: list });
  };
  preferencesStore.subscribe(tellKeys);
  if (Object.keys(preferencesStore.get().keys).length > 0) tellKeys();
}

/** The Edit menu is about the text while somebody types. Its keys never come this way: the field answers them itself. */
function runInField(id: WindowCommandId): boolean {
  if ((id !== "undo" && id !== "redo") || !isTextField(document.activeElement)) return false;
  return document.execCommand(id);
}
