import { expect, type Locator, type Page } from "@playwright/test";
import { expectAccessible, openLaundrySample, openWindow, quickly, runByField, test } from "./support/window-test.ts";

/** Fits and zooms do not glide for people who ask for less motion. */
test.use({ contextOptions: { reducedMotion: "reduce" } });

test("boxes from near, middle and afar stand at the same place, and open and close where they stand", async ({
  quietPage: page,
  address,
}) => {
  test.setTimeout(180_000);
  await openWindow(page, address);
  await openLaundrySample(page);
  const detail = page.getByRole("group", { name: "Detail" });
  await expect(detail.getByRole("button", { name: "middle" })).toHaveAttribute("aria-pressed", "true");

  // Middle: name, devices, tabs, how full it is, and cables with their size and length.
  await expect(box(page, "B1").locator(".sheet-middle-id")).toHaveText("R1");
  await expect(box(page, "B1").locator(".sheet-middle-tab")).toHaveCount(5);
  await expect(box(page, "B1").locator(".sheet-middle-figures")).toHaveText(/^32\.0625 of 30\.3/);
  await expect(page.locator(".sheet-road").filter({ hasText: /^C1.*12\/2.*55 ft/ })).toHaveCount(1);
  await expect(page.getByRole("button", { name: /end at B1/ })).toHaveCount(0);
  await expectAccessible(page, "middle");

  // A step of the wheel over the border between two levels moves no wall.
  for (const border of [0.45, 0.45 / 2 ** (7 / 3)]) {
    await zoomAbout(page, border * 1.004);
    const above = await wallOf(page, "B1");
    await zoomAbout(page, border * 0.996);
    const below = await wallOf(page, "B1");
    const scale = 0.996 / 1.004;
    expect(Math.abs(below.width - above.width * scale)).toBeLessThan(2.5);
    expect(Math.abs(below.height - above.height * scale)).toBeLessThan(2.5);
  }
  await expect(box(page, "B1").locator(".sheet-far")).toHaveCount(1);
  await expectAccessible(page, "far");
  await page.getByRole("button", { name: "Fit", exact: true }).click();

  // By keys: Enter opens and goes in, Escape closes and comes back.
  await box(page, "B1").focus();
  await page.keyboard.press("Enter");
  await expect(page.getByRole("button", { name: /^12\/2 C1 black end at B1/ })).toBeVisible();
  expect((await wallOf(page, "B1")).width).toBeGreaterThan(400);
  await expect(page.locator("[data-item]:focus")).toHaveCount(1);
  await expectAccessible(page, "a box opened");
  await page.keyboard.press("Escape");
  await expect(box(page, "B1")).toBeFocused();
  await expect(page.getByRole("button", { name: /end at B1/ })).toHaveCount(0);

  // By a double press; a second box by its button; both closed by theirs.
  const middle = await middleOf(box(page, "B2").locator(".sheet-wall-outer"));
  await page.mouse.dblclick(middle.x, middle.y);
  await expect(page.getByRole("button", { name: /^12\/2 C2 black end at B2/ })).toBeVisible();
  await pressWall(page, "B4");
  await page.getByRole("button", { name: "Open B4" }).click();
  await expect(page.getByRole("button", { name: /^12\/2 C3 black end at B4/ })).toBeVisible();
  await expect(page.getByRole("button", { name: /^12\/2 C2 black end at B2/ })).toBeVisible();

  // An end that is picked up in an opened box follows the pointer there, and lands by a press.
  await page.getByRole("button", { name: /^12\/2 C3 black end at B4/ }).click();
  const target = page.locator(".sheet-targets").getByRole("button", { name: /^Cap it/ });
  const aim = await middleOf(target.locator(".sheet-hit"));
  await page.mouse.move(aim.x, aim.y);
  const hand = await middleOf(page.locator(".sheet-hand-ring"));
  expect(Math.hypot(hand.x - aim.x, hand.y - aim.y)).toBeLessThan(2);
  await page.mouse.click(aim.x, aim.y);
  await expect(page.getByRole("button", { name: /^12\/2 C3 black end at B4, capped/ })).toBeVisible();
  await page.keyboard.press("ControlOrMeta+z");

  await page.getByRole("button", { name: "Close B4" }).click();
  await page.getByRole("button", { name: "Close B2" }).click();
  await expect(page.locator(".sheet-open-plate")).toHaveCount(0);

  // Gone to from elsewhere, it is told where on the sheet it lies.
  await runByField(page, "B3");
  await expect(page.getByText(/^B3, zone [A-F][1-8]\.$/)).toHaveCount(1);
  await page.getByRole("button", { name: "Fit", exact: true }).click();

  // By presses alone: stops of the title block, and the bar of the selected box.
  await pressWall(page, "B1");
  await detail.getByRole("button", { name: "near" }).click();
  await expect(page.getByRole("button", { name: /^12\/2 C1 black end at B1/ })).toBeVisible();
  await detail.getByRole("button", { name: "far" }).click();
  await expect(box(page, "B1").locator(".sheet-far")).toHaveCount(1);
  await bar(page).getByRole("button", { name: "Open" }).click();
  await expect(page.getByRole("button", { name: /^12\/2 C1 black end at B1/ })).toBeVisible();
  await bar(page).getByRole("button", { name: "Close" }).click();
  await expect(page.locator(".sheet-open-plate")).toHaveCount(0);
});

