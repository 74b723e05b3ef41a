import { expect, type Page } from "@playwright/test";
import { test } from "./support/window-test.ts";

/** Words of the window in the language for tests: in brackets, accented, two fifths longer. */
const PSEUDO = /^\[.*[\u00c0-\u024f~].*\]$/s;

test("every pane says its words by catalogues, and nothing is cut off where words are longer", async ({
  quietPage: page,
  address,
}) => {
  await page.addInitScript(() => {
    localStorage.setItem("loadside.language", "pseudo");
    localStorage.setItem("loadside.preferences", JSON.stringify({ theme: "light", cautionsRead: true }));
  });
  await page.goto(address);
  await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
  const start = await wordsOf(page, "h2, button");
  expect(start.length).toBeGreaterThan(5);
  expect(start.filter((words) => PSEUDO.test(words)).length).toBeGreaterThan(5);
  expect(await cutOff(page)).toEqual([]);
  await page.locator("button", { hasText: "1962 bungalow, laundry circuit" }).first().click();
  await expect(page.locator(".pane h2").first()).toBeVisible();
  // The title of the drawing is a person's own.
  const heads = await wordsOf(page, ".pane h2, .pane [role=tab], .stock [role=tab]");
  expect(heads.length).toBeGreaterThan(3);
  expect(heads.filter((words) => !words.startsWith("1962 bungalow") && !/[\u00c0-\u024f]/.test(words))).toEqual([]);
  expect(await cutOff(page)).toEqual([]);
});

const wordsOf = (page: Page, selector: string): Promise<readonly string[]> =>
  page.evaluate(
    (wanted) =>
      [...document.querySelectorAll<HTMLElement>(wanted)]
        .filter((each) => each.checkVisibility())
        .map((each) => each.textContent.trim())
        .filter((words) => words !== ""),
    selector,
  );

/** Buttons, tabs and headings whose words do not fit and that do not say so by three dots. */
const cutOff = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>("button, [role=tab], h1, h2, h3, label")]
      .filter((each) => each.checkVisibility() && !each.closest(".unseen"))
      .filter((each) => {
        const style = getComputedStyle(each);
        return (
          style.overflowX !== "visible" && style.textOverflow !== "ellipsis" && each.scrollWidth > each.clientWidth + 1
        );
      })
      .map((each) => each.textContent),
  );
