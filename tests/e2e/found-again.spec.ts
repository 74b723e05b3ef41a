/** What is shortened, covered or out of sight is found again. */
import { readFile } from "node:fs/promises";
import { expect, type Page } from "@playwright/test";
import { startBrowserHost } from "../../electron/browser-host.mjs";
import { checked, expectAccessible, openLaundrySample, openWindow, ROOT, test } from "./support/window-test.ts";

test.use({ viewport: { width: 1280, height: 720 }, contextOptions: { reducedMotion: "reduce" } });

const fullWords = (page: Page) => page.locator(".full-words");
const bar = (page: Page) => page.getByRole("group", { name: "Selected boxes" });

async function areaOf(page: Page, selector: string) {
  const area = await page.locator(selector).first().boundingBox();
  if (area === null) throw new Error(`${selector} is not in view.`);
  return area;
}

test("a shortened name is told in full, the bar leaves the name of its box, the legend its boxes, and there is a way back", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await openLaundrySample(page);

  // From middle distance "stair switch" has no room beside B5; from afar only names are written.
  const note = await areaOf(page, ".sheet-middle-note:text('stai')");
  await page.mouse.move(note.x + 4, note.y + 6);
  await expect(fullWords(page)).toContainText(/^Box B\d, stair/);
  await page.keyboard.press("Escape");
  await expect(fullWords(page)).toHaveCount(0);
  await page.getByRole("tab", { name: "Outline" }).click();
  const long = page.locator(".outline-note", { hasText: "Basement, unfinished" }).first();
  await long.hover();
  await expect(fullWords(page)).toContainText("freezer, Basement, unfinished");
  await page.mouse.move(2, 2);
  await expect(fullWords(page)).toHaveCount(0);

  // The opened box is pushed under the bar: it goes elsewhere when the view is at rest.
  await page.keyboard.press("Control+k");
  await page.keyboard.type("B1");
  await page.keyboard.press("Enter");
  await bar(page).getByRole("button", { name: "Open" }).click();
  await expect(bar(page)).toHaveAttribute("data-spot", "head");
  const header = await areaOf(page, ".sheet-box-header text");
  const sheet = await areaOf(page, ".sheet-flow");
  await page.mouse.move(sheet.x + 60, sheet.y + 300);
  await page.mouse.down({ button: "middle" });
  await page.mouse.move(sheet.x + 60, sheet.y + 300 - (header.y - sheet.y), { steps: 4 });
  await page.mouse.up({ button: "middle" });
  await expect(bar(page)).not.toHaveAttribute("data-spot", "head");
  const [name, place] = [await areaOf(page, ".sheet-box-header text"), await areaOf(page, ".sheet-bar")];
  expect(name.y + name.height <= place.y || name.y >= place.y + place.height || name.x + name.width <= place.x).toBe(
    true,
  );

  // Far away there is nothing but the way back.
  for (let times = 0; times < 4; times += 1) {
    await page.mouse.move(sheet.x + sheet.width - 30, sheet.y + 200);
    await page.mouse.down({ button: "middle" });
    await page.mouse.move(sheet.x + 20, sheet.y + 200, { steps: 3 });
    await page.mouse.up({ button: "middle" });
  }
  const back = page.getByRole("button", { name: "Back to the drawing" });
  await expect(back).toBeVisible();
  await expectAccessible(page, "nothing of the drawing is in view");
  await back.click();
  await expect(back).toHaveCount(0);
  await expect.poll(() => page.evaluate(() => document.activeElement?.closest(".sheet-flow") != null)).toBe(true);

  // In a narrow window a legend without a free place shows its head alone; asked for, all of it.
  await page.setViewportSize({ width: 600, height: 800 });
  await page.getByRole("button", { name: "Fit", exact: true }).click();
  await page.getByRole("button", { name: "Legend", exact: true }).click();
  const legend = page.getByRole("region", { name: "Legend of the drawing" });
  await expect(legend.getByRole("button", { name: "US" })).toHaveCount(0);
  await legend.getByRole("button", { name: "Show legend" }).click();
  await expect(legend.getByRole("button", { name: "US" })).toBeVisible();
});

