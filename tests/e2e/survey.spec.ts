import { expect, type Locator, type Page } from "@playwright/test";
import { expectAccessible, openLaundrySample, openWindow, pane, runByField, test } from "./support/window-test.ts";

/** What each cable of the laundry box leads to; C1 comes from the panel. */
const LEADS: Readonly<Record<string, readonly string[]>> = { C2: ["R2", "R3"], C3: ["R4"], C4: ["L1"], C5: ["R5"] };

const form = (page: Page): Locator => pane(page).getByRole("form", { name: "What came of it" }).first();
const instruction = (page: Page): Locator => pane(page).locator(".survey-instruction");
const writeDown = (page: Page): Locator => form(page).getByRole("button", { name: "Write it down" });
const holds = (page: Page): Locator => pane(page).getByRole("checkbox", { name: /^Hold point/ });

/** Ticks what is to be ticked, one after the other and by keys. */
async function tickAll(page: Page): Promise<void> {
  for (const hold of await holds(page).all()) {
    await hold.focus();
    await page.keyboard.press("Space");
    await expect(hold).toBeChecked();
  }
}

/** The name that the button of the reading has which filled the form: one press. */
const likely = (page: Page, name: string | RegExp): Locator => form(page).getByRole("button", { name });

test("the laundry box: the supply by one energisation, the rest by joins, taken over and undone", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await runByField(page, "B1");
  await pane(page).getByRole("button", { name: "Which cable is which…" }).click();
  await expect(pane(page).getByRole("heading", { name: "Cables of B1" })).toBeFocused();
  await expect(pane(page)).toContainText("120 of 120 possible wirings are left.");
  await expect(pane(page)).toContainText("what is drawn is no reading");
  await expect(instruction(page)).toContainText("dead");
  await pane(page).getByLabel("Done by").fill("Pat Example");
  await tickAll(page);
  await likely(page, "All open").click();
  await form(page).getByRole("checkbox", { name: "Nothing is plugged in behind these cables" }).check();
  await writeDown(page).press("Enter");
  await pane(page).getByLabel("Done by").fill(" ");
  await expect(instruction(page)).toContainText("Energise once and read volts at C1");

  // Hold points: not without a name, not the second before the first, and nothing is written down before.
  await holds(page).first().click();
  await expect(pane(page)).toContainText("Write your name first");
  await pane(page).getByLabel("Done by").fill("Pat Example");
  await holds(page).nth(1).click();
  await expect(pane(page)).toContainText("One hold point after the other");
  await expect(pane(page).getByRole("checkbox", { checked: true })).toHaveCount(0);
  await likely(page, "Only C1 live").click();
  await writeDown(page).press("Enter");
  await expect(form(page)).toContainText("First the hold points");
  await tickAll(page);
  await form(page).getByRole("textbox", { name: "C1 BK to WH" }).fill("lots");
  await writeDown(page).press("Enter");
  await expect(form(page)).toContainText("“lots” cannot be read.");
  await form(page).getByRole("textbox", { name: "C1 BK to WH" }).fill("122 V");
  await expectAccessible(page, "with figures to be written down");
  await writeDown(page).press("Enter");
  await expect(pane(page)).toContainText("24 of 120 possible wirings are left.");
  await expect(instruction(page)).toBeFocused();
  await expect(pane(page).getByText("C1 LINE").first()).toBeVisible();
  await expect(pane(page)).toContainText("Would short: Put a switch between the wires of C1");

  // Joined two at a time; that the last cable is not dead is asked too.
  let joins = 0;
  for (; joins < 4 && (await instruction(page).count()) > 0; joins += 1) {
    const other = pane(page)
      .getByRole("button", { name: /^Join C.* to the supply C1/ })
      .first();
    if (!((await instruction(page).textContent()) ?? "").startsWith("Join")) {
      if (!(await other.isVisible()))
        await pane(page)
          .getByText(/^Other tests/)
          .click();
      const words = (await other.textContent()) ?? "";
      await other.click();
      await expect(instruction(page)).toHaveText(words);
      await expect(instruction(page)).toBeFocused();
    }
    const said = (await instruction(page).textContent()) ?? "";
    const works = Object.keys(LEADS).flatMap((cable) => (said.includes(cable) ? (LEADS[cable] ?? []) : []));
    expect(works.length, said).toBeGreaterThan(0);
    await tickAll(page);
    // One press for what is likely, a second one to write it down.
    await likely(page, new RegExp(`^${[...works].sort(byItems).join(", ")} work`)).press("Enter");
    await writeDown(page).press("Enter");
    await expect(pane(page).locator(".survey-next[aria-busy='true']")).toHaveCount(0);
    await expect(instruction(page).filter({ hasText: said })).toHaveCount(0);
  }
  expect(joins).toBeLessThanOrEqual(3);
  await expect(pane(page)).toContainText("Every cable has one role left.");
  for (const tag of ["C1 LINE", "C2 to R2, R3", "C3 to R4", "C4 to L1", "C5 to R5"])
    await expect(pane(page).locator(".survey-settled").getByText(tag, { exact: true })).toBeVisible();
  await expect(pane(page)).toContainText("R2 and R3 hang on one cable; which of them comes first is proved only");
  await expectAccessible(page, "with all cables settled");

  await pane(page).getByRole("button", { name: "Take over into as found" }).press("Enter");
  const undoing = page.getByRole("button", { name: /^Undo: Take over C1, C2, C3, C4 and C5 of B1/ });
  await expect(undoing).toBeVisible();
  await page.keyboard.press("Control+z");
  await expect(undoing).toHaveCount(0);
  await expect(pane(page)).toContainText("Every cable has one role left.");

  await pane(page)
    .getByRole("button", { name: /^Take back: C1 \+/ })
    .first()
    .press("Enter");
  await expect(instruction(page)).toBeVisible();
  await pane(page).getByRole("button", { name: "Close", exact: true }).press("Enter");
  await expect(page.getByRole("tab", { name: "Details" })).toBeFocused();
});

const ORDER = ["R2", "R3", "R4", "R5", "L1"];
const byItems = (p: string, q: string): number => ORDER.indexOf(p) - ORDER.indexOf(q);

test("the map of circuits: a breaker off, what went dead, a line for the directory", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await runByField(page, "Map the circuits");
  await expect(pane(page).getByRole("heading", { name: "Map the circuits" })).toBeFocused();
  for (const name of ["R1", "R2", "R3", "R4", "R5"])
    await pane(page).getByRole("group", { name, exact: true }).getByRole("button", { name: "Dead" }).press("Enter");
  await pane(page).getByRole("group", { name: "L1", exact: true }).getByRole("button", { name: "Live" }).press("Enter");
  await expectAccessible(page, "with a breaker off");
  await pane(page).getByRole("button", { name: "Write it down" }).press("Enter");
  const table = pane(page).getByRole("table");
  await expect(table.getByRole("row", { name: /^R1/ })).toContainText("Q14");
  await expect(pane(page)).toContainText("5 of 6 known");
  await pane(page)
    .getByRole("button", { name: /^Write the line of Q14/ })
    .press("Enter");
  await expect(page.getByRole("button", { name: /^Undo: / })).toHaveAccessibleName(/directory/i);
  await pane(page)
    .getByRole("button", { name: /^Take back: Q14 off/ })
    .press("Enter");
  await expect(pane(page)).toContainText("0 of 6 known");
});
