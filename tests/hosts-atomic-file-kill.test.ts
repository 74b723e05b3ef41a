/** What a kill in the middle of a save, and a limit set by the system, leave behind: seen from outside the process that saves. */
import { spawn, spawnSync } from "node:child_process";
import { mkdtemp, readdir, readFile, rm, utimes, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, beforeEach, expect, test } from "vitest";
import { withRoom } from "./same-seed.ts";

const OLD = Buffer.from("the old document\n");
const NAME = "house.loadside";

const ROOT = fileURLToPath(new URL("../", import.meta.url));
const CHILD = fileURLToPath(new URL("./hosts-atomic-file-child.mjs", import.meta.url));
const MODULE = new URL("../dist/host/atomic-file.mjs", import.meta.url).href;
const KILLS = process.env.LOADSIDE_LONG === "1" ? 1000 : 100;
const SIZES = [50, 500, 5000].map((kibibytes) => kibibytes * 1024);

let all = "";
let folder = "";
let file = "";
beforeEach(async () => {
  folder = await mkdtemp(join(all, "case-"));
  file = join(folder, NAME);
});
afterAll(() => rm(all, { recursive: true, force: true }));

beforeAll(async () => {
  all = await mkdtemp(join(tmpdir(), "loadside-kill-"));
  const built = spawnSync(process.execPath, ["shared-model/hosts/build.mjs", "host"], {
    cwd: ROOT,
    encoding: "utf8",
  });
  expect(built.status, built.stderr).toBe(0);
});

/** The last version that was acknowledged before the process was killed. */
function killedAt(path: string, bytes: number, afterMs: number): Promise<number> {
  const child = spawn(process.execPath, [CHILD, MODULE, path, String(bytes)], {
    stdio: ["ignore", "pipe", "inherit"],
  });
  let output = "";
  child.stdout.setEncoding("utf8").on("data", (text: string) => {
    if (output === "") setTimeout(() => child.kill("SIGKILL"), afterMs);
    output += text;
  });
  return new Promise((resolve, reject) => {
    child.once("close", (_, signal) => {
      const versions = output.trim().split("\n").map(Number);
      if (signal === "SIGKILL") resolve(versions.at(-1) ?? Number.NaN);
      else reject(new Error(`The child ended by itself: ${output}`));
    });
  });
}

const holdsVersion = (found: Buffer | undefined, version: number, bytes: number): boolean =>
  found !== undefined && Buffer.compare(found, Buffer.alloc(bytes, `${version} `)) === 0;

test(`${KILLS} processes killed while saving leave the last version they acknowledged, or the one after it, whole`, {
  timeout: withRoom(600_000),
}, async () => {
  const { replaceFile } = await import(MODULE);
  let interrupted = 0;
  const kill = async (index: number) => {
    const own = await mkdtemp(join(folder, "kill-"));
    const path = join(own, NAME);
    const bytes = SIZES[index % SIZES.length] ?? 0;
    // Steps of 0.37 ms, so that the kills fall into every part of a save.
    const acknowledged = await killedAt(path, bytes, (index * 3.7) % 37);
    const found = await readFile(path).catch(() => undefined);
    const whole = holdsVersion(found, acknowledged, bytes) || holdsVersion(found, acknowledged + 1, bytes);
    expect(whole, `kill ${index}: ${bytes} bytes, version ${acknowledged} acknowledged`).toBe(true);
    const leftOvers = (await readdir(own)).filter((name) => name !== NAME);
    interrupted += leftOvers.length;
    for (const name of leftOvers) await utimes(join(own, name), 0, 0);
    expect(await replaceFile(path, OLD)).toEqual({ saved: true });
    expect(await readdir(own)).toEqual([NAME]);
    await rm(own, { recursive: true });
  };
  let next = 0;
  const lane = async () => {
    while (next < KILLS) await kill(next++);
  };
  await Promise.all([lane(), lane(), lane()]);
  // Without a kill in the middle of a save, the test would have shown nothing.
  expect(interrupted).toBeGreaterThan(KILLS / 10);
});

test("a file that may not grow is refused, and the old one stays", async () => {
  await writeFile(file, OLD);
  // In blocks of 512 bytes; a shell sets the limit, since Node cannot.
  const command = `ulimit -f 64; exec "$0" "$@"`;
  const args = ["-c", command, process.execPath, CHILD, MODULE, file, String(1 << 20)];
  const { stdout, status } = spawnSync("sh", args, { encoding: "utf8" });
  expect({ status, ...JSON.parse(stdout) }).toMatchObject({ status: 0, saved: false, code: "EFBIG" });
  expect(await readFile(file)).toEqual(OLD);
  expect(await readdir(folder)).toEqual([NAME]);
});
