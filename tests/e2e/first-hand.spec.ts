/** What stopped a hand that drew its first boxes here: each found by watching the screen alone. */
import { expect, type Locator, type Page } from "@playwright/test";
import { checked, openStart, openWindow, pane, runByField, showPane, test } from "./support/window-test.ts";

test.use({ contextOptions: { reducedMotion: "reduce" } });

const hand = (page: Page): Locator => page.getByRole("group", { name: "In the hand" });
const box = (page: Page, name: string): Locator =>
  page.getByRole("group", { name: new RegExp(`^(Box|Panel) ${name}\\b`) });
const field = (page: Page): Locator => page.locator(".command input");

async function openSample(page: Page, title: RegExp): Promise<void> {
  await page.getByRole("button", { name: title }).click();
  await checked(page);
}

test("a fix whose name is longer than a step may have is applied all the same", async ({
  quietPage: page,
  address,
}) => {
  await openStart(page, address);
  await openSample(page, /^Wrong on purpose/);
  await showPane(page, "Findings");
  await pane(page).getByRole("button", { name: "Start proposed" }).click();
  await page.getByRole("dialog").getByRole("button", { name: "Start proposed" }).click();
  await checked(page);
  const copper = /joins 12 AWG copper and 12 AWG aluminium/;
  const danger = pane(page).locator(".finding").filter({ hasText: copper }).first();
  await danger.getByText("1 way to mend it").click();
  const mend = danger.getByRole("button", { name: /connectors listed for aluminium with copper/ });
  expect(((await mend.textContent()) ?? "").length, "the name of the step is too long").toBeGreaterThan(80);
  await mend.click();
  await expect(pane(page).getByText("Withdrawn")).toHaveCount(0);
  await expect(danger).toHaveCount(0);
  await page.keyboard.press("Control+z");
  await expect(pane(page).locator(".finding").filter({ hasText: copper }).first()).toBeVisible();
});

test("every line that the command field finds says in full what it is called", async ({ quietPage: page, address }) => {
  await openStart(page, address);
  await expect(page.getByRole("combobox", { name: "Command, part, tag or finding" })).toBeVisible();
  await page.keyboard.press("Control+k");
  await expect(field(page)).toBeFocused();
  await page.keyboard.type("receptacle");
  const lines = page.getByRole("option");
  await expect(lines.filter({ hasText: "New from a common box" })).toHaveCount(5);
  const cut = await page.locator(".command-title").evaluateAll((titles) =>
    titles.flatMap((one) => {
      const line = one.closest(".command-line")?.getBoundingClientRect();
      const own = one.getBoundingClientRect();
      const inside = line !== undefined && own.width > 40 && own.right <= line.right + 1;
      return one.scrollWidth <= one.clientWidth && inside ? [] : [`${one.textContent}: ${own.width}`];
    }),
  );
  expect(cut).toEqual([]);
  const over = await page.locator(".command-note").evaluateAll((notes) =>
    notes.flatMap((one) => {
      const edge = one.closest(".command-line")?.getBoundingClientRect().right ?? 0;
      return one.getBoundingClientRect().right > edge ? [one.textContent] : [];
    }),
  );
  expect(over, "notes that run out of the list").toEqual([]);
});

test("a box taken by the command field is put down by Enter, in a drawing that is empty yet", async ({
  quietPage: page,
  address,
}) => {
  await openStart(page, address);
  await expect(page.getByRole("combobox", { name: "Command, part, tag or finding" })).toBeVisible();
  await runByField(page, "new drawing");
  await checked(page);
  await runByField(page, "4 in. square × 2-1/8");
  await expect(hand(page)).toContainText("arrow keys move it and Enter puts it down");
  await page.keyboard.press("Enter");
  await expect(box(page, "B1")).toBeVisible();
  await expect(hand(page)).toHaveCount(0);
});

test("a cable begun by keys leaves the drawing by a line of the command field", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await runByField(page, "4 in. square × 2-1/8");
  await page.keyboard.press("Enter");
  await expect(box(page, "B1")).toBeVisible();
  await runByField(page, "route: 12/2 with ground");
  await expect(box(page, "B1")).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(hand(page)).toContainText("From B1");
  await expect(hand(page)).toContainText("the command field has that too");
  await runByField(page, "leaves");
  await expect(pane(page).getByRole("heading", { name: "Ends in B1" })).toBeVisible();
  await expect(hand(page)).toHaveCount(0);
});

