import { expect, type Page } from "@playwright/test";
import { windowCommands } from "../../shared-model/commands/catalog/commands.ts";
import { textToSave } from "../../shared-model/format/text-to-save.ts";
import { bigHouse } from "../bench/big-house.ts";
import { type Hands, Keys, Presses } from "./support/hands.ts";
import { type OutlineWay, WAYS } from "./support/ways.ts";
import {
  checked,
  expectAccessible,
  openLaundrySample,
  openWindow,
  pane,
  runByField,
  test,
} from "./support/window-test.ts";

const tree = (page: Page) => page.getByRole("tree", { name: "Outline of the drawing" });
const row = (page: Page, name: RegExp) => tree(page).getByRole("treeitem", { name });
const undoName = (page: Page) => page.getByRole("button", { name: /^Undo/ }).getAttribute("aria-label");

async function openOutline(page: Page, address: string): Promise<void> {
  await openWindow(page, address);
  await openLaundrySample(page);
  await page.getByRole("tab", { name: "Outline" }).click();
  await expect(tree(page)).toBeVisible();
}

const activeName = async (page: Page): Promise<string> => {
  const id = await tree(page).getAttribute("aria-activedescendant");
  return (await page.locator(`[id="${id}"]`).getAttribute("aria-label")) ?? "";
};

test("the outline is a tree with names that a person would say", async ({ quietPage: page, address }) => {
  await openOutline(page, address);
  const b1 = row(page, /^B1, box, laundry; \d+ findings, worst: violation$/);
  await expect(b1).toHaveAttribute("aria-level", "1");
  await expect(b1).toHaveAttribute("aria-expanded", "false");
  await expect(b1).toHaveAttribute("aria-posinset", "2");
  await b1.getByRole("button", { name: "Open B1" }).click();
  await expect(row(page, /^C1, cable, 12\/2 to P, 55 ft$/)).toHaveAttribute("aria-level", "2");
  await expect(row(page, /^X, splice, 6: C1 BK, C2 BK, C3 BK, C4 BK, C5 BK, p BK, large/)).toBeVisible();
  await expect(row(page, /^Plaster ring, ring, volume not known$/)).toBeVisible();
  await expectAccessible(page, "outline");
});

test("keys walk, open, close and find as in any tree", async ({ quietPage: page, address }) => {
  await openOutline(page, address);
  await tree(page).focus();
  const at = (name: RegExp) => expect.poll(() => activeName(page)).toMatch(name);
  await page.keyboard.press("Home");
  await at(/^P, panel/);
  await page.keyboard.press("ArrowDown");
  await at(/^B1,/);
  await page.keyboard.press("ArrowRight");
  await expect(row(page, /^B1,/)).toHaveAttribute("aria-expanded", "true");
  await page.keyboard.press("ArrowRight");
  await at(/^C1, cable/);
  await page.keyboard.press("*");
  await expect(row(page, /^C5 BK,/).first()).toBeVisible();
  await page.keyboard.type("C3 WH");
  await at(/^C3 WH, end, splice Y/);
  await page.keyboard.press("ArrowLeft");
  await at(/^C3, cable/);
  await page.keyboard.press("ArrowLeft");
  await expect(row(page, /^C3, cable/)).toHaveAttribute("aria-expanded", "false");
  await page.keyboard.press("ArrowLeft");
  await at(/^B1,/);
  await page.keyboard.press("End");
  await at(/^Rooms,/);
});

test("what is selected is selected in both, whichever is used", async ({ quietPage: page, address }) => {
  await openOutline(page, address);
  await row(page, /^B2,/).click();
  await expect(pane(page).getByRole("textbox", { name: "Name" })).toHaveValue("B2");
  await expect(page.locator('[data-id="box-B2"].selected, [data-id="box-B2"] .selected')).not.toHaveCount(0);
  await runByField(page, "R4");
  await expect(row(page, /^R4, device/)).toHaveAttribute("aria-selected", "true");
  await expect(row(page, /^B2,/)).toHaveAttribute("aria-selected", "false");
});

test("renaming and removing keep the focus in the outline", async ({ quietPage: page, address }) => {
  await openOutline(page, address);
  await tree(page).focus();
  await page.keyboard.type("B6");
  await page.keyboard.press("F2");
  await page.keyboard.insertText("B60");
  await page.keyboard.press("Enter");
  await expect(tree(page)).toBeFocused();
  await expect.poll(() => activeName(page)).toMatch(/^B60, box, hall/);
  await page.keyboard.press("Delete");
  await expect(row(page, /^B60,/)).toHaveCount(0);
  await expect(tree(page)).toBeFocused();
  await expect.poll(() => activeName(page)).toMatch(/^B7,/);
  await page.keyboard.press("Control+z");
  await expect(row(page, /^B60,/)).toHaveCount(1);
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("Delete");
  await expect(page.getByText("A conductor goes with its cable: remove the cable.")).toBeVisible();
  await expect(tree(page)).toBeFocused();
});

