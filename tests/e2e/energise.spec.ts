/** The drawing energised: operated, measured, tested and tripped by mouse, by keys alone and by presses alone. */
import { expect, type Locator, type Page } from "@playwright/test";
import { checked, expectAccessible, openWindow, runByField, test } from "./support/window-test.ts";

const SAMPLE = /laundry as proposed/;
const energised = (page: Page): Locator => page.getByRole("tabpanel", { name: "Energised" });
const section = (page: Page, title: string | RegExp): Locator =>
  energised(page)
    .locator(".part")
    .filter({ has: page.getByRole("heading", { name: title }) });
const meter = (page: Page): Locator => page.getByRole("region", { name: "Meter" });
const undo = (page: Page): Locator => page.getByRole("banner").getByRole("button", { name: /^Undo/ });
/** Something in a box, by how its name begins. */
const thing = (page: Page, name: string | RegExp): Locator =>
  page.locator("[data-item]").and(page.getByRole("button", { name }));

async function openProposed(page: Page, address: string): Promise<void> {
  await openWindow(page, address);
  await page.getByRole("button", { name: "Drawing", exact: true }).click();
  await page.getByRole("menuitem", { name: "Samples" }).click();
  await page.getByRole("dialog").getByRole("button", { name: SAMPLE }).click();
  await expect(page.getByRole("dialog")).toHaveCount(0);
  await expect(page.getByRole("banner")).toContainText("1962 bungalow, laundry as proposed");
  await checked(page);
}

/** Shows B1 from near without taking the pane away. */
async function nearB1(page: Page): Promise<void> {
  await runByField(page, "B1");
  await page.getByRole("button", { name: "near", exact: true }).click();
  await expect(thing(page, / R1b, box /).first()).toBeVisible();
}

const listed = async (page: Page, title: string): Promise<readonly string[]> =>
  (
    await energised(page)
      .locator(".energise-part")
      .filter({ has: page.getByRole("heading", { name: title }) })
      .getByRole("button")
      .allInnerTexts()
  ).toSorted();

async function goesDarkAtTest(page: Page): Promise<void> {
  await expect(energised(page).getByText("R1b opened.")).toBeVisible();
  expect(await listed(page, "Went dark")).toEqual(["R1b", "R2", "R3", "R5"]);
  expect(await listed(page, "Stayed on")).toEqual(["L1", "R4b"]);
}

test("by mouse: switched off, measured, tested, tripped, leaked and kept", async ({ quietPage: page, address }) => {
  await openProposed(page, address);
  await nearB1(page);
  await page.getByRole("button", { name: "Energise", exact: true }).click();
  await expect(energised(page).getByText("The simulator never authorises live work")).toBeVisible();
  await expect(thing(page, /C1 black.*, live, \d/).first()).toBeAttached();
  await expectAccessible(page, "energised");

  // A breaker is operated on the sheet, in its panel.
  await runByField(page, "P");
  await page.getByRole("tab", { name: "Energised" }).click();
  await thing(page, / Q14, panel /)
    .first()
    .click();
  await expect(section(page, "Settings").getByRole("switch", { name: "Q14, off" })).toBeVisible();
  await expect(section(page, "Meter")).toContainText("power off: resistance");
  await thing(page, / Q14, panel /)
    .first()
    .click();
  await expect(section(page, "Settings").getByRole("switch", { name: "Q14, on" })).toBeVisible();

  // Two leads by presses on the sheet.
  await nearB1(page);
  await page.getByRole("tab", { name: "Energised" }).click();
  await page.getByRole("button", { name: "Place the red lead, V, by a press on the sheet" }).click();
  await thing(page, /^Terminal R1b LINE H/).click();
  // The other lead comes to hand by itself.
  await thing(page, /^Splice NL/).click();
  await expect(meter(page)).toContainText("R1b LINE H, brass");
  await expect(meter(page)).toContainText("NL in B1");
  await expect(meter(page)).toContainText(/11\d\.\d V/);
  await expect(meter(page)).toContainText("computed circuit");
  await expectAccessible(page, "meter");

  await thing(page, /^TEST of R1b, set/).click();
  await goesDarkAtTest(page);
  await expect(thing(page, /C5 black.*, dead/).first()).toBeAttached();
  await expectAccessible(page, "tripped");

  // What opened stays open until it is reset.
  await thing(page, /^RESET of R1b, tripped/).click();
  await expect(thing(page, /^TEST of R1b, set/)).toBeAttached();
  await expect(thing(page, /C5 black.*, live, \d/).first()).toBeAttached();

  await energised(page).getByLabel("Outlet to test").selectOption({ label: "R3, in B3" });
  await expect(energised(page).getByText("Plug-in tester: correct")).toBeVisible();
  await expect(energised(page)).toContainText("cannot distinguish this from:");
  await expect(energised(page)).toContainText("not behind a ground-fault device");
  await energised(page).getByLabel("Milliamperes of the leak").fill("6.3");
  await page.getByRole("button", { name: "Leak to ground outside at R3" }).click();
  await goesDarkAtTest(page);
  await expect(energised(page).getByText("Plug-in tester: open hot / dead")).toBeVisible();
  await expectAccessible(page, "leaked");

  await section(page, "Meter").getByRole("button", { name: "Write into the log" }).click();
  await expect(undo(page)).not.toHaveAccessibleName(/reading/);
  await page.getByRole("button", { name: /^Keep as evidence: R1b LINE H/ }).click();
  await expect(undo(page)).toHaveAccessibleName(/^Undo: Add reading 11\d\.\d/);
  await expect(page.getByRole("button", { name: /^Kept: R1b LINE H/ })).toBeFocused();
  await page.getByRole("tab", { name: "Outline" }).click();
  await page.getByRole("treeitem", { name: /^Readings/ }).click();
  await page.keyboard.press("ArrowRight");
  await expect(page.getByRole("treeitem", { name: /11\d\.\d V, .*computed circuit/ })).toBeVisible();
});

