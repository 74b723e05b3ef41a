import { expect, type Page } from "@playwright/test";
import { checked, expectAccessible, openWindow, pane, runByField, showPane, test } from "./support/window-test.ts";

const dialog = (page: Page) => page.getByRole("dialog", { name: "Test record" });
const field = (page: Page, name: string) => dialog(page).getByRole("textbox", { name, exact: true });

async function openProposedSample(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Drawing", exact: true }).click();
  await page.getByRole("menuitem", { name: "Samples" }).click();
  await page.getByRole("button", { name: /laundry circuit, proposed|laundry as proposed/ }).click();
  await expect(page.getByRole("dialog")).toHaveCount(0);
  await checked(page);
}

test("a round with meter and buttons, by keys: expected is there, what is found is compared, and the rule is content", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await openProposedSample(page);
  await runByField(page, "Test record");
  const box = dialog(page).getByRole("table", { name: "B1" });
  await expect(box.getByRole("row", { name: /TEST pressed/ })).toContainText("R1b, R2, R3, R5 dark");
  await expectAccessible(page, "with the empty test record");

  // Nothing is prefilled with what is expected: a record holds what was found.
  await expect(field(page, "R1b, Hot to neutral, after")).toHaveValue("");
  await dialog(page).getByLabel("Tested by").fill("Pat Example");
  await dialog(page).getByLabel("Its number").fill("M-17");
  await field(page, "R1b, Hot to neutral, after").focus();
  await page.keyboard.type("121,8");
  await page.keyboard.press("Enter");
  await expect(field(page, "R1b, Hot to ground, after")).toBeFocused();
  await page.keyboard.type("lots");
  await page.keyboard.press("Enter");
  await expect(field(page, "R1b, Hot to ground, after")).toBeFocused();
  await expect(box).toContainText("Give volts from 0 to 1000");
  await page.keyboard.type("121.8 V");
  await page.keyboard.press("Enter");
  await page.keyboard.type("3.4");
  await page.keyboard.press("Enter");
  await expect(box.getByRole("row", { name: /Neutral to ground/ })).toContainText("differs: 3.36 V above");
  await expect(box.getByRole("row", { name: /Hot to neutral/ })).toContainText("agrees");
  await expect(dialog(page).getByRole("status")).toHaveText(/R1b, Neutral to ground, after: differs: 3.36 V above/);

  await expect(dialog(page).getByRole("combobox", { name: "R1b, Plug-in tester, after" })).toBeFocused();
  await page.keyboard.press("c");
  await page.keyboard.press("Enter");
  for (const [button, next] of [
    ["TEST pressed", "R1b, RESET pressed, after: Record…"],
    ["RESET pressed", "B2, Verified dead, breaker off, after"],
  ] as const) {
    await expect(dialog(page).getByRole("button", { name: new RegExp(`^R1b, ${button}, after`) })).toBeFocused();
    await page.keyboard.press("Enter");
    const ticks = dialog(page).getByRole("group", { name: /R1b$/ });
    for (const name of ["R1b", "R2", "R3", "R5"]) {
      await ticks.getByRole("checkbox", { name, exact: true }).focus();
      await page.keyboard.press("Space");
    }
    if (button === "TEST pressed") await expectAccessible(page, "with outlets to tick and a line that differs");
    await ticks.getByRole("button", { name: "Write it down" }).press("Enter");
    await expect(dialog(page).locator(":focus")).toHaveAccessibleName(next);
  }
  await page.keyboard.press("Escape");

  // R1b has its record; R4b is asked for.
  await showPane(page, "Findings");
  await expect(pane(page)).toContainText("The test record has no TEST of R4b in B4");
  await expect(pane(page)).not.toContainText("no TEST of R1b");
});

test("from the details of a device; a remark, who measured, and the way back", async ({ quietPage: page, address }) => {
  await openWindow(page, address);
  await openProposedSample(page);
  await runByField(page, "R4b");
  await showPane(page, "Details");
  await pane(page).getByRole("button", { name: "Expected and found…" }).click();
  await expect(dialog(page).getByRole("table").first()).toHaveAccessibleName(/^B4/);
  await field(page, "R4b, Hot to neutral, before").fill("120");
  await dialog(page).getByRole("button", { name: "More: R4b, Hot to neutral" }).click();
  await expect(dialog(page)).toContainText("Before, at R4: 120 V, Meter");
  await field(page, "Remark: R4b, Hot to neutral, before").fill("freezer running");
  await dialog(page).getByLabel("At", { exact: true }).selectOption("R4b, in B4");
  await dialog(page).getByRole("button", { name: "Add the line" }).click();
  await field(page, "R4b, Continuity, after").fill("0.3");
  await dialog(page).getByRole("button", { name: "Close" }).click();
  await expect(pane(page).getByText("before 1, after 1")).toBeVisible();
  for (const undone of ["Record “Continuity”", "Correct “Hot to neutral”", "Record “Hot to neutral”"]) {
    await expect(page.getByRole("button", { name: new RegExp(`^Undo: ${undone}`) })).toBeVisible();
    await page.keyboard.press("Control+z");
  }
  await expect(pane(page).getByText("nothing recorded")).toBeVisible();
});
