import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { expect, type Page } from "@playwright/test";
import { startBrowserHost } from "../../electron/browser-host.mjs";
import { answerPickers, choose, storedText, storeFile } from "./support/stored-files.ts";
import {
  checked,
  expectAccessible,
  openLaundrySample,
  openStart,
  openWindow,
  pane,
  ROOT,
  runByField,
  test,
} from "./support/window-test.ts";

const SAMPLE = join(ROOT, "assets/samples/laundry-box.loadside");
const form = (page: Page) => page.getByRole("main", { name: "New from what I see" });
const side = (page: Page) => page.getByRole("complementary", { name: "Continue, open or look at a sample" });
const fill = (page: Page) => form(page).getByRole("status").filter({ hasText: "Box fill" });

test("the start page comes first, is named, and passes the accessibility checks", async ({
  quietPage: page,
  address,
}) => {
  await openStart(page, address);
  await expect(page).toHaveTitle("Start - Loadside");
  await expect(side(page).getByRole("heading")).toHaveText(["Recent", "New drawing", "Common boxes", "Samples"]);
  await expect(form(page).getByRole("img", { name: /^B1, .*as it will be drawn$/ })).toBeVisible();
  await expectAccessible(page, "start page, light");
  await page.evaluate(() => {
    document.documentElement.dataset.theme = "dark";
  });
  await expectAccessible(page, "start page, dark");
  for (const width of [390, 900]) {
    await page.setViewportSize({ width, height: 800 });
    await expectAccessible(page, `start page, ${width} wide`);
    const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    expect(over, `${width} wide: nothing lies beside the page`).toBeLessThanOrEqual(0);
  }
});

test("first load: at most 350 KiB of compressed script before the start page can be used", async ({
  quietPage: page,
  address,
}) => {
  const scripts = scriptsOf(page);
  await openStart(page, address);
  await expect(form(page).getByRole("img")).toBeVisible();
  await expect(fill(page)).toBeVisible();
  await page.waitForLoadState("networkidle");
  const kib = kibOf(scripts.values());
  console.log(`first load: ${kib.toFixed(1)} KiB of compressed script in ${scripts.size} files`);
  expect(
    [...scripts.keys()].some((url) => url.includes("worker")),
    "the checks are among it",
  ).toBe(true);
  expect(kib).toBeLessThanOrEqual(350);
  // Sheet, dialogs, and what copies, arranges and lists commands come when they are wanted.
  const later = /\/(drawing|open-dialog|clipboard-actions|command-lines|item-actions|sheet-picture)-/;
  expect([...scripts.keys()].filter((url) => later.test(url))).toEqual([]);
});

test("first load: at most 350 KiB of compressed script before a drawing that the window is started with is seen", async ({
  quietPage: page,
  folder,
}) => {
  const text = await readFile(SAMPLE, "utf8");
  const save = async () => ({ ok: false as const, status: 500, message: "Not in this test." });
  const openedFile = { token: "t".repeat(32), name: "laundry.loadside", limit: text.length, save };
  const host = await startBrowserHost({
    folder,
    openedFile: { ...openedFile, read: async () => ({ ok: true as const, text }) },
  });
  try {
    const scripts = scriptsOf(page);
    // What is asked for after the first boxes are in the page is not waited for.
    await page.addInitScript(() => {
      const watch = new MutationObserver(() => {
        if (document.querySelector(".react-flow__node") === null) return;
        watch.disconnect();
        performance.mark("seen");
      });
      watch.observe(document, { childList: true, subtree: true });
    });
    await openWindow(page, host.url);
    const before = await page.evaluate(() => {
      const seen = performance.getEntriesByName("seen")[0]?.startTime ?? 0;
      const all = performance.getEntriesByType("resource");
      return all.filter(({ startTime }) => startTime < seen).map(({ name }) => name);
    });
    await page.waitForLoadState("networkidle");
    const needed = [...scripts].filter(([url]) => before.includes(url));
    const kib = kibOf(needed.map(([, size]) => size));
    const all = kibOf(scripts.values());
    console.log(
      `a drawing: ${kib.toFixed(1)} KiB of compressed script in ${needed.length} files, ${all.toFixed(1)} in all`,
    );
    expect(needed.filter(([url]) => /\/(page|drawing)-/.test(url))).toHaveLength(2);
    expect(kib).toBeLessThanOrEqual(350);
    // Panes, hands at work, dialogs and the start page come after it.
    const later = /\/(beside|start|open-dialog|clipboard-actions|item-actions|energising)-/;
    expect(needed.map(([url]) => url).filter((url) => later.test(url))).toEqual([]);
  } finally {
    await host.close();
  }
});

