/** `npm start` with a program in the place of the desktop runtime, and without one. */
import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test, vi } from "vitest";
import { getRuntime, openDesktopWindow, runtimeAtHand } from "../../electron/desktop-runtime.mjs";
import { makeSmallProject, type SmallProject } from "../small-project.ts";

let project: SmallProject;
beforeAll(() => {
  project = makeSmallProject();
});
beforeEach(() => project.reset());
afterAll(() => project.delete());

/** A program that notes its arguments and does what the lines of shell say. */
function makeProgram(name: string, ...lines: readonly string[]): string {
  const path = join(project.around, name);
  writeFileSync(path, ["#!/bin/sh", `printf '%s\\n' "$@" > ${path}.args`, ...lines, ""].join("\n"));
  chmodSync(path, 0o755);
  return path;
}
const argsOf = (path: string): readonly string[] => readFileSync(`${path}.args`, "utf8").trim().split("\n");

describe("npm start with a display", () => {
  const start = (program: string, ...args: string[]) =>
    project.run(process.execPath, ["electron/launch.mjs", ...args], {
      env: { DISPLAY: ":99", LOADSIDE_ELECTRON: program },
    });

  test("opens the window in the runtime, with the file, and ends with it", () => {
    const file = join(project.folder, "house.loadside");
    writeFileSync(file, "{}\n");
    const program = makeProgram("runs", "echo Loadside is open.");
    expect(start(program, "house.loadside")).toEqual({
      status: 0,
      stdout: "Loadside is open. Ctrl-C ends it.\n",
      stderr: "",
    });
    const main = join(project.folder, "dist/main/main.cjs");
    expect(argsOf(program)).toEqual([main, file]);
    expect(readFileSync(main, "utf8")).toContain("small main");
    expect(existsSync(join(project.folder, "dist/preload/preload.cjs"))).toBe(true);
  });

  test("refuses a file that cannot be opened before anything else", () => {
    const program = makeProgram("never-runs", "echo Loadside is open.");
    expect(start(program, "no.loadside")).toMatchObject({ status: 2, stderr: "no.loadside: there is no such file.\n" });
    expect(existsSync(`${program}.args`)).toBe(false);
  });

  test("says that the desktop program cannot be built", () => {
    project.write("electron/main/main.ts", "import './missing.ts';");
    const ended = start(makeProgram("unbuilt", "echo Loadside is open."));
    expect(ended.status).toBe(1);
    expect(ended.stderr).toMatch(/missing\.ts[\s\S]*Loadside could not be built\.\n$/);
  });
});

describe("the browser shows the window", () => {
  /** Ends by Ctrl-C after a while: the host serves until it is told to stop. */
  const start = (program: string, display: Record<string, string>): string => {
    const env = { ...display, LOADSIDE_ELECTRON: program, NODE: process.execPath, PATH: "/usr/bin:/bin" };
    const script = 'timeout -s INT 8 "$NODE" electron/launch.mjs';
    return project.run("/bin/sh", ["-c", script], { env }).stdout;
  };

  test("without a display, where no runtime is looked for", () => {
    const program = makeProgram("no-display", "echo Loadside is open.");
    expect(start(program, {})).toMatch(/^There is no display here\. Open this address in a browser: http/);
    expect(existsSync(`${program}.args`)).toBe(false);
  });

  test("after one sentence, where the runtime does not start", () => {
    const browser = makeProgram("browser", "exec /bin/sleep 60");
    const said = start(makeProgram("broken", "exit 1"), { DISPLAY: ":99", LOADSIDE_CHROMIUM: browser });
    expect(said).toMatch(
      /^The desktop runtime does not start on this computer: Loadside opens in a browser\.\nLoadside is open: http/,
    );
    expect(argsOf(browser)[0]).toMatch(/^--app=http:/);
  });
});

