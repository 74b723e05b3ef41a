/** The first box that a person draws: what is tried first is what works. */
import { expect, type Locator, type Page } from "@playwright/test";
import { checked, openStart, openWindow, pane, runByField, test } from "./support/window-test.ts";

test.use({ contextOptions: { reducedMotion: "reduce" } });

const inBox = (page: Page, name: string | RegExp): Locator =>
  page.locator(".sheet-flow").getByRole("button", { name }).first();

interface Spot {
  readonly x: number;
  readonly y: number;
}

async function middleOf(thing: Locator): Promise<Spot> {
  const area = await thing.boundingBox();
  if (area === null) throw new Error("It is not in view.");
  return { x: area.x + area.width / 2, y: area.y + area.height / 2 };
}

async function drag(page: Page, from: Spot, to: Spot): Promise<void> {
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move((from.x + to.x) / 2, (from.y + to.y) / 2, { steps: 4 });
  await page.mouse.move(to.x, to.y, { steps: 4 });
  await page.mouse.up();
  await checked(page);
}

const end = (page: Page, cable: string, colour: string): Locator =>
  inBox(page, new RegExp(`^12/2 ${cable} ${colour} end`));
const splice = (page: Page, name: string): Locator => inBox(page, new RegExp(`^Splice ${name}\\b`));
const undoOf = (page: Page, words: RegExp): Locator => page.getByRole("button", { name: words });

/** The screw of the first terminal with a letter. */
const terminal = (page: Page, letter: string): Promise<Spot> =>
  middleOf(
    page
      .locator(".sheet-flow .sheet-terminal")
      .filter({ hasText: new RegExp(`^${letter}`) })
      .first()
      .locator(".sheet-screw"),
  );

test("a splice dragged onto a screw is a pigtail; a screw dragged onto a splice is one too; elsewhere a splice moves", async ({
  quietPage: page,
  address,
}) => {
  await openStart(page, address);
  await page.getByRole("button", { name: "Start as found" }).click();
  await checked(page);
  await drag(page, await middleOf(end(page, "C1", "black")), await middleOf(end(page, "C2", "black")));
  await drag(page, await middleOf(splice(page, "H1")), await terminal(page, "H"));
  await expect(undoOf(page, /^Undo: Add jumper a from splice H1 to R1 H/)).toBeVisible();

  // On the body of the splice, not on the ring of its free row.
  await drag(page, await middleOf(end(page, "C1", "white")), await middleOf(end(page, "C2", "white")));
  const from = await terminal(page, "N");
  const to = await splice(page, "N1").boundingBox();
  if (to === null) throw new Error("N1 is in view.");
  await drag(page, from, { x: to.x + to.width / 2, y: to.y + 12 });
  await expect(undoOf(page, /^Undo: Add jumper b from R1 N.* to splice N1/)).toBeVisible();

  // By presses: the press that takes an end lands it nowhere, though others lie near; one on the body of a splice does.
  const bare = await middleOf(end(page, "C1", "bare"));
  const onSplice = await splice(page, "N1").boundingBox();
  if (onSplice === null) throw new Error("N1 is in view.");
  await page.mouse.click(bare.x, bare.y);
  await expect(page.getByRole("group", { name: "In the hand" })).toContainText("Holding C1 bare");
  await page.mouse.click(onSplice.x + onSplice.width / 2, onSplice.y + 12);
  await expect(undoOf(page, /^Undo: Join C1 bare to splice N1/)).toBeVisible();
  await page.keyboard.press("Control+z");
  await checked(page);

  const before = await middleOf(splice(page, "N1"));
  await drag(page, before, { x: before.x - 30, y: before.y + 90 });
  await expect(undoOf(page, /^Undo: Move splice N1/)).toBeVisible();
  await expect(inBox(page, /^Jumper c /)).toHaveCount(0);
});

test("boxes that are put down on each other stand clear, and all that was in sight stays in sight", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  const stock = page.getByRole("navigation", { name: "Stock" });
  const put = async (title: string, position: Spot): Promise<void> => {
    await stock.getByRole("searchbox", { name: "Find in stock" }).fill(title);
    await stock.getByRole("button", { name: title }).first().click();
    await page.locator(".sheet-flow").click({ position });
  };
  await put("Nonmetallic new-work, 1 gang", { x: 370, y: 280 });
  await put("Panel, 16 spaces", { x: 60, y: 280 });
  const host = await page.locator(".sheet-flow").boundingBox();
  const areas = await Promise.all(
    ["Box B1", "Panel P"].map((name) => page.getByRole("group", { name: new RegExp(`^${name}\\b`) }).boundingBox()),
  );
  const [box, panel] = areas;
  if (host === null || !box || !panel) throw new Error("All are in view.");
  expect(panel.x + panel.width < box.x || panel.y + panel.height < box.y).toBe(true);
  for (const area of [box, panel]) {
    expect(area.x).toBeGreaterThanOrEqual(host.x);
    expect(area.y).toBeGreaterThanOrEqual(host.y);
    expect(area.x + area.width).toBeLessThanOrEqual(host.x + host.width);
    expect(area.y + area.height).toBeLessThanOrEqual(host.y + host.height);
  }

  // From the details, to where nothing is drawn; and the room is asked for without looking for it.
  await runByField(page, "B1");
  await pane(page).getByLabel("to", { exact: true }).first().selectOption({ label: "a place not drawn" });
  await pane(page).getByRole("button", { name: "Add the cable" }).click();
  await expect(pane(page).getByRole("heading", { name: "Leaves this drawing" })).toBeVisible();
  await runByField(page, "B1");
  await pane(page).getByLabel("Room", { exact: true }).selectOption({ label: "new: bedroom" });
  await expect(undoOf(page, /^Undo: Put it in a new room/)).toBeVisible();
});