test("boxes are chosen by frame and by presses, aligned, spaced and nudged, each one step", async ({
  quietPage: page,
  address,
}) => {
  test.setTimeout(120_000);
  await openWindow(page, address);
  await openLaundrySample(page);

  // A frame with Shift adds; without it the sheet pans.
  const fourth = await wallOf(page, "B4");
  const sixth = await wallOf(page, "B6");
  await page.keyboard.down("Shift");
  await dragMouse(page, { x: fourth.x - 12, y: fourth.y - 25 }, { x: sixth.x + 12, y: sixth.y + 12 });
  await page.keyboard.up("Shift");
  await expect(bar(page)).toContainText("2 boxes");
  await page.keyboard.down("Shift");
  await pressWall(page, "B3");
  await page.keyboard.up("Shift");
  await expect(bar(page)).toContainText("3 boxes");
  await expectAccessible(page, "three boxes selected");

  // By presses alone the same: choose several, press, press.
  await page.keyboard.press("Escape");
  await expect(bar(page)).toHaveCount(0);
  await pressWall(page, "B2");
  await bar(page).getByRole("button", { name: "Choose several" }).click();
  await pressWall(page, "B3");
  await pressWall(page, "B6");
  await expect(bar(page)).toContainText("3 boxes");
  await pressWall(page, "B6");
  await expect(bar(page)).toContainText("2 boxes");
  const first = await wallOf(page, "B6");
  await dragMouse(page, { x: first.x - 20, y: first.y - 30 }, { x: first.x + 20, y: first.y + 20 });
  await expect(bar(page)).toContainText("3 boxes");
  await expectAccessible(page, "choosing several");
  await bar(page).getByRole("button", { name: "Done choosing" }).click();

  // Aligned by a press in the bar.
  await bar(page).getByRole("button", { name: "Arrange" }).click();
  await expectAccessible(page, "arrange menu");
  await page.getByRole("menuitem", { name: "Right edges on one line" }).click();
  const right = async (name: string): Promise<number> => {
    const { x, width } = await wallOf(page, name);
    return x + width;
  };
  const line = await right("B3");
  for (const name of ["B2", "B6"]) expect(Math.abs((await right(name)) - line)).toBeLessThan(1);
  await expect(undoButton(page, "Align 3 boxes")).toBeEnabled();

  // Spaced by the command field.
  await runByField(page, "Even gaps down");
  const walls = await Promise.all(["B6", "B2", "B3"].map((name) => wallOf(page, name)));
  const gaps = walls.slice(1).map((wall, i) => wall.y - ((walls[i]?.y ?? 0) + (walls[i]?.height ?? 0)));
  expect(Math.abs((gaps[0] ?? 0) - (gaps[1] ?? 0))).toBeLessThan(1);
  await expect(undoButton(page, "Space 3 boxes")).toBeEnabled();

  // Nudged by keys: quick presses are one step, and Shift goes further.
  await page.keyboard.press("ControlOrMeta+z");
  await page.keyboard.press("ControlOrMeta+z");
  await box(page, "B2").focus();
  const before = await wallOf(page, "B2");
  await quickly(page, async () => {
    for (const key of ["Alt+ArrowDown", "Alt+ArrowDown", "Alt+Shift+ArrowDown"]) await page.keyboard.press(key);
  });
  const zoom = before.width / (await widthOnSheet(page, "B2"));
  const after = await wallOf(page, "B2");
  expect(Math.abs(after.y - before.y - 7 * 16 * zoom)).toBeLessThan(1);
  await page.keyboard.press("ControlOrMeta+z");
  await expect.poll(async () => Math.abs((await wallOf(page, "B2")).y - before.y)).toBeLessThan(1);
});

test("a dragged box clicks onto the lines of its neighbours, with Alt onto nothing", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  const second = await wallOf(page, "B2");
  const third = await wallOf(page, "B3");
  const at = { x: third.x + 15, y: third.y + 3 };
  await page.mouse.move(at.x, at.y);
  await page.mouse.down();
  // The first pixels only tell a drag from a press: they do not move the box.
  const from = { x: at.x - 10, y: at.y + 2 };
  await page.mouse.move(from.x, from.y);
  // Three pixels beside the left edge of B2, further from its other lines.
  await page.mouse.move(from.x + second.x - third.x - 3, from.y + 8, { steps: 3 });
  await expect(page.locator(".sheet-guide")).not.toHaveCount(0);
  expect(Math.abs((await wallOf(page, "B3")).x - second.x)).toBeLessThan(0.5);
  await page.keyboard.down("Alt");
  await page.mouse.move(from.x + second.x - third.x - 4, from.y + 8);
  await page.mouse.move(from.x + second.x - third.x - 3, from.y + 8);
  await expect(page.locator(".sheet-guide")).toHaveCount(0);
  expect(Math.abs((await wallOf(page, "B3")).x - second.x + 3)).toBeLessThan(1);
  await page.keyboard.up("Alt");
  await page.mouse.move(from.x + second.x - third.x - 2, from.y + 8);
  await page.mouse.up();
  await expect(page.locator(".sheet-guide")).toHaveCount(0);
  expect(Math.abs((await wallOf(page, "B3")).x - second.x)).toBeLessThan(0.5);
  await expect(undoButton(page, "Move B3")).toBeEnabled();
});