test("the second lead is in the hand once the first is placed, and a closed box opens for it", async ({
  quietPage: page,
  address,
}) => {
  await openStart(page, address);
  await openSample(page, /^1962 bungalow, laundry as proposed/);
  await page.getByRole("button", { name: "Energise", exact: true }).click();
  await page.getByRole("button", { name: "Place the red lead, V, by a press on the sheet" }).click();
  const hint = page.locator(".sheet-hint");
  await expect(hint).toContainText("Red lead, V");
  await expect(hint).toContainText("a box opens when it is pressed");
  const { x = 0, y = 0, width = 0, height = 0 } = (await box(page, "B2").boundingBox()) ?? {};
  await page.mouse.click(x + width / 2, y + height / 2);
  const thing = (name: RegExp): Locator => page.locator("[data-item]").and(page.getByRole("button", { name }));
  await thing(/^Terminal R2 H/)
    .first()
    .click();
  await expect(hint).toContainText("Black lead, COM");
  await thing(/^Terminal R2 N/)
    .first()
    .click();
  await expect(hint).toHaveCount(0);
  await expect(page.locator(".sheet-meter, .meter").first()).toContainText(/119\.\d V/);
  // A lead that is moved leaves the other where it is.
  await page.getByRole("button", { name: "Place the red lead, V, by a press on the sheet" }).click();
  await thing(/^Terminal R2 G/)
    .first()
    .click();
  await expect(hint).toHaveCount(0);
});

test("a cable that was dropped on the bare sheet stays in the hand, as the note says that it does", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  const stock = page.getByRole("navigation", { name: "Stock" });
  await stock.getByRole("button", { name: "4 in. square × 2-1/8" }).click();
  await page.locator(".sheet-flow").click({ position: { x: 300, y: 250 } });
  await expect(box(page, "B1")).toBeVisible();
  const cable = stock.getByRole("button", { name: "12/2 with ground" }).first();
  await cable.dragTo(page.locator(".sheet-flow"), { targetPosition: { x: 60, y: 560 } });
  await expect(
    page.getByRole("status").or(page.locator(".notice")).filter({ hasText: "A cable starts at a box" }).first(),
  ).toBeVisible();
  await expect(hand(page)).toContainText("12/2 with ground");
  const wall = await box(page, "B1").locator(".sheet-wall-outer").boundingBox();
  if (wall === null) throw new Error("B1 is not in view.");
  await page.mouse.click(wall.x + 8, wall.y + 3);
  await expect(hand(page)).toContainText("From B1");
  // Dropped beside the sheet it goes back.
  await page.keyboard.press("Escape");
  await cable.dragTo(page.getByRole("banner"), { force: true });
  await expect(hand(page)).toHaveCount(0);
});

test("what the field asks for is read in full and ends in one full stop", async ({ quietPage: page, address }) => {
  await openStart(page, address);
  await page.getByRole("button", { name: /^Receptacle with the run going on/ }).click();
  await checked(page);
  await page.keyboard.press("Control+k");
  await page.keyboard.type("add a pigtail");
  await page.keyboard.press("Enter");
  const asked = page.locator(".command-asked");
  for (let step = 0; step < 4; step += 1) {
    await expect(asked).toBeVisible();
    const words = (await asked.textContent()) ?? "";
    expect(words).not.toMatch(/[?!.]\./);
    const fits = await asked.evaluate((one) => one.scrollWidth <= one.clientWidth);
    expect(fits, words).toBe(true);
    if (/made of/.test(words)) break;
    await page.keyboard.press("Enter");
    await expect(asked).not.toHaveText(words);
  }
  await expect(asked).toContainText("made of");
  await expect(field(page)).toBeFocused();
});

test.describe("in a window of a tablet", () => {
  test.use({ viewport: { width: 1024, height: 768 }, hasTouch: true });

  test("nothing in the panes is cut or lies on something else", async ({ quietPage: page, address }) => {
    await openStart(page, address);
    await page.getByRole("button", { name: "Start as found" }).click();
    await checked(page);
    const tags = await page.locator(".region-head").evaluateAll((heads) =>
      heads.flatMap((head) => {
        const edge = head.getBoundingClientRect();
        return [...head.querySelectorAll(".state-tag, [role=tab]")].flatMap((one) => {
          const { top, bottom, right, width } = one.getBoundingClientRect();
          // Where there is no room for the tag of the state it is not shown: strip and status line say it too.
          if (width === 0) return [];
          return top >= edge.top - 1 && bottom <= edge.bottom + 1 && right <= edge.right ? [] : [one.textContent];
        });
      }),
    );
    expect(tags).toEqual([]);
    await pane(page).getByRole("button", { name: "Land" }).first().click();
    await expect(pane(page).getByText("In the hand.")).toBeVisible();
    const wide = await pane(page)
      .locator(".button, select, input")
      .evaluateAll((all) => {
        const edge = document.querySelector("[data-region] .details, .details")?.getBoundingClientRect().right ?? 0;
        return all.flatMap((one) =>
          one.getBoundingClientRect().right > edge - 8 || one.scrollWidth > one.clientWidth + 1
            ? [`${one.textContent?.slice(0, 40)} ${one.getBoundingClientRect().right} ${edge}`]
            : [],
        );
      });
    expect(wide).toEqual([]);
  });
});

