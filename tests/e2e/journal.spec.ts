import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, type Page } from "@playwright/test";
import { type KillableBrowser, killableBrowser } from "./support/killable-browser.ts";
import { answerPickers, choose, storedText, storeFile } from "./support/stored-files.ts";
import {
  checked,
  expectAccessible,
  leaveStart,
  openLaundrySample,
  openStart,
  openWindow,
  pane,
  ROOT,
  runByField,
  test,
} from "./support/window-test.ts";

const SAMPLE = join(ROOT, "assets/samples/laundry-box.loadside");
const work = (page: Page) => page.getByRole("region", { name: "Continue" });
const title = (page: Page) => page.getByRole("banner").locator(".val-name");

async function rename(page: Page, to: string): Promise<void> {
  const field = pane(page).getByRole("textbox", { name: "Title" });
  await field.fill(to);
  await field.press("Enter");
}

/** The window dies at once, and with it everything that it had not given out of its hands. */
async function crash(page: Page): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const gone = new Promise((resolve) => page.once("crash", resolve));
  session.send("Page.crash").catch(() => undefined);
  await gone;
  await page.close();
}

/** Waits until a journal holds these words. It goes out at once; how much a kill takes with it is a test of its own. */
async function kept(page: Page, words: string): Promise<void> {
  const held = (): Promise<string> =>
    page.evaluate(async () => {
      const name = "loadside-journals";
      // Opened before the window has made it, it would be made without its stores.
      if (!(await indexedDB.databases()).some((one) => one.name === name)) return "";
      const opening = indexedDB.open(name);
      await new Promise((done) => opening.addEventListener("success", done));
      const lines = opening.result.transaction("lines").objectStore("lines").getAll();
      await new Promise((done) => lines.addEventListener("success", done));
      opening.result.close();
      return lines.result.join("\n");
    });
  await expect.poll(held).toContain(words);
}

test("a window that died offers its work: it can be left, looked at again, and continued with", async ({
  page,
  context,
  address,
}) => {
  await openWindow(page, address);
  await rename(page, "Attic");
  await kept(page, "Attic");
  await crash(page);

  const next = await context.newPage();
  await openStart(next, address);
  await expect(work(next)).toContainText("Unsaved changes of Attic");
  await expect(work(next)).toContainText(/last change today \d\d:\d\d/);
  await expectAccessible(next, "unsaved work");
  await next.setViewportSize({ width: 390, height: 800 });
  await expect(work(next)).toBeInViewport();
  await expectAccessible(next, "unsaved work, narrow");
  await next.setViewportSize({ width: 1440, height: 900 });
  await work(next)
    .getByRole("button", { name: /^Leave it .*Attic$/ })
    .click();
  await expect(work(next)).toContainText("left for later");
  await expectAccessible(next, "unsaved work, left");
  await next.reload();
  await work(next).getByRole("button", { name: "Continue with Attic" }).click();
  await expect(title(next)).toHaveText("Attic");
  await expect(next.getByRole("banner")).toContainText("not saved");
  // Now it is this window's own, and no longer offered as that of a dead one.
  await runByField(next, "Start page");
  await expect(work(next)).toHaveCount(0);
  await crash(next);
  const third = await context.newPage();
  await openStart(third, address);
  await expect(work(third)).toContainText("Unsaved changes of Attic");
});

test("unsaved work is thrown away only on purpose", async ({ page, context, address }) => {
  await openWindow(page, address);
  await rename(page, "Attic");
  await kept(page, "Attic");
  await crash(page);
  const next = await context.newPage();
  await openStart(next, address);
  await work(next).getByRole("button", { name: "Discard Attic" }).click();
  const question = next.getByRole("dialog", { name: "Discard the unsaved changes of Attic?" });
  await expectAccessible(next, "discard question");
  await question.getByRole("button", { name: "Cancel" }).click();
  await expect(work(next)).toContainText("Attic");
  await work(next).getByRole("button", { name: "Discard Attic" }).click();
  await question.getByRole("button", { name: "Discard", exact: true }).click();
  await expect(work(next)).toHaveCount(0);
  await next.reload();
  await expect(next.getByRole("heading", { name: "Samples" })).toBeVisible();
  await expect(work(next)).toHaveCount(0);
});

