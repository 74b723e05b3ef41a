import { expect, type Page } from "@playwright/test";
import { checked, test } from "./support/window-test.ts";

/**
 * A few pictures that are kept beside the tests, so that a change of the look is seen by who reviews it. Letters and lines
 * are smoothed otherwise by other machines: some of the points may differ. New ones: `npx playwright test looks
 * --update-snapshots`, then look at them.
 */
const TOLERANCE = { maxDiffPixelRatio: 0.02, threshold: 0.25, animations: "disabled" } as const;

const LOOKS = [
  { theme: "light", levels: ["far", "middle", "near"], grey: false },
  { theme: "dark", levels: ["near"], grey: false },
  // On paper and for people who do not tell colours apart: what is told by colour is told by shape and letter too.
  { theme: "light", levels: ["near"], grey: true },
] as const;

async function openLaundry(page: Page, address: string, theme: string): Promise<void> {
  await page.addInitScript((chosen) => {
    const preferences = { theme: chosen, cautionsRead: true, tourSeen: true };
    localStorage.setItem("loadside.preferences", JSON.stringify(preferences));
  }, theme);
  await page.goto(address);
  await page.getByRole("button", { name: /laundry as proposed/i }).click();
  await checked(page);
  await expect(page.locator(".sheet[data-waiting]")).toHaveCount(0);
  await page.evaluate(() => document.fonts.ready);
}

for (const { theme, levels, grey } of LOOKS)
  test(`the sheet looks as it did: ${theme}${grey ? ", grey" : ""}`, async ({ quietPage: page, address }) => {
    await openLaundry(page, address, theme);
    if (grey) await page.evaluate(() => document.documentElement.style.setProperty("filter", "grayscale(1)"));
    for (const level of levels) {
      await page.getByRole("button", { name: level, exact: true }).click();
      const sheet = page.getByRole("main", { name: "Sheet" });
      await expect(sheet).toHaveScreenshot(`laundry-${level}-${grey ? "grey" : theme}.png`, TOLERANCE);
    }
  });
