import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import react from "@vitejs/plugin-react";
import { defineConfig, type Plugin, type UserConfig } from "vite";

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

const PAGE = "renderer/main.tsx";
const READING = "shared-model/format/parse-project.ts";
const WORKBENCH = "renderer/workbench.tsx";
/** What the start page fetches once it is seen. */
const START = "renderer/panels/start/new-box.tsx";
const NEAR = "renderer/sheet/box-picture.tsx";

/**
 * Files of scripts, each with the modules that need what is in it, two in brackets where it holds what both need; what an
 * earlier one holds is not in a later.
 */
const FILES = [
  ["page", PAGE],
  ["reading", READING],
  // A box from near, and what else the start page has in common with the workbench.
  ["near", NEAR],
  ["near", [START, WORKBENCH]],
  ["start", START],
  ["drawing", WORKBENCH],
  ["beside", "renderer/panels/beside.ts"],
  ["later", "renderer/sheet/later-parts.ts"],
] as const;

/**
 * Writes which scripts the page, its workbench and its start page need, by their built names and those of the page first,
 * so that a host can name those that will be asked for together with the page.
 */
const scriptsAhead: Plugin = {
  name: "scripts-ahead",
  generateBundle(_, bundle) {
    const chunks = Object.values(bundle).flatMap((file) => (file.type === "chunk" ? [file] : []));
    const needed = (from: string | undefined): readonly string[] => {
      const found = new Set<string>();
      const take = (name: string | undefined): void => {
        const chunk = chunks.find(({ fileName }) => fileName === name);
        if (chunk === undefined || found.has(chunk.fileName)) return;
        found.add(chunk.fileName);
        chunk.imports.forEach(take);
      };
      take(from);
      return [...found];
    };
    const fileOf = (path: string) => chunks.find(({ moduleIds }) => moduleIds.includes(here(path)))?.fileName;
    const page = needed(fileOf(PAGE));
    const drawing = [...new Set([...needed(fileOf(READING)), ...needed(fileOf(WORKBENCH))])].filter(
      (name) => !page.includes(name),
    );
    const start = [...new Set([...needed(fileOf(START)), ...needed(fileOf(NEAR))])].filter(
      (name) => !page.includes(name),
    );
    this.emitFile({
      type: "asset",
      fileName: "scripts.json",
      source: JSON.stringify({ page, drawing, start }),
    });
  },
};

/** The face may be passed on together with its licence. */
const faceLicence: Plugin = {
  name: "face-licence",
  generateBundle() {
    const source = readFileSync(here("node_modules/@fontsource/atkinson-hyperlegible-next/LICENSE"));
    this.emitFile({ type: "asset", fileName: "atkinson-hyperlegible-next.txt", source });
  },
};

interface Graph {
  getModuleInfo(id: string): { readonly importedIds: readonly string[] } | null;
}

/**
 * Few files hold what the page needs, and what a drawing needs more: every file of its own costs the browser some
 * milliseconds before the first line can run.
 */
const nameOfGroup = (id: string, graph: Graph): string | null =>
  FILES.find(([, ...needs]) =>
    needs.some((need) => [need].flat().every((path) => reachedFrom(here(path), graph).has(id))),
  )?.[0] ?? null;

const WORKER = here("shared-model/hosts/worker.ts");
const CHECKING = here("shared-model/analysis/checking.ts");

/** What checking needs is one file, however many of the worker's later jobs share parts of it. */
const nameInWorker = (id: string, graph: Graph): string | null =>
  graph.getModuleInfo(CHECKING) !== null && reachedFrom(CHECKING, graph).has(id) && !reachedFrom(WORKER, graph).has(id)
    ? "checking"
    : null;

const reached = new Map<string, ReadonlySet<string>>();