test("a cable that was dropped on its first box leads from the hand as it is now, in words that stay in the sheet", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  const stock = page.getByRole("navigation", { name: "Stock" });
  await stock.getByRole("button", { name: "4 in. square × 2-1/8" }).click();
  await page.locator(".sheet-flow").click({ position: { x: 300, y: 250 } });
  const cable = stock.getByRole("button", { name: "12/2 with ground" }).first();
  const wall = box(page, "B1").locator(".sheet-wall-outer");
  await cable.dragTo(wall, { force: true });
  const sheet = await page.locator(".sheet-flow").boundingBox();
  if (sheet === null) throw new Error("No sheet.");
  await page.mouse.move(sheet.x + sheet.width - 60, sheet.y + 200);
  const words = page.locator(".sheet-route-words");
  await expect(words).toContainText("leaves this drawing");
  const { x = 0, width = 0 } = (await words.boundingBox()) ?? {};
  expect(x + width).toBeLessThanOrEqual(sheet.x + sheet.width);
  await page.mouse.click(sheet.x + sheet.width - 60, sheet.y + 200);
  await expect(pane(page).getByRole("heading", { name: "Ends in B1" })).toBeVisible();
  await cable.dragTo(wall, { force: true });
  await expect(hand(page)).toContainText("From B1");
  await expect(words.filter({ hasText: "leaves this drawing" })).toHaveCount(0);
});

test("the knob for cables of a selected box does not lie on the box that is opened", async ({
  quietPage: page,
  address,
}) => {
  await openStart(page, address);
  await openSample(page, /^1962 bungalow, laundry as proposed/);
  const { x = 0, y = 0, width = 0, height = 0 } = (await box(page, "B2").boundingBox()) ?? {};
  await page.mouse.click(x + width / 2, y + height / 2);
  await expect(page.locator("[data-cable-knob]")).toBeVisible();
  await box(page, "B2").getByText("Open", { exact: true }).click();
  await expect(box(page, "B2").getByText("Close", { exact: true })).toBeVisible();
  await expect(page.locator("[data-cable-knob]")).toHaveCount(0);
});

test("a side chosen for one cable leaves the choices of the next where they were", async ({
  quietPage: page,
  address,
}) => {
  await openStart(page, address);
  await page.getByRole("button", { name: "Start as found" }).click();
  await checked(page);
  await pane(page).getByRole("button", { name: "Make up this box…" }).click();
  const part = page.getByRole("complementary");
  await part.getByRole("combobox", { name: /R1/ }).first().selectOption({ label: "GFCI receptacle, 15 A face" });
  const how = part.getByText("How it is joined");
  const load = part.getByRole("radio", { name: /LOAD/ }).first();
  await expect(load).toBeVisible();
  const before = (await how.boundingBox())?.y;
  await load.click();
  await expect(load).toBeChecked();
  expect((await how.boundingBox())?.y).toBe(before);
});

test("a new drawing is found by the word on its button, before what needs a drawing", async ({
  quietPage: page,
  address,
}) => {
  await openStart(page, address);
  await expect(page.getByRole("combobox", { name: "Command, part, tag or finding" })).toBeVisible();
  await page.keyboard.press("Control+k");
  await page.keyboard.type("empty");
  await expect(page.getByRole("option").first()).toContainText("New drawing");
  await page.keyboard.press("Control+a");
  await page.keyboard.type("new");
  await expect(page.getByRole("option").first()).toContainText("New drawing");
});

test("a pigtail that is let go over nothing says so, and where one ends", async ({ quietPage: page, address }) => {
  await openStart(page, address);
  await page.getByRole("button", { name: "Start as found" }).click();
  await checked(page);
  const at = await box(page, "B1").locator(".sheet-screw-brass").first().boundingBox();
  const wall = await box(page, "B1").locator(".sheet-wall-outer").boundingBox();
  if (at === null || wall === null) throw new Error("R1 is not in view.");
  await page.mouse.move(at.x + at.width / 2, at.y + at.height / 2);
  await page.mouse.down();
  await page.mouse.move(wall.x + wall.width / 2, wall.y + 60, { steps: 8 });
  await page.mouse.up();
  await expect(page.locator(".notice")).toContainText("no jumper was made");
  await expect(page.locator(".notice")).toContainText("a screw, a splice, a conductor end");
});

test("the command field offers each thing once, and what takes away after what adds", async ({
  quietPage: page,
  address,
}) => {
  await openStart(page, address);
  await page.getByRole("button", { name: "Start as found" }).click();
  await checked(page);
  await page.keyboard.press("Control+k");
  await page.keyboard.type("B1");
  const lines = page.locator(".command-title");
  await expect(lines.first()).toHaveText("B1");
  const titles = await lines.allTextContents();
  expect(titles.filter((title) => title === "Pin B1 in place")).toHaveLength(1);
  expect(titles.indexOf("Remove B1")).toBeGreaterThan(titles.indexOf("Add a device to B1…"));
});
