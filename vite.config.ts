import { fileURLToPath } from "node:url";
import react from "@vitejs/plugin-react";
import { defineConfig, type UserConfig } from "vite";

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/** The window and its worker: relative addresses, so that any host can serve it, and nothing inline, so that a strict content policy holds. */
const window: UserConfig = {
  root: here("renderer"),
  base: "./",
  publicDir: false,
  envDir: false,
  plugins: [react()],
  worker: { format: "es" },
  build: {
    outDir: here("dist/window"),
    emptyOutDir: true,
    target: "es2023",
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    sourcemap: false,
  },
};

/** A program for Node in one file, its libraries included: it runs wherever the file is copied to. */
const program = (entry: string, folder: string, file: string): UserConfig => ({
  root: here("."),
  publicDir: false,
  envDir: false,
  ssr: { noExternal: true, target: "node" },
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
