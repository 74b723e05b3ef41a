/** Tests of the built window, served as `npm start` serves it. */
import { fileURLToPath } from "node:url";
import { AxeBuilder } from "@axe-core/playwright";
import { test as base, expect, type Page } from "@playwright/test";
import { startBrowserHost } from "../../../electron/browser-host.mjs";

export const ROOT = fileURLToPath(new URL("../../../", import.meta.url));
interface WorkerFixtures {
  /** Folder of the built window; a configuration may name another copy, so that a build does not disturb the tests. */
  readonly folder: string;
  /** Address of the window, without a file. */
  readonly address: string;
}

interface TestFixtures {
  /** Fails the test when the page throws, or the content policy stops something. */
  readonly quietPage: Page;
}

export const test = base.extend<TestFixtures, WorkerFixtures>({
  folder: [fileURLToPath(new URL("../../../dist/window", import.meta.url)), { scope: "worker", option: true }],
  address: [
    async ({ folder }, use) => {
      const host = await startBrowserHost({ folder });
      await use(host.url);
      await host.close();
    },
    { scope: "worker" },
  ],
  quietPage: async ({ page }, use) => {
    const faults: string[] = [];
    page.on("pageerror", (error) => faults.push(error.message));
    page.on("console", (message) => {
      if (message.type() === "error") faults.push(message.text());
    });
    await use(page);
    expect(faults).toEqual([]);
  },
});

/** Opens the window at its start page with the cautions read, which a test of their own looks at. */
export async function openStart(page: Page, address: string): Promise<void> {
  await page.addInitScript(() => {
    localStorage.setItem("loadside.preferences", JSON.stringify({ theme: "light", cautionsRead: true }));
  });
  await page.goto(address);
}

/** Opens the window with an empty drawing; one that is given a file shows that file. */
export async function openWindow(page: Page, address: string): Promise<void> {
  await openStart(page, address);
  if (!new URL(address).searchParams.has("open")) await leaveStart(page);
  await checked(page);
}

/** From the start page to an empty drawing. */
export const leaveStart = (page: Page): Promise<void> => page.getByRole("button", { name: "Empty drawing" }).click();

/** Waits until the checks have answered for the drawing as it is now. */
export async function checked(page: Page): Promise<void> {
  await expect(page.getByRole("contentinfo").getByText(/^\d+ checks run$/)).toBeVisible();
}

export async function openLaundrySample(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Drawing", exact: true }).click();
  await page.getByRole("menuitem", { name: "Samples" }).click();
  await page.getByRole("button", { name: /laundry circuit(?!, proposed)/ }).click();
  await expect(page.getByRole("dialog")).toHaveCount(0);
  await expect(page.getByRole("banner")).toContainText("1962 bungalow, laundry circuit");
  await checked(page);
}

export const showPane = (page: Page, name: "Details" | "Findings" | "Rooms"): Promise<void> =>
  page.getByRole("tab", { name: new RegExp(`^${name}`) }).click();

/** The pane at the right with the three tabs. */
export const pane = (page: Page) => page.getByRole("complementary", { name: "Details, findings and rooms" });

/** What every finding says, sorted. */
export async function shownMessages(page: Page): Promise<readonly string[]> {
  await showPane(page, "Findings");
  return (await pane(page).locator(".finding-message").allInnerTexts()).sort();
}

/** Runs a line of the command field. */
export async function runByField(page: Page, words: string): Promise<void> {
  await page.keyboard.press("Control+k");
  await page.keyboard.type(words);
  await page.keyboard.press("Enter");
  await fieldLeft(page);
}

/** Waits until the command field has run what was typed: it gives the focus up then. */
export async function fieldLeft(page: Page): Promise<void> {
  const isIn = () => page.evaluate(() => document.activeElement?.closest(".command") != null);
  await expect.poll(isIn, "the command field is left").toBe(false);
}

/**
 * Does at once what a person does quickly: the clock of the page stands still meanwhile, so that steps that count as one
 * when they are quick do so on a busy machine too.
 */
export async function quickly(page: Page, act: () => Promise<void>): Promise<void> {
  await page.evaluate(() => {
    const at = performance.now();
    Object.defineProperty(performance, "now", { configurable: true, value: () => at });
  });
  await act();
  await page.evaluate(() => {
    Reflect.deleteProperty(performance, "now");
  });
}

/** No violation of any rule of the accessibility checker in what is shown now. */
export async function expectAccessible(page: Page, shown: string): Promise<void> {
  // There are no frames to look into, and what passes need not be told: a third of the time.
  const checker = new AxeBuilder({ page }).setLegacyMode(true).options({ resultTypes: ["violations"] });
  const { violations } = await checker.analyze();
  const found = violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(" ")).join(", ")}`);
  expect(found, shown).toEqual([]);
}
