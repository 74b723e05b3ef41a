/** The desktop runtime, Electron: finding it, fetching it, and opening the window in it. */
import { spawn, spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";

/** As long as a person would wait for a window. */
const FETCH_MS = 60_000;
const DAY_MS = 24 * 3_600_000;
/** By then it has opened its window, or never will. */
const OPEN_MS = 20_000;

/** What the main process says once its window is there. */
const OPEN_WORDS = "Loadside is open.";

/** @typedef {{ program: string } | { why: string }} Runtime `why` is a clause for a person: "the desktop runtime ...". */

const NOT_HERE = "is not here";

/**
 * The runtime's program, fetched if that takes no more than a minute. What could not be fetched is not tried again on
 * the same day: the person would wait for it at every start.
 * @param {string} root The project's folder.
 * @param {string} ownFolder Where we may keep notes.
 * @param {number} [fetchMs]
 * @returns {Runtime}
 */
export function getRuntime(root, ownFolder, fetchMs = FETCH_MS) {
  const atHand = runtimeAtHand(root);
  if ("program" in atHand || atHand.why !== NOT_HERE) return atHand;
  const note = join(ownFolder, "runtime-not-fetched");
  if (isFresh(note)) return { why: `${NOT_HERE} and could not be fetched today` };
  console.log("Fetching the desktop runtime, for a minute at most ...");
  const installer = join(root, "node_modules", "electron", "install.js");
  spawnSync(process.execPath, [installer], { cwd: root, stdio: "ignore", timeout: fetchMs, killSignal: "SIGKILL" });
  const fetched = runtimeAtHand(root);
  if ("program" in fetched) return fetched;
  try {
    mkdirSync(ownFolder, { recursive: true });
    writeFileSync(note, "");
  } catch {
    // It is tried again next time; that is all.
  }
  return { why: `${NOT_HERE} and could not be fetched within a minute` };
}

/**
 * Without a look at the network: the program that LOADSIDE_ELECTRON names, or the pinned one.
 * @param {string} root
 * @returns {Runtime}
 */
export function runtimeAtHand(root) {
  const named = process.env.LOADSIDE_ELECTRON;
  if (named) return isFile(named) ? { program: named } : { why: "that LOADSIDE_ELECTRON names is not there" };
  // Its walls cannot stand there, and without them it does not start.
  if (process.platform !== "win32" && process.getuid?.() === 0) return { why: "does not run as root" };
  const program = installedProgram(root);
  return program === undefined ? { why: NOT_HERE } : { program };
}

/**
 * The package would fetch what is missing as soon as it is asked, so it is not asked: its installer leaves two files.
 * @param {string} root
 * @returns {string | undefined}
 */
function installedProgram(root) {
  const folder = join(root, "node_modules", "electron");
  try {
    const { version } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
    const installed = readFileSync(join(folder, "dist", "version"), "utf8").trim();
    if (installed.replace(/^v/, "") !== version) return undefined;
    const program = join(folder, "dist", readFileSync(join(folder, "path.txt"), "utf8"));
    return isFile(program) ? program : undefined;
  } catch {
    return undefined;
  }
}

/** @param {string} path */
const isFile = (path) => statSync(path, { throwIfNoEntry: false })?.isFile() === true;

/** @param {string} note */
function isFresh(note) {
  const at = statSync(note, { throwIfNoEntry: false });
  return at !== undefined && Date.now() - at.mtimeMs < DAY_MS;
}

/**
 * Opens the window and waits until it is there.
 * @param {string} program
 * @param {string} root The project's folder, with the built parts.
 * @param {readonly string[]} files Absolute paths.
 * @param {number} [openMs]
 * @returns {Promise<{ opened: true, closed: Promise<void>, close: () => void } | { opened: false }>} `closed` resolves
 *   when the program has ended.
 */
export function openDesktopWindow(program, root, files, openMs = OPEN_MS) {
  const args = [join(root, "dist", "main", "main.cjs"), ...files];
  const child = spawn(program, args, { cwd: root, stdio: ["ignore", "pipe", "ignore"] });
  const closed = /** @type {Promise<void>} */ (new Promise((resolve) => child.once("close", () => resolve())));
  const opened = /** @type {const} */ ({ opened: true, closed, close: () => child.kill() });
  return new Promise((resolve) => {
    const patience = setTimeout(() => {
      child.kill("SIGKILL");
      resolve({ opened: false });
    }, openMs);
    const settle = (/** @type {{ opened: false } | typeof opened} */ outcome) => {
      clearTimeout(patience);
      resolve(outcome);
    };
    let said = "";
    child.stdout.setEncoding("utf8").on("data", (text) => {
      said = (said + text).slice(-1000);
      if (said.includes(OPEN_WORDS)) settle(opened);
    });
    child.once("error", () => settle({ opened: false }));
    // It ends at once, and well, where it runs already and has handed the files over.
    child.once("close", (status) => settle(status === 0 ? opened : { opened: false }));
  });
}
