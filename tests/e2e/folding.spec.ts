/** Each pane beside the sheet folds to a rail and back, by mouse and by keys, and stays as it was left. */
import { expect, type Page } from "@playwright/test";
import { checked, expectAccessible, openLaundrySample, openWindow, runByField, test } from "./support/window-test.ts";

test.use({ viewport: { width: 1280, height: 720 }, contextOptions: { reducedMotion: "reduce" } });

const stock = (page: Page) => page.getByRole("navigation", { name: "Stock and outline" });
const side = (page: Page) => page.getByRole("complementary", { name: "Details, findings and rooms" });
const button = (page: Page, name: string) => page.getByRole("button", { name, exact: true });

async function areaOf(page: Page, selector: string) {
  const area = await page.locator(selector).first().boundingBox();
  if (area === null) throw new Error(`${selector} is not in view.`);
  return area;
}

/** Regions and what lies in their heads that cover each other, or run out of the window sideways. */
const disorder = (page: Page) =>
  page.evaluate(() => {
    const areas = [".strip", ".stock", ".sheet-region", ".pane", ".status"].map((name) => {
      const { left, top, right, bottom } = (document.querySelector(name) as Element).getBoundingClientRect();
      return { name, left, top, right, bottom };
    });
    const over = areas.flatMap((a, at) =>
      areas.slice(at + 1).flatMap((b) => {
        const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
        return across > 0.5 && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 0.5
          ? [`${a.name} ${b.name}`]
          : [];
      }),
    );
    const wide = document.documentElement.scrollWidth > innerWidth ? ["wider than the window"] : [];
    return [...over, ...wide];
  });

test("stock and outline: by mouse and by keys, with the focus where it was", async ({ quietPage: page, address }) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  const before = await areaOf(page, ".sheet-region");
  const box = await areaOf(page, ".react-flow__node");
  await button(page, "Fold stock and outline").click();
  await expect(stock(page).getByRole("searchbox")).toBeHidden();
  await expect(button(page, "Show stock and outline")).toBeFocused();
  expect((await areaOf(page, ".sheet-region")).width).toBeGreaterThan(before.width + 150);
  // The drawing stays where it is in the window.
  expect((await areaOf(page, ".react-flow__node")).x).toBeCloseTo(box.x, 0);
  await expectAccessible(page, "stock folded");

  // A word of the rail shows that tab, which has the focus then.
  await stock(page).getByRole("button", { name: "Outline", exact: true }).click();
  await expect(stock(page).getByRole("tab", { name: "Outline" })).toBeFocused();
  await expect(stock(page).getByRole("tree")).toBeVisible();

  // By the key: the focus that was elsewhere stays there, that which was inside goes to the rail and back.
  await page.locator("[data-sheet-stop]").focus();
  await page.keyboard.press("F4");
  await expect(stock(page).getByRole("tree")).toBeHidden();
  await expect.poll(() => page.evaluate(() => document.activeElement?.closest(".sheet-flow") != null)).toBe(true);
  await page.keyboard.press("F4");
  await stock(page).getByRole("tab", { name: "Outline" }).focus();
  await page.keyboard.press("F4");
  await expect(button(page, "Show stock and outline")).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(stock(page).getByRole("tab", { name: "Outline" })).toBeFocused();

  // Asked for by a command it shows itself.
  await runByField(page, "Fold or show stock and outline");
  await expect(stock(page).getByRole("tree")).toBeHidden();
  await runByField(page, "Show the stock");
  await expect(stock(page).getByRole("searchbox", { name: "Find in stock" })).toBeVisible();
});