test("each of two windows has its own work; a living one is not offered", async ({ page, context, address }) => {
  await openWindow(page, address);
  await rename(page, "Here");
  const other = await context.newPage();
  await openWindow(other, address);
  await rename(other, "There");
  await kept(other, "There");
  await crash(other);
  const third = await context.newPage();
  await openStart(third, address);
  await expect(work(third)).toContainText("There");
  await expect(work(third)).not.toContainText("Here");
});

test("work on a file goes back to the file; one that changed meanwhile is left alone", async ({
  page,
  context,
  address,
}) => {
  await answerPickers(page);
  await openWindow(page, address);
  const text = await readFile(SAMPLE, "utf8");
  await storeFile(page, "house.loadside", text);
  await choose(page, "house.loadside");
  await page.keyboard.press("Control+o");
  await expect(title(page)).toHaveText("house.loadside");
  await checked(page);
  await rename(page, "Once");
  await kept(page, "Once");
  await crash(page);

  const next = await context.newPage();
  await openStart(next, address);
  await work(next).getByRole("button", { name: "Continue with house.loadside" }).click();
  await expect(title(next)).toHaveText("house.loadside");
  expect(await storedText(next, "house.loadside"), "nothing is written by coming back").toBe(text);
  await checked(next);
  await next.keyboard.press("Control+s");
  await expect(next.getByRole("banner").getByText("saved", { exact: true })).toBeVisible();
  expect(await storedText(next, "house.loadside")).toContain('"title": "Once"');

  await rename(next, "Twice");
  await kept(next, "Twice");
  await crash(next);
  const third = await context.newPage();
  await openStart(third, address);
  await storeFile(third, "house.loadside", text);
  await work(third).getByRole("button", { name: "Continue with house.loadside" }).click();
  await expect(title(third)).toHaveText("Twice");
  await expect(third.getByText("house.loadside was changed by another program since")).toBeVisible();
  await expectAccessible(third, "opened as a copy");
  expect(await storedText(third, "house.loadside")).toBe(text);
});

test("no room for unsaved work is said once, and editing and saving go on", async ({ quietPage: page, address }) => {
  await answerPickers(page);
  await openWindow(page, address);
  await page.evaluate(() => {
    IDBDatabase.prototype.transaction = () => {
      throw new DOMException("There is no room.", "QuotaExceededError");
    };
  });
  await rename(page, "One");
  await expect(page.getByRole("alert").getByText("Unsaved work is not kept")).toBeVisible();
  await expectAccessible(page, "no room");
  await page.getByRole("alert").getByRole("button", { name: "Close" }).click();
  await rename(page, "Two");
  await expect(title(page)).toHaveText("Two");
  // Time in which it would be said again.
  await page.waitForTimeout(250);
  await expect(page.getByText("Unsaved work is not kept")).toHaveCount(0);
  await page.keyboard.press("Control+s");
  await expect(page.getByRole("banner").getByText("saved", { exact: true })).toBeVisible();
});

test("a changed copy of a sample comes back too", async ({ page, context, address }) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await runByField(page, "R1");
  await pane(page).getByRole("textbox", { name: "Name" }).fill("R9");
  await page.keyboard.press("Enter");
  await kept(page, "R9");
  await crash(page);
  const next = await context.newPage();
  await openStart(next, address);
  await work(next)
    .getByRole("button", { name: /^Continue with 1962/ })
    .click();
  await checked(next);
  await runByField(next, "R9");
  await expect(pane(next).getByRole("textbox", { name: "Name" })).toHaveValue("R9");
});

const KILLS = process.env.LOADSIDE_LONG === undefined ? 2 : 24;
const EDIT_EVERY_MS = 20;
const MOST_LOST_MS = 1000;