/** Modules that one needs without which it cannot begin, itself among them. */
function reachedFrom(start: string, graph: Graph): ReadonlySet<string> {
  const known = reached.get(start);
  if (known !== undefined) return known;
  const found = new Set<string>();
  const todo = [start];
  for (let id = todo.pop(); id !== undefined; id = todo.pop()) {
    if (found.has(id)) continue;
    found.add(id);
    todo.push(...(graph.getModuleInfo(id)?.importedIds ?? []));
  }
  reached.set(start, found);
  return found;
}

/**
 * The writer of workbooks packs large parts in workers that it makes of text. The content policy of the window forbids
 * those, and it would wait for them for ever. It runs in a worker already: its other way of packing takes their place.
 */
const packedHere: Plugin = {
  name: "packed-here",
  load: (id) =>
    /write-excel-file.modules.zip.zipToArrayBuffer[.]js$/.test(id)
      ? 'import pack from "./zipToArrayBufferSync.js"; export default async (files) => pack(files);'
      : null,
  generateBundle(_, bundle) {
    const modules = Object.values(bundle).flatMap((file) => (file.type === "chunk" ? file.moduleIds : []));
    const has = (part: RegExp): boolean => modules.some((id) => part.test(id));
    if (has(/write-excel-file/) && !has(/zipToArrayBufferSync[.]js$/))
      this.error("The writer of workbooks packs otherwise than it did: see the plugin packed-here.");
  },
};

/** The window and its worker: relative addresses, so that any host can serve it, and nothing inline, so that a strict content policy holds. */
const window: UserConfig = {
  root: here("renderer"),
  base: "./",
  publicDir: false,
  envDir: false,
  plugins: [react(), scriptsAhead, faceLicence],
  worker: {
    format: "es",
    plugins: () => [packedHere],
    rolldownOptions: {
      output: { codeSplitting: { groups: [{ name: nameInWorker, includeDependenciesRecursively: false }] } },
    },
  },
  build: {
    outDir: here("dist/window"),
    emptyOutDir: true,
    target: "es2023",
    assetsInlineLimit: 0,
    // In one file: the workbench would wait for a second one after its script has come.
    cssCodeSplit: false,
    modulePreload: { polyfill: false },
    sourcemap: false,
    rolldownOptions: {
      output: { codeSplitting: { groups: [{ name: nameOfGroup, includeDependenciesRecursively: false }] } },
    },
  },
};

/**
 * A program for Node in one file, its libraries included: it runs wherever the file is copied to. What makes pictures is
 * compiled for the machine and stays a package; only who asks for a picture needs it.
 */
const program = (entry: string, folder: string, file: string): UserConfig => ({
  root: here("."),
  publicDir: false,
  envDir: false,
  plugins: [packedHere],
  ssr: { noExternal: true, external: ["@resvg/resvg-js"], target: "node" },
  build: {
    ssr: here(entry),
    outDir: here(folder),
    emptyOutDir: true,
    target: "node20",
    minify: false,
    sourcemap: false,
    rolldownOptions: { output: { entryFileNames: file, codeSplitting: false } },
  },
});

/**
 * A part of the desktop program: CommonJS, since a sandboxed preload can be nothing else, and without Electron, which
 * is there when it runs.
 */
const desktop = (entry: string, folder: string, file: string): UserConfig => {
  const config = program(entry, folder, file);
  return {
    ...config,
    build: {
      ...config.build,
      rolldownOptions: {
        external: ["electron"],
        output: { format: "cjs", entryFileNames: file, codeSplitting: false },
      },
    },
  };
};

/** One build a mode: `window`, `cli`, `host`, `main`, `preload`. */
export default defineConfig(({ mode }) => {
  if (mode === "cli") return program("shared-model/hosts/cli.ts", "dist/cli", "loadside.mjs");
  if (mode === "host") return program("shared-model/hosts/atomic-file.ts", "dist/host", "atomic-file.mjs");
  if (mode === "main") return desktop("electron/main/main.ts", "dist/main", "main.cjs");
  if (mode === "preload") return desktop("electron/preload/preload.ts", "dist/preload", "preload.cjs");
  return window;
});
