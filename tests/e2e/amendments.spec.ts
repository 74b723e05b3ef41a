import { expect, type Page } from "@playwright/test";
import { checked, expectAccessible, openLaundrySample, openWindow, test } from "./support/window-test.ts";

const dialog = (page: Page) => page.getByRole("dialog", { name: "Local amendments" });
const findings = (page: Page) => page.getByRole("complementary", { name: "Details, findings and rooms" });

async function openAmendments(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Drawing", exact: true }).click();
  await page.getByRole("menuitem", { name: "Local amendments" }).click();
  await expect(dialog(page).getByLabel("Rule", { exact: true })).toBeVisible();
}

const ROOM = "A box must have room for every conductor, clamp, support and device that it holds";
const OPEN_COVER = "Every box must have a cover, a plate or a canopy on it";

test("a value is amended: shown beside the edition's own, told with the findings that it touches, taken back", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await page.getByRole("tab", { name: "Findings" }).click();
  await openAmendments(page);
  await expectAccessible(page, "with the empty dialog of amendments");
  await dialog(page).getByLabel("Rule", { exact: true }).selectOption({ label: ROOM });
  await dialog(page)
    .getByLabel("What is amended")
    .selectOption({ label: "Device allowances per gang, by the edition 2" });
  await expect(dialog(page)).toContainText("The edition: 2. 314.16(B)(4); a source text states it");
  const make = dialog(page).getByRole("button", { name: "Make the amendment" });

  await make.click();
  await expect(dialog(page).getByText("Give the number that holds instead")).toBeVisible();
  await dialog(page).getByLabel("Holds instead").fill("2.5");
  await make.click();
  await expect(dialog(page).getByText("is a count. Give a whole number.")).toBeVisible();
  await dialog(page).getByLabel("Holds instead").fill("3");
  await make.click();
  await expect(dialog(page).getByText("Say why it is amended.")).toBeVisible();
  await dialog(page).getByLabel("Reason").fill("Wide devices crowd the box.");
  await make.click();
  await expect(dialog(page).getByText("Say who requires it")).toBeVisible();
  await dialog(page).getByLabel("Required by").fill("By-law 12");
  await make.click();

  const row = dialog(page).getByRole("listitem");
  await expect(row).toHaveCount(1);
  await expect(row).toContainText("Device allowances per gang: 3 in place of 2");
  await expect(row).toContainText("Required by By-law 12.");
  await expectAccessible(page, "with an amendment in its dialog");
  await dialog(page).getByRole("button", { name: "Close" }).click();
  await checked(page);
  const overfull = findings(page).getByRole("listitem").filter({ hasText: "in³ too much" }).first();
  await expect(overfull).toContainText(
    "By local amendment of By-law 12, device allowances per gang is 3 in place of 2: Wide devices crowd the box.",
  );

  // The way from the findings to the dialog; the name was kept.
  await findings(page).getByRole("button", { name: "1 local amendment" }).click();
  await expect(dialog(page).getByLabel("Required by")).toHaveValue("By-law 12");
  await row.getByRole("button", { name: /^Edit/ }).click();
  await expect(dialog(page).getByLabel("Holds instead")).toBeFocused();
  await dialog(page).getByLabel("Holds instead").fill("4");
  await dialog(page).getByRole("button", { name: "Change the amendment" }).click();
  await expect(row).toContainText("Device allowances per gang: 4 in place of 2");
  await expect(row).toHaveCount(1);
  await row.getByRole("button", { name: /^Take back/ }).click();
  await expect(dialog(page)).toContainText("None: every rule runs as the edition has it.");
  await expect(dialog(page).getByRole("region", { name: "Amendments in force" })).toBeFocused();
  await page.keyboard.press("Escape");
  await checked(page);
  await expect(overfull).not.toContainText("local amendment");
});

test("a rule that looks for a danger is never off in silence", async ({ quietPage: page, address }) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await page.getByRole("tab", { name: "Findings" }).click();
  await openAmendments(page);
  await dialog(page).getByLabel("Rule", { exact: true }).selectOption({ label: OPEN_COVER });
  await expect(dialog(page)).toContainText("This rule looks for a danger.");
  await dialog(page).getByLabel("Reason").fill("Covers come last.");
  await dialog(page).getByLabel("Required by").fill("the site office");
  await dialog(page).getByRole("button", { name: "Make the amendment" }).click();
  await page.keyboard.press("Escape");
  await checked(page);
  const line = findings(page).getByRole("listitem").filter({ hasText: "Switched off by a local amendment" });
  await expect(line).toContainText("Reason: Covers come last. (required by the site office)");
  // Nobody's word folds it away.
  await expect(line.getByRole("button", { name: /^Acknowledge/ })).toHaveCount(0);
  await page.getByRole("button", { name: /^Undo: Switch off cover-missing/ }).click();
  await checked(page);
  await expect(line).toHaveCount(0);
});

test("what an edition does not cover or nobody verified is said in the window", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await page.getByRole("tab", { name: "Findings" }).click();
  const edition = page.getByLabel("Code edition");
  await edition.selectOption({ label: "CSA-C22.1, counting only" });
  await checked(page);
  await expect(findings(page)).toContainText("Judged by edition CSA-C22.1, counting only.");
  await expect(findings(page)).toContainText(
    "Not covered by this rule set: CSA-C22.1 is held for the count of box fill",
  );
  await expect(findings(page).getByRole("region", { name: "Cannot tell" }).getByRole("listitem")).toHaveCount(1);
  await page.getByRole("tab", { name: "Outline" }).click();
  await page.getByRole("treeitem", { name: /^B1, / }).click();
  await page.getByRole("tab", { name: "Details" }).click();
  await expect(findings(page)).toContainText("edition CSA-C22.1, counting only, in³");
  await expect(findings(page)).toContainText("12-3034 and Table 22");
  await expect(findings(page)).toContainText("Connectors, by the pair");
  await expectAccessible(page, "with a Canadian ledger");

  for (const year of ["2026", "2014"]) {
    await edition.selectOption(year);
    await page.getByRole("tab", { name: "Findings" }).click();
    await checked(page);
    const words = year === "2026" ? "2026, not verified" : "2014, counting only";
    await expect(findings(page)).toContainText(`Judged by edition ${words}.`);
    const text = year === "2026" ? "by the 2023 text, not verified" : "by the 2017 text, not verified";
    await expect(findings(page).getByText(text).first()).toBeVisible();
  }
});