/** Compressed bytes of every script that the page fetches, by address. */
function scriptsOf(page: Page): ReadonlyMap<string, number> {
  const scripts = new Map<string, number>();
  page.on("response", async (response) => {
    if (!/\.js$/.test(new URL(response.url()).pathname)) return;
    scripts.set(response.url(), gzipSync(await response.body(), { level: 6 }).length);
  });
  return scripts;
}

const kibOf = (sizes: Iterable<number>): number => [...sizes].reduce((sum, size) => sum + size, 0) / 1024;

test("a box is made from what is seen, by presses alone", async ({ quietPage: page, address }) => {
  await openStart(page, address);
  const more = form(page).getByRole("button", { name: "One more: cables of 12/2 with ground" });
  for (let times = 0; times < 3; times += 1) await more.click();
  // Worked example of the job: five 12/2 cables, internal clamps and one receptacle.
  await expect(fill(page)).toContainText("32.0625 of 30.3 in³");
  await expect(fill(page)).toContainText("more than the box holds");
  await form(page).getByLabel("Room").selectOption({ label: "laundry" });
  await form(page).getByLabel("Cable thought to bring the supply").selectOption({ label: "C1, I think" });
  await form(page).getByRole("button", { name: "Start as found" }).click();
  await checked(page);
  await expect(pane(page).getByRole("textbox", { name: "Name" })).toHaveValue("B1");
  await expect(pane(page).getByRole("row", { name: /^Needed/ })).toContainText("32.0625");
  const end = page.getByRole("button", { name: /^C5 bare/ }).first();
  await expect(end).toBeVisible();
  // Codes and conductors are drawn from 35 % on.
  const zoom = await page.getByText(/^\d+ %$/).textContent();
  expect(Number.parseInt(zoom ?? "", 10)).toBeGreaterThanOrEqual(35);
  await runByField(page, "C3 WH");
  await expect(pane(page)).toContainText("capped");
  await expect(page.getByRole("button", { name: "Undo: Make B1 from what is seen" })).toBeEnabled();
  await page.keyboard.press("Escape");
  await page.getByRole("button", { name: /^Undo/ }).click();
  await expect(page.getByRole("button", { name: "Undo", exact: true })).toBeDisabled();
  await expectAccessible(page, "undone");
});

test("a box is made from what is seen, by keyboard alone", async ({ quietPage: page, address }) => {
  await openStart(page, address);
  const reach = async (name: RegExp): Promise<void> => {
    for (let presses = 0; presses < 80; presses += 1) {
      const label = await page.evaluate(() => {
        const focused = document.activeElement;
        return focused?.getAttribute("aria-label") ?? focused?.textContent ?? "";
      });
      if (name.test(label)) return;
      await page.keyboard.press("Tab");
    }
    throw new Error(`${name} cannot be reached by Tab.`);
  };
  await reach(/^Box$/);
  await page.keyboard.type("4-11/16 sq. × 2");
  await reach(/^Name of the box$/);
  await page.keyboard.type("Laundry box");
  await reach(/^cables of 12\/2/);
  await page.keyboard.press("ArrowUp");
  await reach(/^another kind of device/);
  await page.keyboard.press("Enter");
  await expect(form(page).getByLabel("Kind of device 2")).toBeVisible();
  await reach(/^Start as found$/);
  await expect(fill(page)).toContainText("of 42 in³");
  await page.keyboard.press("Enter");
  await checked(page);
  await expect(pane(page).getByRole("textbox", { name: "Name" })).toHaveValue("Laundry box");
  await runByField(page, "C3 BK");
  await expect(pane(page)).toContainText("capped");
});

