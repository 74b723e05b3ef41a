/** Tests of the compiled desktop program, each with a folder of its own and a drawing in it. */
import { mkdir, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, type Page } from "@playwright/test";
import { StandIn } from "../../electron/stand-in.ts";
import { test as base, checked, pane, ROOT, runByField } from "./window-test.ts";

export const SAMPLE = join(ROOT, "assets/samples/laundry-box.loadside");

/** The cautions are read. */
const STORED = { "loadside.preferences": JSON.stringify({ theme: "light", cautionsRead: true }) };

export interface Desktop {
  /** A folder of the person. */
  readonly home: string;
  /** A drawing in it, the same for every test. */
  readonly house: string;
  start(options?: {
    readonly args?: readonly string[];
    readonly isFirst?: boolean;
    readonly handedOver?: readonly string[];
  }): Promise<StandIn>;
}

export const test = base.extend<{ desktop: Desktop }>({
  desktop: async ({ browser }, use) => {
    const home = await mkdtemp(join(tmpdir(), "loadside-desktop-"));
    await mkdir(join(home, "userData"));
    const house = join(home, "house.loadside");
    await writeFile(house, await readFile(SAMPLE));
    const started: StandIn[] = [];
    await use({
      home,
      house,
      async start(options = {}) {
        const standIn = await StandIn.start({ browser, dist: join(ROOT, "dist"), home, stored: STORED, ...options });
        started.push(standIn);
        return standIn;
      },
    });
    for (const standIn of started) await standIn.end();
    await rm(home, { recursive: true });
  },
});

/** The window once its page is there. */
export async function ready(standIn: StandIn, index = 0): Promise<Page> {
  const page = await standIn.page(index);
  await expect(banner(page)).toBeVisible();
  return page;
}

export const banner = (page: Page) => page.getByRole("banner");
export const onDisk = (path: string): Promise<string> => readFile(path, "utf8");

export async function rename(page: Page, from: string, to: string): Promise<void> {
  await runByField(page, from);
  const name = pane(page).getByRole("textbox", { name: "Name" });
  await name.fill(to);
  await name.press("Enter");
}

/** The window with the drawing of the file open. */
export async function withHouse(desktop: Desktop): Promise<{ readonly standIn: StandIn; readonly page: Page }> {
  const standIn = await desktop.start({ args: [desktop.house] });
  const page = await ready(standIn);
  await expect(banner(page)).toContainText("house.loadside");
  await checked(page);
  return { standIn, page };
}
