/** Making a box whose panel is asked of checks that do not answer. */
import { expect, type Locator, type Page } from "@playwright/test";
import { expectAccessible, openStart, test } from "./support/window-test.ts";

const box = (page: Page, name: string) => page.getByRole("group", { name: new RegExp(`^Box ${name}\\b`) });
const making = (within: Locator) => within.getByRole("button", { name: "Making the box…" });
/** Far less than the checks are waited for. */
const AT_ONCE = { timeout: 1_500 };

/** The start page with checks that never begin to answer. */
async function openUnanswered(page: Page, address: string): Promise<void> {
  await page.route(/\/worker-[^/]*\.js$/, () => new Promise(() => undefined));
  await openStart(page, address);
}

const sayWhichBringsTheSupply = (form: Locator) =>
  form.getByLabel("Cable thought to bring the supply").selectOption({ label: "C1, I think" });

test("the form says at once that its box is being made, and a second press makes no second box", async ({
  quietPage: page,
  address,
}) => {
  await openUnanswered(page, address);
  const form = page.getByRole("main", { name: "New from what I see" });
  await sayWhichBringsTheSupply(form);
  await form.getByRole("button", { name: "Start as found" }).click();
  await expect(making(form)).toBeVisible(AT_ONCE);
  await expect(making(form)).toHaveAttribute("aria-busy", "true");
  await expect(making(form)).toBeFocused();
  // Its words are read under the pointer that pressed it, too.
  const ground = () => making(form).evaluate((button) => getComputedStyle(button).backgroundColor);
  const pointedAt = await ground();
  await page.mouse.move(0, 0);
  expect(await ground()).toBe(pointedAt);
  await expect(form.getByText("The checks are asked for its panel")).toBeVisible();
  await page.keyboard.press("Enter");
  await making(form).dispatchEvent("click");
  await expectAccessible(page, "a box that is being made");
  await expect(box(page, "B1")).toBeVisible();
  await expect(page.getByRole("alert")).toContainText("panel");
  await expect(box(page, "B2")).toHaveCount(0);
  await page.keyboard.press("Control+z");
  await expect(box(page, "B1")).toHaveCount(0);
  await expect(page.getByRole("button", { name: "Undo", exact: true })).toBeDisabled();
});

test("another drawing that is begun meanwhile is shown at once, and gets no box", async ({
  quietPage: page,
  address,
}) => {
  await openUnanswered(page, address);
  const form = page.getByRole("main", { name: "New from what I see" });
  await sayWhichBringsTheSupply(form);
  await form.getByRole("button", { name: "Start as found" }).click();
  await expect(making(form)).toBeVisible(AT_ONCE);
  await page.getByRole("button", { name: "Empty drawing" }).click();
  await expect(page.getByRole("main", { name: "Sheet" })).toBeVisible(AT_ONCE);
  await expect(page.getByRole("alert")).toContainText("Not made");
  await expect(box(page, "B1")).toHaveCount(0);
});

test("a box for the open drawing is being made in its dialog, and is not when that is closed", async ({
  quietPage: page,
  address,
}) => {
  await openUnanswered(page, address);
  await page.getByRole("button", { name: "Empty drawing" }).click();
  const begin = async (): Promise<Locator> => {
    await page.getByRole("combobox", { name: /^Command/ }).click();
    await expect(page.locator(".command-line").first()).toBeVisible();
    await page.keyboard.type("New from what I see");
    await page.keyboard.press("Enter");
    const dialog = page.getByRole("dialog");
    await sayWhichBringsTheSupply(dialog);
    await dialog.getByRole("button", { name: "Add the box" }).click();
    await expect(making(dialog)).toBeVisible(AT_ONCE);
    return dialog;
  };
  const dialog = await begin();
  await page.keyboard.press("Escape");
  await expect(dialog).toHaveCount(0);
  await begin();
  // Asked for after the first, it comes after it: one box, and not two.
  await expect(box(page, "B1")).toBeVisible();
  await expect(dialog).toHaveCount(0);
  await expect(box(page, "B2")).toHaveCount(0);
});
