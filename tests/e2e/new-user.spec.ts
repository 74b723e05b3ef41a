/** What a person looks for who has read nothing but the start of the manual, and where it is found. */
import { expect, type Locator, type Page } from "@playwright/test";
import {
  checked,
  expectAccessible,
  openLaundrySample,
  openWindow,
  pane,
  runByField,
  showPane,
  test,
} from "./support/window-test.ts";

test.use({ contextOptions: { reducedMotion: "reduce" } });

const sheet = (page: Page): Locator => page.locator(".sheet-flow");
const box = (page: Page, name: string): Locator =>
  page.getByRole("group", { name: new RegExp(`^(Box|Panel) ${name}\\b`) });
const stock = (page: Page): Locator => page.getByRole("navigation", { name: "Stock" });
const item = (page: Page, title: string): Locator => stock(page).getByRole("button", { name: title }).first();
const hand = (page: Page): Locator => page.getByRole("group", { name: "In the hand" });

/** Puts boxes on the sheet side by side, small enough to see all of them. */
async function boxesOnSheet(page: Page, ...titles: readonly string[]): Promise<void> {
  for (let step = 0; step < 4; step++) await page.getByRole("button", { name: "Smaller" }).click();
  for (const [index, title] of titles.entries()) {
    await stock(page).getByRole("searchbox", { name: "Find in stock" }).fill(title);
    await item(page, title).click();
    await sheet(page).click({ position: { x: 80 + index * 260, y: 200 } });
  }
  await stock(page).getByRole("searchbox", { name: "Find in stock" }).fill("");
}

/** The middle of the upper wall of a box, from the corner of the box. */
async function wallOf(page: Page, name: string): Promise<{ readonly x: number; readonly y: number }> {
  const wall = await box(page, name).locator(".sheet-wall-outer").boundingBox();
  if (wall === null) throw new Error(`${name} is not in view.`);
  return { x: wall.x + 8, y: wall.y + 3 };
}

async function press(page: Page, name: string): Promise<void> {
  const { x, y } = await wallOf(page, name);
  await page.mouse.click(x, y);
}

test("a cable dragged from the stock onto a box waits for its other end: another box, or the bare sheet", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await boxesOnSheet(page, "Nonmetallic new-work, 1 gang", "Nonmetallic new-work, 2 gang");
  await item(page, "14/2 with ground").dragTo(box(page, "B1").locator(".sheet-wall-outer"), { force: true });
  await expect(hand(page)).toContainText("From B1");
  await press(page, "B2");
  await expect(pane(page).getByRole("heading", { name: "Ends in B1" })).toBeVisible();
  await expect(pane(page).getByRole("heading", { name: "Ends in B2" })).toBeVisible();
  await expect(hand(page)).toHaveCount(0);

  await item(page, "14/2 with ground").dragTo(box(page, "B1").locator(".sheet-wall-outer"), { force: true });
  await expect(hand(page)).toContainText("or the bare sheet");
  await sheet(page).click({ position: { x: 60, y: 60 } });
  await expect(pane(page).getByRole("heading", { name: "Leaves this drawing" })).toBeVisible();
  await expect(hand(page)).toHaveCount(0);

  // Dropped where a box goes, nothing stays in the hand.
  await stock(page).getByRole("searchbox", { name: "Find in stock" }).fill("panel");
  await item(page, "Panel, 16 spaces").dragTo(sheet(page), { targetPosition: { x: 620, y: 200 } });
  await expect(box(page, "P")).toBeVisible();
  await expect(hand(page)).toHaveCount(0);
});

test("a cable that leaves the drawing says where it goes, and is drawn to its panel later", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await boxesOnSheet(page, "Nonmetallic new-work, 1 gang", "Panel, 16 spaces");
  await item(page, "14/2 with ground").dragTo(box(page, "B1").locator(".sheet-wall-outer"), { force: true });
  await sheet(page).click({ position: { x: 60, y: 60 } });
  await runByField(page, "B1");
  await expect(pane(page)).toContainText("14/2, far end not drawn");
  await runByField(page, "C1");
  const goesTo = pane(page).getByLabel(/^Goes to/);
  await goesTo.fill("the kitchen");
  await goesTo.press("Enter");
  await expect(page.getByRole("button", { name: "Undo: Say where C1 goes" })).toBeVisible();
  await runByField(page, "B1");
  await expect(pane(page)).toContainText("14/2 to the kitchen, not drawn");
  await runByField(page, "C1");
  await pane(page).getByLabel("Draw C1 to").selectOption({ label: "P" });
  await expect(pane(page).getByRole("heading", { name: "Ends in P" })).toBeVisible();
  await expect(pane(page).getByLabel(/^Goes to/)).toHaveCount(0);
});

