/**
 * The desktop program in the real runtime: what a stand-in cannot show. `npm test` runs this where there is a runtime
 * and a display, and says so where there is none.
 */
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { _electron, type ElectronApplication, expect, type Page, test } from "@playwright/test";
import { checked, pane, ROOT, runByField } from "./support/window-test.ts";

const SAMPLE = join(ROOT, "assets/samples/laundry-box.loadside");

let home = "";
let house = "";
let desktop: ElectronApplication;
let page: Page;
test.beforeEach(async () => {
  home = await mkdtemp(join(tmpdir(), "loadside-runtime-"));
  house = join(home, "house.loadside");
  await writeFile(house, await readFile(SAMPLE));
  desktop = await _electron.launch({
    executablePath: process.env.LOADSIDE_RUNTIME ?? "",
    args: [join(ROOT, "dist/main/main.cjs"), `--user-data-dir=${join(home, "profile")}`, house],
    env: { ...(process.env as Record<string, string>), HOME: home },
  });
  page = await desktop.firstWindow();
  await expect(page).toHaveTitle(/house[.]loadside/);
  await page.getByRole("dialog").getByRole("button").last().click();
  await checked(page);
});
test.afterEach(async () => {
  await desktop.evaluate(({ app }) => app.exit(0)).catch(() => undefined);
  await rm(home, { recursive: true, force: true });
});

test("starts, with its walls, and shows the file", async () => {
  await expect(page.getByRole("banner")).toContainText("house.loadside");
  const seen = await page.evaluate(() => ({
    address: location.href,
    globals: ["require", "process", "module", "Buffer"].filter((name) => name in globalThis),
    // What comes out of another world is a stand-in without a source.
    bridge: String(Reflect.get(globalThis, "loadside")?.chooseFile),
  }));
  expect(seen).toEqual({
    address: "app://window/index.html",
    globals: [],
    bridge: expect.stringContaining("[native code]"),
  });
  const { pid, visible, sandboxed } = await desktop.evaluate(({ app, BrowserWindow }) => {
    const [window] = BrowserWindow.getAllWindows();
    const process = window?.webContents.getOSProcessId();
    const metric = app.getAppMetrics().find((each) => each.pid === process);
    return { pid: process, visible: window?.isVisible(), sandboxed: metric?.sandboxed };
  });
  expect(visible).toBe(true);
  // Linux tells of a process itself whether its system calls are filtered: 2 means that they are (proc_pid_status(5)).
  if (process.platform === "linux") expect(await readFile(`/proc/${pid}/status`, "utf8")).toMatch(/^Seccomp:\s+2$/m);
  else expect(sandboxed).toBe(true);
});

test("runs its worker and keeps its policy under a scheme of its own", async () => {
  const outside = await page.evaluate(() =>
    fetch("https://example.test/").then(
      () => "reached",
      () => "refused",
    ),
  );
  expect(outside).toBe("refused");
  await page.evaluate(() => {
    location.href = "https://example.test/";
    window.open("https://example.test/");
  });
  await page.waitForTimeout(500);
  expect(page.url()).toBe("app://window/index.html");
  expect(desktop.windows()).toHaveLength(1);
});

test("saves, and asks before it closes with unsaved work", async () => {
  await runByField(page, "R1");
  const name = pane(page).getByRole("textbox", { name: "Name" });
  await name.fill("R1b");
  await name.press("Enter");
  await expect.poll(() => desktop.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows().length)).toBe(1);
  await desktop.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.close());
  const question = page.getByRole("dialog", { name: "Save house.loadside first?" });
  await question.getByRole("button", { name: "Cancel" }).click();
  await desktop.evaluate(({ Menu }) => {
    const file = Menu.getApplicationMenu()?.items.find(({ label }) => label === "File");
    file?.submenu?.items.find(({ label }) => label === "Save")?.click();
  });
  await expect.poll(() => readFile(house, "utf8")).toContain('"name": "R1b"');
  const closed = desktop.waitForEvent("close");
  await desktop.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.close());
  if (process.platform !== "darwin") await closed;
});

test("a page that is killed starts again with its file", async () => {
  const loaded = page.waitForEvent("load");
  await desktop.evaluate(({ BrowserWindow }) =>
    BrowserWindow.getAllWindows()[0]?.webContents.forcefullyCrashRenderer(),
  );
  await loaded.catch(() => undefined);
  await expect
    .poll(() => desktop.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.getTitle()))
    .toContain("house.loadside");
});
