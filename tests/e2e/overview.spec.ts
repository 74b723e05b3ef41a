/** The whole drawing in a corner of the sheet: the frame follows the view, and the view the frame. */
import { expect, type Page } from "@playwright/test";
import { expectAccessible, openLaundrySample, openWindow, runByField, test } from "./support/window-test.ts";

test.use({ contextOptions: { reducedMotion: "reduce" } });

const overview = (page: Page) => page.getByRole("region", { name: "Overview of the drawing" });
const map = (page: Page) => overview(page).getByRole("button", { name: "What is in view" });
const frame = (page: Page) => page.locator(".sheet-overview-frame");
const paintings = async (page: Page): Promise<number> =>
  Number(await page.locator(".sheet-overview canvas").getAttribute("data-painted"));

async function areaOf(page: Page, selector: string) {
  const area = await page.locator(selector).first().boundingBox();
  if (area === null) throw new Error(`${selector} is not in view.`);
  return area;
}

/** The point of the sheet in the middle of the view, and its size, from what the flow itself says. */
const seen = (page: Page) =>
  page.evaluate(() => {
    const { transform } = getComputedStyle(document.querySelector(".react-flow__viewport") as Element);
    const { a: zoom, e, f } = new DOMMatrix(transform);
    const { width, height } = (document.querySelector(".sheet-flow") as Element).getBoundingClientRect();
    return { x: (width / 2 - e) / zoom, y: (height / 2 - f) / zoom, zoom };
  });

/** Share of the pixels of the picture that have ink. */
const ink = (page: Page) =>
  page.evaluate(() => {
    const canvas = document.querySelector<HTMLCanvasElement>(".sheet-overview canvas");
    const context = canvas?.getContext("2d");
    if (canvas == null || context == null) return 0;
    const { data } = context.getImageData(0, 0, canvas.width, canvas.height);
    let drawn = 0;
    for (let at = 3; at < data.length; at += 4) if ((data[at] ?? 0) > 0) drawn += 1;
    return drawn / (data.length / 4);
  });

test("the overview is off at first, shows the drawing, moves the view by presses, drags and keys, and is remembered", async ({
  quietPage: page,
  address,
}) => {
  await page.setViewportSize({ width: 1280, height: 720 });
  await openWindow(page, address);
  await openLaundrySample(page);
  await expect(overview(page)).toHaveCount(0);
  await page.getByRole("button", { name: "near", exact: true }).click();

  // By the key, with the focus in it.
  await page.keyboard.press("F7");
  await expect(map(page)).toBeFocused();
  await expect(map(page)).toHaveAccessibleDescription(/Arrow keys move the view/);
  await expect.poll(() => ink(page)).toBeGreaterThan(0.03);
  await expectAccessible(page, "overview");

  // A press beside the frame brings that place into the middle: the upper left corner is left of and above all.
  const picture = await areaOf(page, ".sheet-overview-map");
  const before = await seen(page);
  await page.mouse.click(picture.x + 6, picture.y + 6);
  const corner = await seen(page);
  expect(corner.zoom).toBe(before.zoom);
  expect(corner.x).toBeLessThan(before.x - 500);
  expect(corner.y).toBeLessThan(before.y);
  const marked = await areaOf(page, ".sheet-overview-frame");
  expect(Math.abs(marked.x - picture.x)).toBeLessThan(14);

  // Dragged, the view follows as far on the sheet as the hand goes over the picture.
  await page.mouse.move(marked.x + 4, marked.y + 4);
  await page.mouse.down();
  await page.mouse.move(marked.x + 44, marked.y + 34, { steps: 5 });
  await page.mouse.up();
  const dragged = await seen(page);
  expect(dragged.x - corner.x).toBeGreaterThan(1000);
  expect((dragged.y - corner.y) / (dragged.x - corner.x)).toBeCloseTo(30 / 40, 1);

  // Arrow keys, by less with Shift; Enter and Escape go back to the sheet.
  await map(page).focus();
  await page.keyboard.press("ArrowRight");
  const right = await seen(page);
  expect(right.x).toBeGreaterThan(dragged.x + 50);
  await page.keyboard.press("Shift+ArrowUp");
  const up = await seen(page);
  expect(up.y).toBeLessThan(right.y);
  expect(right.y - up.y).toBeLessThan((right.x - dragged.x) / 2);
  for (const key of ["Enter", "Escape"]) {
    await map(page).focus();
    await page.keyboard.press(key);
    await expect.poll(() => page.evaluate(() => document.activeElement?.closest(".sheet-flow") != null)).toBe(true);
    await expect(overview(page)).toBeVisible();
  }

  // Remembered, without taking the focus then.
  await page.evaluate(() => localStorage.setItem("loadside.test", localStorage.getItem("loadside.preferences") ?? ""));
  expect(await page.evaluate(() => localStorage.getItem("loadside.test"))).toContain('"overview":true');
  await overview(page).getByRole("button", { name: "Close" }).click();
  await expect(overview(page)).toHaveCount(0);
  await expect.poll(() => page.evaluate(() => document.activeElement?.closest(".sheet-flow") != null)).toBe(true);
  await runByField(page, "Overview");
  await expect(overview(page)).toBeVisible();
});

