/** What hands do on the sheet, by real pointer and key events: cables, frames, names in place, menus, snap, undo, paste. */
import { expect, type Locator, type Page } from "@playwright/test";
import { checked, expectAccessible, openLaundrySample, openWindow, showPane, test } from "./support/window-test.ts";

test.use({ contextOptions: { reducedMotion: "reduce" } });

test("cables are drawn from box to box and their kind is typed while or after they are drawn", async ({
  quietPage: page,
  address,
}) => {
  await begin(page, address);
  // By the knob of a selected box; the kind is typed while the button is down.
  await pressWall(page, "B6");
  await dragKnobTo(page, "B7", () => page.keyboard.type("14-3"));
  await expect(undoButton(page, "Run C8 from B6 to B7")).toBeVisible();
  await showPane(page, "Details");
  await expect(page.locator(".pane")).toContainText("14/3");
  await undo(page);

  // Not typed, it is asked for, with the one that was drawn last first.
  await pressWall(page, "B6");
  await dragKnobTo(page, "B7");
  const kinds = page.getByRole("dialog", { name: "Cable from B6 to B7" });
  await expect(kinds.getByRole("option").first()).toContainText("14/3 with ground");
  await expect(kinds.getByRole("option").first()).toContainText("drawn last");
  await expectAccessible(page, "the kind of a drawn cable is asked");
  await page.keyboard.type("12/3");
  await page.keyboard.press("Enter");
  await expect(undoButton(page, "Run C8 from B6 to B7")).toBeVisible();
  await undo(page);

  // Given up by Escape, over its own box, or in the list, nothing was drawn and redo is still there.
  await pressWall(page, "B6");
  await dragKnobTo(page, "B7", () => page.keyboard.press("Escape"));
  await expect(page.getByRole("group", { name: "In the hand" })).toHaveCount(0);
  await pressWall(page, "B6");
  await dragKnobTo(page, "B6");
  await expect(page.getByRole("group", { name: "In the hand" })).toHaveCount(0);
  await pressWall(page, "B6");
  await dragKnobTo(page, "B7");
  await page.keyboard.press("Escape");
  await expect(page.getByRole("dialog")).toHaveCount(0);
  await expect(page.getByRole("group", { name: "In the hand" })).toHaveCount(0);
  await expect(page.getByRole("button", { name: /^Redo ?: Run C8/ })).toBeEnabled();

  // By presses alone.
  await pressWall(page, "B4");
  await page.getByRole("group", { name: "Selected boxes" }).getByRole("button", { name: "Run a cable" }).click();
  await expectAccessible(page, "a cable of no kind yet in the hand");
  await pressWall(page, "B6", false);
  await page.getByRole("option").filter({ hasText: "12/2 with ground" }).first().click();
  await expect(undoButton(page, "Run C8 from B4 to B6")).toBeVisible();

  // By keys alone.
  await box(page, "B5").focus();
  await page.keyboard.press("c");
  await page.keyboard.type("12/2");
  await expect(page.getByRole("textbox", { name: "Kind of cable" })).toHaveValue("12/2");
  await box(page, "B3").focus();
  await page.keyboard.press("Enter");
  await expect(undoButton(page, "Run C9 from B5 to B3")).toBeVisible();
});

