/** A browser with a profile of its own on the disk, which can be killed the way the system kills: without a word. */
import { type ChildProcess, spawn } from "node:child_process";
import { mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Browser, chromium, type Page } from "@playwright/test";
import { CHROMIUM_ARGS, findChromium } from "../../get-chromium.mjs";

export interface KillableBrowser {
  /** Of the window that it is for. */
  readonly address: string;
  /** Starts it, with what its profile holds. */
  start(): Promise<Page>;
  /** Kills the browser with all its processes at once. @returns When, in milliseconds since 1970. */
  kill(): Promise<number>;
  delete(): Promise<void>;
}

export async function killableBrowser(address: string): Promise<KillableBrowser> {
  const program = (await findChromium()) ?? chromium.executablePath();
  const profile = await mkdtemp(join(tmpdir(), "loadside-profile-"));
  let running: ChildProcess | undefined;
  let browser: Browser | undefined;

  async function kill(): Promise<number> {
    const child = running;
    if (child?.pid === undefined) return Date.now();
    const ended = new Promise((resolve) => child.once("exit", resolve));
    const at = Date.now();
    // The number of the group that it leads, with a minus: everything it started dies with it.
    process.kill(-child.pid, "SIGKILL");
    running = undefined;
    await ended;
    await browser?.close().catch(() => undefined);
    return at;
  }

  return {
    address,
    async start() {
      const portFile = join(profile, "DevToolsActivePort");
      await rm(portFile, { force: true });
      const own = [`--user-data-dir=${profile}`, "--remote-debugging-port=0", "--headless=new", "--disable-gpu"];
      running = spawn(program, [...CHROMIUM_ARGS, ...own, "about:blank"], { detached: true, stdio: "ignore" });
      browser = await chromium.connectOverCDP(`http://127.0.0.1:${await portOf(portFile)}`);
      const [context] = browser.contexts();
      const page = context?.pages()[0] ?? (await context?.newPage());
      if (page === undefined) throw new Error("The browser has no page.");
      return page;
    },
    kill,
    async delete() {
      await kill();
      await rm(profile, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}

/** The browser writes down its port as soon as it listens. */
async function portOf(file: string): Promise<number> {
  for (let tries = 0; tries < 300; tries += 1) {
    const text = await readFile(file, "utf8").catch(() => "");
    const port = Number.parseInt(text.split("\n")[0] ?? "", 10);
    if (text.includes("\n") && port > 0) return port;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error("The browser did not start.");
}
