/** What of the drawing is in view, and at which size: when it opens, when a box grows, in a narrow window. */
import { expect, type Locator, type Page } from "@playwright/test";
import { checked, openLaundrySample, openStart, openWindow, pane, runByField, test } from "./support/window-test.ts";

interface Edges {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

const edgesOf = (locator: Locator): Promise<Edges> =>
  locator.evaluate((element) => {
    const { left, top, right, bottom } = element.getBoundingClientRect();
    return { left, top, right, bottom };
  });

const sheet = (page: Page): Locator => page.locator(".sheet-flow");
const box = (page: Page, name: string): Locator => page.getByRole("group", { name: new RegExp(`^Box ${name}\\b`) });
const target = (page: Page, words: RegExp): Locator =>
  page.locator(".sheet-targets").getByRole("button", { name: words }).first();
const zoomOf = (page: Page): Promise<number> =>
  page.locator(".react-flow__viewport").evaluate((each) => new DOMMatrix(getComputedStyle(each).transform).a);

/** A new box with two cables, their ends capped. */
async function startAsFound(page: Page, address: string): Promise<void> {
  await openStart(page, address);
  await page.getByRole("button", { name: "Start as found" }).click();
  await checked(page);
}

const isIn = (inner: Edges, outer: Edges): boolean =>
  inner.left >= outer.left - 1 &&
  inner.top >= outer.top - 1 &&
  inner.right <= outer.right + 1 &&
  inner.bottom <= outer.bottom + 1;

/** Heights in pixels of the letters of the codes in view. */
const codesIn = (within: Locator): Promise<readonly number[]> =>
  within.locator(".sheet-plate text").evaluateAll((all) =>
    (all as SVGTextElement[]).map((each) => {
      const { a, b } = each.getScreenCTM() ?? { a: 0, b: 0 };
      return Number.parseFloat(getComputedStyle(each).fontSize) * Math.hypot(a, b);
    }),
  );

declare global {
  interface Window {
    views: string[];
  }
}

/** From now on every frame with boxes in it leaves the view it shows. */
const watchViews = (page: Page): Promise<void> =>
  page.evaluate(() => {
    window.views = [];
    const look = (): void => {
      const viewport = document.querySelector<HTMLElement>(".react-flow__viewport");
      const title = document.querySelector("header")?.textContent ?? "";
      if (
        viewport !== null &&
        !title.includes("Nothing") &&
        document.querySelector(".react-flow__node .sheet-wall-outer")
      )
        window.views.push(viewport.style.transform);
      requestAnimationFrame(look);
    };
    requestAnimationFrame(look);
  });

for (const reducedMotion of ["no-preference", "reduce"] as const)
  test(`a drawing that opens is painted fitted from its first frame on, ${reducedMotion}`, async ({
    quietPage: page,
    address,
  }) => {
    await page.emulateMedia({ reducedMotion });
    await openStart(page, address);
    await watchViews(page);
    await page.getByRole("button", { name: "Start as found" }).click();
    await checked(page);
    await page.waitForTimeout(600);
    const first = await page.evaluate(() => window.views);
    expect(first.length).toBeGreaterThan(3);
    expect(new Set(first).size).toBe(1);

    await openWindow(page, address);
    await watchViews(page);
    await openLaundrySample(page);
    await page.waitForTimeout(600);
    const other = await page.evaluate(() => window.views);
    expect(other.length).toBeGreaterThan(3);
    expect(new Set(other).size).toBe(1);
    await page.getByRole("button", { name: "Fit", exact: true }).click();
    await page.waitForTimeout(400);
    expect(await page.evaluate(() => window.views.at(-1))).toBe(other[0]);
  });

test("a box that was in view whole stays so when it grows, by a pan first, then by the least zooming out", async ({
  quietPage: page,
  address,
}) => {
  await page.setViewportSize({ width: 1366, height: 800 });
  await page.emulateMedia({ reducedMotion: "reduce" });
  await startAsFound(page, address);
  const node = box(page, "B1");
  const room = await edgesOf(sheet(page));
  expect(isIn(await edgesOf(node), room)).toBe(true);
  const before = await zoomOf(page);
  const width = async (): Promise<number> => {
    const { left, right } = await edgesOf(node);
    return (right - left) / (await zoomOf(page));
  };
  const was = await width();
  await pane(page).getByRole("button", { name: "Land C1 bare" }).click();
  await target(page, /^Splice with C2 bare/).press("Enter");
  await checked(page);
  await expect.poll(width).toBeGreaterThan(was + 100);
  await expect.poll(async () => isIn(await edgesOf(node), room)).toBe(true);
  const after = await zoomOf(page);
  expect(after).toBeLessThanOrEqual(before);
  expect(after).toBeGreaterThanOrEqual(0.45);
  // A view that shows only part of the box is the person's own: nothing but the end that was landed is fetched.
  await page.getByRole("button", { name: "Larger" }).click();
  await page.getByRole("button", { name: "Larger" }).click();
  await page.getByRole("button", { name: "Larger" }).click();
  const near = await zoomOf(page);
  await page.getByRole("button", { name: /^12\/2 C1 black end at B1/ }).press("Enter");
  await target(page, /^Splice with C2 BK/).press("Enter");
  await checked(page);
  await page.waitForTimeout(200);
  expect(await zoomOf(page)).toBe(near);
});

test("a drag from a screw begins a jumper there and moves no box; its rim is the device, and a body is no handle", async ({
  quietPage: page,
  address,
}) => {
  await page.emulateMedia({ reducedMotion: "reduce" });
  await startAsFound(page, address);
  const node = box(page, "B1");
  const screw = await edgesOf(node.locator(".sheet-screw-green").last());
  const rim = { x: (screw.left + screw.right) / 2, y: screw.bottom - 2 };
  await page.mouse.click(rim.x, rim.y, { button: "right" });
  await expect(page.getByRole("menuitem", { name: "Pigtail or jumper from" })).toBeVisible();
  await page.keyboard.press("Escape");

  const stood = await edgesOf(node.locator(".sheet-wall-outer"));
  await page.mouse.move(rim.x, rim.y);
  await page.mouse.down();
  await page.mouse.move(rim.x + 30, rim.y + 30, { steps: 4 });
  await expect(page.getByRole("group", { name: "In the hand" })).toContainText("A new jumper");
  expect(await edgesOf(node.locator(".sheet-wall-outer"))).toEqual(stood);
  await page.mouse.up();
  await expect(page.locator(".sheet-targets")).toHaveCount(0);
  const undo = page.getByRole("button", { name: /^Undo ?:/ });
  await expect(page.getByRole("button", { name: /^Undo ?: Move/ })).toHaveCount(0);

  // Let go on another place, the jumper is there: from the green screw to the bond of the box.
  await page.mouse.move(rim.x, rim.y);
  await page.mouse.down();
  await page.mouse.move(rim.x + 20, rim.y + 20, { steps: 3 });
  const bond = await edgesOf(target(page, /^Box ground screw/).locator(".sheet-hit"));
  await page.mouse.move((bond.left + bond.right) / 2, (bond.top + bond.bottom) / 2, { steps: 3 });
  await page.mouse.up();
  await expect(page.getByRole("button", { name: /^Jumper a bare end at B1, on R1 G/ })).toBeVisible();
  await expect(undo).toBeEnabled();

  // The middle of its face is no handle; the wall is.
  const wall = await edgesOf(node.locator(".sheet-wall-outer"));
  const face = await edgesOf(node.locator(".sheet-face").first());
  await page.mouse.move((face.left + face.right) / 2, (face.top + face.bottom) / 2);
  await page.mouse.down();
  await page.mouse.move(face.left - 60, face.top, { steps: 4 });
  await page.mouse.up();
  expect(await edgesOf(node.locator(".sheet-wall-outer"))).toEqual(wall);
  await page.mouse.move(wall.left + 30, wall.top + 3);
  await page.mouse.down();
  await page.mouse.move(wall.left + 60, wall.top + 43, { steps: 4 });
  await page.mouse.up();
  await expect(page.getByRole("button", { name: /^Undo ?: Move B1/ })).toBeEnabled();
});

test("in a window 390 pixels wide a new box, a chosen box and an opened one can be read", async ({
  quietPage: page,
  address,
}) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.emulateMedia({ reducedMotion: "reduce" });
  await startAsFound(page, address);
  const room = await edgesOf(sheet(page));
  for (const code of ["BK", "WH", "bare"])
    expect(isIn(await edgesOf(page.locator(".sheet-plate").filter({ hasText: code }).first()), room)).toBe(true);
  expect(Math.min(...(await codesIn(box(page, "B1"))))).toBeGreaterThanOrEqual(8.99);

  await openWindow(page, address);
  await openLaundrySample(page);
  await runByField(page, "B1");
  await expect.poll(async () => (await codesIn(box(page, "B1"))).length).toBeGreaterThan(20);
  expect(Math.min(...(await codesIn(box(page, "B1"))))).toBeGreaterThanOrEqual(8.99);
  const { top, left } = await edgesOf(box(page, "B1"));
  expect(left).toBeGreaterThanOrEqual(room.left);
  expect(top).toBeGreaterThanOrEqual(room.top);

  await page.getByRole("button", { name: "middle", exact: true }).click();
  await page.getByRole("group", { name: "Selected boxes" }).getByRole("button", { name: "Open" }).click();
  const close = box(page, "B1").getByRole("button", { name: "Close B1" });
  await expect.poll(async () => (await codesIn(box(page, "B1"))).length).toBeGreaterThan(20);
  expect(Math.min(...(await codesIn(box(page, "B1"))))).toBeGreaterThanOrEqual(8.99);
  // What puts it back is in view though the plate is larger than the view.
  expect(isIn(await edgesOf(close), room)).toBe(true);
});

