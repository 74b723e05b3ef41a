import { parseText } from "../analysis/checks.ts";
import { listenForClipboard, systemClipboard } from "../platform/system-clipboard.ts";
import { createClipboardActions } from "./clipboard-actions.ts";
import { dialogStore } from "./dialog-store.ts";
import { notify } from "./session-store.ts";

const actions = createClipboardActions({ parse: parseText });

/** Copying and pasting as menus and the command field ask for it; the keys come by `startClipboard`. */
export const clipboard = {
  copy: () => give(actions.copySelection()),
  async cut() {
    // Nothing goes from the sheet before it is on the clipboard.
    if (await give(actions.copySelection())) actions.cutSelection();
  },
  paste: async () => actions.paste(await systemClipboard.read()),
  duplicate: actions.duplicateSelection,
};

/** @returns Whether the text is on the clipboard. */
async function give(text: string | undefined): Promise<boolean> {
  if (text === undefined) return false;
  if (await systemClipboard.write(text)) return true;
  notify("problem", "The clipboard was not reached", ["Press the keys for copying instead."]);
  return false;
}

/** Answers the clipboard keys while no dialog is open. Call once. */
export function startClipboard(): void {
  const isFree = (): boolean => dialogStore.get().kind === "none";
  listenForClipboard({
    copy: () => (isFree() ? actions.copySelection() : undefined),
    cut: () => (isFree() ? actions.cutSelection() : undefined),
    paste: (text) => {
      if (isFree()) void actions.paste(text);
    },
  });
}
