/**
 * What electron-builder makes of the configuration, without a network: a folder, with a file that stands for the
 * runtime. Installers need tools that are downloaded, and are not made here.
 */
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { ROOT } from "../small-project.ts";

const require = createRequire(import.meta.url);
const CONFIG = join(ROOT, "electron-builder.yml");

interface Node {
  readonly files?: Readonly<Record<string, Node>>;
  readonly offset?: string;
  readonly size?: number;
}

/** Header of the archive: two pickled numbers, a length, the table of contents as JSON; file contents follow. */
function readArchive(path: string): { readonly names: readonly string[]; readonly text: (name: string) => string } {
  const bytes = readFileSync(path);
  const start = 8 + bytes.readUInt32LE(4);
  const table: Node = JSON.parse(bytes.toString("utf8", 16, 16 + bytes.readUInt32LE(12)));
  const found = new Map<string, Node>();
  const walk = (node: Node, at: string): void => {
    for (const [name, child] of Object.entries(node.files ?? {})) {
      if (child.files === undefined) found.set(`${at}${name}`, child);
      else walk(child, `${at}${name}/`);
    }
  };
  walk(table, "");
  return {
    names: [...found.keys()].sort(),
    text(name) {
      const { offset = "0", size = 0 } = found.get(name) ?? {};
      return bytes.toString("utf8", start + Number(offset), start + Number(offset) + size);
    },
  };
}

/** By which a runtime's fuses are found; behind it a version, their number, and "0" or "1" for each. From @electron/fuses 2. */
const FUSE_MARK = "dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX";
const FUSES = [
  "RunAsNode",
  "CookieEncryption",
  "NodeOptions",
  "NodeCliInspect",
  "AsarIntegrity",
  "OnlyFromAsar",
].concat(["SpecificSnapshot", "FileProtocolPrivileges"]);

const around = mkdtempSync(join(tmpdir(), "loadside-package-"));
afterAll(() => rmSync(around, { recursive: true }));

describe("the packaged program", () => {
  let archive: ReturnType<typeof readArchive>;
  let program = "";
  beforeAll(async () => {
    const parts = ["window", "main", "preload"];
    const built = spawnSync(process.execPath, ["shared-model/hosts/build.mjs", ...parts], {
      cwd: ROOT,
      encoding: "utf8",
    });
    expect(built.status, built.stderr).toBe(0);
    const runtime = join(around, "runtime");
    mkdirSync(runtime);
    const every = Buffer.from([1, FUSES.length, ...Buffer.from("r".repeat(FUSES.length))]);
    writeFileSync(join(runtime, "electron"), Buffer.concat([Buffer.from(FUSE_MARK), every, Buffer.alloc(64)]), {
      mode: 0o755,
    });
    const output = join(around, "packages");
    const settings = {
      extends: CONFIG,
      electronVersion: JSON.parse(readFileSync(join(ROOT, "package.json"), "utf8")).devDependencies.electron,
      electronDist: runtime,
      directories: { output },
    };
    const script = `
      const { build, Platform } = require("electron-builder");
      build({
        projectDir: ${JSON.stringify(ROOT)},
        targets: Platform.LINUX.createTarget("dir"),
        publish: "never",
        config: ${JSON.stringify(settings)},
      }).catch((error) => { console.error(error); process.exitCode = 1; });`;
    const made = spawnSync(process.execPath, ["-e", script], { cwd: ROOT, encoding: "utf8" });
    expect(made.status, made.stdout + made.stderr).toBe(0);
    archive = readArchive(join(output, "linux-unpacked/resources/app.asar"));
    program = join(output, "linux-unpacked/loadside");
  }, 120_000);

  test("holds what was built, and nothing else", () => {
    const built = /^dist\/(main\/main[.]cjs|preload\/preload[.]cjs|window\/.+)$/;
    expect(archive.names.filter((name) => !built.test(name))).toEqual([
      "LICENSE",
      "assets/icons/256x256.png",
      "package.json",
    ]);
    expect(archive.names).toEqual(
      expect.arrayContaining(["dist/main/main.cjs", "dist/preload/preload.cjs", "dist/window/index.html"]),
    );
    expect(archive.names.filter((name) => /node_modules|[.]tsx?$|[.]map$|[.]test[.]|[.]stamp$/.test(name))).toEqual([]);
  });

  test("holds every sample, as a part of the window", () => {
    const samples: readonly { file: string }[] = JSON.parse(
      readFileSync(join(ROOT, "assets/samples/index.json"), "utf8"),
    );
    expect(samples.length).toBeGreaterThan(3);
    const scripts = archive.names.filter((name) => /^dist\/window\/.*[.]js$/.test(name));
    for (const { file } of samples) {
      const stem = file.replace(/[.]loadside$/, "");
      expect([file, scripts.some((name) => name.includes(`/${stem}-`))]).toEqual([file, true]);
    }
  });

  test("starts with the main process, and tells nothing of how it was made", () => {
    const about = JSON.parse(archive.text("package.json"));
    expect(about).toMatchObject({ name: "loadside", main: "dist/main/main.cjs" });
    expect(Object.keys(about)).not.toContain("devDependencies");
    expect(archive.text("dist/main/main.cjs")).toBe(readFileSync(join(ROOT, "dist/main/main.cjs"), "utf8"));
  });

  test("has every fuse as it should be", () => {
    const bytes = readFileSync(program);
    const at = bytes.indexOf(FUSE_MARK) + FUSE_MARK.length + 2;
    const states = Object.fromEntries(FUSES.map((name, index) => [name, String.fromCharCode(bytes[at + index] ?? 0)]));
    expect(states).toEqual({
      RunAsNode: "0",
      CookieEncryption: "1",
      NodeOptions: "0",
      NodeCliInspect: "0",
      AsarIntegrity: "1",
      OnlyFromAsar: "1",
      // Not ours to decide: left as the runtime comes.
      SpecificSnapshot: "r",
      FileProtocolPrivileges: "0",
    });
  });
});

describe("the configuration", () => {
  const builder = createRequire(require.resolve("electron-builder/package.json"));
  const { validateConfiguration } = builder("app-builder-lib/out/util/config/config.js");
  const { DebugLogger } = builder("builder-util");
  const { load } = createRequire(builder.resolve("app-builder-lib/package.json"))("js-yaml");
  const read = (): Record<string, unknown> => load(readFileSync(CONFIG, "utf8"));

  test("is one that electron-builder takes", async () => {
    await expect(validateConfiguration(read(), new DebugLogger(false))).resolves.not.toThrow();
  });

  test("is judged at all: a wrong word is refused", async () => {
    await expect(validateConfiguration({ ...read(), fusses: {} }, new DebugLogger(false))).rejects.toThrow(/fusses/);
  });

  test("publishes nothing, associates our ending and registers no address", () => {
    const settings = read();
    expect(settings).toMatchObject({ publish: null, asar: true, fileAssociations: [{ ext: "loadside" }] });
    expect(settings).not.toHaveProperty("protocols");
  });
});