test("what is operated is no edit: undo does not know of it, and it ends with the button and with Escape", async ({
  quietPage: page,
  address,
}) => {
  await openProposed(page, address);
  const button = page.getByRole("button", { name: "Energise", exact: true });
  await button.click();
  await section(page, "Settings").getByRole("switch", { name: "Q14, on" }).click();
  await expect(section(page, "Settings").getByRole("switch", { name: "Q14, off" })).toBeVisible();
  await expect(undo(page)).toBeDisabled();
  await expect(page.getByRole("banner")).not.toContainText("not saved");
  await page.keyboard.press("Escape");
  await expect(button).toHaveAttribute("aria-pressed", "false");
  await expect(page.getByRole("tab", { name: "Energised" })).toHaveCount(0);
  await button.click();
  await expect(section(page, "Settings").getByRole("switch", { name: "Q14, off" })).toBeVisible();
  await energised(page).getByRole("button", { name: "All on and reset" }).click();
  await expect(section(page, "Settings").getByRole("switch", { name: "Q14, on" })).toBeVisible();
  await energised(page).getByRole("button", { name: "Open breaker, leave" }).click();
  await expect(button).toHaveAttribute("aria-pressed", "false");
  await expect(button).toBeFocused();
  await button.click();
  await expect(button).toHaveAttribute("aria-pressed", "true");
  await button.click();
  await expect(button).toHaveAttribute("aria-pressed", "false");
});

/** Tab into the box of a thing, Enter into what is in it, and arrows toward the thing; only looks for where it is. */
async function walkTo(page: Page, name: RegExp): Promise<void> {
  const wanted = thing(page, name).first();
  const within = wanted.locator("xpath=ancestor::*[contains(@class, 'react-flow__node')][1]");
  const hasFocus = (of: Locator): Promise<boolean> =>
    of.evaluate((element) => element.contains(document.activeElement));
  for (let i = 0; i < 150 && !(await hasFocus(within)); i++) await page.keyboard.press("Tab");
  if (await within.evaluate((element) => element === document.activeElement)) await page.keyboard.press("Enter");
  // Where a way was tried before, another is: things do not stand in rows.
  const tried = new Map<string, number>();
  for (let i = 0; i < 200; i++) {
    const { dx, dy, on } = await wanted.evaluate((element) => {
      const middle = (of: Element): readonly [number, number] => {
        const { x, y, width, height } = of.getBoundingClientRect();
        return [x + width / 2, y + height / 2];
      };
      const now = document.activeElement ?? element;
      const [from, to] = [middle(now), middle(element)];
      return {
        dx: to[0] - from[0],
        dy: to[1] - from[1],
        on: now === element ? "" : (now.getAttribute("data-item") ?? "?"),
      };
    });
    if (on === "") return;
    const away = { ArrowLeft: dx, ArrowRight: -dx, ArrowUp: dy, ArrowDown: -dy };
    const [key] = Object.entries(away)
      .map(([arrow, off]) => ({ arrow, off, times: tried.get(`${on} ${arrow}`) ?? 0 }))
      .sort((p, q) => p.times - q.times || p.off - q.off);
    if (key === undefined) break;
    tried.set(`${on} ${key.arrow}`, key.times + 1);
    await page.keyboard.press(key.arrow);
  }
  throw new Error(`Arrows do not reach ${name}.`);
}