test("the form tells what it will make, and what cannot be taken", async ({ quietPage: page, address }) => {
  await openStart(page, address);
  const held = form(page).getByLabel("What holds the cables");
  await expect(fill(page)).toContainText("of 30.3 in³");
  const withClamps = (await fill(page).textContent()) ?? "";
  await held.selectOption({ label: "connectors, no clamps inside" });
  await expect(fill(page)).not.toHaveText(withClamps);
  await form(page).getByLabel("Box", { exact: true }).selectOption({ label: "Nonmetallic new-work, 2 gang" });
  await expect(held).toHaveCount(0);
  await expect(fill(page)).toContainText("of 34 in³");
  await form(page).getByRole("button", { name: "another kind of cable" }).click();
  await form(page).getByLabel("Kind of cable 2").selectOption({ label: "14/3 with ground" });
  await form(page).getByRole("spinbutton", { name: "cables of 14/3 with ground" }).fill("99");
  await expect(form(page).getByRole("spinbutton", { name: "cables of 14/3 with ground" })).toHaveValue("14");
  await expect(form(page).getByRole("button", { name: "One more: cables of 12/2 with ground" })).toBeDisabled();
  await expect(form(page).getByRole("button", { name: "another kind of cable" })).toBeDisabled();
  await expectAccessible(page, "form, full");
  await form(page).getByRole("button", { name: "Take away 14/3 with ground" }).click();
  await expect(form(page).getByLabel("Kind of cable", { exact: true })).toBeVisible();
});

test("a box from what is seen goes into the drawing that is open, too", async ({ quietPage: page, address }) => {
  await openStart(page, address);
  await side(page)
    .getByRole("button", { name: /^1962 bungalow, laundry circuit/ })
    .click();
  await checked(page);
  await page.getByRole("button", { name: "Drawing", exact: true }).click();
  await page.getByRole("menuitem", { name: "New from what I see" }).click();
  const dialog = page.getByRole("dialog", { name: "New from what I see" });
  await dialog.getByLabel("Room").selectOption({ label: "Laundry" });
  await expect(dialog.getByRole("status")).toContainText("of 30.3 in³");
  await expectAccessible(page, "dialog");
  const name = await dialog.getByLabel("Name of the box").getAttribute("placeholder");
  await dialog.getByRole("button", { name: "Add the box" }).click();
  await expect(dialog).toHaveCount(0);
  await checked(page);
  await expect(pane(page).getByRole("textbox", { name: "Name" })).toHaveValue(name ?? "");
  await expect(page.getByRole("button", { name: `Undo: Make ${name} from what is seen` })).toBeEnabled();
});

test("the start page can be come back to, and left again", async ({ quietPage: page, address }) => {
  await openStart(page, address);
  await side(page).getByRole("button", { name: "Empty drawing" }).click();
  await expect(page.getByRole("navigation", { name: /Stock/ })).toBeVisible();
  await runByField(page, "Start page");
  await expect(form(page)).toBeVisible();
  await expect(page.getByRole("button", { name: /^Back to/ })).toHaveCount(0);
  await side(page)
    .getByRole("button", { name: /^1962 bungalow, laundry circuit/ })
    .click();
  await checked(page);
  await runByField(page, "Start page");
  await expectAccessible(page, "start page over a drawing");
  await page.getByRole("button", { name: "Back to 1962 bungalow, laundry circuit" }).click();
  await checked(page);
  await expect(page.getByRole("banner")).toContainText("1962 bungalow, laundry circuit");
  // What the command field finds on the sheet leads there.
  await runByField(page, "Start page");
  await runByField(page, "B1");
  await expect(pane(page).getByRole("textbox", { name: "Name" })).toHaveValue("B1");
});

