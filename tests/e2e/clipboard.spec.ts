/** Copying between two windows through the clipboard of the computer, by keys and by the menu. */
import { expect, type Locator, type Page } from "@playwright/test";
import {
  checked,
  expectAccessible,
  openLaundrySample,
  openWindow,
  pane,
  showPane,
  test,
} from "./support/window-test.ts";

test.beforeEach(({ context }) => context.grantPermissions(["clipboard-read", "clipboard-write"]));

test("a box goes from one window to another with its wiring, by keys, and undo takes it back in one step", async ({
  quietPage: page,
  context,
  address,
}) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  const names = await boxNames(page);
  await press(page, "B1");
  await page.keyboard.press("Control+c");
  const text = await clipboardText(page);
  expect(JSON.parse(text)).toMatchObject({ format: "loadside", title: "Parts of 1962 bungalow, laundry circuit" });
  expect(await boxNames(page)).toEqual(names);

  const other = await context.newPage();
  await openWindow(other, address);
  await other.locator(".sheet-region").click({ position: { x: 400, y: 300 } });
  await other.keyboard.press("Control+v");
  await expect(box(other, "B1")).toBeVisible();
  expect(await boxNames(other)).toEqual(["B1"]);
  await checked(other);
  await expect(pane(other)).toContainText("R1");
  await expectAccessible(other, "a pasted box");
  await other.keyboard.press("Control+v");
  await expect(box(other, "B2")).toBeVisible();
  await other.keyboard.press("Control+z");
  expect(await boxNames(other)).toEqual(["B1"]);
  await other.keyboard.press("Control+z");
  await expect(other.getByRole("heading", { name: "Nothing is drawn yet" })).toBeVisible();
});

test("cut, paste and duplicate in one window, by the menu too", async ({ quietPage: page, address }) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  const names = await boxNames(page);
  await press(page, "B6");
  await page.keyboard.press("Control+d");
  await expect(box(page, "B8")).toBeVisible();
  await page.keyboard.press("Control+x");
  await expect(box(page, "B8")).toHaveCount(0);
  expect(await boxNames(page)).toEqual(names);
  await page.keyboard.press("Control+v");
  await expect(box(page, "B8")).toBeVisible();
  for (const word of ["Copy", "Paste", "Cut"]) await chooseInEdit(page, word);
  await expect(box(page, "B9")).toHaveCount(0);
  expect(await boxNames(page)).toEqual([...names, "B8"].sort());
  await chooseInEdit(page, "Paste");
  await expect(box(page, "B9")).toBeVisible();
  await chooseInEdit(page, "Duplicate");
  await expect(box(page, "B10")).toBeVisible();
});

test("text fields keep their own copy and paste", async ({ quietPage: page, address }) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  const names = await boxNames(page);
  await press(page, "B6");
  await showPane(page, "Details");
  const field = pane(page).getByRole("textbox", { name: /name/i }).first();
  await field.click();
  await page.keyboard.press("Control+a");
  await page.keyboard.press("Control+c");
  expect(await clipboardText(page)).toBe("B6");
  await page.keyboard.press("End");
  await page.keyboard.press("Control+v");
  await expect(field).toHaveValue("B6B6");
  await page.keyboard.press("Escape");
  expect(await boxNames(page)).toEqual(names);
});

test("anything else on the clipboard is answered with a word and changes nothing", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  const names = await boxNames(page);
  await press(page, "B6");
  for (const [text, words] of [
    ["Buy a roll of 12/2", "What is on the clipboard is no part of a drawing."],
    ['{"format": "loadside", "asFound": {"__proto__": {}}}', "cannot be read as part of a drawing"],
    ["<script>document.title = 'taken'</script>", "What is on the clipboard is no part of a drawing."],
  ] as const) {
    await page.evaluate((copied) => navigator.clipboard.writeText(copied), text);
    await page.keyboard.press("Control+v");
    await expect(page.getByText("Nothing was pasted")).toBeVisible();
    await expect(page.locator(".sheet-region")).toContainText(words);
  }
  expect(await boxNames(page)).toEqual(names);
  expect(await page.title()).not.toContain("taken");
});