test("a list of places says what would follow and what is not possible, and gives the focus back", async ({
  quietPage: page,
  address,
}) => {
  const keys = new Keys(page);
  await openOutline(page, address);
  await keys.goTo("B1", "C1 BK");
  await page.keyboard.press("Shift+F10");
  await expect(page.getByRole("menu", { name: "Actions for C1 BK" })).toBeVisible();
  await expectAccessible(page, "menu of an end");
  await keys.menu("Land C1 BK…");
  const dialog = page.getByRole("dialog", { name: "Land C1 BK in B1" });
  await expect(
    dialog.getByRole("option", { name: /Splice Y Danger Short circuit between hot and neutral/ }),
  ).toBeVisible();
  await expectAccessible(page, "places for an end");
  await page.keyboard.press("Escape");
  await expect(dialog).toHaveCount(0);
  await expect(tree(page)).toBeFocused();
  await expect(page.getByRole("button", { name: "Undo" })).toBeDisabled();
  await keys.goTo("B1", "R1");
  await page.keyboard.press("Shift+F10");
  await keys.menu("Move R1…");
  // The refusal of the command: conductors are landed on it.
  await expect(
    page.getByRole("option", { name: /To B2 Not possible: Conductors are landed on R1[.]/ }),
  ).toHaveAttribute("aria-disabled", "true");
  await page.keyboard.insertText("To B2");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("dialog", { name: "Move R1" })).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(tree(page)).toBeFocused();
});

test("an edit is told once, with what the checks say of it", async ({ quietPage: page, address }) => {
  const keys = new Keys(page);
  await openOutline(page, address);
  await keys.act("B1", "C1 BK", "Cap C1 BK");
  const told = page.locator("[data-live]");
  await expect(told).toHaveText(/^Cap C1 BK( in B1)?[.] \d+ findings, worst: \w+(, \d+ new)?[.]/);
  await page.keyboard.press("Control+z");
  await expect(told).toHaveText(/^Undone: Cap C1 BK( in B1)?[.] \d+ findings, worst: violation(, \d+ new)?[.]/);
});

for (const [way, handsOf] of [
  ["keys", (page: Page): Hands => new Keys(page)],
  ["presses", (page: Page): Hands => new Presses(page)],
] as const) {
  test(`every command of the outline is given by ${way} alone`, async ({ quietPage: page, address }) => {
    test.setTimeout(240_000);
    await page.setViewportSize({ width: 1440, height: 1800 });
    await openOutline(page, address);
    const hands = handsOf(page);
    const ways = Object.entries(WAYS).filter((entry): entry is [string, OutlineWay] => entry[1].by === "outline");
    expect(ways.length).toBeGreaterThanOrEqual(31);
    for (const [command, { box, row: at, action, choices = [], stays, ends }] of ways) {
      const before = await undoName(page);
      if (ends !== undefined) await hands.splice(box, ...ends);
      else if (command === "rename-item") await hands.rename(box, choices[0] ?? "");
      else if (stays === true) await hands.actAndLeave(box, at, action, choices[0] ?? "");
      else await hands.act(box, at, action, ...choices);
      await expect.poll(() => undoName(page), command).not.toBe(before);
    }
    await checked(page);
    await expectAccessible(page, "after every command");
  });
}

test("every command of the menus stands there with its keys, and in the command field", async ({
  quietPage: page,
  address,
}) => {
  await openOutline(page, address);
  for (const menu of ["Drawing", "Edit"] as const) {
    await page.getByRole("button", { name: menu, exact: true }).click();
    for (const [command, way] of Object.entries(WAYS)) {
      // Proposed is not started here.
      if (way.by !== "control" || /proposed|other-state|show-scope/.test(command)) continue;
      for (const step of way.steps) {
        if (step.do !== "menu" || step.menu !== menu) continue;
        const line = page.getByRole("menuitem", { name: new RegExp(`^${step.line}`) }).first();
        await expect(line, command).toBeVisible();
        if (step.keys !== undefined) await expect(line, command).toContainText(/Ctrl/);
      }
    }
    await expectAccessible(page, `menu ${menu}`);
    await page.keyboard.press("Escape");
  }
  for (const { id, title } of windowCommands) {
    // The field is how anything is found.
    if (id === "undo" || id === "redo" || id === "find-anything") continue;
    await page.keyboard.press("Control+k");
    await page.keyboard.insertText(title);
    await expect(page.getByRole("listbox", { name: "What was found" }), id).toContainText(title);
    await page.keyboard.press("Escape");
  }
});

