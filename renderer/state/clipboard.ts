import { parseText } from "../analysis/checks.ts";
import { listenForClipboard, systemClipboard } from "../platform/system-clipboard.ts";
import type { ClipboardActions } from "./clipboard-actions.ts";
import { dialogStore } from "./dialog-store.ts";
import { pasteSpot } from "./paste-spot.ts";
import { attachToSelected } from "./photos/photos.ts";
import { notify } from "./session-store.ts";
import { wording } from "./words.ts";

let actions: ClipboardActions | undefined;

/** Brings what copies and pastes: a start page has nothing to copy and does not wait for it. */
export async function fetchClipboard(): Promise<ClipboardActions> {
  const { createClipboardActions } = await import("./clipboard-actions.ts");
  actions ??= createClipboardActions({ parse: parseText });
  return actions;
}

/** Copying and pasting as menus and the command field ask for it; the keys come by `startClipboard`. */
export const clipboard = {
  copy: async () => give((await fetchClipboard()).copySelection()),
  async cut() {
    const { copySelection, cutSelection } = await fetchClipboard();
    // Nothing goes from the sheet before it is on the clipboard.
    if (await give(copySelection())) cutSelection();
  },
  async paste() {
    // Where it was asked for, not where the pointer has gone since.
    const at = pasteSpot();
    const [text, { paste }] = await Promise.all([systemClipboard.read(), fetchClipboard()]);
    await paste(text, at);
  },
  duplicate: async () => (await fetchClipboard()).duplicateSelection(),
};

/** @returns Whether the text is on the clipboard. */
async function give(text: string | undefined): Promise<boolean> {
  if (text === undefined) return false;
  if (await systemClipboard.write(text)) return true;
  notify("problem", wording.theClipboardWasNotReached, [wording.pressTheKeysForCopyingInstead]);
  return false;
}

/**
 * Answers the clipboard keys while no dialog is open. Call once. Copying has to answer within its event, so a drawing at
 * work calls `fetchClipboard` ahead.
 */
export function startClipboard(): void {
  const isFree = (): boolean => dialogStore.get().kind === "none";
  listenForClipboard({
    copy: () => (isFree() ? actions?.copySelection() : undefined),
    cut: () => (isFree() ? actions?.cutSelection() : undefined),
    paste: async (text) => {
      const at = pasteSpot();
      if (isFree()) await (await fetchClipboard()).paste(text, at);
    },
    pastePictures: async (pictures) => {
      if (isFree()) await attachToSelected(pictures);
    },
  });
}