test("frames add and take out, like things are selected, names change in place, and every menu says what it can do", async ({
  quietPage: page,
  address,
}) => {
  await begin(page, address);
  const words = page.locator(".sheet-bar-words");
  // B4 and B6 stand at the top; the frame cuts through B6.
  const b4 = await wallOf(page, "B4");
  const b6 = await wallOf(page, "B6");
  const from = { x: b4.x - 30, y: b4.y - 40 };
  const to = { x: b6.x + b6.width / 2, y: b6.y + b6.height + 6 };
  await frame(page, from, to, ["Shift"]);
  await expect(words).toHaveText("2 boxes");
  await frame(page, { x: b6.x - 30, y: from.y }, { x: b6.x + b6.width + 30, y: to.y }, ["Shift", "Alt"]);
  await expect(words).toHaveText("B4");
  await page.keyboard.press("Escape");
  await frame(page, from, to, ["Shift", "Control"]);
  await expect(words).toHaveText("B4");
  expect(await page.evaluate(() => getSelection()?.toString() ?? ""), "no words are marked").toBe("");
  await page.mouse.click(from.x, from.y);
  await page.keyboard.press("Control+a");
  await expect(words).toHaveText("8 boxes");

  // The circuit of a box, from its menu.
  await box(page, "B4").focus();
  await page.keyboard.press("Escape");
  await menuOfWall(page, "B4");
  await page.getByRole("menuitem", { name: "Select more" }).click();
  await page.getByRole("menuitem", { name: "Select the circuit of B4" }).click();
  await expect(words).toHaveText("7 boxes");

  // Names: F2 and Tab, pressed twice, Escape; one step each.
  await pressWall(page, "B3");
  await page.keyboard.press("F2");
  await expect(page.getByRole("textbox", { name: "Name of B3" })).toBeFocused();
  await expectAccessible(page, "a name changed in place");
  await page.keyboard.type("B30");
  await page.keyboard.press("Tab");
  await expect(page.getByRole("textbox", { name: "Name of B4" })).toBeFocused();
  await page.keyboard.type("B3");
  await page.keyboard.press("Escape");
  await expect(undoButton(page, "Rename B3 to B30")).toBeVisible();
  await box(page, "B5").locator(".sheet-middle-name").dblclick();
  const field = page.getByRole("textbox", { name: "Name of B5" });
  await expect(field).toBeFocused();
  await page.keyboard.press("Delete");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("alert")).toContainText("A name cannot be blank.");
  await page.keyboard.press("Escape");
  await expect(field).toHaveCount(0);
  await undo(page);
  await expect(box(page, "B3")).toBeVisible();

  // Menus.
  for (const [at, line] of [
    [page.locator("[data-road] .sheet-road-words").first(), /^Rename C\d/],
    [page.locator(".sheet-room-name").first(), /^Select the boxes in /],
  ] as const) {
    const { x, y } = await middleOf(at);
    await page.mouse.click(x, y, { button: "right" });
    await expect(page.getByRole("menuitem", { name: line })).toBeVisible();
    await expectAccessible(page, "a menu of the sheet");
    await page.keyboard.press("Escape");
  }
  await showPane(page, "Findings");
  await page.locator(".finding-message").first().click({ button: "right" });
  await expect(page.getByRole("menuitem", { name: "Copy what it says" })).toBeVisible();
  await expectAccessible(page, "the menu of a finding");
  await page.keyboard.press("Escape");
  await openBox(page, "B1");
  for (const [item, line] of [
    ["device", /^Replace R1…/],
    ["splice", /^Join an end to [XYZ]…/],
    ["end", /^Land .*…/],
  ] as const) {
    await page.locator(`[data-item^="${item} "]`).first().click({ button: "right" });
    await expect(page.getByRole("menuitem", { name: line })).toBeVisible();
    await page.keyboard.press("Escape");
  }
});

test("a box snaps with guides, a drag that is given up leaves no step, undo selects what it brings back, paste lands at the pointer of another window", async ({
  quietPage: page,
  context,
  address,
}) => {
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
  await begin(page, address);
  // Three pixels beside the left edge of B6, B2 comes onto it and a line shows; with Alt it does not.
  const b2 = await wallOf(page, "B2");
  const b6 = await wallOf(page, "B6");
  const grip = { x: b2.x + 20, y: b2.y + 3 };
  const aim = { x: grip.x + (b6.x - b2.x) + 3, y: grip.y + 90 };
  await page.mouse.move(grip.x, grip.y);
  await page.mouse.down();
  await page.mouse.move(aim.x, aim.y, { steps: 6 });
  await expect(page.locator(".sheet-guide").first()).toBeAttached();
  expect(Math.abs((await wallOf(page, "B2")).x - b6.x)).toBeLessThan(1);
  await page.keyboard.down("Alt");
  await page.mouse.move(aim.x, aim.y + 1);
  await expect(page.locator(".sheet-guide")).toHaveCount(0);
  expect(Math.abs((await wallOf(page, "B2")).x - b6.x)).toBeGreaterThan(2);
  await page.keyboard.up("Alt");
  // Given up, it stands where it stood, and no step is left.
  await page.keyboard.press("Escape");
  await page.mouse.up();
  expect(Math.abs((await wallOf(page, "B2")).x - b2.x)).toBeLessThan(1);
  await expect(page.getByRole("button", { name: "Undo", exact: true })).toBeDisabled();

  await pressWall(page, "B7");
  await page.keyboard.press("Delete");
  await expect(box(page, "B7")).toHaveCount(0);
  await pressWall(page, "B6");
  await undo(page);
  await expect(page.locator(".sheet-bar-words")).toHaveText("B7");

  await pressWall(page, "B1");
  await page.keyboard.press("Control+c");
  const other = await context.newPage();
  await openWindow(other, address);
  await other.keyboard.press("Control+v");
  await expect(box(other, "B1")).toBeVisible();
  for (let i = 0; i < 4; i++) await other.getByRole("button", { name: "Smaller" }).click();
  await settle(other);
  const first = await wallOf(other, "B1");
  const at = { x: first.x + first.width + 260, y: first.y + 140 };
  await other.mouse.move(at.x, at.y);
  await other.keyboard.press("Control+v");
  await expect(box(other, "B2")).toBeVisible();
  const second = await middleOf(box(other, "B2").locator(".sheet-wall-outer"));
  expect(Math.hypot(second.x - at.x, second.y - at.y), "from the pointer, which is over nothing").toBeLessThan(60);
  // The wiring came along: the splice is there, and nothing of it is shared with the first.
  await openBox(other, "B2");
  await expect(other.locator('[data-item^="splice "]')).toHaveCount(3);
  await checked(other);
});

