/** `npm start`, run as a program on a small project. */
import { spawn } from "node:child_process";
import { chmodSync, cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { packagesMatchPins } from "../electron/install-when-needed.mjs";
import { makeSmallProject, ROOT, type SmallProject } from "./small-project.ts";

/** No runtime, and none is fetched. */
const NO_RUNTIME = { LOADSIDE_ELECTRON: "/nowhere/electron" };
const NO_RUNTIME_SAID = "The desktop runtime that LOADSIDE_ELECTRON names is not there: Loadside opens in a browser.\n";

let project: SmallProject;
beforeAll(() => {
  project = makeSmallProject();
});
beforeEach(() => project.reset());
afterAll(() => project.delete());

describe("start", () => {
  /** Starts, waits for the address, lets `use` try it, then presses Ctrl-C. */
  async function started(args: readonly string[], env: Record<string, string>, use: (url: URL) => Promise<void>) {
    const child = spawn(process.execPath, [join(project.folder, "electron/launch.mjs"), ...args], {
      cwd: project.around,
      env: { ...project.env, ...env },
      stdio: ["ignore", "pipe", "pipe"],
    });
    let output = "";
    const ended = new Promise<number | null>((resolve) => child.once("close", resolve));
    const url = await new Promise<URL>((resolve, reject) => {
      for (const stream of [child.stdout, child.stderr]) {
        stream.setEncoding("utf8").on("data", (text: string) => {
          output += text;
          const [address] = /http:\/\/\S+(?=\n)/.exec(output) ?? [];
          if (address !== undefined) resolve(new URL(address));
        });
      }
      child.once("close", () => reject(new Error(output)));
    });
    try {
      await use(url);
    } finally {
      child.kill("SIGINT");
    }
    return { status: await ended, output };
  }

  test("builds, serves the window and says where, in words, when there is no display", async () => {
    const { status, output } = await started([], {}, async (url) => {
      expect(url.hostname).toBe("127.0.0.1");
      const page = await fetch(url);
      expect(page.status).toBe(200);
      expect(page.headers.get("content-security-policy")).toContain("default-src 'none'");
      expect(await page.text()).toContain("<title>small</title>");
    });
    expect(output).toMatch(
      /^There is no display here\. Open this address in a browser: http:\/\/127\.0\.0\.1:\d+\/\nCtrl-C ends Loadside\.\n$/,
    );
    expect(status).toBe(0);
  });

  test("a file that it is given is opened, and saved again", async () => {
    const file = join(project.around, "house.loadside");
    writeFileSync(file, "{}\n");
    await started(["house.loadside"], {}, async (url) => {
      const address = new URL(`/opened-file?token=${url.searchParams.get("open")}`, url);
      expect(await (await fetch(address)).text()).toBe("{}\n");
      expect((await fetch(address, { method: "PUT", body: "[]\n" })).status).toBe(200);
    });
    expect(readFileSync(file, "utf8")).toBe("[]\n");
  });

  test("with a display, a browser that is there shows the window, and goes with it", async () => {
    const browser = join(project.around, "browser");
    const seen = join(project.around, "seen");
    writeFileSync(browser, `#!/bin/sh\nprintf '%s\\n' "$@" > ${seen}\nexec /bin/sleep 600\n`);
    chmodSync(browser, 0o755);
    const env = { ...NO_RUNTIME, DISPLAY: ":99", LOADSIDE_CHROMIUM: browser };
    const { status, output } = await started([], env, async (url) => {
      while (!existsSync(seen)) await new Promise((done) => setTimeout(done, 20));
      const args = readFileSync(seen, "utf8").trim().split("\n");
      expect(args).toContain(`--app=${url.href}`);
      expect(args.some((arg) => arg.startsWith(`--user-data-dir=${project.around}`))).toBe(true);
      expect(args.includes("--no-sandbox")).toBe(process.getuid?.() === 0);
    });
    expect(output.slice(0, NO_RUNTIME_SAID.length)).toBe(NO_RUNTIME_SAID);
    expect(output.slice(NO_RUNTIME_SAID.length)).toMatch(/^Loadside is open: http:\/\/\S+\nCtrl-C ends it\.\n$/);
    expect(status).toBe(0);
  });

  test.each([
    ["that fails leaves the address", 3, /The window did not open\. Open this address in a browser: http:\S+\n/],
    ["that hands the window on leaves the program running", 0, /Ctrl-C ends Loadside\.\n$/],
  ])("a browser %s", async (_, exitStatus, sentence) => {
    const browser = join(project.around, "brief-browser");
    writeFileSync(browser, `#!/bin/sh\nexit ${exitStatus}\n`);
    chmodSync(browser, 0o755);
    const env = { ...NO_RUNTIME, DISPLAY: ":99", LOADSIDE_CHROMIUM: browser };
    const { status, output } = await started([], env, () => new Promise((done) => setTimeout(done, 500)));
    expect(output).toMatch(sentence);
    expect(status).toBe(0);
  });

  const launch = (...args: string[]) => project.run(process.execPath, ["electron/launch.mjs", ...args]);

  test("a file that cannot be opened and bad usage are one line and status 2", () => {
    const refused = (stderr: string) => ({ status: 2, stdout: "", stderr });
    expect(launch("no.loadside")).toEqual(refused("no.loadside: there is no such file.\n"));
    for (const args of [["--fast"], ["a.loadside", "b.loadside"]]) {
      expect(launch(...args)).toEqual(refused("Usage: npm start [-- FILE.loadside]\n"));
    }
  });

  test("what cannot be built or installed is said, with status 1", () => {
    project.write("renderer/main.tsx", "import './missing.ts';");
    expect(launch()).toMatchObject({ status: 1, stdout: "" });
    expect(launch().stderr).toMatch(/missing\.ts[\s\S]*Loadside could not be built\.\n$/);
    rmSync(join(project.folder, "node_modules", ".package-lock.json"));
    const uninstalled = launch();
    cpSync(join(ROOT, "package-lock.json"), join(project.folder, "node_modules", ".package-lock.json"));
    expect(uninstalled).toMatchObject({ status: 1, stderr: "The packages could not be installed.\n" });
  });
});

describe("installing", () => {
  const PINS = {
    "": { version: "1.0.0" },
    "node_modules/a": { version: "1.0.0", integrity: "sha512-a" },
    "node_modules/b": { version: "2.0.0", integrity: "sha512-b", optional: true },
  };
  const matches = (installed: unknown): boolean => {
    const folder = mkdtempSync(join(project.around, "pins-"));
    mkdirSync(join(folder, "node_modules"));
    writeFileSync(join(folder, "package-lock.json"), JSON.stringify({ packages: PINS }));
    if (installed !== undefined) {
      const text = typeof installed === "string" ? installed : JSON.stringify({ packages: installed });
      writeFileSync(join(folder, "node_modules", ".package-lock.json"), text);
    }
    return packagesMatchPins(folder);
  };
  const { "node_modules/a": a, "node_modules/b": b } = PINS;

  test("is not needed when the pinned packages are there, those for other machines excepted", () => {
    expect(matches({ "node_modules/a": a, "node_modules/b": b })).toBe(true);
    expect(matches({ "node_modules/a": a })).toBe(true);
  });

  test("is needed when there are none, one is missing, or one is another", () => {
    expect(matches(undefined)).toBe(false);
    expect(matches("{ half")).toBe(false);
    expect(matches({ "node_modules/b": b })).toBe(false);
    expect(matches({ "node_modules/a": { ...a, version: "1.0.1" } })).toBe(false);
    expect(matches({ "node_modules/a": { ...a, integrity: "sha512-x" } })).toBe(false);
    expect(matches({ "node_modules/a": a, "node_modules/b": { ...b, version: "2.0.1" } })).toBe(false);
  });
});
