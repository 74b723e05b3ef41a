import { expect, type Locator, type Page } from "@playwright/test";
import { checked, expectAccessible, openWindow, runByField, test } from "./support/window-test.ts";

/** Fits and zooms do not glide for people who ask for less motion. */
test.use({ contextOptions: { reducedMotion: "reduce" } });

const strip = (page: Page, name: string): Locator =>
  page.getByRole("banner").getByRole("button", { name, exact: true });
const pane = (page: Page): Locator => page.getByRole("complementary", { name: "Details, findings and rooms" });
const line = (page: Page, name: RegExp): Locator => pane(page).getByRole("button", { name });

test("the difference of the states is listed, gone to, only looked at, and read step by step", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await page.getByRole("button", { name: "Drawing", exact: true }).click();
  await page.getByRole("menuitem", { name: "Samples" }).click();
  await page.getByRole("button", { name: /laundry as proposed/ }).click();
  await expect(page.getByRole("dialog")).toHaveCount(0);
  await checked(page);

  await strip(page, "Scope").click();
  await expect(strip(page, "Scope")).toHaveAttribute("aria-pressed", "true");
  await expect(page.getByRole("region", { name: "Title block" })).toContainText("SCOPE");
  // The worked example: 10 ends off and 16 on at the laundry, 3 and 3 at the freezer.
  await expect(pane(page).locator(".scope-counters dd")).toHaveText(["13", "19", "3", "2"]);
  await expect(page.locator("[data-scope-said]")).toHaveText(/boxes opened 2, ends to detach 13, to attach 19/);
  await expect(page.locator(".scope-tallies")).toHaveCount(2);
  await expectAccessible(page, "scope from a distance");

  // A line goes to its place on the sheet and selects it.
  await line(page, /^moved: C2 BK/).click();
  await expect(page.locator(".sheet-chosen-line")).toHaveCount(1);
  await expect(line(page, /^moved: C2 BK/)).toHaveAttribute("aria-current", "true");
  await expect(page.locator(".scope-way")).not.toHaveCount(0);
  await expect(page.locator(".scope-aside")).toHaveText([/R1$/, /internal clamps$/]);
  await line(page, /^removed: R1 /).click();
  await expect(page.locator(".scope-shown")).toHaveCount(1);
  await expectAccessible(page, "scope from near");

  // Nothing is edited: what would be says how.
  const end = page.getByRole("button", { name: /^12\/2 C1 black end at B1/ });
  await end.focus();
  await page.keyboard.press("Enter");
  await expect(page.getByText(/Show Proposed to change the drawing/).last()).toBeVisible();
  await expect(page.locator(".sheet-hand")).toHaveCount(0);
  await expect(strip(page, "Undo")).toBeDisabled();

  await pane(page).getByRole("button", { name: "by step" }).click();
  await expect(pane(page).getByText("Hold point HP1").first()).toBeAttached();
  await expect(pane(page).getByRole("checkbox")).toHaveCount(0);
  await line(page, /^Take C5 BK out of X\./).click();
  await expect(page.locator(".sheet-chosen-line")).toHaveCount(1);
  await expectAccessible(page, "scope by step");

  await pane(page).getByRole("button", { name: "material", exact: true }).click();
  await expect(pane(page).getByRole("list", { name: "material" })).toContainText("GFCI receptacle");
  await page.emulateMedia({ colorScheme: "dark", forcedColors: "active" });
  await expectAccessible(page, "scope, material, a person's own colours");
  await page.emulateMedia({ forcedColors: "none" });

  // By keys, from wherever the focus is.
  await page.keyboard.press("Shift+F8");
  await expect(page.locator(".scope-legend")).toHaveCount(0);
  await expect(strip(page, "Proposed")).toHaveAttribute("aria-pressed", "true");
  await page.keyboard.press("Shift+F8");
  await expect(page.getByRole("region", { name: "What the lines mean" })).toBeVisible();
  await strip(page, "As found").click();
  await expect(page.getByRole("region", { name: "Title block" })).toContainText("AS FOUND");
  await expect(pane(page).getByRole("tab", { name: "Scope" })).toHaveCount(0);
});

test("before proposed is started scope can be come to, and says what to do first", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  const scope = strip(page, "Scope");
  await expect(scope).toHaveAttribute("aria-disabled", "true");
  await expect(scope).toHaveAccessibleDescription(/Start proposed first/);
  await scope.press("Enter");
  await expect(page.getByText("There is nothing to compare yet")).toBeVisible();
});

test("the bar of a chosen box at the foot stands over the key of the lines that comes with Scope", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await page.getByRole("button", { name: "Drawing", exact: true }).click();
  await page.getByRole("menuitem", { name: "Samples" }).click();
  await page.getByRole("button", { name: /laundry as proposed/ }).click();
  await expect(page.getByRole("dialog")).toHaveCount(0);
  await checked(page);
  await runByField(page, "B1");
  const bar = page.getByRole("group", { name: "Selected boxes" });
  // So near that names of the box stand at the head of the view.
  const larger = page.getByRole("button", { name: "Larger", exact: true });
  for (let step = 0; step < 8; step += 1) {
    if ((await bar.getAttribute("data-spot")) === "foot") break;
    await larger.click();
  }
  await expect(bar).toHaveAttribute("data-spot", "foot");
  await strip(page, "Scope").click();
  const key = page.locator(".scope-legend");
  await expect(key).toBeVisible();
  await expect(async () => {
    const [over, under] = [await bar.boundingBox(), await key.boundingBox()];
    if (over === null || under === null) throw new Error("Bar and key are not both in view.");
    const apart = over.y + over.height <= under.y + 1 || over.x >= under.x + under.width;
    expect(apart, JSON.stringify({ over, under })).toBe(true);
  }).toPass({ timeout: 3000 });
});