describe("the window", () => {
  const open = (program: string, ms?: number) => openDesktopWindow(program, project.folder, [], ms);

  test("is open once the program says so, and stays until it ends", async () => {
    const window = await open(makeProgram("stays", "echo Loadside is open.", "exec /bin/sleep 60"));
    if (!window.opened) throw new Error("It did not open.");
    let ended = false;
    window.closed.then(() => {
      ended = true;
    });
    await new Promise((done) => setTimeout(done, 50));
    expect(ended).toBe(false);
    window.close();
    await window.closed;
  });

  test("counts as open where the program has handed over to one that runs", async () => {
    expect((await open(makeProgram("hands-over", "exit 0"))).opened).toBe(true);
  });

  test.each([
    ["ends with a fault", "exit 3"],
    ["is ended by a signal", "kill -TRAP $$"],
  ])("is not open when the program %s", async (_, line) => {
    expect(await open(makeProgram("fails", line))).toEqual({ opened: false });
  });

  test("is not open when the program cannot be run, or says nothing in time", async () => {
    expect(await open("/nowhere/electron")).toEqual({ opened: false });
    const started = performance.now();
    expect(await open(makeProgram("hangs", "exec /bin/sleep 60"), 300)).toEqual({ opened: false });
    expect(performance.now() - started).toBeLessThan(5000);
  });
});

describe("the runtime", () => {
  let root = "";
  let own = "";
  beforeEach(() => {
    root = mkdtempSync(join(project.around, "runtime-"));
    own = join(root, "own");
    mkdirSync(join(root, "node_modules/electron"), { recursive: true });
    writeFileSync(join(root, "node_modules/electron/package.json"), '{ "version": "45.4.1" }');
    vi.spyOn(console, "log").mockImplementation(() => {});
    // As if by anybody: as root none is looked for.
    vi.spyOn(process, "getuid").mockReturnValue(1000);
    vi.stubEnv("LOADSIDE_ELECTRON", "");
  });
  afterEach(() => {
    vi.restoreAllMocks();
    vi.unstubAllEnvs();
  });

  /** What the installer of the package leaves. */
  const PUT = `
    const { mkdirSync, writeFileSync } = require("node:fs");
    const put = (version) => {
      mkdirSync(__dirname + "/dist", { recursive: true });
      writeFileSync(__dirname + "/dist/version", version);
      writeFileSync(__dirname + "/dist/electron", "");
      writeFileSync(__dirname + "/path.txt", "electron");
    };`;
  const installer = (text: string) => writeFileSync(join(root, "node_modules/electron/install.js"), `${PUT}\n${text}`);
  const program = () => join(root, "node_modules/electron/dist/electron");

  test("is fetched once, and found from then on", () => {
    installer('put("45.4.1");');
    expect(runtimeAtHand(root)).toEqual({ why: "is not here" });
    expect(getRuntime(root, own)).toEqual({ program: program() });
    rmSync(join(root, "node_modules/electron/install.js"));
    expect(getRuntime(root, own)).toEqual({ program: program() });
  });

  test("of another version is none", () => {
    installer('put("45.4.0");');
    expect(getRuntime(root, own)).toEqual({ why: "is not here and could not be fetched within a minute" });
  });

  test("that cannot be fetched is not tried again on the same day", () => {
    installer("process.exit(1);");
    expect(getRuntime(root, own)).toEqual({ why: "is not here and could not be fetched within a minute" });
    installer('put("45.4.1");');
    expect(getRuntime(root, own)).toEqual({ why: "is not here and could not be fetched today" });
    const yesterday = new Date(Date.now() - 25 * 3_600_000);
    utimesSync(join(own, "runtime-not-fetched"), yesterday, yesterday);
    expect(getRuntime(root, own)).toEqual({ program: program() });
  });

  test("is not waited for longer than a person would", () => {
    installer("setTimeout(() => {}, 60_000);");
    const started = performance.now();
    expect(getRuntime(root, own, 300)).toMatchObject({ why: expect.stringContaining("could not be fetched") });
    expect(performance.now() - started).toBeLessThan(5000);
  });

  test("is not fetched for root, under whom it would not start", () => {
    vi.spyOn(process, "getuid").mockReturnValue(0);
    installer('put("45.4.1");');
    expect(getRuntime(root, own)).toEqual({ why: "does not run as root" });
    expect(existsSync(program())).toBe(false);
  });

  test("that is named is taken, and nothing is fetched in the place of one that is not there", () => {
    installer('put("45.4.1");');
    vi.stubEnv("LOADSIDE_ELECTRON", "/nowhere/electron");
    expect(getRuntime(root, own)).toEqual({ why: "that LOADSIDE_ELECTRON names is not there" });
    vi.stubEnv("LOADSIDE_ELECTRON", process.execPath);
    expect(getRuntime(root, own)).toEqual({ program: process.execPath });
  });
});