test("details, findings and what takes their place: folded, asked for, and left as it was", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await button(page, "Drawing").click();
  await page.getByRole("menuitem", { name: "Samples" }).click();
  await page.getByRole("button", { name: /laundry as proposed/ }).click();
  await expect(page.getByRole("dialog")).toHaveCount(0);
  await checked(page);
  await button(page, "Fold details and findings").click();
  await expect(side(page).getByRole("tab", { name: "Details" })).toBeHidden();
  await expect(button(page, "Show details and findings")).toBeFocused();
  await expectAccessible(page, "details folded");

  // What is selected on the sheet, or found by typing, does not bring it back.
  await runByField(page, "B3");
  await expect(page.locator(".sheet-bar")).toContainText("B3");
  await expect(side(page).getByRole("tab", { name: "Details" })).toBeHidden();

  // The counts at the foot do: they are asked for.
  await page
    .getByRole("contentinfo")
    .getByRole("button", { name: /^Show findings/ })
    .click();
  await expect(side(page).getByRole("tab", { name: /^Findings/ })).toHaveAttribute("aria-selected", "true");
  await page.keyboard.press("Shift+F4");
  await expect(side(page).getByRole("tab", { name: /^Findings/ })).toBeHidden();
  await side(page)
    .getByRole("button", { name: /^Findings \d/ })
    .click();
  await expect(side(page).getByRole("tab", { name: /^Findings/ })).toBeFocused();

  // Scope and survey show themselves when they begin, fold as the others, and leave it folded when they end.
  for (const [begin, word, end] of [
    [() => page.keyboard.press("Shift+F8"), "Scope", () => page.keyboard.press("Shift+F8")],
    [() => runByField(page, "Map the circuits"), "Survey", undefined],
  ] as const) {
    await begin();
    const tab = side(page).getByRole("tab", { name: word, exact: true });
    await expect(tab).toHaveAttribute("aria-selected", "true");
    await button(page, "Fold details and findings").click();
    await expect(tab).toBeHidden();
    await expect(side(page).getByRole("button", { name: word, exact: true })).toBeVisible();
    expect(await disorder(page)).toEqual([]);
    if (end === undefined) continue;
    await end();
    await expect(side(page).getByRole("button", { name: word, exact: true })).toHaveCount(0);
    await expect(button(page, "Show details and findings")).toBeVisible();
  }
});

for (const [width, height] of [
  [1280, 720],
  [700, 500],
] as const)
  test(`the sheet alone can be used at ${width} by ${height}, and is found so after the window was loaded again`, async ({
    quietPage: page,
    address,
  }) => {
    await page.setViewportSize({ width, height });
    // Nothing is written over what the window remembers, as the other tests do.
    await page.goto(address);
    await page.evaluate(() =>
      localStorage.setItem("loadside.preferences", JSON.stringify({ theme: "light", cautionsRead: true })),
    );
    await page.reload();
    await button(page, "Empty drawing").click();
    await openLaundrySample(page);
    await page.keyboard.press("F4");
    await page.keyboard.press("Shift+F4");
    expect(await disorder(page)).toEqual([]);
    const sheet = await areaOf(page, ".sheet-flow");
    expect(sheet.width).toBeGreaterThan(width - 140);
    expect(sheet.height).toBeGreaterThan(height * 0.6);

    // A box is found, opened, and one of its ends taken in the hand, all without a pane.
    await runByField(page, "B3");
    await page.locator(".sheet-bar").getByRole("button", { name: "Open" }).click();
    await page
      .locator("[data-item]")
      .and(page.getByRole("button", { name: /end at B3/ }))
      .first()
      .press("Enter");
    await expect(page.locator(".sheet-hint")).toContainText("Holding");
    await page.keyboard.press("Escape");
    expect(await disorder(page)).toEqual([]);
    await expectAccessible(page, "the sheet alone");

    // F6 still comes to each region.
    const regions = new Set<string>();
    for (let times = 0; times < 4; times += 1) {
      await page.keyboard.press("F6");
      regions.add(await page.evaluate(() => document.activeElement?.closest("[data-region]")?.className ?? "none"));
    }
    expect(regions.size).toBe(4);
    expect(regions).not.toContain("none");

    await page.reload();
    await page
      .getByRole("button", { name: /laundry|Empty drawing/ })
      .first()
      .waitFor();
    expect(JSON.parse((await page.evaluate(() => localStorage.getItem("loadside.preferences"))) ?? "{}")).toMatchObject(
      {
        leftFolded: true,
        rightFolded: true,
      },
    );
    await button(page, "Empty drawing").click();
    await checked(page);
    await expect(button(page, "Show stock and outline")).toBeVisible();
    await expect(button(page, "Show details and findings")).toBeVisible();
    expect(await disorder(page)).toEqual([]);
  });
