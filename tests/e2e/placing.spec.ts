/** What would be placed is seen before it is: led by a pointer, by keys and by a finger. */
import { expect, type Page } from "@playwright/test";
import { Fingers } from "./support/fingers.ts";
import { expectAccessible, openWindow, test } from "./support/window-test.ts";

test.use({ hasTouch: true, contextOptions: { reducedMotion: "reduce" } });

const ghost = (page: Page) => page.locator(".sheet-placing");
const stock = (page: Page, name: string | RegExp) => page.locator(".stock").getByRole("button", { name });
const boxes = (page: Page) => page.locator(".react-flow__node");

test("a box and a device show where they would go and whether they may, by pointer, keys and finger", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  const sheet = await page.getByRole("main", { name: "Sheet" }).boundingBox();
  if (sheet === null) throw new Error("There is no sheet.");
  const at = (x: number, y: number) => ({ x: sheet.x + x, y: sheet.y + y });

  // By keys: it stands on a free place at once, arrows move it, Enter puts it down.
  await stock(page, /^4 in. square × 2-1/).focus();
  await page.keyboard.press("Enter");
  await expect(ghost(page)).toContainText("B1: 4 in. square");
  const part = page.locator(".sheet-placing-part");
  const before = await part.getAttribute("x");
  await page.locator("[data-sheet-stop]").focus();
  for (let presses = 0; presses < 4; presses += 1) await page.keyboard.press("ArrowRight");
  await expect(part).not.toHaveAttribute("x", before ?? "");
  await expectAccessible(page, "a box is in the hand");
  await page.keyboard.press("Enter");
  await expect(boxes(page)).toHaveCount(1);
  await expect(ghost(page)).toHaveCount(0);

  // By pointer: no device on the bare sheet, one in the box; over it a second box goes beside it.
  await stock(page, /^Grounding duplex, 15 A/).click();
  const bare = at(sheet.width - 90, sheet.height - 160);
  await page.mouse.move(bare.x, bare.y);
  await expect(page.locator(".sheet-placing-no")).toContainText("A device goes into a box");
  const box = await boxes(page).first().boundingBox();
  if (box === null) throw new Error("The box is not in view.");
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  await page.mouse.move(middle.x, middle.y);
  await expect(ghost(page)).toContainText("R1, into B1");
  await expect(page.locator(".sheet-placing-no")).toHaveCount(0);
  await page.keyboard.press("Escape");
  await expect(ghost(page)).toHaveCount(0);

  // By a finger: led over the sheet, which stays where it is, and put down where it is lifted.
  const fingers = await Fingers.of(page);
  await fingers.tap(stock(page, /^4 in. square × 2-1/));
  const view = await page.locator(".react-flow__viewport").getAttribute("style");
  await fingers.touch("touchStart", middle);
  await fingers.go(middle, bare);
  await expect(ghost(page)).toContainText("B2");
  expect(await page.locator(".react-flow__viewport").getAttribute("style")).toBe(view);
  await fingers.touch("touchEnd");
  await expect(boxes(page)).toHaveCount(2);
});

test("the legend is moved, folded and remembered", async ({ quietPage: page, address }) => {
  await openWindow(page, address);
  const legend = page.getByRole("region", { name: "Legend of the drawing" });
  await page.getByRole("button", { name: "Legend", exact: true }).click();
  await expect(legend).toHaveAttribute("data-corner", "bottom-right");
  await legend.getByRole("button", { name: "Move" }).click();
  await expect(legend).toHaveAttribute("data-corner", "bottom-left");
  const head = await page.locator(".sheet-symbols-head").boundingBox();
  if (head === null) throw new Error("The legend has no head.");
  await page.mouse.move(head.x + 20, head.y + 10);
  await page.mouse.down();
  await page.mouse.move(head.x + 40, head.y - 420, { steps: 4 });
  await page.mouse.up();
  await expect(legend).toHaveAttribute("data-corner", "top-left");
  const kept = await page.evaluate(() => localStorage.getItem("loadside.preferences") ?? "");
  expect(JSON.parse(kept)).toMatchObject({ legend: true, legendCorner: "top-left" });
  await legend.getByRole("button", { name: "Fold" }).click();
  await expect(legend).toHaveCount(0);
  await expect(page.getByRole("button", { name: "Legend", exact: true })).toBeFocused();
});
