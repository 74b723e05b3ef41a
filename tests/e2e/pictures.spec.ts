/** Small pictures of drawings on the start page: kept with the list of recent drawings and with unsaved work. */
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, type Page } from "@playwright/test";
import { answerPickers, choose, storeFile } from "./support/stored-files.ts";
import { checked, expectAccessible, openStart, ROOT, test } from "./support/window-test.ts";

const SAMPLE = join(ROOT, "assets/samples/laundry-box.loadside");
const side = (page: Page) => page.getByRole("complementary", { name: "Continue, open or look at a sample" });
const recent = (page: Page) => side(page).getByRole("region", { name: "Recent" });

interface Kept {
  readonly id: string;
  readonly text: string;
}

const keptPictures = (page: Page): Promise<readonly Kept[]> =>
  page.evaluate(
    () =>
      new Promise<Kept[]>((resolve, reject) => {
        const opening = indexedDB.open("loadside-pictures", 1);
        opening.onupgradeneeded = () => opening.result.createObjectStore("pictures", { keyPath: "id" });
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const asked = opening.result.transaction("pictures").objectStore("pictures").getAll();
          asked.onsuccess = () => {
            opening.result.close();
            resolve(asked.result);
          };
        };
      }),
  );

async function openFile(page: Page, name: string, text: string): Promise<void> {
  await storeFile(page, name, text);
  await choose(page, name);
  await page.keyboard.press("Control+o");
  await expect(page.getByRole("banner")).toContainText(name);
  await checked(page);
}

test("a recent drawing is shown in small, and its picture goes when it leaves the list", async ({
  quietPage: page,
  address,
}) => {
  await answerPickers(page);
  await openStart(page, address);
  await openFile(page, "laundry.loadside", await readFile(SAMPLE, "utf8"));
  await expect.poll(async () => (await keptPictures(page)).length, { timeout: 30_000 }).toBe(1);
  for (const { text } of await keptPictures(page)) expect(Buffer.byteLength(text)).toBeLessThanOrEqual(8192);
  await page.reload();
  const enclosures: readonly { readonly kind: string }[] = Object.values(
    JSON.parse(await readFile(SAMPLE, "utf8")).asFound.enclosures,
  );
  const boxes = enclosures.filter(({ kind }) => kind === "box").length;
  const large = side(page).locator(".start-again .drawing-picture");
  await expect(large.locator(".drawing-box")).toHaveCount(enclosures.length);
  await expect(large.locator(".drawing-name").filter({ hasText: /^B1$/ })).toBeVisible();
  await expect(large.locator(".drawing-roads")).toHaveAttribute("d", /^M\d+ \d+L/);
  await expect(recent(page).getByRole("listitem")).toHaveText([
    new RegExp(`^laundry[.]loadsidetoday .*, ${boxes} boxes`),
  ]);
  await expectAccessible(page, "start page with pictures, light");
  const paper = () =>
    large
      .locator(".drawing-box")
      .first()
      .evaluate((box) => getComputedStyle(box).fill);
  const light = await paper();
  await page.evaluate(() => {
    document.documentElement.dataset.theme = "dark";
  });
  expect(await paper()).not.toBe(light);
  await expectAccessible(page, "start page with pictures, dark");
  await recent(page).getByRole("button", { name: "Take laundry.loadside off the list" }).click();
  await expect(recent(page).getByRole("listitem")).toHaveCount(0);
  await expect.poll(async () => await keptPictures(page)).toEqual([]);
});

test("the picture of a line is pressed like its name", async ({ quietPage: page, address }) => {
  await answerPickers(page);
  await openStart(page, address);
  await openFile(page, "laundry.loadside", await readFile(SAMPLE, "utf8"));
  await expect.poll(async () => (await keptPictures(page)).length, { timeout: 30_000 }).toBe(1);
  await page.reload();
  const spot = await recent(page).locator(".start-small .drawing-picture").boundingBox();
  if (spot === null) throw new Error("There is no picture.");
  await page.mouse.click(spot.x + spot.width / 2, spot.y + spot.height / 2);
  await expect(page.getByRole("banner")).toContainText("laundry.loadside");
});

test("a name that looks like a page stays a name", async ({ quietPage: page, address }) => {
  await answerPickers(page);
  await openStart(page, address);
  const text = (await readFile(SAMPLE, "utf8")).replace('"name": "B1"', '"name": "<img src=x>"');
  await openFile(page, "odd.loadside", text);
  await expect.poll(async () => (await keptPictures(page)).length, { timeout: 30_000 }).toBe(1);
  await page.reload();
  await expect(side(page).locator(".drawing-name").filter({ hasText: "<img src=x>" })).toHaveCount(1);
  await expect(side(page).locator("img")).toHaveCount(0);
});

test("pictures that make no sense, or belong to nothing, are thrown away", async ({ quietPage: page, address }) => {
  await openStart(page, address);
  await expect.poll(() => keptPictures(page)).toEqual([]);
  await page.evaluate(
    () =>
      new Promise<void>((resolve) => {
        const opening = indexedDB.open("loadside-pictures", 1);
        opening.onsuccess = () => {
          const writing = opening.result.transaction("pictures", "readwrite");
          writing.objectStore("pictures").put({ id: "stray", text: "<svg onload=alert(1)>" });
          writing.objectStore("pictures").put({ id: "work gone", text: "{}" });
          writing.oncomplete = () => {
            opening.result.close();
            resolve();
          };
        };
      }),
  );
  await page.reload();
  await expect.poll(() => keptPictures(page)).toEqual([]);
});

test("unsaved work that was left behind is shown in small", async ({ quietPage: page, address }) => {
  await openStart(page, address);
  await page.getByRole("button", { name: "Start as found" }).click();
  await checked(page);
  await expect.poll(async () => (await keptPictures(page)).length, { timeout: 30_000 }).toBe(1);
  await page.reload();
  const work = side(page).getByRole("listitem").filter({ hasText: "Unsaved changes of Untitled drawing" });
  await expect(work.locator(".drawing-picture .drawing-name")).toHaveText("B1");
  await expectAccessible(page, "unsaved work with its picture");
  await work.getByRole("button", { name: "Discard" }).click();
  await page.getByRole("dialog").getByRole("button", { name: "Discard" }).click();
  await page.reload();
  await expect(side(page).getByRole("heading").first()).toHaveText("Recent");
  await expect.poll(() => keptPictures(page)).toEqual([]);
});
