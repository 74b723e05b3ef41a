import { expect, type Locator, type Page } from "@playwright/test";
import { answerPickers, choose } from "./support/stored-files.ts";
import {
  checked,
  expectAccessible,
  openLaundrySample,
  openWindow,
  quickly,
  shownMessages,
  showPane,
  test,
} from "./support/window-test.ts";

/**
 * The laundry box of a 1962 bungalow, drawn by mouse from an empty sheet down to its conductor ends: a metal 4 in.
 * square box of 30.3 in³ with clamps, five 12/2 cables and one duplex. Its fill by hand, in in³ (12 AWG: 2.25 each):
 * 10 insulated 22.50 + clamps 2.25 + yoke 2 × 2.25 + five grounds 2.25 and a quarter of it = 32.0625.
 */
test("the laundry box is drawn by mouse, its three mistakes show and go, and a saved file brings the same findings", async ({
  quietPage: page,
  address,
}) => {
  test.setTimeout(180_000);
  await answerPickers(page);
  await openWindow(page, address);
  await expect(page.getByRole("heading", { name: "Nothing is drawn yet" })).toBeVisible();
  await expectAccessible(page, "empty sheet");

  // Boxes: one is dragged, the others are taken and put down.
  for (let i = 0; i < 4; i++) await page.getByRole("button", { name: "Smaller" }).click();
  await settle(page);
  await stock(page, "4 in. square × 2-1/8").dragTo(sheet(page), { targetPosition: { x: 330, y: 300 } });
  await expect(box(page, "B1")).toBeVisible();
  await place(page, "Panel, 16 spaces", { x: 40, y: 300 });
  await place(page, "Device 3 × 2 × 3-1/2", { x: 600, y: 330 });
  await place(page, "Weatherproof FD", { x: 600, y: 90 });
  await place(page, "Device 3 × 2 × 3-1/2", { x: 80, y: 60 });
  await place(page, "Device 3 × 2 × 3-1/2", { x: 80, y: 520 });
  for (const name of ["P", "B1", "B2", "B3", "B4", "B5"]) await expect(box(page, name)).toBeVisible();

  await putIn(page, "P", "Breaker, one-pole");
  await putIn(page, "B1", "Grounding duplex, 20 A");
  await putIn(page, "B4", "GFCI receptacle");
  await route(page, "P", "B1");
  for (const far of ["B2", "B4", "B5"]) await route(page, "B1", far);

  // Four cables fit; the fifth is one too many.
  const overfull = mark(page, /^violation.* at B1:.*32\.0625/);
  await drawCable(page, "B1", "B3");
  await approach(page, "B1");
  await expect(page.getByText("32.0625 of 30.3 in³")).toBeVisible();
  await expect(overfull).toBeVisible();
  expect(await findings(page)).toContain("32.0625");
  await undo(page);
  await expect(overfull).toHaveCount(0);
  expect(await findings(page)).not.toContain("32.0625");
  await redo(page);
  await expect(overfull).toBeVisible();

  // Splices: the first two ends make one, the others join it, by drag and by press.
  for (const [colour, code, name] of [
    ["black", "BK", "H1"],
    ["white", "WH", "N1"],
    ["bare", "bare", "E1"],
  ] as const) {
    await approach(page, "B1");
    await dragEnd(page, `C1 ${colour} end at B1`, new RegExp(`^Splice with C2 ${code}`));
    await dragEnd(page, `C3 ${colour} end at B1`, new RegExp(`^Splice ${name}`));
    await pressEnd(page, `C4 ${colour} end at B1`, new RegExp(`^Splice ${name}`));
    await pressEnd(page, `C5 ${colour} end at B1`, new RegExp(`^Splice ${name}`));
    await expect(page.getByRole("button", { name: new RegExp(`^Splice ${name}, 5 × 12`) })).toBeVisible();
  }
  await jumper(page, "H1", /^R1 H/);
  await jumper(page, "N1", /^R1 N/);
  await jumper(page, "E1", /^R1 G/);
  await jumper(page, "E1", /^Box ground screw/);
  await expect(page.getByRole("button", { name: "Jumper a black end at B1, on R1 H" })).toBeVisible();

  // A place that cannot be is struck and says why: a jumper from a terminal to itself.
  await page.getByRole("button", { name: / R1, box / }).click({ button: "right" });
  await page.getByRole("menuitem", { name: "Pigtail or jumper from" }).click();
  await page.getByRole("menuitem", { name: "R1 H" }).first().click();
  const struck = await middleOf(ring(target(page, /^R1 H.*: not possible\. /)));
  await page.mouse.click(struck.x, struck.y);
  await expect(page.getByText(/^Not possible: R1 H/)).toBeVisible();
  await page.getByRole("button", { name: "Close" }).click();
  await page.keyboard.press("Escape");
  await expect(page.locator(".sheet-targets")).toHaveCount(0);

  // The laundry asks for protection; the duplex has none once the breaker feeds it.
  await showPane(page, "Rooms");
  await page.getByRole("button", { name: "Add room" }).click();
  await page.getByRole("combobox", { name: "Room of B1" }).selectOption({ label: "Laundry" });
  await approach(page, "P");
  await pressEnd(page, "C1 white end at P", /^Neutral bar N, hole 1,/);
  await pressEnd(page, "C1 bare end at P", /^Ground bar G, hole 1,/);
  expect(await findings(page)).not.toMatch(UNPROTECTED);
  await pressEnd(page, "C1 black end at P", /^CB1/);
  await approach(page, "B1");
  const unprotected = mark(page, /^violation.* at R1: .*needs ground-fault protection/);
  await expect(unprotected).toBeVisible();
  expect(await findings(page)).toMatch(UNPROTECTED);
  await undo(page);
  await expect(unprotected).toHaveCount(0);
  expect(await findings(page)).not.toMatch(UNPROTECTED);
  await redo(page);
  await expect(unprotected).toBeVisible();

  // While an end is held every place says what it would mean.
  await end(page, "C1 white end at B1").click();
  await expect(target(page, /^Splice H1,.*possible, danger would follow/)).toBeVisible();
  await expectAccessible(page, "end in the hand");
  await page.keyboard.press("Escape");
  await expect(page.locator(".sheet-targets")).toHaveCount(0);
  await expect(end(page, "C1 white end at B1, in splice N1")).toBeVisible();

  // LINE and LOAD: landed right, then mixed up by keyboard, then undone.
  await approach(page, "B4");
  await pressEnd(page, "C3 black end at B4", /LINE H, hole 1/);
  await pressEnd(page, "C3 white end at B4", /LINE N, hole 1/);
  const mixedUp = mark(page, / at R2: The supply C3 is on LOAD of R2/);
  await expect(mixedUp).toHaveCount(0);
  await landByKeys(page, "C3 black end at B4", /LOAD H, hole 1/);
  await landByKeys(page, "C3 white end at B4", /LOAD N, hole 1/);
  await expect(mixedUp).toBeVisible();
  expect(await findings(page)).toContain("is on LOAD of R2 in B4");
  await expectAccessible(page, "findings on the sheet");
  await undo(page);
  await undo(page);
  await expect(mixedUp).toHaveCount(0);
  expect(await findings(page)).not.toContain("is on LOAD of R2 in B4");

  // The menu of a box, by key.
  await box(page, "B4").focus();
  await page.keyboard.press("Shift+F10");
  await expect(page.getByRole("menuitem", { name: "Remove B4" })).toBeVisible();
  await expectAccessible(page, "menu open");
  await page.keyboard.press("Escape");

  // Saved, read again, and found the same.
  const before = await findings(page);
  expect(before).toContain("32.0625");
  await choose(page, "laundry.loadside");
  await page.keyboard.press("ControlOrMeta+s");
  await expect(page.getByRole("banner").getByText("saved", { exact: true })).toBeVisible();
  await page.reload();
  await expect(page.getByRole("heading", { name: "Loadside" })).toBeVisible();
  await page.keyboard.press("ControlOrMeta+o");
  await expect(box(page, "B1")).toBeVisible();
  expect(await findings(page)).toEqual(before);
});

