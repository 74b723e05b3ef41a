/** The build and the command line's starter, run as programs on a small project. */
import { spawn, spawnSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync, rmSync, utimesSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { CLI, makeSmallProject, type SmallProject } from "./small-project.ts";

let project: SmallProject;
beforeAll(() => {
  project = makeSmallProject();
});
beforeEach(() => project.reset());
afterAll(() => project.delete());

const build = () => project.run(process.execPath, ["shared-model/hosts/build.mjs"]);
const loadside = (args: readonly string[], options?: { cwd?: string; input?: Buffer }) =>
  project.run(process.execPath, [join(project.folder, "shared-model/hosts/loadside.mjs"), ...args], options);

describe("the build", () => {
  const ALL_BUILT = "window: built\ncli: built\nhost: built\nmain: built\npreload: built\n";
  const ALL_FRESH = "window: fresh\ncli: fresh\nhost: fresh\nmain: fresh\npreload: fresh\n";

  test("builds everything once, and then only what has changed", () => {
    expect(build()).toEqual({ status: 0, stdout: ALL_BUILT, stderr: "" });
    expect(build()).toEqual({ status: 0, stdout: ALL_FRESH, stderr: "" });
    utimesSync(join(project.folder, "renderer/main.tsx"), 1, 1);
    expect(build().stdout, "a time is no change").toBe(ALL_FRESH);
    project.write("renderer/main.tsx", "document.body.append(`other`);");
    expect(build().stdout).toBe("window: built\ncli: fresh\nhost: fresh\nmain: fresh\npreload: fresh\n");
    rmSync(join(project.folder, "dist", "cli"), { recursive: true });
    expect(build().stdout).toBe("window: fresh\ncli: built\nhost: fresh\nmain: fresh\npreload: fresh\n");
    const names = readdirSync(join(project.folder, "dist")).sort();
    expect(names).toEqual([
      ".cli.stamp",
      ".host.stamp",
      ".main.stamp",
      ".preload.stamp",
      ".window.stamp",
      "cli",
      "host",
      "main",
      "preload",
      "window",
    ]);
  });

  test("a window of relative addresses, with nothing inline", () => {
    build();
    const page = readFileSync(join(project.folder, "dist/window/index.html"), "utf8");
    const [, script = ""] = /<script [^>]*src="[.]\/(assets\/[^"]+[.]js)"><\/script>/.exec(page) ?? [];
    expect(readFileSync(join(project.folder, "dist/window", script), "utf8")).toContain("small");
    expect(page).not.toMatch(/<style|style=|<script(?![^>]*src=)/);
  });

  test("sources that cannot be built leave the build before", () => {
    build();
    project.write("renderer/main.tsx", "import './missing.ts';");
    const failed = build();
    expect(failed).toMatchObject({ status: 1, stdout: "cli: fresh\nhost: fresh\nmain: fresh\npreload: fresh\n" });
    expect(failed.stderr).toContain("missing.ts");
    expect(readFileSync(join(project.folder, "dist/window/index.html"), "utf8")).toContain("small");
    expect(build().status, "and are not taken for built the next time").toBe(1);
  });

  test("a part that does not exist is refused", () => {
    const refused = project.run(process.execPath, ["shared-model/hosts/build.mjs", "door"]);
    expect(refused).toEqual({
      status: 1,
      stdout: "",
      stderr: 'There is no part "door"; the parts are window, cli, host, main, preload.\n',
    });
  });
});

describe("the command line", () => {
  test("passes arguments, standard input and status, and prints nothing of its own", () => {
    const input = Buffer.alloc(64 << 20, "x");
    for (const when of ["stale", "fresh"]) {
      const { status, stdout, stderr } = loadside(["check", "--x", "a b"], { input });
      expect({ status, stderr }, when).toEqual({ status: 7, stderr: "" });
      expect(JSON.parse(stdout)).toEqual({ args: ["check", "--x", "a b"], cwd: project.folder, length: input.length });
    }
  });

  test("files are meant from where the person stands", () => {
    expect(JSON.parse(loadside([], { cwd: project.around }).stdout).cwd).toBe(project.around);
    const env = { PATH: process.env.PATH ?? "" };
    const { status, stdout } = project.run(
      "npm",
      ["--prefix", project.folder, "run", "-s", "loadside", "--", "x", "--y"],
      {
        cwd: project.around,
        env,
      },
    );
    expect({ status, ...JSON.parse(stdout) }).toEqual({
      status: 7,
      args: ["x", "--y"],
      cwd: project.around,
      length: 0,
    });
  });

  test("is the program of the latest sources", () => {
    loadside([]);
    project.write(CLI, "process.exitCode = 2;");
    expect(loadside([])).toEqual({ status: 2, stdout: "", stderr: "" });
  });

  test("status 3 when it cannot be built or loaded, with the reason and without a stack", () => {
    project.write(CLI, "import './missing.ts';");
    const unbuilt = loadside([]);
    expect(unbuilt).toMatchObject({ status: 3, stdout: "" });
    expect(unbuilt.stderr).toMatch(/^loadside could not be built: [\s\S]*missing\.ts/);
    project.write(CLI, `throw new Error("no start");`);
    expect(loadside([])).toEqual({ status: 3, stdout: "", stderr: "loadside could not be started: no start\n" });
  });

  test("programs that start at once on stale sources all answer", async () => {
    const running = [1, 2, 3].map(() => {
      const args = [join(project.folder, "shared-model/hosts/loadside.mjs")];
      const child = spawn(process.execPath, args, { cwd: project.folder, stdio: ["ignore", "pipe", "inherit"] });
      return new Promise((resolve) => child.once("close", resolve));
    });
    expect(await Promise.all(running)).toEqual([7, 7, 7]);
  });

  test("a builder that was killed holds up nobody, even if its number is in use again", () => {
    const ended = spawnSync(process.execPath, ["--version"]).pid;
    project.write("dist/.cli.lock", String(ended));
    expect(loadside([]).status).toBe(7);
    rmSync(join(project.folder, "dist"), { recursive: true });
    project.write("dist/.cli.lock", String(process.pid));
    const longAgo = new Date(Date.now() - 120_000);
    utimesSync(join(project.folder, "dist/.cli.lock"), longAgo, longAgo);
    expect(loadside([]).status).toBe(7);
    expect(existsSync(join(project.folder, "dist/.cli.lock"))).toBe(false);
  });
});