test("a legend that is asked for covers no device and no name: without a free corner it stands beside the sheet", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  const legend = page.getByRole("region", { name: "Legend of the drawing" });
  const button = page.getByRole("button", { name: "Legend", exact: true });
  const sheet = await areaOf(page, ".sheet");
  for (const level of ["far", "middle", "near"]) {
    await page.getByRole("button", { name: level, exact: true }).click();
    await button.click();
    await expect(legend.getByRole("button", { name: "US" })).toBeVisible();
    expect(await coveredBy(page, ".sheet-symbols"), level).toEqual([]);
    await expectAccessible(page, `the legend, ${level}`);
    await legend.getByRole("button", { name: "Fold" }).click();
    await expect(button).toBeFocused();
    expect(await areaOf(page, ".sheet")).toEqual(sheet);
  }
  // Near, a box fills the view: no corner is free.
  await button.click();
  await expect(legend).toHaveAttribute("data-corner", "beside");
  expect((await areaOf(page, ".sheet")).width).toBeLessThan(sheet.width - 150);
  // It stays there while the view moves, and what was seen whole is seen whole beside it.
  await page.getByRole("button", { name: "Fit", exact: true }).click();
  await expect(legend).toHaveAttribute("data-corner", "beside");
  await legend.getByRole("button", { name: "Fold" }).click();
  await page.getByRole("button", { name: "Fit", exact: true }).click();
  await button.click();
  await expect(legend.getByRole("button", { name: "US" })).toBeVisible();
  const view = await areaOf(page, ".sheet-flow");
  for (const box of await page.locator(".react-flow__node").all()) {
    const area = await box.boundingBox();
    expect(area !== null && area.x >= view.x && area.x + area.width <= view.x + view.width).toBe(true);
  }
});

/** Boxes and words of the drawing of which something lies under an element. */
const coveredBy = (page: Page, selector: string) =>
  page.evaluate((of) => {
    const own = document.querySelector(of)?.getBoundingClientRect();
    const view = document.querySelector(".sheet-flow")?.getBoundingClientRect();
    if (own === undefined || view === undefined) return ["nothing is there"];
    const left = Math.max(own.left, view.left);
    const right = Math.min(own.right, view.right);
    // Beside the sheet nothing is under it.
    if (left >= right) return [];
    return [...document.querySelectorAll(".react-flow__node, .react-flow__node text")].flatMap((each) => {
      const area = each.getBoundingClientRect();
      const isUnder = area.left < right && area.right > left && area.top < own.bottom && area.bottom > own.top;
      return isUnder ? [each.textContent ?? ""] : [];
    });
  }, selector);

test("a document is shown where it was left, and whole where it was left whole", async ({
  quietPage: page,
  folder,
}) => {
  const text = await readFile(`${ROOT}assets/samples/laundry-box.loadside`, "utf8");
  const openedFile = {
    name: "house.loadside",
    token: "house",
    limit: text.length,
    read: async () => ({ ok: true as const, text }),
    save: async () => ({ ok: true as const }),
  };
  const host = await startBrowserHost({ folder, openedFile });
  const view = () => page.locator(".react-flow__viewport").getAttribute("style");
  try {
    await openWindow(page, host.url);
    const whole = await view();
    await page.reload();
    await checked(page);
    expect(await view()).toBe(whole);
    await page.keyboard.press("Control+k");
    await page.keyboard.type("B3");
    await page.keyboard.press("Enter");
    await page.getByRole("button", { name: "near", exact: true }).click();
    await expect.poll(view).not.toBe(whole);
    await expect.poll(() => page.evaluate(() => localStorage.getItem("loadside.views") ?? "")).toContain("house");
    const left = await view();
    await page.reload();
    await checked(page);
    expect(await view()).toBe(left);
  } finally {
    await host.close();
  }
});
