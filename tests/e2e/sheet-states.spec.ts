import { expect, type Locator, type Page } from "@playwright/test";
import { checked, expectAccessible, openWindow, test } from "./support/window-test.ts";

/** Fits and zooms do not glide for people who ask for less motion. */
test.use({ contextOptions: { reducedMotion: "reduce" } });

test("the sheet says which state it shows, follows a switch at once, and keeps the view and what is chosen", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await page.getByRole("button", { name: "Drawing", exact: true }).click();
  await page.getByRole("menuitem", { name: "Samples" }).click();
  await page.getByRole("button", { name: /laundry as proposed/ }).click();
  await expect(page.getByRole("dialog")).toHaveCount(0);
  await checked(page);

  // Proposed: the title block, the corner of the frame, and what the work does to each box.
  const title = page.getByRole("region", { name: "Title block" });
  const corner = page.locator(".sheet-frame-state");
  await expect(title).toContainText("PROPOSED");
  await expect(title).toContainText("2 opened");
  await expect(corner).toHaveText("PROPOSED");
  await expect(page.locator(".sheet-frame-second")).toHaveCount(1);
  await expect(box(page, "B1, laundry, opened")).toBeVisible();
  await expect(box(page, "B4, freezer, opened")).toBeVisible();
  await expect(box(page, "B2, sink")).toBeVisible();
  await expectAccessible(page, "proposed");

  await box(page, "B1, laundry, opened")
    .locator(".sheet-wall-outer")
    .click({ position: { x: 6, y: 2 }, force: true });
  await page.getByRole("button", { name: "Selection", exact: true }).click();
  await expect(page.getByRole("button", { name: /^Splice HD, / })).toBeVisible();
  await expect(page.locator(".sheet-replaces")).toHaveText("replaces R1");
  await expect(page.locator(".sheet-limit")).toContainText("behind R1b: R2, R3, R5");
  await expect(page.getByRole("button", { name: /^Splice ND, .*, neutral, joins / })).toBeVisible();

  const view = (): Promise<string | null> => page.locator(".react-flow__viewport").getAttribute("style");
  const before = await view();
  await show(page, "As found");
  await expect(corner).toHaveText("AS FOUND");
  await expect(page.locator(".sheet-frame-second")).toHaveCount(0);
  await expect(title).not.toContainText("opened");
  await expect(box(page, "B1, laundry")).toBeVisible();
  await expect(page.getByRole("button", { name: /^Splice HD, / })).toHaveCount(0);
  await expect(page.getByRole("button", { name: /^[\w ,-]+ R1, box / })).toBeVisible();
  await expect(page.locator(".sheet-limit")).toHaveCount(0);
  expect(await view()).toBe(before);

  // What is in both states stays chosen; what was in the hand is put back where it was.
  const end = page.getByRole("button", { name: /^12\/2 C1 black end at B1/ });
  await end.focus();
  await page.keyboard.press("Enter");
  await expect(page.locator(".sheet-hand")).toHaveCount(1);
  await show(page, "Proposed");
  await expect(corner).toHaveText("PROPOSED");
  await expect(page.locator(".sheet-hand")).toHaveCount(0);
  await expect(page.locator(".sheet-chosen-line")).toHaveCount(1);
  await expect(end).toHaveAccessibleName(/in splice HL/);
  expect(await view()).toBe(before);

  // A jumper that was begun, and a menu, do not go over to the other state.
  await page.getByRole("button", { name: /^Splice HD, / }).click({ button: "right" });
  await page.getByRole("menuitem", { name: "Pigtail or jumper from here" }).click();
  await expect(page.getByText("A new pigtail")).toBeVisible();
  await show(page, "As found");
  await expect(page.getByText("A new pigtail")).toHaveCount(0);
  await expect(page.locator(".sheet-targets")).toHaveCount(0);
});

const box = (page: Page, name: string): Locator =>
  page.getByRole("group", { name: new RegExp(`^Box ${name}, \\d+ device`) });

const show = (page: Page, state: "As found" | "Proposed"): Promise<void> =>
  page
    .getByRole("banner")
    .getByRole("radio", { name: state })
    .or(page.getByRole("banner").getByRole("button", { name: state }))
    .first()
    .click();