test("a pigtail is found in the command field, at a splice and at a screw, and says so in the stock", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  const field = page.getByRole("combobox", { name: "Command, part, tag or finding" });
  for (const word of ["pigtail", "jumper"]) {
    await field.fill(word);
    await expect(page.getByRole("option", { name: /Add a pigtail or jumper/ }).first()).toBeVisible();
    await field.press("Escape");
  }
  await stock(page).getByRole("searchbox", { name: "Find in stock" }).fill("pigtail");
  await expect(stock(page)).toContainText("it is made in the box");

  await runByField(page, "R1");
  await expect(pane(page).getByRole("button", { name: /^Pigtail from here… G/ })).toBeVisible();
  await runByField(page, "splice X");
  await pane(page).getByRole("button", { name: "Pigtail from here…" }).click();
  const ask = page.getByRole("dialog", { name: /^Pigtail or jumper from Splice X/ });
  await expect(ask).toBeVisible();
  await expectAccessible(page, "where the pigtail ends");
  await ask.getByRole("option", { name: /^R1 H/ }).first().click();
  // X joins the blacks of 12/2 cables.
  await expect(page.getByRole("dialog").getByRole("option").first()).toContainText("12 AWG black");
  await page.getByRole("dialog").getByRole("option").first().click();
  await expect(page.getByRole("button", { name: /^Undo: Add jumper .* from splice X to R1 H/ })).toBeVisible();
});

test("the form for a jumper follows what is chosen, until it is said otherwise", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await runByField(page, "B1");
  const from = pane(page).getByLabel("Pigtail or jumper from");
  const to = pane(page).getByLabel("to", { exact: true }).last();
  const colour = pane(page).getByLabel("Colour of the jumper");
  await from.selectOption({ label: "splice Y" });
  await expect(to.locator("option:checked")).toContainText("R1 N");
  await expect(colour).toHaveValue("white");
  await from.selectOption({ label: "splice Z" });
  await expect(colour).toHaveValue("bare");
  await colour.selectOption("green");
  await from.selectOption({ label: "splice X" });
  await expect(colour).toHaveValue("green");
  const names = await to.locator("option").allInnerTexts();
  expect(new Set(names).size).toBe(names.length);
});

test("a missing room is entered where the question leads, as a new room in one step; open questions are counted", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await boxesOnSheet(page, "Nonmetallic new-work, 1 gang");
  await stock(page).getByRole("searchbox", { name: "Find in stock" }).fill("duplex tr 15");
  await item(page, "Tamper-resistant duplex, 15 A").click();
  await press(page, "B1");
  await checked(page);
  await expect(page.getByRole("tab", { name: /^Findings \d+ ?, \d+ cannot tell$/ })).toBeVisible();
  await showPane(page, "Findings");
  const open = pane(page).getByRole("listitem").filter({ hasText: "the room of B1" });
  await open.locator(".finding-meta").getByRole("button", { name: "B1" }).click();
  await expect(pane(page).getByRole("textbox", { name: "Name" })).toHaveValue("B1");
  await showPane(page, "Rooms");
  await pane(page).getByLabel("Room of B1").selectOption({ label: "new: laundry" });
  await expect(pane(page).getByLabel("Room of B1").locator("option:checked")).toHaveText("Laundry");
  await page.getByRole("button", { name: /^Undo: Put it in a new room/ }).click();
  await expect(pane(page).getByLabel("Room of B1").locator("option:checked")).toHaveText("no room");
});

test("a finding is explained in words, and the letters of the sheet have a legend", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await showPane(page, "Findings");
  const finding = pane(page).getByRole("listitem").filter({ hasText: "B1 needs 32.0625 in³" });
  await finding.getByRole("button", { name: /^Explain/ }).click();
  const help = page.getByRole("dialog", { name: /^A box must have room/ });
  await expect(help).toContainText("B1 needs 32.0625 in³");
  await expect(help).not.toContainText("{box}");
  await page.keyboard.press("Escape");
  await page.getByRole("button", { name: "Help and view" }).click();
  await page.getByRole("menuitem", { name: "Signs and letters" }).click();
  const legend = page.getByRole("dialog", { name: "Signs and letters" });
  await expect(legend).toContainText("F: floating");
  await expect(legend).toContainText("new in proposed");
  await expectAccessible(page, "legend");
});

test("where no supply is drawn no splice is said to float", async ({ quietPage: page, address }) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await runByField(page, "B1");
  await page.getByRole("button", { name: "Selection", exact: true }).click();
  await expect(page.locator(".sheet-role-ungrounded").first()).toBeVisible();
  await runByField(page, "P");
  await page.keyboard.press("Control+k");
  await page.keyboard.type("Remove P");
  await page.keyboard.press("Enter");
  await expect(box(page, "P")).toHaveCount(0);
  await checked(page);
  await expect(page.locator(".sheet-role-ungrounded")).toHaveCount(0);
  await expect(page.locator(".sheet-role-floating")).toHaveCount(0);
});

test("in a small window the command field stays in it and nothing runs into the next pane", async ({
  quietPage: page,
  address,
}) => {
  await page.setViewportSize({ width: 1024, height: 700 });
  await openWindow(page, address);
  await openLaundrySample(page);
  const field = await page.getByRole("combobox", { name: "Command, part, tag or finding" }).boundingBox();
  expect(field).not.toBeNull();
  expect((field?.x ?? 0) + (field?.width ?? 0)).toBeLessThanOrEqual(1024);
  expect(field?.width ?? 0).toBeGreaterThan(80);
  const side = await pane(page).boundingBox();
  const status = page.getByRole("contentinfo");
  const ends = await status
    .locator("span:visible")
    .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().right));
  expect(Math.max(...ends)).toBeLessThanOrEqual(side?.x ?? 0);
  await expect(page.getByText(/^revision/)).toBeHidden();
});