test("by keys alone", async ({ quietPage: page, address }) => {
  await openProposed(page, address);
  await page.keyboard.press("F9");
  await expect(energised(page)).toBeVisible();
  await runByField(page, "B1");
  await expect(page.getByRole("tab", { name: "Energised" })).toBeVisible();

  // From the button of the pane, as a person with Tab.
  const focus = async (name: string | RegExp): Promise<void> => {
    const wanted = page.getByRole("button", { name }).or(page.getByRole("switch", { name }));
    for (let i = 0; i < 150; i++) {
      if (await wanted.first().evaluate((element) => element === document.activeElement)) return;
      await page.keyboard.press("Tab");
    }
    throw new Error(`Tab does not reach ${name}.`);
  };
  // The tab is reached by arrows in its list.
  const tab = page.getByRole("tab", { name: "Details" });
  for (let i = 0; i < 150 && !(await tab.evaluate((element) => element === document.activeElement)); i++)
    await page.keyboard.press("Tab");
  for (let i = 0; i < 3; i++) await page.keyboard.press("ArrowRight");
  await expect(energised(page)).toBeVisible();

  await focus("Q14, on");
  await page.keyboard.press("Space");
  await expect(section(page, "Settings").getByRole("switch", { name: "Q14, off" })).toBeVisible();
  await page.keyboard.press("Space");
  await expect(section(page, "Settings").getByRole("switch", { name: "Q14, on" })).toBeVisible();

  // Escape closes what is open first.
  await focus("Place the red lead, V, from a list");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("dialog")).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(page.getByRole("dialog")).toHaveCount(0);
  await expect(energised(page)).toBeVisible();
  await focus("Place the red lead, V, from a list");
  await page.keyboard.press("Enter");
  await page.keyboard.insertText("R1b LINE H");
  await page.keyboard.press("Enter");
  await focus("Place the black lead, COM, from a list");
  await page.keyboard.press("Enter");
  await page.keyboard.insertText("R1b LINE N");
  await page.keyboard.press("Enter");
  await expect(meter(page)).toContainText(/11\d\.\d V/);

  await focus("TEST R1b");
  await page.keyboard.press("Enter");
  await goesDarkAtTest(page);
  await focus("RESET R1b");
  await page.keyboard.press("Enter");
  await expect(energised(page).getByRole("button", { name: "TEST R1b" })).toBeEnabled();

  // On the sheet: into the box, to TEST, Space.
  await focus("near");
  await page.keyboard.press("Enter");
  await walkTo(page, /^TEST of R1b/);
  await page.keyboard.press("Space");
  await goesDarkAtTest(page);
  await walkTo(page, /^RESET of R1b/);
  await page.keyboard.press("Enter");
  await expect(thing(page, /^TEST of R1b, set/)).toBeAttached();

  // By its menu.
  await walkTo(page, /^GFCI receptacle R1b, box /);
  await page.keyboard.press("Shift+F10");
  await expect(page.getByRole("menuitem", { name: "TEST R1b" })).toBeFocused();
  await page.keyboard.press("Enter");
  await goesDarkAtTest(page);

  // Out of the box, then out of it all.
  await page.keyboard.press("Escape");
  await page.keyboard.press("Escape");
  await expect(page.getByRole("button", { name: "Energise", exact: true })).toHaveAttribute("aria-pressed", "false");
});

test("by presses alone, in a narrow window", async ({ quietPage: page, address }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await openProposed(page, address);
  await page.getByRole("button", { name: "Energise", exact: true }).click();
  await section(page, "Settings").getByRole("switch", { name: "S1, on" }).click();
  await expect(section(page, "Settings").getByRole("switch", { name: "S1, off" })).toBeVisible();
  await page.getByRole("button", { name: "Place the red lead, V, from a list" }).click();
  await page.getByRole("dialog").getByRole("combobox").fill("L1 H");
  await page.getByRole("dialog").getByRole("option", { name: /^L1 H/ }).first().click();
  await page.getByRole("button", { name: "Place the black lead, COM, from a list" }).click();
  await page.getByRole("dialog").getByRole("combobox").fill("ground outside");
  await page
    .getByRole("dialog")
    .getByRole("option", { name: /^ground outside/ })
    .click();
  await expect(section(page, "Meter")).toContainText(/computed/);
  await page.getByRole("button", { name: "TEST R1b" }).click();
  await expect(energised(page).getByText("R1b opened.")).toBeVisible();
  await expectAccessible(page, "energised, narrow");
});