test("a circuit is laid out by its menu, everything by the Edit menu, and one undo takes each back", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  const panel = await wallOf(page, "P");
  const before = await wallOf(page, "B4");
  await box(page, "B1").focus();
  await page.keyboard.press("Space");
  await page.keyboard.press("Shift+F10");
  await page.getByRole("menuitem", { name: "Lay out the circuit of B1" }).press("Enter");
  await expect(undoButton(page, "Lay out the circuit of B1")).toBeEnabled();
  const after = await wallOf(page, "P");
  expect(Math.abs(after.x - panel.x) + Math.abs(after.y - panel.y)).toBeLessThan(1);
  for (const name of ["B1", "B2", "B4", "B5", "B6", "B7", "B3"])
    expect((await wallOf(page, name)).x).toBeGreaterThan(after.x + after.width);
  await page.keyboard.press("ControlOrMeta+z");
  await expect.poll(async () => Math.abs((await wallOf(page, "B4")).x - before.x)).toBeLessThan(0.5);

  await page.getByRole("button", { name: "Edit", exact: true }).click();
  await page.getByRole("menuitem", { name: "Arrange the drawing by circuit" }).click();
  await expect(undoButton(page, "Arrange the drawing by circuit")).toBeEnabled();

  // What is pasted and doubled by the menu of the sheet is the same as by keys.
  await page.getByRole("button", { name: "Fit", exact: true }).click();
  await box(page, "B3").focus();
  await page.keyboard.press("Escape");
  await page.keyboard.press("Space");
  await page.keyboard.press("Shift+F10");
  for (const words of ["Cut", "Copy", "Paste", "Duplicate"])
    await expect(page.getByRole("menuitem", { name: words, exact: true })).toBeVisible();
  await page.getByRole("menuitem", { name: "Duplicate", exact: true }).click();
  await expect(undoButton(page, "Duplicate")).toBeEnabled();
  await expect(bar(page)).toContainText("B8");
});

const box = (page: Page, name: string): Locator =>
  page.getByRole("group", { name: new RegExp(`^(Box|Panel) ${name}\\b`) });
const bar = (page: Page): Locator => page.getByRole("group", { name: "Selected boxes" });
const undoButton = (page: Page, step: string): Locator =>
  page.getByRole("button", { name: new RegExp(`^Undo ?: ${step}`) });

interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

async function wallOf(page: Page, name: string): Promise<Area> {
  const wall = await box(page, name).locator(".sheet-wall-outer").boundingBox();
  if (wall === null) throw new Error(`${name} is not in view.`);
  return wall;
}

async function middleOf(locator: Locator): Promise<{ readonly x: number; readonly y: number }> {
  const area = await locator.boundingBox();
  if (area === null) throw new Error(`Not in view: ${locator}`);
  return { x: area.x + area.width / 2, y: area.y + area.height / 2 };
}

/** Of the outer wall, in drawing units. */
const widthOnSheet = async (page: Page, name: string): Promise<number> =>
  Number(await box(page, name).locator(".sheet-wall-outer").getAttribute("width"));

async function pressWall(page: Page, name: string): Promise<void> {
  const { x, y } = await wallOf(page, name);
  await page.mouse.click(x + 8, y + 2);
}

interface At {
  readonly x: number;
  readonly y: number;
}

async function dragMouse(page: Page, from: At, to: At): Promise<void> {
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(to.x, to.y, { steps: 4 });
  await page.mouse.up();
}

/** Turns the wheel over the middle of B1 until the drawing has a size. */
async function zoomAbout(page: Page, wanted: number): Promise<void> {
  const scale = (): Promise<number> =>
    page.locator(".react-flow__viewport").evaluate((element) => new DOMMatrix(getComputedStyle(element).transform).a);
  for (let turn = 0; turn < 40; turn++) {
    const now = await scale();
    if (Math.abs(now / wanted - 1) < 0.0015) return;
    const { x, y } = await middleOf(box(page, "B1").locator(".sheet-wall-outer"));
    await page.mouse.move(x, y);
    // The flow makes a size 2^(-delta / 500) times as large.
    await page.mouse.wheel(0, -Math.log2(wanted / now) * 500);
    await expect.poll(scale).not.toBe(now);
  }
  throw new Error(`The drawing did not come to size ${wanted}, it has ${await scale()}.`);
}