/** As a fixture, so that no browser is left behind when a test is given up. */
const killing = test.extend<{ readonly killable: KillableBrowser }>({
  killable: async ({ address }, use) => {
    const killable = await killableBrowser(address);
    await use(killable);
    await killable.delete();
  },
});

killing(
  `a browser that is killed in the middle of work loses at most a second of it, ${KILLS} times`,
  async ({ killable }) => {
    killing.setTimeout(30_000 + KILLS * 20_000);
    const lost: number[] = [];
    const over: number[] = [];
    for (let round = 0; round < KILLS; round += 1) {
      const page = await killable.start();
      /** When each edit was made that the test heard of. */
      const made: number[] = [];
      await page.exposeFunction("made", (edit: number, at: number) => {
        made[edit] = at;
      });
      await openStart(page, killable.address);
      await leaveStart(page);
      await checked(page);
      // The panes come a moment after the sheet.
      await page.locator("aside").getByLabel("Title", { exact: true }).waitFor();
      await keepEditing(page, EDIT_EVERY_MS);
      await expect.poll(() => made.length, "edits are made").toBeGreaterThan(10);
      await page.waitForTimeout(600 + Math.random() * 2000);
      const killedAt = await killable.kill();

      const after = await killable.start();
      await openStart(after, killable.address);
      await work(after)
        .getByRole("button", { name: /^Continue with Edit \d+$/ })
        .click();
      await expect(title(after)).toHaveText(/^Edit \d+$/);
      const back = Number((await title(after).textContent())?.replace("Edit ", ""));
      // Everything from the first edit that is missing until the kill is lost.
      const firstLost = made[back + 1];
      lost.push(firstLost === undefined ? 0 : killedAt - firstLost);
      over.push((lost.at(-1) ?? 0) - MOST_LOST_MS - longestPause(made, killedAt));
      await killable.kill();
      // The work of this round must not be offered in the next.
      const cleaner = await killable.start();
      await openStart(cleaner, killable.address);
      await expect(work(cleaner).getByRole("button", { name: /^Discard/ })).toHaveCount(1);
      await work(cleaner)
        .getByRole("button", { name: /^Discard/ })
        .click();
      await cleaner.getByRole("dialog").getByRole("button", { name: "Discard", exact: true }).click();
      await expect(work(cleaner)).toHaveCount(0);
      await killable.kill();
    }
    console.log(`lost in ${lost.length} kills: ${lost.map((ms) => ms.toFixed(0)).join(", ")} ms`);
    expect(Math.max(...over), `lost: ${lost.join(", ")} ms`).toBeLessThanOrEqual(0);
  },
);

/**
 * The longest time in which the machine did nothing for this browser: a window that does not run loses what it did just
 * before, and nobody could do more. On a machine with time left it is that of an edit.
 */
function longestPause(made: readonly number[], killedAt: number): number {
  const times = made.filter((at) => at !== undefined);
  return Math.max(...times.map((at, edit) => (times[edit + 1] ?? killedAt) - at)) - EDIT_EVERY_MS;
}

/** Somebody who gives the drawing another title again and again, each time telling the test. */
const keepEditing = (page: Page, everyMs: number): Promise<void> =>
  page.evaluate((every) => {
    const { made } = globalThis as unknown as { readonly made: (edit: number, at: number) => void };
    const field = [...document.querySelectorAll<HTMLInputElement>("aside input")].find(
      ({ labels }) => labels?.[0]?.textContent?.startsWith("Title") === true,
    );
    if (field === undefined) throw new Error("There is no field for the title.");
    const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value")?.set;
    let edit = 0;
    setInterval(() => {
      edit += 1;
      set?.call(field, `Edit ${edit}`);
      field.dispatchEvent(new InputEvent("input", { bubbles: true }));
      // The window takes the text over once it has seen it.
      setTimeout(() => {
        field.dispatchEvent(new KeyboardEvent("keydown", { key: "Enter", bubbles: true }));
        made(edit, Date.now());
      }, 0);
    }, every);
  }, everyMs);
