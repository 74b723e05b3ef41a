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
  // 720 by 450 is a window of 1440 by 900 at 200 %.
  for (const [width, height] of [
    [1440, 900],
    [1280, 720],
    [1024, 768],
    [900, 800],
    [720, 450],
    [390, 800],
  ] as const) {
    await page.setViewportSize({ width, height });
    expect(await cutOff(page), `${width} wide`).toEqual([]);
    expect(await beside(page), `${width} wide`).toEqual([]);
  }
});

for (const [stored, region] of [
  ["en", undefined],
  // RFC 5646, 2.2.4: the regions QM to QZ and XA to XZ are for private use.
  ["pseudo", "XA"],
] as const) {
  test(`the page says to those who read it aloud which language it is in: ${stored}`, async ({
    quietPage: page,
    address,
  }) => {
    await page.addInitScript((language) => localStorage.setItem("loadside.language", language), stored);
    await page.goto(address);
    await expect(page.getByRole("heading", { level: 1 })).toBeAttached();
    // Throws where it is no language tag.
    const told = new Intl.Locale((await page.locator("html").getAttribute("lang")) ?? "");
    expect([told.language, told.region]).toEqual(["en", region]);
  });
}

/** What lies over a neighbour or reaches out of its row: in the title strip, the foot and the heads of the panes. */
const beside = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const out: string[] = [];
    for (const row of document.querySelectorAll(".strip, .strip-buttons, .state-switch, .status, .region-head")) {
      const own = row.getBoundingClientRect();
      const parts = [...row.children].filter((each) => each.checkVisibility() && each.clientWidth > 1);
      const areas = parts.map((each) => each.getBoundingClientRect());
      for (const [at, area] of areas.entries()) {
        const name = `${row.className}: ${parts[at]?.className}`;
        if (area.right > own.right + 1 || area.bottom > own.bottom + 1) out.push(`${name} reaches out`);
        const over = areas.findIndex(
          (other, i) =>
            i > at &&
            area.left < other.right - 1 &&
            other.left < area.right - 1 &&
            area.top < other.bottom - 1 &&
            other.top < area.bottom - 1,
        );
        if (over !== -1) out.push(`${name} lies over ${parts[over]?.className}`);
      }
    }
    if (document.documentElement.scrollWidth > innerWidth) out.push("the page is wider than the window");
    return out;
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

/** Buttons, tabs, headings and words of the strip that do not fit and do not say the whole when pointed at. */
const cutOff = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>("button, [role=tab], h1, h2, h3, label, .strip span, .status span")]
      .filter((each) => each.checkVisibility() && !each.closest(".unseen"))
      .filter((each) => {
        const style = getComputedStyle(each);
        return (
          (style.overflowX !== "visible" || style.whiteSpace === "nowrap") &&
          style.display !== "inline" &&
          (style.textOverflow !== "ellipsis" || each.title === "") &&
          each.scrollWidth > each.clientWidth + 1
        );
      })
      .map((each) => each.textContent),
  );