test("the frame of a selected box goes around its name, its fill and nothing through them", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await runByField(page, "B1");
  await page.getByRole("button", { name: "middle", exact: true }).click();
  await expect(page.locator(".sheet-box-frame > rect").first()).toBeVisible();
  await page.waitForTimeout(300);
  const frame = await edgesOf(page.locator(".sheet-box-frame > rect").first());
  for (const words of [".sheet-middle-name", ".sheet-middle-note", ".sheet-middle-figures"])
    expect(isIn(await edgesOf(box(page, "B1").locator(words)), frame), words).toBe(true);
});

/** Words of a box that lie on each other, by what they say. */
const meetings = (within: Locator): Promise<readonly string[]> =>
  within.evaluate((element) => {
    const words = [...element.querySelectorAll<SVGTextElement>("text")].map((text) => {
      const { left, top, right, bottom } = text.getBoundingClientRect();
      // Lines of text are set closer than the boxes of their letters are high.
      const inset = (bottom - top) * 0.28;
      return {
        says: text.textContent ?? "",
        left: left + 0.5,
        right: right - 0.5,
        top: top + inset,
        bottom: bottom - inset,
      };
    });
    return words.flatMap((a, i) =>
      words
        .slice(i + 1)
        .filter((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
        .map((b) => `${a.says} | ${b.says}`),
    );
  });

test("letters are drawn larger in a box that is seen smaller, and no word comes to lie on another", async ({
  quietPage: page,
  address,
}) => {
  await page.emulateMedia({ reducedMotion: "reduce" });
  await openWindow(page, address);
  await openLaundrySample(page);
  await runByField(page, "B1");
  await page.getByRole("button", { name: "near", exact: true }).click();
  const node = box(page, "B1");
  await expect.poll(() => zoomOf(page)).toBeGreaterThan(0.8);
  const drawn = new Set(await meetings(node));
  for (let i = 0; i < 2; i++) await page.getByRole("button", { name: "Smaller" }).click();
  await expect.poll(() => zoomOf(page)).toBeLessThan(0.6);
  const zoom = await zoomOf(page);
  expect(zoom).toBeGreaterThan(0.45);
  const codes = await codesIn(node);
  const larger = codes.filter((height) => height > 11 * zoom * 1.2);
  expect(larger.length / codes.length).toBeGreaterThan(0.7);
  expect((await meetings(node)).filter((pair) => !drawn.has(pair))).toEqual([]);
});
