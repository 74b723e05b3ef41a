/**
 * Builds what the hosts run from, each part only when its sources have changed since:
 *
 *   node shared-model/hosts/build.mjs [window] [cli] [host] [main] [preload]     (all of them when none is named)
 *
 * Plain Node, so that it runs right after `npm ci`. Several processes may ask at once; one builds, the others wait.
 */
import { createHash } from "node:crypto";
import { mkdir, readdir, readFile, rename, rm, stat, unlink, utimes, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { stripVTControlCharacters } from "node:util";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const DIST = join(ROOT, "dist");

/** What every part depends on besides its own folders: the pins of the libraries and how to build. */
const HOW = ["package.json", "package-lock.json", "vite.config.ts", "tsconfig.json", "shared-model/hosts/build.mjs"];

/** @type {Readonly<Record<string, readonly string[]>>} Part to the files and folders it is built from. */
const PARTS = {
  window: ["renderer", "shared-model", "assets"],
  cli: ["shared-model", "assets"],
  host: ["shared-model/hosts/atomic-file.ts", "shared-model/hosts/save-failure.ts", "shared-model/lib"],
  main: ["electron", "shared-model/hosts", "shared-model/commands/catalog", "shared-model/lib"],
  preload: ["electron/preload", "electron/ipc"],
};

/**
 * @param {string} part A key of `PARTS`.
 * @returns {Promise<boolean>} Whether it was built now; false when it was fresh.
 */
export async function buildWhenStale(part) {
  await mkdir(DIST, { recursive: true });
  if (await isFresh(part)) return false;
  const unlock = await lock(part);
  try {
    if (await isFresh(part)) return false;
    const stamp = await stampOf(part);
    await build(part);
    await writeFile(stampPath(part), JSON.stringify(stamp));
    return true;
  } finally {
    await unlock();
  }
}

const stampPath = (/** @type {string} */ part) => join(DIST, `.${part}.stamp`);

/** Times and sizes answer at once; where they differ, as after a checkout, the contents decide. @param {string} part */
async function isFresh(part) {
  const exists = await stat(join(DIST, part)).then(
    () => true,
    () => false,
  );
  const stamp = await readFile(stampPath(part), "utf8")
    .then(JSON.parse)
    .catch(() => undefined);
  if (!exists || stamp === undefined) return false;
  const files = await sourcesOf(part);
  if (stamp.times === timesOf(files)) return true;
  if (stamp.contents !== (await contentsOf(files))) return false;
  await writeFile(stampPath(part), JSON.stringify({ ...stamp, times: timesOf(files) }));
  return true;
}

/** @param {string} part */
async function stampOf(part) {
  const files = await sourcesOf(part);
  return { times: timesOf(files), contents: await contentsOf(files) };
}

/** @typedef {{ path: string, size: number, changedMs: number }} Source */

/** @param {string} part @returns {Promise<Source[]>} In a fixed order. */
async function sourcesOf(part) {
  const found = await Promise.all([...HOW, ...(PARTS[part] ?? [])].map((name) => walk(join(ROOT, name))));
  return found.flat().sort((a, b) => (a.path < b.path ? -1 : 1));
}

/** @param {string} path @returns {Promise<Source[]>} */
async function walk(path) {
  const at = await stat(path).catch(() => undefined);
  if (at === undefined) return [];
  if (!at.isDirectory()) return [{ path, size: at.size, changedMs: at.mtimeMs }];
  return (await Promise.all((await readdir(path)).map((name) => walk(join(path, name))))).flat();
}

/** @param {Source[]} files */
function timesOf(files) {
  return digest(files.map(({ path, size, changedMs }) => `${path} ${size} ${changedMs}`));
}

/** @param {Source[]} files */
async function contentsOf(files) {
  return digest(await Promise.all(files.map(async ({ path }) => `${path} ${digest([await readFile(path)])}`)));
}

/** @param {readonly (string | Buffer)[]} lines */
function digest(lines) {
  const hash = createHash("sha256");
  for (const line of lines) hash.update(line).update("\n");
  return hash.digest("hex");
}

/** Builds beside the old result and puts it in place at the end, so that nobody meets a half-built folder. @param {string} part */
async function build(part) {
  const vite = await import("vite").catch(() => {
    throw new Error("The packages are not installed: run npm ci first.");
  });
  const [fresh, old] = [join(DIST, `.${part}.${process.pid}`), join(DIST, `.${part}.old.${process.pid}`)];
  const mode = process.env.NODE_ENV;
  try {
    // A test runner sets this to "test", and React would then be built for development.
    process.env.NODE_ENV = "production";
    await vite.build({
      configFile: join(ROOT, "vite.config.ts"),
      mode: part,
      logLevel: "silent",
      build: { outDir: fresh, emptyOutDir: true },
    });
    await rename(join(DIST, part), old).catch(() => undefined);
    await rename(fresh, join(DIST, part));
  } catch (error) {
    // The builder colours what it says even where no terminal shows it.
    throw new Error(stripVTControlCharacters(error instanceof Error ? error.message : String(error)));
  } finally {
    if (mode === undefined) delete process.env.NODE_ENV;
    else process.env.NODE_ENV = mode;
    await rm(fresh, { recursive: true, force: true });
    await rm(old, { recursive: true, force: true });
  }
}

/**
 * One builder a part at a time. A lock is taken over when its process is gone, or has not marked it for a minute: the
 * number of a process is given out again, after a restart of a container even to the very next one.
 * @param {string} part
 * @returns {Promise<() => Promise<void>>} Unlocks.
 */
async function lock(part) {
  const path = join(DIST, `.${part}.lock`);
  for (;;) {
    try {
      await writeFile(path, String(process.pid), { flag: "wx" });
      break;
    } catch (error) {
      if (/** @type {NodeJS.ErrnoException} */ (error).code !== "EEXIST") throw error;
    }
    if (await isAbandoned(path)) await unlink(path).catch(() => undefined);
    else await new Promise((done) => setTimeout(done, 50));
  }
  const marking = setInterval(() => utimes(path, new Date(), new Date()).catch(() => undefined), 5000);
  return async () => {
    clearInterval(marking);
    await unlink(path).catch(() => undefined);
  };
}

/** @param {string} path */
async function isAbandoned(path) {
  const at = await stat(path).catch(() => undefined);
  if (at === undefined) return false;
  const ageMs = Date.now() - at.mtimeMs;
  if (ageMs > 60_000) return true;
  const holder = Number(await readFile(path, "utf8").catch(() => ""));
  // Between its creation and the first byte, a lock names nobody; that takes no second.
  if (!Number.isInteger(holder) || holder <= 0) return ageMs > 5000;
  try {
    process.kill(holder, 0);
    return false;
  } catch (error) {
    return /** @type {NodeJS.ErrnoException} */ (error).code === "ESRCH";
  }
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const asked = process.argv.slice(2);
  for (const part of asked.length === 0 ? Object.keys(PARTS) : asked) {
    // One that fails does not keep the others from being built.
    try {
      if (!(part in PARTS)) {
        throw new Error(`There is no part "${part}"; the parts are ${Object.keys(PARTS).join(", ")}.`);
      }
      const built = await buildWhenStale(part);
      console.log(`${part}: ${built ? "built" : "fresh"}`);
    } catch (error) {
      console.error(error instanceof Error ? error.message : error);
      process.exitCode = 1;
    }
  }
}
