/**
 * What `npm start` does: packages, build, window, in that order, until the window is closed or Ctrl-C. The window opens
 * in the desktop runtime; where there is none, or it does not start, a browser shows it.
 */
import { spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { homedir, tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { hasDisplay, openAppWindow } from "./app-window.mjs";
import { startBrowserHost } from "./browser-host.mjs";
import { getRuntime, openDesktopWindow } from "./desktop-runtime.mjs";
import { installWhenNeeded } from "./install-when-needed.mjs";
import { openFile } from "./opened-file.mjs";

const ROOT = fileURLToPath(new URL("../", import.meta.url));
const USAGE = "Usage: npm start [-- FILE.loadside]";

/**
 * @param {string[]} args
 * @returns {Promise<number>} Exit status: 0 ended, 1 could not start, 2 bad usage or a file that cannot be opened.
 */
export async function start(args) {
  if (args.length > 1 || args[0]?.startsWith("-")) return complain(USAGE, 2);
  const path = args[0] === undefined ? undefined : fromWhereThePersonStands(args[0]);
  const opened = path === undefined ? undefined : await openFile(path, replaceFile);
  if (opened?.ok === false) return complain(opened.message, 2);
  if (!installWhenNeeded(ROOT)) return complain("The packages could not be installed.", 1);
  if (!build("window", "host")) return complain("Loadside could not be built.", 1);
  // Without a display there is nothing to open, and nothing worth fetching.
  if (hasDisplay()) {
    const status = await inDesktopWindow(path === undefined ? [] : [path]);
    if (status !== undefined) return status;
  }
  return inBrowser(opened?.file);
}

/**
 * @param {readonly string[]} files
 * @returns {Promise<number | undefined>} Undefined, after a sentence that says why, where a browser has to do.
 */
async function inDesktopWindow(files) {
  const runtime = getRuntime(ROOT, ownFolder());
  if ("why" in runtime) {
    console.log(`The desktop runtime ${runtime.why}: Loadside opens in a browser.`);
    return undefined;
  }
  if (!build("main", "preload")) return complain("Loadside could not be built.", 1);
  const ended = endOfProcess();
  const window = await openDesktopWindow(runtime.program, ROOT, files);
  if (!window.opened) {
    console.log("The desktop runtime does not start on this computer: Loadside opens in a browser.");
    return undefined;
  }
  console.log("Loadside is open. Ctrl-C ends it.");
  await Promise.race([ended, window.closed]);
  // It asks about unsaved work before it ends; a second Ctrl-C does not wait for that.
  window.close();
  await window.closed;
  return 0;
}

/** @param {import("./opened-file.mjs").OpenedFile | undefined} openedFile @returns {Promise<number>} Exit status. */
async function inBrowser(openedFile) {
  const folder = ownFolder();
  const host = await startBrowserHost({
    folder: join(ROOT, "dist", "window"),
    port: rememberedPort(folder),
    ...(openedFile && { openedFile }),
  });
  rememberPort(folder, host.port);
  const ended = endOfProcess();
  const window = openAppWindow(host.url, join(folder, "browser"));
  console.log(window.sentence);
  await Promise.race([ended, window.closed]);
  window.close();
  await host.close();
  return 0;
}

/** @param {string} sentence @param {number} status */
function complain(sentence, status) {
  console.error(sentence);
  return status;
}

/** npm runs scripts in the project's folder and tells where it was called from. @param {string} path */
function fromWhereThePersonStands(path) {
  const calledFrom = process.env.npm_lifecycle_event === "start" ? process.env.INIT_CWD : undefined;
  return resolve(calledFrom ?? process.cwd(), path);
}

/**
 * The same code that the command line saves with, compiled by the build below.
 * @type {import("./opened-file.mjs").ReplaceFile}
 */
async function replaceFile(...args) {
  const built = await import(new URL("../dist/host/atomic-file.mjs", import.meta.url).href);
  return built.replaceFile(...args);
}

/** A process of its own, so that the builder's memory is given back. */
function build(/** @type {string[]} */ ...parts) {
  const builder = join(ROOT, "shared-model", "hosts", "build.mjs");
  const { status } = spawnSync(process.execPath, [builder, ...parts], {
    stdio: ["ignore", "ignore", "inherit"],
  });
  return status === 0;
}

/** Where the browser keeps the window's storage between runs. */
function ownFolder() {
  const home = homedir();
  const folders = {
    darwin: join(home, "Library", "Application Support", "Loadside"),
    win32: join(process.env.LOCALAPPDATA ?? home, "Loadside"),
  };
  const folder = folders[/** @type {"darwin" | "win32"} */ (process.platform)];
  const own = folder ?? join(process.env.XDG_CONFIG_HOME || join(home, ".config"), "loadside");
  try {
    mkdirSync(own, { recursive: true });
    return own;
  } catch {
    return join(tmpdir(), `loadside-${process.getuid?.() ?? "user"}`);
  }
}

/** Browser storage belongs to an address with its port: another port would be an empty storage. @param {string} folder */
function rememberedPort(folder) {
  try {
    const port = Number(readFileSync(join(folder, "port"), "utf8"));
    return Number.isInteger(port) && port >= 1024 && port <= 65535 ? port : 0;
  } catch {
    return 0;
  }
}

/** Keeps the first one: a later one is only a stand-in while the first is in use. @param {string} folder @param {number} port */
function rememberPort(folder, port) {
  if (rememberedPort(folder) !== 0) return;
  try {
    mkdirSync(folder, { recursive: true });
    writeFileSync(join(folder, "port"), `${port}\n`);
  } catch {
    console.error(`${folder} cannot be written: the window will forget its settings and unsaved work.`);
  }
}

/** Resolves at the first Ctrl-C or the like; the second one ends at once. */
function endOfProcess() {
  return /** @type {Promise<void>} */ (
    new Promise((done) => {
      for (const signal of /** @type {const} */ (["SIGINT", "SIGTERM", "SIGHUP"])) process.once(signal, () => done());
    })
  );
}
