/** Whole conductors under the hand, signs at places, a view that follows what was landed, rooms, long layouts. */
import { expect, type Locator, type Page } from "@playwright/test";
import { startBrowserHost } from "../../electron/browser-host.mjs";
import { textToSave } from "../../shared-model/format/text-to-save.ts";
import { bigHouse } from "../bench/big-house.ts";
import {
  checked,
  expectAccessible,
  openLaundrySample,
  openWindow,
  pane,
  runByField,
  test,
} from "./support/window-test.ts";

interface Spot {
  readonly x: number;
  readonly y: number;
}

const level = (page: Page, name: "far" | "middle" | "near") => page.getByRole("button", { name, exact: true }).click();

/** The laundry sample at near level around box B1. */
async function showB1(page: Page, address: string): Promise<void> {
  // The view goes where it is sent at once, so that a press finds what it was aimed at.
  await page.emulateMedia({ reducedMotion: "reduce" });
  await openWindow(page, address);
  await openLaundrySample(page);
  await runByField(page, "B1");
  await level(page, "near");
  await expect(page.locator(".sheet-lines-hit").first()).toBeAttached();
}

/** A spot of a drawn line that a press reaches, far from both of its ends. */
async function spotOnLine(page: Page, dash = ".sheet-core-black"): Promise<Spot> {
  const spot = await page.evaluate((wanted) => {
    for (const line of document.querySelectorAll<SVGPathElement>(`.sheet-box ${wanted}`)) {
      const long = line.getTotalLength();
      const matrix = line.getScreenCTM();
      if (matrix === null || long < 250) continue;
      for (const share of [0.5, 0.45, 0.55, 0.4, 0.6]) {
        const { x, y } = line.getPointAtLength(long * share).matrixTransform(matrix);
        if (document.elementFromPoint(x, y)?.closest("[data-lines]")) return { x, y };
      }
    }
    return undefined;
  }, dash);
  if (spot === undefined) throw new Error("No line is in view.");
  return spot;
}

const middleOf = async (locator: Locator): Promise<Spot> => {
  const area = await locator.boundingBox();
  if (area === null) throw new Error("It is not drawn.");
  return { x: area.x + area.width / 2, y: area.y + area.height / 2 };
};

const press = (page: Page, { x, y }: Spot): Promise<void> => page.mouse.click(x, y);

test("a press on the line of a conductor selects it; from there its end is taken by button, key, menu and drag", async ({
  quietPage: page,
  address,
}) => {
  await showB1(page, address);
  const spot = await spotOnLine(page);
  await page.mouse.move(spot.x, spot.y);
  await expect(page.locator(".sheet-line-glow").first()).toBeVisible();
  await page.mouse.click(spot.x, spot.y);
  await expect(pane(page).getByRole("heading", { name: /BK end at B1$/ })).toBeVisible();
  await expect(page.locator(".sheet-grip")).toHaveCount(1);
  await expectAccessible(page, "a chosen conductor");

  const inHand = page.getByRole("group", { name: "In the hand" });
  const again = async (): Promise<void> => {
    await expect(inHand).toContainText("Holding");
    await page.keyboard.press("Escape");
    await expect(inHand).toHaveCount(0);
    await page.mouse.click(spot.x, spot.y);
  };
  await pane(page).getByRole("button", { name: "Move it" }).click();
  await again();
  await page.keyboard.press("Enter");
  await again();
  await page.mouse.click(spot.x, spot.y, { button: "right" });
  await page.getByRole("menuitem", { name: "Pick up" }).click();
  await again();
  const grip = await middleOf(page.locator(".sheet-grip"));
  await page.mouse.move(grip.x, grip.y);
  await page.mouse.down();
  await page.mouse.move(grip.x + 30, grip.y + 20, { steps: 4 });
  await expect(inHand).toContainText("Holding");
  await page.mouse.up();
  await expect(inHand).toHaveCount(0);
});