test("recent drawings are listed, open again, tell when they are gone, and can be taken off", async ({
  quietPage: page,
  address,
}) => {
  await answerPickers(page);
  await openStart(page, address);
  await storeFile(page, "house.loadside", await readFile(SAMPLE, "utf8"));
  await storeFile(page, "other.loadside", await readFile(SAMPLE, "utf8"));
  for (const name of ["house.loadside", "other.loadside"]) {
    await choose(page, name);
    await page.keyboard.press("Control+o");
    await expect(page.getByRole("banner")).toContainText(name);
  }
  const latest = side(page).getByRole("button", { name: /^other[.]loadside last used today/ });
  // The list is written after the drawing is there.
  await expect(async () => {
    await page.reload();
    await expect(side(page).getByRole("heading").first()).toHaveText("Continue");
    await expect(latest).toBeVisible({ timeout: 2_000 });
  }).toPass();
  const recent = side(page).getByRole("region", { name: "Recent" });
  await expect(recent.getByRole("listitem")).toHaveText([/^other[.]loadside/, /^house[.]loadside/]);
  await expectAccessible(page, "recent drawings");
  await recent.getByRole("button", { name: "house.loadside", exact: true }).click();
  await expect(page.getByRole("banner")).toContainText("house.loadside");
  // Saved where it came from.
  await runByField(page, "R1");
  await pane(page).getByRole("textbox", { name: "Name" }).fill("R1z");
  await page.keyboard.press("Enter");
  await page.keyboard.press("Control+s");
  await expect(page.getByRole("banner").getByText("saved", { exact: true })).toBeVisible();
  expect(await storedText(page, "house.loadside")).toContain('"name": "R1z"');

  await page.evaluate(async () => (await navigator.storage.getDirectory()).removeEntry("other.loadside"));
  await page.reload();
  await expect(recent.getByRole("listitem")).toHaveText([/^house[.]loadside/, /^other[.]loadside.*moved or deleted/]);
  await expectAccessible(page, "a recent drawing that is gone");
  await recent.getByRole("button", { name: "Take other.loadside off the list" }).click();
  await expect(recent.getByRole("listitem")).toHaveText([/^house[.]loadside/]);
  // Gone between looking and pressing.
  await page.evaluate(async () => (await navigator.storage.getDirectory()).removeEntry("house.loadside"));
  await recent.getByRole("button", { name: "house.loadside", exact: true }).click();
  await expect(page.getByText("house.loadside cannot be read. Check that it is still there.")).toBeVisible();
  await expectAccessible(page, "a notice on the start page");
});

test("in a narrow window a sample from far down opens at the top of the page", async ({ quietPage: page, address }) => {
  await page.setViewportSize({ width: 390, height: 700 });
  await openStart(page, address);
  const last = side(page)
    .getByRole("button", { name: /Wrong on purpose/ })
    .first();
  await last.scrollIntoViewIfNeeded();
  expect(await page.evaluate(() => scrollY)).toBeGreaterThan(0);
  await last.click();
  await expect(page.getByRole("main", { name: "Sheet" })).toBeInViewport();
  expect(await page.evaluate(() => scrollY)).toBe(0);
});

test("every Tab of the start page lands on something that is seen, also out of the open command field", async ({
  quietPage: page,
  address,
}) => {
  await openStart(page, address);
  await expect(fill(page)).toBeVisible();
  await page.getByRole("combobox", { name: /^Command/ }).click();
  await expect(page.getByRole("option").first()).toBeVisible();
  await page.keyboard.press("Tab");
  await expect(page.getByRole("button", { name: "Tour in five steps" })).toBeFocused();
});

test("what the command field says of itself is read whole at each usual width", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  for (const width of [1440, 1280, 1024]) {
    await page.setViewportSize({ width, height: 800 });
    const [room, words] = await page.getByRole("combobox", { name: /^Command/ }).evaluate((field) => {
      if (!(field instanceof HTMLInputElement)) throw new Error("The command field is an input.");
      const style = getComputedStyle(field);
      const pen = document.createElement("canvas").getContext("2d");
      if (pen === null) throw new Error("No canvas.");
      pen.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
      const keys = field.parentElement?.querySelector("kbd")?.getBoundingClientRect();
      const key = keys === undefined || keys.width === 0 ? Number.POSITIVE_INFINITY : keys.left;
      const from = field.getBoundingClientRect().left + Number.parseFloat(style.paddingLeft);
      const end = field.getBoundingClientRect().right - Number.parseFloat(style.paddingRight);
      return [Math.min(key, end) - from, pen.measureText(field.placeholder).width];
    });
    expect(words, `${width} wide`).toBeGreaterThan(0);
    expect(words, `${width} wide`).toBeLessThanOrEqual(room);
  }
});