test("boxes are moved, cables run to open country, things are removed, and undo brings each back", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await settle(page);

  // Dragging previews and is one step; arrow keys move by the pitch of the drawing.
  const at = async (name: string) => {
    const area = await box(page, name).locator(".sheet-wall-outer").boundingBox();
    return { x: Math.round(area?.x ?? 0), y: Math.round(area?.y ?? 0) };
  };
  const before = await at("B3");
  await page.mouse.move(before.x + 20, before.y + 3);
  await page.mouse.down();
  await page.mouse.move(before.x + 18, before.y + 1);
  await page.mouse.move(before.x - 60, before.y - 57, { steps: 4 });
  await expect(page.getByRole("button", { name: "Undo", exact: true })).toBeDisabled();
  await page.mouse.up();
  await expect(page.getByRole("button", { name: /^Undo ?: Move B3/ })).toBeEnabled();
  const after = await at("B3");
  expect(Math.abs(before.x - 80 - after.x) + Math.abs(before.y - 60 - after.y)).toBeLessThan(12);
  await undo(page);
  await expect.poll(async () => Math.abs((await at("B3")).y - before.y)).toBeLessThan(3);

  await box(page, "B3").focus();
  await quickly(page, async () => {
    for (let i = 0; i < 5; i++) await page.keyboard.press("Alt+Shift+ArrowUp");
  });
  await expect.poll(async () => (await at("B3")).y).toBeLessThan(before.y - 20);
  await undo(page);
  await expect.poll(async () => Math.abs((await at("B3")).y - before.y)).toBeLessThan(3);

  // Two boxes in a frame move together; the frame adds to what is selected, so nothing is first.
  await box(page, "B3").focus();
  await page.keyboard.press("Escape");
  const fourth = await at("B4");
  const sixth = await at("B6");
  await page.keyboard.down("Shift");
  await page.mouse.move(fourth.x - 30, fourth.y - 30);
  await page.mouse.down();
  await page.mouse.move(sixth.x + 30, sixth.y + 30, { steps: 3 });
  await page.mouse.up();
  await page.keyboard.up("Shift");
  await box(page, "B4").focus();
  await page.keyboard.press("Alt+Shift+ArrowUp");
  await expect(page.getByRole("button", { name: /^Undo ?: Move 2 boxes/ })).toBeEnabled();
  await undo(page);

  // A cable to open country, by keys alone.
  await take(page, "14/2 with ground");
  await box(page, "B7").focus();
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: "Leaves this drawing" }).press("Enter");
  await expect(page.getByRole("button", { name: /^Undo ?: Run C8/ })).toBeEnabled();
  await approach(page, "B7");
  await expect(page.getByRole("button", { name: /^14\/2 C8 black end at B7, capped/ })).toBeVisible();

  // From afar Enter goes into a box, and arrow keys walk through what is in it.
  await page.getByRole("button", { name: "Fit", exact: true }).click();
  await settle(page);
  await box(page, "B7").focus();
  await page.keyboard.press("Enter");
  await expect(page.getByRole("button", { name: /^Cable C7/ })).toBeFocused();
  await page.keyboard.press("ArrowLeft");
  await expect(
    page.getByRole("button", { name: /^12\/2 C7 (black|white|bare) end at B7/ }).and(page.locator(":focus")),
  ).toBeVisible();

  // A new jumper in the hand is dropped by Escape.
  await page.getByRole("button", { name: /^Luminaire L1, / }).click({ button: "right" });
  await page.getByRole("menuitem", { name: "Pigtail or jumper from" }).press("ArrowRight");
  await page.getByRole("menuitem", { name: /^L1 H/ }).press("Enter");
  await expect(page.getByText("A new jumper")).toBeVisible();
  await expectAccessible(page, "a jumper in the hand");
  await page.keyboard.press("Escape");
  await expect(page.locator(".sheet-targets")).toHaveCount(0);

  // Let go over nothing, an end goes back where it was.
  const loose = page.getByRole("button", { name: /^14\/2 C8 white end at B7, capped/ });
  const from = await middleOf(loose);
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(from.x + 30, from.y + 30, { steps: 3 });
  await expect(page.locator(".sheet-targets")).toHaveCount(1);
  const wall = await at("B7");
  await page.mouse.move(wall.x + 40, wall.y - 40);
  await page.mouse.up();
  await expect(page.locator(".sheet-targets")).toHaveCount(0);
  await expect(loose).toBeVisible();
  await expect(page.getByRole("button", { name: /^Undo ?: Run C8/ })).toBeEnabled();

  // A splice that is dragged keeps its place until it is told to place itself.
  const splice = page.getByRole("button", { name: /^Splice E_B7,/ });
  const spliceAt = await middleOf(splice);
  await page.mouse.move(spliceAt.x, spliceAt.y);
  await page.mouse.down();
  await page.mouse.move(spliceAt.x, spliceAt.y - 70, { steps: 4 });
  await page.mouse.up();
  await expect(page.getByRole("button", { name: /^Undo ?: Move splice E_B7/ })).toBeEnabled();
  await expect.poll(async () => (await middleOf(splice)).y).toBeLessThan(spliceAt.y - 30);

  // Removing a box takes its cables with it.
  await page.getByRole("button", { name: "Fit", exact: true }).click();
  await settle(page);
  await box(page, "B7").focus();
  await page.keyboard.press("Delete");
  await expect(box(page, "B7")).toHaveCount(0);
  await undo(page);
  await expect(box(page, "B7")).toBeVisible();
});