test("where the host does not let a menu read the clipboard, the keys are named and still work", async ({
  quietPage: page,
  context,
  address,
}) => {
  await context.clearPermissions();
  await openWindow(page, address);
  await openLaundrySample(page);
  await press(page, "B6");
  await page.keyboard.press("Control+c");
  await chooseInEdit(page, "Paste");
  await expect(page.getByText("Press the keys for pasting instead.")).toBeVisible();
  await page.keyboard.press("Control+v");
  await expect(box(page, "B8")).toBeVisible();
});

const box = (page: Page, name: string) => page.getByRole("group", { name: new RegExp(`^(Box|Panel) ${name}\\b`) });

const clipboardText = (page: Page): Promise<string> => page.evaluate(() => navigator.clipboard.readText());

/** Fits do not glide for people who ask for less motion, so two frames after one it is where it goes. */
test.use({ contextOptions: { reducedMotion: "reduce" } });
const settle = (page: Page): Promise<void> =>
  page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))));

/** Shows everything; an empty sheet has nothing to fit. */
async function showAll(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Fit", exact: true }).click();
  await settle(page);
}

async function boxNames(page: Page): Promise<readonly string[]> {
  await showAll(page);
  const labels = await page
    .getByRole("group", { name: /^(Box|Panel) / })
    .evaluateAll((groups) => groups.map((group) => group.getAttribute("aria-label") ?? ""));
  const names = labels.map((label) => /^(?:Box|Panel) (\w+)/.exec(label)?.[1] ?? label);
  return names.sort();
}

/** Presses a box where nothing but the box itself is: on its top wall. */
async function press(page: Page, name: string): Promise<void> {
  await showAll(page);
  const wall = await box(page, name).locator(".sheet-wall-outer").boundingBox();
  if (wall === null) throw new Error(`${name} is not in view.`);
  await page.mouse.click(wall.x + 8, wall.y + 3);
}

async function chooseInEdit(page: Page, word: string): Promise<void> {
  await page.getByRole("button", { name: "Edit", exact: true }).click();
  await page.getByRole("menuitem", { name: new RegExp(`^${word}\\b`) }).click();
}

test("the middle button pans and pastes nothing, wherever it is pressed and let go; in a field it pastes", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await page.evaluate(() => {
    addEventListener("paste", () => document.body.setAttribute("data-pasted", ""), true);
  });
  const field = page.getByRole("combobox", { name: "Command, part, tag or finding" });
  const inField = await middleOf(field);
  const onSheet = await middleOf(page.locator(".sheet-flow"));
  const beside = { x: onSheet.x - 80, y: onSheet.y + 200 };
  const inPane = await middleOf(pane(page).getByRole("tablist"));

  // Where nothing pans the press is still none of the clipboard.
  const onWords = await middleOf(page.getByRole("heading", { name: "Nothing is drawn yet" }));
  const inStock = await middleOf(page.getByRole("navigation", { name: "Stock" }).getByRole("button").last());
  for (const start of [onWords, inStock, inPane])
    for (const end of [start, onSheet, inPane]) await dragMiddle(page, start, end);
  await openLaundrySample(page);
  const view = page.locator(".react-flow__viewport");
  for (const end of [beside, inPane, inField]) {
    const before = await view.getAttribute("style");
    await dragMiddle(page, onSheet, end);
    expect(await view.getAttribute("style")).not.toBe(before);
  }

  // Systems without a text that is marked for this button have nothing to paste.
  await field.click({ button: "middle" });
  if (process.platform === "linux") await expect(page.locator("body")).toHaveAttribute("data-pasted");
});

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** With the middle button, which brings neither a paste nor a word of one. */
async function dragMiddle(page: Page, from: Spot, to: Spot): Promise<void> {
  await page.mouse.move(from.x, from.y);
  await page.mouse.down({ button: "middle" });
  await page.mouse.move(to.x, to.y, { steps: 8 });
  await page.mouse.up({ button: "middle" });
  await page.waitForTimeout(300);
  await expect(page.locator("body")).not.toHaveAttribute("data-pasted");
  await expect(page.locator(".notice")).toHaveCount(0);
}

async function middleOf(part: Locator): Promise<Spot> {
  const area = await part.boundingBox();
  if (area === null) throw new Error("It is not in view.");
  return { x: area.x + area.width / 2, y: area.y + area.height / 2 };
}
