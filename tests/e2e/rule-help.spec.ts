import { expect, type Page } from "@playwright/test";
import { expectAccessible, openLaundrySample, openWindow, pane, showPane, test } from "./support/window-test.ts";

const help = (page: Page) => page.getByRole("dialog", { name: /^A box must have room/ });
const wrong = (page: Page) =>
  help(page)
    .getByRole("figure")
    .filter({ hasText: /^Wrong/ });
const right = (page: Page) =>
  help(page)
    .getByRole("figure")
    .filter({ hasText: /^Right/ });

/** Opens the page of the overfull box of the laundry. */
async function explain(page: Page, by: "press" | "keys"): Promise<void> {
  await showPane(page, "Findings");
  const finding = pane(page).getByRole("listitem").filter({ hasText: "B1 needs 32.0625 in³" });
  const button = finding.getByRole("button", { name: /^Explain/ });
  if (by === "press") return button.click();
  await button.focus();
  await page.keyboard.press("Enter");
}

/** No letter of a picture is smaller than this on the screen. */
const SMALLEST = 6;

test("the page of a rule shows it broken and kept, in drawings that can be read", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await explain(page, "press");
  await expect(wrong(page).getByRole("img", { name: /^B1, .*14 in³, with the sign of the finding$/ })).toBeVisible();
  await expect(right(page).getByRole("img", { name: /^B1, .*30[.]3 in³$/ })).toBeVisible();
  await expect(wrong(page)).toContainText("15.75 of 14 in³");
  await expect(wrong(page).locator(".sheet-sign-violation")).toHaveCount(1);
  await expect(right(page).locator(".sheet-sign")).toHaveCount(0);
  // The finding at hand comes first, then the drawings, then why, what is asked, and where it stands.
  await expect(help(page).getByRole("heading", { level: 3 })).toHaveText([
    "What it says here",
    "What it protects",
    "What inspectors commonly ask",
    "Sections",
    "Values",
  ]);
  await expect(help(page)).toContainText("Common practice, from no code text");
  const heights = await help(page)
    .locator("svg text")
    .evaluateAll((letters) => letters.map((one) => one.getBoundingClientRect().height));
  expect(heights.length).toBeGreaterThan(40);
  expect(Math.min(...heights)).toBeGreaterThanOrEqual(SMALLEST);
  await expectAccessible(page, "page of a rule, light");
  await page.evaluate(() => {
    document.documentElement.dataset.theme = "dark";
  });
  await expectAccessible(page, "page of a rule, dark");
});

test("by keys: opened with Enter, scrolled, closed with Escape, and back at the finding", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await explain(page, "keys");
  await expect(wrong(page).getByRole("img")).toBeVisible();
  await page.keyboard.press("End");
  await expect(help(page).getByText("For local amendments")).toBeInViewport();
  await page.keyboard.press("Escape");
  await expect(help(page)).toHaveCount(0);
  await expect(page.getByRole("button", { name: /^Explain the finding about B1/ }).first()).toBeFocused();
});

test("in a narrow window the drawings stand one below the other, and nothing lies beside the page", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await explain(page, "press");
  await expect(right(page).getByRole("img")).toBeVisible();
  const beside = async () => {
    const [left, other] = [await wrong(page).boundingBox(), await right(page).boundingBox()];
    return left !== null && other !== null && other.x > left.x + left.width - 1;
  };
  expect(await beside()).toBe(true);
  await page.setViewportSize({ width: 900, height: 800 });
  expect(await beside()).toBe(false);
  const over = await help(page).evaluate((dialog) => dialog.scrollWidth - dialog.clientWidth);
  expect(over).toBeLessThanOrEqual(0);
});

test("the drawings are fetched when a page is opened, not before, and a page without them still has its words", async ({
  page,
  address,
}) => {
  const fetched: string[] = [];
  page.on("request", (request) => fetched.push(request.url()));
  await page.route(/\/rule-examples-/, (route) => route.abort());
  await openWindow(page, address);
  await openLaundrySample(page);
  expect(fetched.filter((url) => /\/(rule-examples|example-pictures)-/.test(url))).toEqual([]);
  await explain(page, "press");
  await expect(help(page).getByRole("alert")).toContainText("The drawings could not be fetched.");
  await expect(help(page)).toContainText("this box is marked 14 in³");
  await expect(help(page).getByRole("heading", { name: "What it protects" })).toBeVisible();
  await page.unroute(/\/rule-examples-/);
  await help(page).getByRole("button", { name: "Fetch them again" }).click();
  await expect(wrong(page).getByRole("img")).toBeVisible();
});

test("the rule book lists every rule, by search too, and opens its page and comes back, by keys and by presses", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  const book = page.getByRole("dialog", { name: "Rule book" });
  const search = book.getByRole("searchbox", { name: "Search the rules" });
  await page.keyboard.press("Control+k");
  await page.keyboard.type("rule book");
  await page.keyboard.press("Enter");
  await expect(search).toBeFocused();
  await expect(book.getByRole("status")).toHaveText(/^\d{3} rules run by edition \d{4}[.]$/);
  await expectAccessible(page, "rule book, light");
  await page.keyboard.type("210.8(A) listed");
  await expect(book.getByRole("status")).toContainText("1 of them is shown.");
  const row = book.getByRole("button", { name: /^Every outlet in a listed place/ });
  await row.focus();
  await page.keyboard.press("Enter");
  const rulePage = page.getByRole("dialog", { name: /^Every outlet in a listed place/ });
  await expect(rulePage.getByRole("heading", { name: "What it protects" })).toBeVisible();
  // No finding is at hand, so none is told.
  await expect(rulePage).not.toContainText("{outlet}");
  await rulePage.getByRole("button", { name: "Back to the rule book" }).click();
  await expect(search).toHaveValue("210.8(A) listed");
  await search.fill("");
  await book.getByRole("combobox", { name: "Severity at worst" }).selectOption("danger");
  await expect(book.getByRole("heading", { level: 3 })).toHaveCount(1);
  await page.evaluate(() => {
    document.documentElement.dataset.theme = "dark";
  });
  await expectAccessible(page, "rule book, dark");
  await page.keyboard.press("Escape");
  await expect(book).toBeHidden();
});
