import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

export const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const PROGRAM = join(ROOT, "dist/cli/loadside.mjs");
export const LAUNDRY = join(ROOT, "assets/samples/laundry-box.loadside");

export interface Ended {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

interface RunOptions {
  readonly cwd?: string;
  readonly input?: string | Buffer;
  /** Options of Node itself. */
  readonly node?: readonly string[];
}

/** Builds the program when its sources have changed; call it before all tests of a file. */
export function buildLoadside(): void {
  const { status, stderr } = spawnSync(process.execPath, [join(ROOT, "shared-model/hosts/build.mjs"), "cli"], {
    encoding: "utf8",
  });
  if (status !== 0) throw new Error(`The command line could not be built: ${stderr}`);
}

/** Runs the built program as a script would: no terminal, output caught. */
export function loadside(args: readonly string[], { cwd, input = "", node = [] }: RunOptions = {}): Ended {
  const { status, stdout, stderr } = spawnSync(process.execPath, [...node, PROGRAM, ...args], {
    encoding: "utf8",
    input,
    maxBuffer: 1 << 28,
    ...(cwd !== undefined && { cwd }),
  });
  return { status, stdout, stderr };
}

/** Writes `content` into a file of its own and gives its path to `use`. */
export function withFile<T>(content: string | Uint8Array, use: (path: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), "loadside-cli-"));
  try {
    const path = join(folder, "input.loadside");
    writeFileSync(path, content);
    return use(path);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