const UNPROTECTED = /^R1 in B1 .*needs ground-fault protection/m;

const sheet = (page: Page): Locator => page.locator(".sheet-flow");
const box = (page: Page, name: string): Locator =>
  page.getByRole("group", { name: new RegExp(`^(Box|Panel) ${name}\\b`) });
const stock = (page: Page, title: string): Locator =>
  page.getByRole("navigation", { name: "Stock" }).getByRole("button", { name: title }).first();
const end = (page: Page, words: string): Locator => page.getByRole("button", { name: new RegExp(`^12/2 ${words}\\b`) });
const target = (page: Page, words: RegExp): Locator =>
  page.locator(".sheet-targets").getByRole("button", { name: words }).first();
/** The ring of a target, without the sign or the reason beside it. */
const ring = (of: Locator): Locator => of.locator(".sheet-hit");
const mark = (page: Page, words: RegExp): Locator => page.locator(".sheet-marks").getByRole("button", { name: words });

const undo = (page: Page): Promise<void> => page.keyboard.press("ControlOrMeta+z");
const redo = (page: Page): Promise<void> => page.keyboard.press("ControlOrMeta+Shift+z");

/** Fits and zooms do not glide for people who ask for less motion, so two frames after one it is where it goes. */
test.use({ contextOptions: { reducedMotion: "reduce" } });
const settle = (page: Page): Promise<void> =>
  page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))));

