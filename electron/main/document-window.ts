import type { BrowserWindow } from "electron";

/** One window with its document, as far as the main process knows of it. */
export interface DocumentWindow {
  readonly id: number;
  readonly browser: BrowserWindow;
  /** Path of the file that it shows. */
  file: string | undefined;
  edited: boolean;
  /** Path of a file from outside that it has not taken yet. */
  waiting: string | undefined;
  /** Its page has started and takes messages. */
  listens: boolean;
  /** The person was asked whether it may close, and has not answered. */
  asked: boolean;
  mayClose: boolean;
  focusedAt: number;
  crashedAt: number | undefined;
}

export const newDocumentWindow = (browser: BrowserWindow, waiting: string | undefined): DocumentWindow => ({
  id: browser.webContents.id,
  browser,
  file: undefined,
  edited: false,
  waiting,
  listens: false,
  asked: false,
  mayClose: false,
  focusedAt: 0,
  crashedAt: undefined,
});
