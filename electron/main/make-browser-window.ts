import { join } from "node:path";
import { BrowserWindow } from "electron";
import { mayNavigate, WINDOW_ADDRESS } from "./policies/own-address.ts";
import { WEB_PREFERENCES } from "./policies/web-preferences.ts";

/** From `dist/main`, packaged or not. */
const ICON = join(__dirname, "../../assets/icons/256x256.png");

/** The one place where a window is made: the same walls around each. */
export function makeBrowserWindow(preload: string): BrowserWindow {
  const browser = new BrowserWindow({
    width: 1440,
    height: 900,
    minWidth: 480,
    minHeight: 360,
    // Shown once there is something to see.
    show: false,
    title: "Loadside",
    // Elsewhere the system takes it from the program file.
    ...(process.platform === "linux" && { icon: ICON }),
    webPreferences: { ...WEB_PREFERENCES, preload },
  });
  const { webContents } = browser;
  webContents.setWindowOpenHandler(() => ({ action: "deny" }));
  const keepIn = (event: { readonly url: string; preventDefault(): void }): void => {
    if (!mayNavigate(event.url)) event.preventDefault();
  };
  webContents.on("will-navigate", keepIn);
  webContents.on("will-frame-navigate", keepIn);
  webContents.on("will-redirect", keepIn);
  webContents.on("will-attach-webview", (event) => event.preventDefault());
  browser.once("ready-to-show", () => browser.show());
  return browser;
}

/** Brings a window to the front, wherever it is. */
export function bringToFront(browser: BrowserWindow): void {
  if (browser.isMinimized()) browser.restore();
  browser.show();
  browser.focus();
}

export const loadWindow = (browser: BrowserWindow): Promise<void> => browser.loadURL(WINDOW_ADDRESS);