test("a press on a code at the wall selects its conductor; on a jumper's line, the jumper", async ({
  quietPage: page,
  address,
}) => {
  await showB1(page, address);
  const plates = page.locator(".sheet-box .sheet-plate").filter({ hasText: /^WH$/ });
  await press(page, await middleOf(plates.first()));
  await expect(pane(page).getByRole("heading", { name: /WH end at B1$/ })).toBeVisible();
  const jumper = page.locator(".sheet-box .sheet-plate").filter({ hasText: /^q WH$/ });
  await press(page, await middleOf(jumper.first()));
  await expect(pane(page)).toContainText("Stays inside B1");
  await expect(page.locator(".sheet-grip")).toHaveCount(2);
});

for (const [width, height] of [
  [1440, 900],
  [390, 844],
] as const)
  test(`signs at places cover no other at ${width} px; the reason comes with the pointer and the focus`, async ({
    quietPage: page,
    address,
  }) => {
    await page.setViewportSize({ width: 1440, height: 900 });
    await showB1(page, address);
    await pane(page).getByRole("button", { name: "Move C1 BK" }).click();
    await page.setViewportSize({ width, height });
    await expect(page.locator(".sheet-target-finding").first()).toBeAttached();
    const rings = await page.locator(".sheet-target .sheet-hit").evaluateAll((all) =>
      all.map((each) => {
        const { x, y, width: wide, height: high } = each.getBoundingClientRect();
        return { x: x + wide / 2, y: y + high / 2, radius: wide / 2 };
      }),
    );
    expect(rings.length).toBeGreaterThan(5);
    const covering = rings.flatMap((a, i) =>
      rings.slice(i + 1).filter((b) => Math.hypot(a.x - b.x, a.y - b.y) < a.radius + b.radius - 0.5),
    );
    expect(covering).toEqual([]);
    expect(await page.locator(".sheet-targets text.sheet-target-reason").count()).toBe(0);
    const target = page.locator(".sheet-target-finding").first();
    await target.focus();
    const tip = page.locator(".sheet-tip");
    await expect(tip).toContainText("would follow");
    // What would follow at a place is learnt while its words are read.
    const learnt = await target.getAttribute("aria-label");
    await target.evaluate((each) => each.setAttribute("aria-label", "Here: learnt since"));
    await expect(tip).toContainText("learnt since");
    await target.evaluate((each, words) => each.setAttribute("aria-label", words), learnt ?? "");
    const area = await tip.boundingBox();
    expect(area?.x).toBeGreaterThanOrEqual(0);
    expect((area?.x ?? 0) + (area?.width ?? 0)).toBeLessThanOrEqual(width);
    await expectAccessible(page, "a reason at its place");
    await page.keyboard.press("Escape");
    await expect(tip).toHaveCount(0);
  });

test("what was landed is brought into view by a pan alone, and a view that shows it stays", async ({
  quietPage: page,
  address,
}) => {
  await showB1(page, address);
  const viewport = page.locator(".react-flow__viewport");
  const seen = () =>
    viewport.evaluate(
      (element) => new DOMMatrix(getComputedStyle(element).transform).toJSON() as { a: number; e: number; f: number },
    );
  const cap = async (): Promise<void> => {
    await page.getByRole("button", { name: "Cap it", exact: true }).first().click();
    await checked(page);
    await page.waitForTimeout(200);
  };
  await press(page, await spotOnLine(page));
  await expect(pane(page).getByRole("heading", { name: /BK end at B1$/ })).toBeVisible();
  // The box is in view whole and grows: the view keeps it whole. Then all of it has room, and the view stays.
  await cap();
  const before = await seen();
  await page.getByRole("button", { name: /^Undo/ }).click();
  await cap();
  expect(await seen()).toEqual(before);
  await page.getByRole("button", { name: /^Undo/ }).click();
  // Panned away, so that the end is drawn but lies beyond the left edge of the sheet.
  const end = page.locator(`[data-item^="end "][aria-label*="capped"], .sheet-grip`).first();
  const at = await middleOf(end);
  const sheet = await page.locator(".sheet-flow").boundingBox();
  if (sheet === null) throw new Error("There is no sheet.");
  await page.mouse.move(sheet.x + sheet.width / 2, sheet.y + 14);
  await page.mouse.down({ button: "middle" });
  await page.mouse.move(sheet.x + sheet.width / 2 - (at.x - sheet.x) - 60, sheet.y + 14, { steps: 5 });
  await page.mouse.up({ button: "middle" });
  const away = await seen();
  await cap();
  const after = await seen();
  expect(after.a).toBe(away.a);
  expect(after.e).toBeGreaterThan(away.e);
  const shown = await middleOf(page.locator(".sheet-grip").first());
  expect(shown.x).toBeGreaterThan(sheet.x);
});

