/** What the measurements of the core have in common: building it into a folder of its own, and figures for people. */
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { cpus, loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "vite";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));

/**
 * Builds parts of the core, hands them over and removes them again.
 * @template T
 * @template R
 * @param {readonly string[]} paths From the root of the project.
 * @param {(core: T, folder: string) => R} measure Gets what the parts export, and the folder while it lasts.
 * @returns {Promise<R>}
 */
export async function withCore(paths, measure) {
  const folder = mkdtempSync(join(tmpdir(), "loadside-bench-"));
  try {
    const input = Object.fromEntries(paths.map((path, i) => [`part${i}`, join(ROOT, path)]));
    await build({
      configFile: false,
      root: ROOT,
      logLevel: "warn",
      // What it imports comes along, for nothing is installed beside that folder.
      ssr: { noExternal: true },
      build: {
        ssr: true,
        target: "es2023",
        outDir: folder,
        emptyOutDir: false,
        rolldownOptions: {
          input,
          preserveEntrySignatures: "strict",
          output: { entryFileNames: "[name].mjs", chunkFileNames: "[name]-[hash].mjs" },
        },
      },
    });
    const parts = Object.keys(input).map((name) => import(pathToFileURL(join(folder, `${name}.mjs`)).href));
    return measure(Object.assign({}, ...(await Promise.all(parts))), folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const OF_THREAD = "/proc/thread-self/schedstat";
const hasThreadTime = existsSync(OF_THREAD);

/**
 * Processor time of the thread that works. What a person waits for is that thread; the collector and the compiler beside it work on all that the rounds
 * leave behind. Where the system does not tell the time of a thread, that of the process is taken.
 * @param {() => unknown} work @returns {number} Milliseconds of the processor.
 */
export function taken(work) {
  const before = spent();
  work();
  return spent() - before;
}

function spent() {
  if (hasThreadTime) return Number(readFileSync(OF_THREAD, "utf8").split(" ")[0]) / 1e6;
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** @param {readonly number[]} values */
export function middle(values) {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}

/** @param {readonly number[]} values */
export function figures(values) {
  const show = (/** @type {number} */ value) => value.toFixed(2).padStart(8);
  return `median ${show(middle(values))}   least ${show(Math.min(...values))}   most ${show(Math.max(...values))}`;
}

export function reportLoad() {
  const load = loadavg().map((value) => value.toFixed(1));
  console.log(`  load of the machine        ${load.join(" ")} on ${cpus().length} processors`);
}

/** @param {ImportMeta} module @returns {boolean} Whether Node was started on it. */
export const isStarted = (module) => process.argv[1] === fileURLToPath(module.url);
