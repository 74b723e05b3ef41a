/** A building that is painted as one layer: its boxes are pressed, dragged and walked to all the same; the legend. */
import { expect, type Locator, type Page } from "@playwright/test";
import { startBrowserHost } from "../../electron/browser-host.mjs";
import { textToSave } from "../../shared-model/format/text-to-save.ts";
import { bigHouse } from "../bench/big-house.ts";
import { expectAccessible, openLaundrySample, openWindow, test } from "./support/window-test.ts";

/** More boxes than are elements of the page from afar. */
const BOXES = 460;

test("a painted building: a box is found by the pointer, pressed, dragged, framed and walked to", async ({
  quietPage: page,
  folder,
}) => {
  test.setTimeout(180_000);
  await page.emulateMedia({ reducedMotion: "reduce" });
  const text = textToSave(bigHouse(BOXES));
  const openedFile = {
    name: "house.loadside",
    token: "house",
    limit: text.length,
    read: async () => ({ ok: true, text }) as const,
    save: async () => ({ ok: true }) as const,
  };
  const host = await startBrowserHost({ folder, openedFile });
  try {
    await openWindow(page, host.url);
    // All are drawn and fitted into view.
    await expect(page.locator(".sheet:not([data-waiting])")).toBeVisible({ timeout: 90_000 });
    await expect(page.locator(".sheet-painted canvas")).toBeVisible();
    await expect(nodes(page)).toHaveCount(0);

    // Every box keeps what a pointer needs while it is at it.
    const at = await spotOf(page);
    await page.mouse.move(at.x, at.y);
    await expect(nodes(page)).toHaveCount(1);
    const name = (await nodes(page).getAttribute("aria-label")) ?? "";
    expect(name).toMatch(/^Box B\d+/);
    await page.mouse.click(at.x, at.y);
    await expect(bar(page)).toContainText(name.replace("Box ", ""));
    await expectAccessible(page, "a painted building with a box selected");

    // It is dragged as one that is drawn, and one undo takes it back.
    const before = await nodes(page).boundingBox();
    await page.mouse.down();
    await page.mouse.move(at.x + 30, at.y + 12, { steps: 4 });
    await page.mouse.up();
    const undo = page.getByRole("button", { name: /^Undo ?: Move B\d+/ });
    await expect(undo).toBeEnabled();
    const after = await nodes(page).first().boundingBox();
    expect(Math.abs((after?.x ?? 0) - (before?.x ?? 0))).toBeGreaterThan(15);
    await undo.click();
    await page.keyboard.press("Escape");

    // A frame takes all that it touches.
    await page.keyboard.down("Shift");
    const area = await page.locator(".sheet-flow").boundingBox();
    if (area === null) throw new Error("There is no sheet.");
    await page.mouse.move(area.x + 4, area.y + 60);
    await page.mouse.down();
    await page.mouse.move(area.x + area.width - 6, area.y + area.height - 60, { steps: 4 });
    await page.mouse.up();
    await page.keyboard.up("Shift");
    await expect(bar(page)).toContainText(/\d{3} boxes/);
    await page.mouse.move(area.x + 4, area.y + 40);
    await page.mouse.click(area.x + 4, area.y + 40);
    await expect(bar(page)).toHaveCount(0);

    // Keys reach a box wherever it is.
    await page.locator("[data-sheet-stop]").focus();
    await page.keyboard.press("ArrowRight");
    await expect(page.locator(".react-flow__node:focus")).toHaveCount(1);
    const first = await page.locator(".react-flow__node:focus").getAttribute("data-id");
    await page.keyboard.press("ArrowDown");
    await expect(page.locator(`.react-flow__node:focus:not([data-id="${first}"])`)).toHaveCount(1);
  } finally {
    await host.close();
  }
});

test("from afar to near and back nothing vanishes in any frame", async ({ quietPage: page, address }) => {
  await page.emulateMedia({ reducedMotion: "reduce" });
  await openWindow(page, address);
  await openLaundrySample(page);
  await page.getByRole("button", { name: "far", exact: true }).click();
  await expect(page.locator(".sheet-painted canvas")).toBeVisible();
  await page.evaluate(() => {
    const seen = { frames: 0, blank: 0 };
    Object.assign(globalThis, { seen });
    const look = (): void => {
      seen.frames += 1;
      const painted = document.querySelector<HTMLElement>(".sheet-painted canvas")?.hidden === false;
      const shells = document.querySelectorAll(".sheet-far").length;
      const drawn = document.querySelectorAll(".sheet-middle, .sheet-items, .sheet-box-name").length;
      if ((shells > 0 && !painted) || (shells === 0 && drawn === 0)) seen.blank += 1;
      requestAnimationFrame(look);
    };
    requestAnimationFrame(look);
  });
  const sheet = await page.locator(".sheet-flow").boundingBox();
  if (sheet === null) throw new Error("There is no sheet.");
  await page.mouse.move(sheet.x + sheet.width / 2, sheet.y + sheet.height / 2);
  for (const way of [-1, 1]) for (let turn = 0; turn < 18; turn++) await page.mouse.wheel(0, way * 90);
  const { frames, blank } = await page.evaluate(
    () => (globalThis as unknown as { seen: { frames: number; blank: number } }).seen,
  );
  expect(frames).toBeGreaterThan(8);
  expect(blank).toBe(0);
});

test("the legend names what stands on the plan, and the symbols are changed there and back", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await page.getByRole("button", { name: "Legend", exact: true }).click();
  const legend = page.getByRole("region", { name: "Legend of the drawing" });
  await expect(legend.getByRole("listitem").filter({ hasText: /^Panel: 1$/ })).toHaveCount(1);
  await expect(legend).toContainText("not verified against the standard");
  await expectAccessible(page, "legend");
  await legend.getByRole("button", { name: "International" }).click();
  await expect(legend.getByRole("listitem").filter({ hasText: /^Distribution board: 1$/ })).toHaveCount(1);
  await page.keyboard.press("ControlOrMeta+z");
  await expect(legend.getByRole("listitem").filter({ hasText: /^Panel: 1$/ })).toHaveCount(1);
  await page.getByRole("button", { name: "Legend", exact: true }).click();
  await expect(legend).toHaveCount(0);
});

const nodes = (page: Page): Locator => page.locator(".react-flow__node");
const bar = (page: Page): Locator => page.getByRole("group", { name: "Selected boxes" });

/** A spot of the painted picture on a box, found by its ink. */
async function spotOf(page: Page): Promise<{ readonly x: number; readonly y: number }> {
  const sheet = await page.locator(".sheet-flow").boundingBox();
  if (sheet === null) throw new Error("There is no sheet.");
  for (let y = sheet.y + sheet.height / 2; y < sheet.y + sheet.height - 80; y += 3)
    for (let x = sheet.x + sheet.width / 2; x < sheet.x + sheet.width / 2 + 40; x += 3) {
      await page.mouse.move(x, y);
      if ((await nodes(page).count()) > 0) return { x, y };
    }
  throw new Error("No box answers the pointer.");
}
