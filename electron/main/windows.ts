/** The windows of the program: making them, giving them files, closing them, and starting them again after a crash. */
import { app, dialog } from "electron";
import { type DocumentWindow, newDocumentWindow } from "./document-window.ts";
import { bringToFront, loadWindow, makeBrowserWindow } from "./make-browser-window.ts";
import { closeStep } from "./policies/closing.ts";
import { afterCrash } from "./policies/crashes.ts";
import { whereToOpen } from "./policies/where-to-open.ts";
import { tell } from "./serve-requests.ts";

export interface Windows {
  /** @param path The file it is to show. */
  open(path?: string): void;
  /** Shows a file that came from outside, in the window that suits. */
  openFile(path: string): void;
  /** Brings the window that was used last to the front; opens one where there is none. */
  show(): void;
  byContents(contentsId: number): DocumentWindow | undefined;
  /** Brings another window that shows the file to the front. @returns Whether there is one. */
  showElsewhere(path: string, than: DocumentWindow): boolean;
  /** The one that was used last. */
  latest(): DocumentWindow | undefined;
  showsDocument(window: DocumentWindow, path: string | undefined, edited: boolean): void;
  closeAnswered(window: DocumentWindow, leave: boolean): void;
  /** Quitting closes every window; one that stays keeps the program. */
  quitting(): void;
}

export interface WindowsOptions {
  readonly preload: string;
  readonly onClosed: (window: DocumentWindow) => void;
}

export function createWindows({ preload, onClosed }: WindowsOptions): Windows {
  const windows = new Map<number, DocumentWindow>();
  let quits = false;
  let focusCount = 0;

  function open(path?: string): void {
    const browser = makeBrowserWindow(preload);
    const window = newDocumentWindow(browser, path);
    // So that a file that is given twice in a row finds this window.
    window.file = path;
    windows.set(window.id, window);
    touch(window);
    follow(window);
    void loadWindow(browser);
  }

  function touch(window: DocumentWindow): void {
    focusCount += 1;
    window.focusedAt = focusCount;
  }

  function follow(window: DocumentWindow): void {
    const { browser } = window;
    browser.on("focus", () => touch(window));
    browser.on("close", (event) => {
      const step = closeStep(window);
      if (step === "close") return;
      event.preventDefault();
      bringToFront(browser);
      if (step === "insist") return void insist(window);
      window.asked = true;
      tell(window, "closeRequested", {});
    });
    browser.on("closed", () => {
      windows.delete(window.id);
      onClosed(window);
    });
    // The page vetoes being left with unsaved work; the person has been asked by then.
    browser.webContents.on("will-prevent-unload", (event) => {
      if (window.mayClose) event.preventDefault();
    });
    browser.webContents.on("did-start-navigation", ({ isMainFrame, isSameDocument }) => {
      if (!isMainFrame || isSameDocument) return;
      window.listens = false;
      window.asked = false;
    });
    browser.webContents.on("render-process-gone", (_, { reason }) => startAgain(window, reason));
    browser.on("unresponsive", () => askWhenStuck(window));
  }

  function startAgain(window: DocumentWindow, reason: string): void {
    const step = afterCrash(reason, Date.now(), window.crashedAt);
    window.crashedAt = Date.now();
    window.listens = false;
    window.waiting ??= window.file;
    if (step === "reload") window.browser.webContents.reload();
    else if (step === "ask") void askAfterCrash(window, reason);
  }

  async function askAfterCrash(window: DocumentWindow, reason: string): Promise<void> {
    const { response } = await dialog.showMessageBox(window.browser, {
      type: "error",
      message: "This window has failed again.",
      detail: `The system says: ${reason}. The file on the disk is as it was saved last.`,
      buttons: ["Open it again", "Close it"],
      defaultId: 0,
      cancelId: 1,
    });
    if (window.browser.isDestroyed()) return;
    if (response === 0) window.browser.webContents.reload();
    else window.browser.destroy();
  }

  async function insist(window: DocumentWindow): Promise<void> {
    const { response } = await dialog.showMessageBox(window.browser, {
      type: "warning",
      message: "This window asks whether to save.",
      detail: "Changes since the last save are lost when it is closed now.",
      buttons: ["Go back", "Close without saving"],
      defaultId: 0,
      cancelId: 0,
    });
    if (response === 1 && !window.browser.isDestroyed()) closeNow(window);
  }

  function closeNow(window: DocumentWindow): void {
    window.mayClose = true;
    window.browser.close();
    if (quits) app.quit();
  }

  async function askWhenStuck(window: DocumentWindow): Promise<void> {
    const { response } = await dialog.showMessageBox(window.browser, {
      type: "warning",
      message: "This window does not answer.",
      detail: "Waiting may be enough. Opened again, it shows the file as it was saved last.",
      buttons: ["Wait", "Open it again"],
      defaultId: 0,
      cancelId: 0,
    });
    // Ends in `render-process-gone`, which opens it again.
    if (response === 1 && !window.browser.isDestroyed()) window.browser.webContents.forcefullyCrashRenderer();
  }

  const latest = (): DocumentWindow | undefined => [...windows.values()].sort((a, b) => b.focusedAt - a.focusedAt)[0];

  return {
    open,
    openFile(path) {
      const place = whereToOpen(path, [...windows.values()]);
      if (place.kind === "new-window") return open(path);
      const window = windows.get(place.id);
      if (place.kind === "reuse" && window !== undefined) {
        window.waiting = path;
        window.file = path;
        if (window.listens) tell(window, "fileWaiting", {});
      }
      if (window !== undefined) bringToFront(window.browser);
    },
    show() {
      const window = latest();
      if (window === undefined) open();
      else bringToFront(window.browser);
    },
    showElsewhere(path, than) {
      const other = [...windows.values()].find((window) => window !== than && window.file === path);
      if (other !== undefined) bringToFront(other.browser);
      return other !== undefined;
    },
    byContents: (contentsId) => windows.get(contentsId),
    latest,
    showsDocument(window, path, edited) {
      window.file = path ?? window.waiting;
      window.edited = edited;
      window.browser.setDocumentEdited(edited);
      if (process.platform === "darwin") window.browser.setRepresentedFilename(path ?? "");
    },
    closeAnswered(window, leave) {
      window.asked = false;
      if (!leave) {
        quits = false;
        return;
      }
      closeNow(window);
    },
    quitting() {
      quits = true;
    },
  };
}