test("controls that commands hang on are in the order of the Tab key and large enough to press", async ({
  quietPage: page,
  address,
}) => {
  await openOutline(page, address);
  await runByField(page, "B1");
  const controls = [
    page.getByRole("button", { name: "Add a box or panel" }),
    pane(page).getByLabel("Internal clamps", { exact: true }),
    pane(page).getByLabel("How known: Internal clamps"),
    page.getByLabel("Code edition"),
    page.getByRole("button", { name: /^Proposed/ }),
  ];
  for (const control of controls) {
    const { tab, width, height } = await control.evaluate((element: HTMLElement) => {
      const size = element.getBoundingClientRect();
      return { tab: element.tabIndex, width: size.width, height: size.height };
    });
    expect(tab).toBe(0);
    // 24 CSS pixels: WCAG 2.2, 2.5.8.
    expect(Math.min(width, height)).toBeGreaterThanOrEqual(24);
  }
  const targets = await tree(page)
    .getByRole("button")
    .evaluateAll((all) =>
      all.map((one) => one.getBoundingClientRect()).map(({ width, height }) => Math.min(width, height)),
    );
  expect(Math.min(...targets)).toBeGreaterThanOrEqual(24);
});

test("something of the stock is put down without the sheet", async ({ quietPage: page, address }) => {
  await openWindow(page, address);
  const stock = page.getByRole("navigation", { name: "Stock and outline" });
  await stock.getByRole("button", { name: /^4 in[.] square × 2-1\/8/ }).click();
  await stock.getByRole("button", { name: "Put it on a free place" }).click();
  await expect(pane(page).getByRole("textbox", { name: "Name" })).toHaveValue("B1");
  await stock.getByRole("button", { name: /^Grounding duplex, 15 A/ }).click();
  await expectAccessible(page, "device in the hand");
  await stock.getByRole("button", { name: "Choose where…" }).click();
  await page.getByRole("option", { name: /^B1/ }).click();
  await expect(pane(page).getByRole("textbox", { name: "Name" })).toHaveValue("R1");
});

test("a thousand boxes open in the outline without a stall", async ({ quietPage: page, address }) => {
  test.setTimeout(180_000);
  await openWindow(page, address);
  const text = textToSave(bigHouse(1_000));
  const transfer = await page.evaluateHandle((content) => {
    const data = new DataTransfer();
    data.items.add(new File([content], "house.loadside"));
    return data;
  }, text);
  await page.getByRole("main").dispatchEvent("drop", { dataTransfer: transfer });
  await expect(page.getByRole("banner")).toContainText("house", { timeout: 30_000 });
  await expect(page.getByRole("contentinfo").getByText(/^\d+ checks run$/)).toBeVisible({ timeout: 60_000 });
  await page.getByRole("tab", { name: "Outline" }).click();
  await tree(page).focus();
  await page.keyboard.press("Home");
  await page.keyboard.press("*");
  await page.keyboard.press("End");
  await expect.poll(() => activeName(page)).toMatch(/^\S+, /);
  // Rows out of sight are not there.
  expect(await tree(page).getByRole("treeitem").count()).toBeLessThan(80);
  // Time that the thread of the window itself was at work: a busy machine makes everything late, and this hardly.
  const session = await page.context().newCDPSession(page);
  await session.send("Performance.enable", { timeDomain: "threadTicks" });
  const atWork = async (): Promise<number> => {
    const { metrics } = await session.send("Performance.getMetrics");
    return (metrics.find(({ name }) => name === "TaskDuration")?.value ?? Number.NaN) * 1000;
  };
  const STEPS = 40;
  const before = await atWork();
  const late = await page.evaluate(async (steps) => {
    const root = document.querySelector<HTMLElement>("[role='tree']");
    const start = performance.now();
    for (let step = 0; step < steps; step += 1) {
      root?.dispatchEvent(new KeyboardEvent("keydown", { key: "ArrowUp", bubbles: true }));
      await new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
    }
    return (performance.now() - start) / steps;
  }, STEPS);
  const each = ((await atWork()) - before) / STEPS;
  console.log(
    `outline, 1,000 boxes all open: a step takes ${each.toFixed(1)} ms of work, ${late.toFixed(1)} ms until it shows`,
  );
  expect(each).toBeGreaterThan(0);
  // A step that is felt at once: RAIL's 100 ms, half of it for all that is not this thread.
  expect(each).toBeLessThan(50);
});
