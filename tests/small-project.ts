/** A project of a few lines, with the house of the real one: what its commands do must not depend on what is built. */
import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, readdirSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

export const ROOT: string = fileURLToPath(new URL("../", import.meta.url));

/** Prints what it was given and ends with status 7. */
export const CLI = "shared-model/hosts/cli.ts";

const HOUSE = ["electron", "package.json", "package-lock.json", "tsconfig.json", "vite.config.ts"].concat(
  ["build.mjs", "loadside.mjs", "atomic-file.ts", "save-failure.ts"].map((name) => `shared-model/hosts/${name}`),
  // What they say to a person.
  ["catalogue.ts", "language.ts", "pseudo.ts"].map((name) => `shared-model/lib/${name}`),
);
const OWN: Record<string, string> = {
  "renderer/index.html": `<!doctype html><title>small</title><script type="module" src="./main.tsx"></script>`,
  "renderer/main.tsx": "document.body.append(`small`);",
  "electron/main/main.ts": `console.log("small main");`,
  "electron/preload/preload.ts": `console.log("small preload");`,
  [CLI]: `
    let length = 0;
    for await (const chunk of process.stdin) length += chunk.length;
    console.log(JSON.stringify({ args: process.argv.slice(2), cwd: process.cwd(), length }));
    process.exitCode = 7;
    export {};`,
};

interface RunOptions {
  readonly cwd?: string;
  readonly env?: Record<string, string>;
  readonly input?: Buffer;
}

export interface SmallProject {
  /** A folder of its own, the project's parent and the home of what it starts. */
  readonly around: string;
  readonly folder: string;
  /** For programs: no npm can be found on this PATH. */
  readonly env: Record<string, string>;
  write(path: string, text: string): void;
  /** As it was made: the sources of the beginning, and nothing built. */
  reset(): void;
  run(program: string, args: readonly string[], options?: RunOptions): Ended;
  delete(): void;
}

export interface Ended {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

export function makeSmallProject(): SmallProject {
  const around = mkdtempSync(join(tmpdir(), "loadside-small-"));
  const folder = join(around, "project");
  for (const name of HOUSE) cpSync(join(ROOT, name), join(folder, name), { recursive: true });
  linkPackages(folder);
  const env = { PATH: "/nowhere", HOME: around };
  const write = (path: string, text: string): void => {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  };
  return {
    around,
    folder,
    env,
    write,
    reset() {
      rmSync(join(folder, "dist"), { recursive: true, force: true });
      for (const [path, text] of Object.entries(OWN)) write(path, text);
    },
    run(program, args, options = {}) {
      const { status, stdout, stderr } = spawnSync(program, args, {
        cwd: options.cwd ?? folder,
        env: { ...env, ...options.env },
        encoding: "utf8",
        maxBuffer: 1 << 28,
        // A program that hangs is a failure with status null, not a test run without an end.
        timeout: 25_000,
        ...(options.input && { input: options.input }),
      });
      return { status, stdout, stderr };
    },
    delete: () => rmSync(around, { recursive: true, force: true }),
  };
}

/** Link by link: what an installation in there would delete are links, and never the packages behind them. */
function linkPackages(folder: string): void {
  const [from, to] = [join(ROOT, "node_modules"), join(folder, "node_modules")];
  mkdirSync(to);
  cpSync(join(ROOT, "package-lock.json"), join(to, ".package-lock.json"));
  for (const name of readdirSync(from)) {
    if (!name.startsWith(".")) symlinkSync(join(from, name), join(to, name), "junction");
  }
}