test("rooms lie behind their boxes from middle distance and from afar, and take no press", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await level(page, "near");
  await expect(page.locator(".sheet-room")).toHaveCount(0);
  await level(page, "middle");
  await expect(page.locator(".sheet-room-name").filter({ hasText: "HALL, FIRST FLOOR" })).toHaveCount(1);
  const hall = await page
    .locator(".sheet-rooms g")
    .filter({ hasText: "HALL, FIRST FLOOR" })
    .locator("rect")
    .boundingBox();
  const box = await page.locator('.react-flow__node[aria-label="Box B6, hall"] .sheet-wall-outer').boundingBox();
  if (hall === null || box === null) throw new Error("The hall is in view.");
  expect(hall.x).toBeLessThan(box.x);
  expect(hall.x + hall.width).toBeGreaterThan(box.x + box.width);
  const on = await page.evaluate(({ x, y }) => document.elementFromPoint(x, y)?.getAttribute("class"), {
    x: hall.x + 3,
    y: hall.y + hall.height - 3,
  });
  expect(on).toContain("react-flow__pane");
  await expectAccessible(page, "rooms at the middle level");
  await level(page, "far");
  // From afar they are painted with the boxes: what is in the page only takes presses for them.
  await expect(page.locator(".sheet-room").first()).toBeVisible();
  await expect(page.locator(".sheet-room-name")).toHaveCount(0);
  await expect(page.locator(".sheet-painted canvas")).toBeVisible();
});

const TITLE = "Arrange the drawing by circuit";

test("a long layout tells how far it is, leaves the sheet in use, is cancelled without a trace and is one step", async ({
  quietPage: page,
  folder,
}) => {
  test.setTimeout(180_000);
  const house = bigHouse(115);
  const ids = Object.keys(house.asFound.enclosures);
  // Thrown about, so that every box is drawn anew: cables change their walls.
  const enclosures = Object.fromEntries(
    ids.map((id, i) => [id, { x: ((i * 7919) % 400) * 100, y: ((i * 104_729) % 400) * 90 }]),
  );
  const saved = textToSave({ ...house, layout: { ...house.layout, enclosures } });
  const openedFile = {
    name: "house.loadside",
    token: "house",
    limit: saved.length,
    read: async () => ({ ok: true, text: saved }) as const,
    save: async () => ({ ok: true }) as const,
  };
  const host = await startBrowserHost({ folder, openedFile });
  try {
    await openWindow(page, host.url);
    await expect(page.getByText(/^\d+ checks run$/)).toBeVisible({ timeout: 90_000 });
    // All are drawn and fitted into view; what is not in view is not in the page.
    await expect(page.locator(".react-flow__node")).toHaveCount(ids.length, { timeout: 90_000 });
    const places = () =>
      page.locator(".react-flow__node").evaluateAll((all) => all.map((each) => (each as HTMLElement).style.transform));
    const undo = page.getByRole("button", { name: `Undo: ${TITLE}` });
    const before = await places();
    await runByField(page, TITLE);
    const work = page.getByRole("group", { name: TITLE });
    await expect(work.getByRole("progressbar")).toBeVisible();
    await work.getByRole("button", { name: "Cancel" }).click();
    await expect(work).toHaveCount(0);
    await expect(undo).toHaveCount(0);
    expect(await places()).toEqual(before);
    await runByField(page, TITLE);
    await expect(work).toBeVisible();
    await expectAccessible(page, "a layout at work");
    await expect(undo).toBeVisible({ timeout: 90_000 });
    await undo.click();
    await expect(undo).toHaveCount(0);
    await page.getByRole("button", { name: "Fit", exact: true }).click();
    await expect.poll(places).toEqual(before);
  } finally {
    await host.close();
  }
});
