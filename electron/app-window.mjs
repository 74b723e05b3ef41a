/** Shows a page as a window of its own, in an installed browser, where there is a display. */
import { spawn } from "node:child_process";
import { homedir } from "node:os";
import { join } from "node:path";
import { findBrowser } from "./find-browser.mjs";

/** A browser that ends sooner has handed the page to one that was running, or has failed. */
const HANDED_OVER_MS = 5000;

/**
 * @param {string} url
 * @param {string} folder Where the browser keeps the window's storage; not the person's own profile.
 * @returns {{ sentence: string, closed: Promise<void>, close: () => void }} `closed` resolves when the person closes
 *   the window, and never where we cannot tell.
 */
export function openAppWindow(url, folder) {
  const browser = hasDisplay() ? findBrowser() : undefined;
  if (browser === undefined) {
    const why = hasDisplay() ? "No browser was found that could show a window." : "There is no display here.";
    return {
      sentence: `${why} Open this address in a browser: ${url}\nCtrl-C ends Loadside.`,
      closed: new Promise(() => {}),
      close: () => {},
    };
  }
  const started = Date.now();
  const child = spawn(browser, appWindowArgs(browser, url, folder), { stdio: "ignore" });
  const closed = /** @type {Promise<void>} */ (
    new Promise((resolve) => {
      child.once("error", () => console.log(`The window could not be opened. Open this address in a browser: ${url}`));
      child.once("exit", (status) => {
        if (Date.now() - started > HANDED_OVER_MS) return resolve();
        // Without a status it was ended by a signal: Ctrl-C reaches it as well.
        if (status === null) return;
        if (status === 0) console.log("The window is closed, or in a browser that ran already. Ctrl-C ends Loadside.");
        else console.log(`The window did not open. Open this address in a browser: ${url}`);
      });
    })
  );
  return { sentence: `Loadside is open: ${url}\nCtrl-C ends it.`, closed, close: () => child.kill() };
}

/** Whether a window could be seen here at all. */
export function hasDisplay() {
  if (process.platform === "darwin" || process.platform === "win32") return true;
  return Boolean(process.env.DISPLAY || process.env.WAYLAND_DISPLAY);
}

/**
 * @param {string} browser
 * @param {string} url
 * @param {string} folder
 */
export function appWindowArgs(browser, url, folder) {
  // A browser in a snap may not write into hidden folders.
  const storage = browser.startsWith("/snap/") ? join(homedir(), "snap", "chromium", "common", "loadside") : folder;
  const args = [
    `--app=${url}`,
    `--user-data-dir=${storage}`,
    "--no-first-run",
    "--no-default-browser-check",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
  ];
  return process.getuid?.() === 0 ? [...args, "--no-sandbox"] : args;
}