async function middleOf(locator: Locator): Promise<{ readonly x: number; readonly y: number }> {
  const area = await locator.boundingBox();
  if (area === null) throw new Error(`Not in view: ${locator}`);
  return { x: area.x + area.width / 2, y: area.y + area.height / 2 };
}

/** Takes an item from the stock; the list shows every item whose words match. */
async function take(page: Page, title: string): Promise<void> {
  await page.getByRole("searchbox", { name: "Find in stock" }).fill(title);
  await stock(page, title).click();
}

/** Presses a box where nothing but the box itself is: on its top wall. */
async function press(page: Page, name: string): Promise<void> {
  const wall = await box(page, name).locator(".sheet-wall-outer").boundingBox();
  if (wall === null) throw new Error(`${name} is not in view.`);
  await page.mouse.click(wall.x + 8, wall.y + 3);
}

async function place(page: Page, title: string, at: { readonly x: number; readonly y: number }): Promise<void> {
  await take(page, title);
  await sheet(page).click({ position: at });
}

async function route(page: Page, from: string, to: string): Promise<void> {
  await take(page, "12/2 with ground");
  await press(page, from);
  await press(page, to);
}

/** As `route`, by dragging from the one box to the other. */
async function drawCable(page: Page, from: string, to: string): Promise<void> {
  await take(page, "12/2 with ground");
  const start = await middleOf(box(page, from).locator(".sheet-wall-outer"));
  const end = await middleOf(box(page, to).locator(".sheet-wall-outer"));
  await page.mouse.move(start.x, start.y);
  await page.mouse.down();
  await page.mouse.move(end.x, end.y, { steps: 4 });
  await expect(page.locator(".sheet-route-line")).toBeVisible();
  await page.mouse.up();
}