/** Both leads on LINE of R1b, from the list. */
async function placeLeads(page: Page): Promise<void> {
  for (const [lead, place] of [
    ["red lead, V", "R1b LINE H"],
    ["black lead, COM", "R1b LINE N"],
  ] as const) {
    await page.getByRole("button", { name: `Place the ${lead}, from a list` }).click();
    await page.getByRole("dialog").getByRole("combobox").fill(place);
    await page.getByRole("dialog").getByRole("option", { name: place }).first().click();
  }
  await expect(meter(page)).toContainText(/11\d\.\d V/);
}

/** The checker in both papers. */
async function expectAccessibleInBoth(page: Page, shown: string): Promise<void> {
  for (const theme of ["light", "dark"]) {
    await page.evaluate((name) => {
      document.documentElement.dataset.theme = name;
    }, theme);
    await expectAccessible(page, `${shown}, ${theme}`);
  }
}

test("operated, metered, tested and tripped: no fault of access, light and dark", async ({
  quietPage: page,
  address,
}) => {
  // The checker looks at everything twice.
  test.slow();
  await openProposed(page, address);
  await nearB1(page);
  await page.getByRole("button", { name: "Energise", exact: true }).click();
  await section(page, "Settings").getByRole("switch", { name: "S1, on" }).click();
  await expect(section(page, "Settings").getByRole("switch", { name: "S1, off" })).toBeVisible();
  await expectAccessibleInBoth(page, "operated");
  await placeLeads(page);
  await expectAccessibleInBoth(page, "metered");
  await energised(page).getByLabel("Outlet to test").selectOption({ label: "R3, in B3" });
  await expect(energised(page).getByText("Plug-in tester: correct")).toBeVisible();
  await expectAccessibleInBoth(page, "tested");
  await page.getByRole("button", { name: "TEST R1b" }).click();
  await expect(energised(page).getByText("R1b opened.")).toBeVisible();
  await expectAccessibleInBoth(page, "tripped");
});

test("not reset, leaked, logged and in trouble: no fault of access, light and dark", async ({
  quietPage: page,
  address,
}) => {
  test.slow();
  // Answers of the worker can be kept away, as when it is at an end.
  await page.addInitScript(() => {
    const post = Worker.prototype.postMessage;
    Worker.prototype.postMessage = function (
      this: Worker,
      message: { type?: string; request?: number; base?: number },
    ) {
      if (message.type !== "energise" || document.documentElement.dataset.mute === undefined)
        return post.call(this, message);
      const { request, base } = message;
      setTimeout(() => this.onmessage?.(new MessageEvent("message", { data: { type: "energised", request, base } })));
    };
  });
  await openProposed(page, address);
  await nearB1(page);
  await page.getByRole("button", { name: "Energise", exact: true }).click();
  await energised(page).getByLabel("Outlet to test").selectOption({ label: "R3, in B3" });
  await expect(energised(page).getByText("Plug-in tester: correct")).toBeVisible();
  await page.getByRole("button", { name: "TEST R1b" }).click();
  await goesDarkAtTest(page);

  await section(page, "Settings").getByRole("switch", { name: "Q14, on" }).click();
  await expect(section(page, "Settings").getByRole("switch", { name: "Q14, off" })).toBeVisible();
  await page.getByRole("button", { name: "RESET R1b" }).click();
  await expect(energised(page).getByText("It stays open.")).toBeVisible();
  await expect(section(page, /^RESET of R1b/)).toContainText("no power: 0.0 V at its LINE");
  await expectAccessibleInBoth(page, "not reset");

  await energised(page).getByRole("button", { name: "All on and reset" }).click();
  await expect(section(page, "Settings").getByRole("switch", { name: "Q14, on" })).toBeVisible();
  await energised(page).getByLabel("Milliamperes of the leak").fill("6.3");
  await page.getByRole("button", { name: "Leak to ground outside at R3" }).click();
  await expect(energised(page).getByText("R1b opened.")).toBeVisible();
  await expectAccessibleInBoth(page, "leaked");
  await energised(page).getByRole("button", { name: "Copy log" }).scrollIntoViewIfNeeded();
  await expectAccessibleInBoth(page, "log");

  // Where nobody answers, nothing on the sheet says how conductors stand, and what was written stays.
  await expect(page.locator(".sheet-cond").first()).toBeAttached();
  await page.evaluate(() => {
    document.documentElement.dataset.mute = "";
  });
  await section(page, "Settings").getByRole("switch", { name: /^S1, / }).click();
  await expect(energised(page).getByRole("alert")).toContainText("cannot be computed now");
  await expect(page.locator(".sheet-node .sheet-cond, .react-flow .sheet-cond")).toHaveCount(0);
  await expect(energised(page).getByRole("list").filter({ hasText: "TEST of R1b" })).toBeVisible();
  await expectAccessibleInBoth(page, "trouble");
  await page.evaluate(() => {
    delete document.documentElement.dataset.mute;
  });
  await energised(page).getByRole("button", { name: "Compute again" }).click();
  await expect(page.locator(".react-flow .sheet-cond").first()).toBeAttached();
  await expect(energised(page).getByRole("alert")).toHaveCount(0);
});