async function begin(page: Page, address: string): Promise<void> {
  await openWindow(page, address);
  await openLaundrySample(page);
  await page.getByRole("button", { name: "Fit", exact: true }).click();
  await settle(page);
}

const settle = (page: Page): Promise<void> =>
  page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))));

const box = (page: Page, name: string): Locator =>
  page.getByRole("group", { name: new RegExp(`^(Box|Panel) ${name}\\b`) });
const undoButton = (page: Page, words: string): Locator =>
  page.getByRole("button", { name: new RegExp(`^Undo ?: ${words}`) });
const undo = (page: Page): Promise<void> => page.getByRole("button", { name: /^Undo/ }).first().click();

async function areaOf(at: Locator) {
  const area = await at.boundingBox();
  if (area === null) throw new Error("It is not in view.");
  return area;
}
const wallOf = (page: Page, name: string) => areaOf(box(page, name).locator(".sheet-wall-outer"));
async function middleOf(at: Locator) {
  const { x, y, width, height } = await areaOf(at);
  return { x: x + width / 2, y: y + height / 2 };
}

/** Presses a box where nothing but the box itself is. */
async function pressWall(page: Page, name: string, alone = true): Promise<void> {
  const wall = await wallOf(page, name);
  await page.mouse.click(wall.x + 8, wall.y + 3);
  if (alone) await expect(page.locator(".sheet-bar-words")).toHaveText(name);
}

async function menuOfWall(page: Page, name: string): Promise<void> {
  const wall = await wallOf(page, name);
  await page.mouse.click(wall.x + 8, wall.y + 3, { button: "right" });
}

async function openBox(page: Page, name: string): Promise<void> {
  await pressWall(page, name);
  await page.getByRole("group", { name: "Selected boxes" }).getByRole("button", { name: "Open" }).click();
  await settle(page);
}

/** Drags from the knob beside the selected box; `meanwhile` is done before the button comes up. */
async function dragKnobTo(page: Page, name: string, meanwhile = () => Promise.resolve()): Promise<void> {
  const knob = await middleOf(page.locator(".sheet-knob-ring"));
  const end = await middleOf(box(page, name).locator(".sheet-wall-outer"));
  await page.mouse.move(knob.x, knob.y);
  await page.mouse.down();
  await page.mouse.move(knob.x + 30, knob.y + 20, { steps: 2 });
  await page.mouse.move(end.x, end.y, { steps: 4 });
  await meanwhile();
  await page.mouse.up();
}

interface At {
  readonly x: number;
  readonly y: number;
}

async function frame(page: Page, from: At, to: At, keys: readonly string[]): Promise<void> {
  // Alt and Control count while the frame is drawn; Shift begins it.
  const [first = "", ...others] = keys;
  await page.keyboard.down(first);
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  for (const key of others) await page.keyboard.down(key);
  await page.mouse.move(to.x, to.y, { steps: 4 });
  await page.mouse.up();
  for (const key of keys) await page.keyboard.up(key);
}
