/** Finds an installed browser that can show one page as a window of its own. */
import { accessSync, constants } from "node:fs";
import { homedir } from "node:os";
import { delimiter, join } from "node:path";

const ON_PATH = [
  "chromium",
  "chromium-browser",
  "google-chrome-stable",
  "google-chrome",
  "microsoft-edge-stable",
  "microsoft-edge",
];
const ON_MAC = ["Google Chrome", "Chromium", "Microsoft Edge"];
const ON_WINDOWS = [
  ["Google", "Chrome", "Application", "chrome.exe"],
  ["Chromium", "Application", "chrome.exe"],
  ["Microsoft", "Edge", "Application", "msedge.exe"],
];

/** @returns {string | undefined} The program's path. LOADSIDE_CHROMIUM names one outright. */
export function findBrowser() {
  return [process.env.LOADSIDE_CHROMIUM ?? "", ...candidates()].find((path) => path !== "" && isProgram(path));
}

/** @returns {string[]} */
function candidates() {
  if (process.platform === "darwin") {
    const folders = ["/Applications", join(homedir(), "Applications")];
    return ON_MAC.flatMap((name) => folders.map((folder) => join(folder, `${name}.app`, "Contents", "MacOS", name)));
  }
  if (process.platform === "win32") {
    const folders = [process.env.PROGRAMFILES, process.env["PROGRAMFILES(X86)"], process.env.LOCALAPPDATA];
    return ON_WINDOWS.flatMap((parts) => folders.flatMap((folder) => (folder ? [join(folder, ...parts)] : [])));
  }
  const folders = (process.env.PATH ?? "").split(delimiter).filter((folder) => folder !== "");
  return ON_PATH.flatMap((name) => folders.map((folder) => join(folder, name)));
}

/** @param {string} path */
function isProgram(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