test("while the view moves only the frame does; the picture is painted anew when the drawing changes", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await page.getByRole("button", { name: "near", exact: true }).click();
  await page.keyboard.press("F7");
  await expect.poll(() => ink(page)).toBeGreaterThan(0.03);
  await page.waitForTimeout(1200);
  const painted = await paintings(page);
  const at = await areaOf(page, ".sheet-flow");
  const from = await frame(page).evaluate((element) => element.style.transform);
  await page.mouse.move(at.x + 400, at.y + 200);
  await page.mouse.down({ button: "middle" });
  await page.mouse.move(at.x + 120, at.y + 260, { steps: 12 });
  await page.mouse.up({ button: "middle" });
  expect(await frame(page).evaluate((element) => element.style.transform)).not.toBe(from);
  // The roads are laid anew for another distance, which is no other drawing.
  await page.getByRole("button", { name: "middle", exact: true }).click();
  await page.waitForTimeout(1200);
  expect(await paintings(page)).toBe(painted);

  await page.keyboard.press("Control+a");
  await page.locator("[data-sheet-stop]").focus();
  await page.keyboard.press("Alt+ArrowRight");
  await runByField(page, "B3");
  await page.locator("[data-sheet-stop]").focus();
  await page.keyboard.press("Delete");
  await expect.poll(() => paintings(page)).toBeGreaterThan(painted);
});

for (const [name, width, height] of [
  ["wide", 1440, 900],
  ["1024 by 700", 1024, 700],
  ["700 by 500", 700, 500],
] as const)
  test(`the overview lies over none of what else stands on the sheet: ${name}`, async ({
    quietPage: page,
    address,
  }) => {
    await page.setViewportSize({ width, height });
    await openWindow(page, address);
    await openLaundrySample(page);
    await page.getByRole("button", { name: "Legend", exact: true }).click();
    await page.keyboard.press("F7");
    await expect(overview(page)).toBeVisible();
    await page
      .locator(".react-flow__node")
      .first()
      .click({ position: { x: 4, y: 4 } });
    await expect(page.locator(".sheet-bar")).toBeVisible();
    for (const level of ["far", "middle", "near"]) {
      await page.getByRole("button", { name: level, exact: true }).click();
      expect(await overlaps(page), level).toEqual([]);
    }
    // Whole in the sheet, and large enough to be pressed.
    const [own, sheet] = [await areaOf(page, ".sheet-overview"), await areaOf(page, ".sheet")];
    expect(own.x >= sheet.x && own.y >= sheet.y && own.y + own.height <= sheet.y + sheet.height).toBe(true);
    expect((await areaOf(page, ".sheet-overview-head > button")).height).toBeGreaterThanOrEqual(24);
    // What explains the lines of an energised drawing, and what is in the hand.
    await page.getByRole("button", { name: "Energise" }).click();
    await expect(page.locator(".sheet-legend")).toBeVisible();
    await expect.poll(() => overlaps(page), "energised").toEqual([]);
    await page.getByRole("button", { name: "Energise" }).click();
    await page.keyboard.press("Control+k");
    await page.keyboard.type("Run a cable: 12/2 with ground");
    await page.keyboard.press("Enter");
    await expect(page.locator(".sheet-hint")).toBeVisible();
    await expect.poll(() => overlaps(page), "a cable in the hand").toEqual([]);
  });

/** What the overview has pixels in common with. */
const overlaps = (page: Page) =>
  page.evaluate(() => {
    const own = document.querySelector(".sheet-overview")?.getBoundingClientRect();
    if (own === undefined) return ["there is no overview"];
    const others = [
      ...[".sheet-title-block", ".sheet-bar", ".sheet-symbols", ".sheet-hint", ".sheet-legend", ".scope-legend"],
      ...[".notice", ".sheet-frame-state"],
    ];
    return others.filter((each) => {
      const area = document.querySelector(each)?.getBoundingClientRect();
      if (area === undefined || area.width === 0) return false;
      const across = Math.min(area.right, own.right) - Math.max(area.left, own.left);
      return across > 0.5 && Math.min(area.bottom, own.bottom) - Math.max(area.top, own.top) > 0.5;
    });
  });

test("what the keys come to is not under the overview", async ({ quietPage: page, address }) => {
  await page.setViewportSize({ width: 1280, height: 720 });
  await openWindow(page, address);
  await openLaundrySample(page);
  await page.getByRole("button", { name: "near", exact: true }).click();
  await page.keyboard.press("F7");
  await expect(map(page)).toBeFocused();
  await page.getByRole("group", { name: /^Box B1\b/ }).focus();
  await page.keyboard.press("Enter");
  await expect(page.locator("[data-item]:focus")).toHaveCount(1);
  let times = 0;
  for (const key of ["Home", ...Array<string>(14).fill("ArrowDown"), ...Array<string>(6).fill("ArrowLeft")]) {
    await page.keyboard.press(key);
    const isUnder = await page.evaluate(() => {
      const own = document.activeElement?.getBoundingClientRect();
      const over = document.querySelector(".sheet-overview")?.getBoundingClientRect();
      if (own === undefined || over === undefined) throw new Error("Nothing has the focus.");
      return own.left < over.right && own.right > over.left && own.top < over.bottom && own.bottom > over.top;
    });
    expect(isUnder, key).toBe(false);
    times += 1;
  }
  expect(times).toBe(21);
});

test("it is no part of paper", async ({ quietPage: page, address }) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await page.keyboard.press("F7");
  await expect(overview(page)).toBeVisible();
  await page.emulateMedia({ media: "print" });
  await expect(overview(page)).toBeHidden();
});
