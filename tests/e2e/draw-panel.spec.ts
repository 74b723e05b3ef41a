/** The panel of a cable that leads out of the drawing: with the box, from a question, by keys. What was not read says so. */
import { expect, type Locator, type Page } from "@playwright/test";
import {
  checked,
  expectAccessible,
  fieldLeft,
  openStart,
  pane,
  runByField,
  showPane,
  test,
} from "./support/window-test.ts";

test.use({ contextOptions: { reducedMotion: "reduce" } });

const form = (page: Page) => page.getByRole("main", { name: "New from what I see" });
const supply = (page: Page) => form(page).getByLabel("Cable thought to bring the supply");
const panelChoice = (page: Page) => form(page).getByLabel("its panel:");
const panel = (page: Page) => page.getByRole("group", { name: /^Panel P\b/ });
const undoOf = (page: Page, words: string) => page.getByRole("button", { name: `Undo: ${words}`, exact: true });

test("the form draws the panel with the box, in one step, and says that its breaker was not read", async ({
  quietPage: page,
  address,
}) => {
  await openStart(page, address);
  await expect(panelChoice(page)).toHaveCount(0);
  await supply(page).selectOption({ label: "C1, I think" });
  // 12 AWG copper: 20 A, NFPA 70 240.4(D).
  await expect(panelChoice(page).locator("option:checked")).toHaveText(
    "draw it, 20 A breaker by the size of the cable (not read)",
  );
  await expectAccessible(page, "form with a supply");
  await form(page).getByRole("button", { name: "Start as found" }).click();
  await checked(page);
  await expect(pane(page).getByRole("textbox", { name: "Name" })).toHaveValue("B1");
  // The box is what a person goes on with: it fills the view, and not both as small as they must be.
  const heightOf = async (one: Locator): Promise<number> => (await one.boundingBox())?.height ?? 0;
  const sheet = await heightOf(page.getByRole("main", { name: "Sheet" }));
  await expect.poll(() => heightOf(page.getByRole("group", { name: /^Box B1\b/ }))).toBeGreaterThan(0.6 * sheet);
  await page.getByRole("button", { name: "Fit", exact: true }).click();
  await expect(panel(page)).toHaveAccessibleName(/^Panel P, drawn, not seen/);
  await expectAccessible(page, "box with its panel");
  await showPane(page, "Findings");
  await expect(pane(page)).not.toContainText("The supply of B1 is not drawn");
  await undoOf(page, "Make B1 from what is seen").click();
  await expect(page.getByRole("button", { name: "Undo", exact: true })).toBeDisabled();
  await expect(panel(page)).toHaveCount(0);
});

test("a cable that brings no supply by itself leaves the panel out and says why", async ({
  quietPage: page,
  address,
}) => {
  await openStart(page, address);
  await form(page).getByLabel("Kind of cable", { exact: true }).selectOption("knob-tube-14");
  await supply(page).selectOption({ label: "C1, I think" });
  await expect(form(page).getByRole("note")).toContainText("C1 is one conductor by itself");
  await expect(panelChoice(page)).toHaveCount(0);
});

test("left out, the question that misses it draws it by a press, with another rating where that is chosen", async ({
  quietPage: page,
  address,
}) => {
  await openStart(page, address);
  await form(page).getByLabel("Room").selectOption({ label: "laundry" });
  await supply(page).selectOption({ label: "C1, I think" });
  await panelChoice(page).selectOption({ label: "leave it out" });
  await form(page).getByRole("button", { name: "Start as found" }).click();
  await checked(page);
  await expect(panel(page)).toHaveCount(0);
  for (const [end, place] of [
    ["C1 BK", "R1 H"],
    ["C1 WH", "R1 N"],
  ] as const)
    await land(page, end, place);
  await showPane(page, "Findings");
  await pane(page).getByRole("button", { name: "Draw the panel of C1…" }).click();
  const dialog = page.getByRole("dialog", { name: "Draw the panel of C1" });
  await expect(dialog.getByRole("option")).toHaveCount(2);
  await expectAccessible(page, "which panel");
  await dialog.getByRole("option", { name: /^A new panel P, with a breaker of 15 A/ }).click();
  await checked(page);
  await expect(undoOf(page, "Draw panel P for C1")).toBeEnabled();
  await expect(panel(page)).toBeVisible();
  await expect(pane(page).getByRole("textbox", { name: "Name" })).toHaveValue("P");
  await showPane(page, "Findings");
  await expect(pane(page).getByRole("button", { name: "Draw the panel of C1…" })).toHaveCount(0);
});

async function land(page: Page, end: string, place: string): Promise<void> {
  await runByField(page, end);
  await page.keyboard.press("Control+k");
  await page.keyboard.type(`Land ${end}`);
  await page.keyboard.press("Enter");
  await expect(page.locator(".command-asked")).toContainText(`Land ${end}`);
  await page.keyboard.type(place);
  await page.keyboard.press("Enter");
  await fieldLeft(page);
  await checked(page);
}

test("by keys alone: the command field, the list, Enter; the second cable goes into the same panel", async ({
  quietPage: page,
  address,
}) => {
  await openStart(page, address);
  await form(page).getByRole("button", { name: "Start as found" }).click();
  await checked(page);
  for (const [cable, line, step] of [
    ["C1", "A new panel P", "Draw panel P for C1"],
    ["C2", "Into P", "Run C2 to P"],
  ] as const) {
    await runByField(page, cable);
    await runByField(page, `Draw the panel of ${cable}`);
    const dialog = page.getByRole("dialog", { name: `Draw the panel of ${cable}` });
    await expect(dialog).toBeVisible();
    await page.keyboard.type(line);
    await page.keyboard.press("Enter");
    await expect(dialog).toHaveCount(0);
    await checked(page);
    await expect(undoOf(page, step)).toBeEnabled();
  }
  await expect(panel(page)).toHaveCount(1);
});