async function putIn(page: Page, name: string, device: string): Promise<void> {
  await take(page, device);
  await press(page, name);
}

/** Shows one box as large as the sheet. */
async function approach(page: Page, name: string): Promise<void> {
  await page.getByRole("button", { name: "Fit", exact: true }).click();
  await settle(page);
  await press(page, name);
  await page.getByRole("button", { name: "Selection", exact: true }).click();
  await settle(page);
}

/** Drags a conductor end onto a place and lets go. */
async function dragEnd(page: Page, words: string, onto: RegExp): Promise<void> {
  const from = await middleOf(end(page, words));
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(from.x + 12, from.y + 12, { steps: 2 });
  const to = await middleOf(ring(target(page, onto)));
  await page.mouse.move(to.x, to.y, { steps: 2 });
  await page.mouse.up();
  await expect(page.locator(".sheet-targets")).toHaveCount(0);
}

/** Presses a conductor end, then presses a place. */
async function pressEnd(page: Page, words: string, onto: RegExp): Promise<void> {
  await end(page, words).click();
  await ring(target(page, onto)).click();
  await expect(page.locator(".sheet-targets")).toHaveCount(0);
}

/** A jumper from a splice to a place, by the menu of the splice. */
async function jumper(page: Page, splice: string, onto: RegExp): Promise<void> {
  await page.getByRole("button", { name: new RegExp(`^Splice ${splice},`) }).click({ button: "right" });
  await page.getByRole("menuitem", { name: "Pigtail or jumper from here" }).click();
  await ring(target(page, onto)).click();
  await expect(page.locator(".sheet-targets")).toHaveCount(0);
}

/** Picks an end up with Enter, walks to a place with the arrow keys, and lands it with Enter. */
async function landByKeys(page: Page, words: string, onto: RegExp): Promise<void> {
  await end(page, words).focus();
  await page.keyboard.press("Enter");
  const wanted = target(page, onto);
  await expect(page.locator(".sheet-target:focus")).toBeVisible();
  for (let step = 0; step < 30; step++) {
    const at = await middleOf(ring(page.locator(".sheet-target:focus")));
    const to = await middleOf(ring(wanted));
    const dx = to.x - at.x;
    const dy = to.y - at.y;
    if (Math.hypot(dx, dy) < 2) break;
    const sideways = Math.abs(dx) > Math.abs(dy);
    await page.keyboard.press(sideways ? (dx > 0 ? "ArrowRight" : "ArrowLeft") : dy > 0 ? "ArrowDown" : "ArrowUp");
  }
  await expect(wanted).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(end(page, words)).toBeFocused();
}

/** Messages of all findings, once they belong to the drawing as it is. */
async function findings(page: Page): Promise<string> {
  await checked(page);
  return (await shownMessages(page)).join("\n");
}