test("the leads run from the meter to their places, wherever the sheet is moved", async ({
  quietPage: page,
  address,
}) => {
  await openProposed(page, address);
  await nearB1(page);
  await page.getByRole("button", { name: "Energise", exact: true }).click();
  await placeLeads(page);
  /** How far a cord ends from the probe, and begins from the edge of the card; pixels. */
  const off = (lead: "V" | "COM"): Promise<readonly number[]> =>
    page.evaluate((name) => {
      const path = document.querySelector<SVGPathElement>(`.sheet-cord-${name} .sheet-cord-core`);
      const butt = document.querySelector(`[data-lead="${name}"]`)?.getBoundingClientRect();
      const card = document.querySelector(".sheet-meter")?.getBoundingClientRect();
      const at = path?.ownerSVGElement?.getBoundingClientRect();
      if (!path || !butt || !card || !at || path.getTotalLength() === 0) return [999, 999];
      const [a, b] = [path.getPointAtLength(0), path.getPointAtLength(path.getTotalLength())];
      const beyond = (v: number, from: number, to: number) => Math.max(from - v, v - to, 0);
      return [
        Math.hypot(b.x + at.x - butt.x - butt.width / 2, b.y + at.y - butt.y - butt.height / 2),
        beyond(a.x + at.x, card.left, card.right) + beyond(a.y + at.y, card.top, card.bottom),
      ].map(Math.round);
    }, lead);
  for (const move of [
    async () => {},
    () => page.mouse.wheel(0, 120),
    () => page.getByRole("button", { name: "middle", exact: true }).click(),
  ]) {
    await page.mouse.move(640, 500);
    await move();
    await expect.poll(() => off("V")).toEqual([0, 0]);
    await expect.poll(() => off("COM")).toEqual([0, 0]);
  }
});

test("the list of signs has the conditions, by letter and pattern", async ({ quietPage: page, address }) => {
  await openWindow(page, address);
  await page.getByRole("button", { name: "Help and view" }).click();
  await page.getByRole("menuitem", { name: "Signs and letters" }).click();
  const legend = page.getByRole("dialog", { name: "Signs and letters" });
  for (const line of [
    "L: live; a whole sleeve",
    "F: floating, not proven dead; a sleeve with long dash and dot",
    "0: dead; hollow",
  ])
    await expect(legend).toContainText(line);
  await expectAccessibleInBoth(page, "signs");
});

test("TEST and RESET stay under the hand whatever is said of what followed", async ({ quietPage: page, address }) => {
  await openProposed(page, address);
  await page.getByRole("button", { name: "Energise", exact: true }).click();
  const [press, reset] = ["TEST R1b", "RESET R1b"].map((name) => energised(page).getByRole("button", { name }));
  if (press === undefined || reset === undefined) throw new Error("There are two buttons.");
  await expect(reset).toBeVisible();
  const at = await reset.boundingBox();
  await press.click();
  await expect(energised(page).getByText("R1b opened.")).toBeVisible();
  expect(await reset.boundingBox()).toEqual(at);
  await reset.click();
  await expect(energised(page).getByText("It is closed.")).toBeVisible();
  expect(await reset.boundingBox()).toEqual(at);
});
