/** Arranging a drawing, boxes that stay where they are, and cables that a person leads. */
import { expect, type Page } from "@playwright/test";
import { expectAccessible, openLaundrySample, openWindow, runByField, test } from "./support/window-test.ts";

const undo = (page: Page, what: string) => page.getByRole("button", { name: `Undo: ${what}` });
const box = (page: Page, name: string) => page.locator(`.react-flow__node[data-id="box-${name}"]`);
const placeOf = (page: Page, name: string) => box(page, name).evaluate((node) => (node as HTMLElement).style.transform);
const wayOf = (page: Page, cable: string) =>
  page.locator(`[data-road="cable-${cable}"] .sheet-road-edge`).getAttribute("d");

/** A point in the middle of a cable, in pixels of the window. */
const onCable = (page: Page, cable: string) =>
  page.locator(`[data-road="cable-${cable}"] .sheet-road-edge`).evaluate((path) => {
    const line = path as SVGPathElement;
    const { x, y } = line.getPointAtLength(line.getTotalLength() / 2).matrixTransform(line.getScreenCTM() ?? undefined);
    return { x, y };
  });

async function drag(page: Page, from: { x: number; y: number }, to: { x: number; y: number }): Promise<void> {
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move((from.x + to.x) / 2, (from.y + to.y) / 2);
  await page.mouse.move(to.x, to.y);
}

const middleOf = async (page: Page, name: string) => {
  const area = await box(page, name).boundingBox();
  if (area === null) throw new Error(`${name} is in view.`);
  return { x: area.x + area.width / 2, y: area.y + area.height / 2 };
};

test("boxes are arranged by room in one step; a pinned one stays, and undo brings all back", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  // All of it is in view: a box at the rim of a nearer view would be missed.
  await box(page, "B3").click();
  const pin = page.getByRole("checkbox", { name: /^Pinned/ });
  await pin.check();
  await expect(undo(page, "Pin B3")).toBeVisible();
  await expect(page.locator(".sheet-pin")).toHaveCount(1);
  await expectAccessible(page, "a pinned box");
  await page.keyboard.press("Escape");
  const [pinned, free] = [await placeOf(page, "B3"), await placeOf(page, "B4")];
  await runByField(page, "arrange the drawing by room");
  await expect(undo(page, "Arrange the drawing by room")).toBeVisible();
  await expect.poll(() => placeOf(page, "B4")).not.toBe(free);
  expect(await placeOf(page, "B3")).toBe(pinned);
  await undo(page, "Arrange the drawing by room").click();
  await expect.poll(() => placeOf(page, "B4")).toBe(free);
});

test("a cable is led by dragging it, by steps from its menu, and straightened again", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await page.getByRole("button", { name: "Fit" }).click();
  const before = await wayOf(page, "C6");
  const on = await onCable(page, "C6");
  await page.mouse.click(on.x, on.y);
  await expect(page.locator("[data-bend]")).not.toHaveCount(0);
  await expectAccessible(page, "a cable with its grips");
  await drag(page, on, { x: on.x + 40, y: on.y });
  await expect.poll(() => wayOf(page, "C6")).not.toBe(before);
  // Escape takes a drag back.
  await page.keyboard.press("Escape");
  await page.mouse.up();
  await expect.poll(() => wayOf(page, "C6")).toBe(before);
  await drag(page, on, { x: on.x + 40, y: on.y });
  await page.mouse.up();
  await expect(undo(page, "Bend C6")).toBeVisible();
  const bent = await wayOf(page, "C6");
  expect(bent).not.toBe(before);
  const at = await onCable(page, "C6");
  await page.mouse.click(at.x, at.y, { button: "right" });
  await page.getByRole("menuitem", { name: "Bend C6 on the sheet…" }).click();
  await expectAccessible(page, "steps of a bend");
  await page.getByRole("option", { name: "Bend 1: right by ten steps" }).click();
  await expect.poll(() => wayOf(page, "C6")).not.toBe(bent);
  await page.getByRole("option", { name: "Straighten it" }).click();
  await expect.poll(() => wayOf(page, "C6")).toBe(before);
});

test("a cable end is dragged from its stub to another box; where it cannot go the reason is shown", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await page.getByRole("button", { name: "Fit" }).click();
  const on = await onCable(page, "C6");
  await page.mouse.click(on.x, on.y);
  const grip = await page.locator('[data-bend="b"]').boundingBox();
  if (grip === null) throw new Error("The end of C6 has a grip.");
  const from = { x: grip.x + grip.width / 2, y: grip.y + grip.height / 2 };
  // C6 runs from B2 to B3.
  await drag(page, from, await middleOf(page, "B2"));
  await expect(page.locator(".sheet-bend-words")).toContainText("the other end of C6 is in B2");
  await page.mouse.up();
  await expect(page.getByRole("button", { name: /^Undo: Move C6/ })).toHaveCount(0);
  await drag(page, from, await middleOf(page, "B4"));
  await expect(page.locator(".sheet-bend-words")).toContainText("To B4");
  await page.mouse.up();
  await expect(undo(page, "Move C6 to B4")).toBeVisible();
});
