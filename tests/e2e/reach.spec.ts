/** The sheet by keys, and how large and how visible everything is that is pressed or has the focus. */
import { expect, type Locator, type Page } from "@playwright/test";
import { checked, openLaundrySample, openWindow, pane, showPane, test } from "./support/window-test.ts";

test.use({ contextOptions: { reducedMotion: "reduce" } });

const box = (page: Page, name: string): Locator =>
  page.getByRole("group", { name: new RegExp(`^(Box|Panel) ${name}\\b`) });
const focused = (page: Page): Locator => page.locator(":focus");
const said = (page: Page): Locator => page.locator(".sheet > p[role=status]").last();
const stop = (page: Page): Locator => page.locator("[data-sheet-stop]");

/** Tab from the field before the sheet until the focus is in it. */
async function tabIn(page: Page): Promise<void> {
  await page.getByRole("searchbox", { name: "Find in stock" }).focus();
  await page.getByRole("searchbox", { name: "Find in stock" }).fill("no such thing");
  await page.keyboard.press("Tab");
  for (let times = 0; times < 6 && !(await isInSheet(page)); times += 1) await page.keyboard.press("Tab");
}
const isInSheet = (page: Page): Promise<boolean> =>
  page.evaluate(() => document.activeElement?.closest("[data-sheet-stop]") != null);

test("the sheet is one stop: arrows go to what is near, F along what is connected, Tab leads out again", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await expect(page.locator('[data-sheet-stop] [tabindex="0"]')).toHaveCount(0);
  await expect(stop(page)).toHaveAttribute("tabindex", "0");

  await tabIn(page);
  await page.keyboard.press("Home");
  await expect(box(page, "P")).toBeFocused();
  await page.keyboard.press("ArrowRight");
  await expect(box(page, "B1")).toBeFocused();
  await page.keyboard.press("ArrowRight");
  await expect(box(page, "B2")).toBeFocused();
  await page.keyboard.press("End");
  await expect(box(page, "B7")).toBeFocused();

  // Box, cable, box, and back.
  await page.keyboard.press("f");
  await expect(focused(page)).toHaveAccessibleName(/^Cable C7, 12\/2, .*from B5 to B7/);
  await page.keyboard.press("f");
  await expect(box(page, "B5")).toBeFocused();
  await page.keyboard.press("Shift+F");
  await page.keyboard.press("Shift+F");
  await expect(box(page, "B7")).toBeFocused();

  // Into the box and along its wires: to the lamp, over it, to the end at the other side of the cable.
  await page.keyboard.press("Enter");
  await expect(page.locator("[data-item]:focus")).toHaveCount(1);
  await page.keyboard.press("End");
  await expect(focused(page)).toHaveAccessibleName(/ end at B7/);
  await page
    .locator("[data-item]")
    .and(page.getByRole("button", { name: /^12\/2 C7 black end at B7/ }))
    .focus();
  await page.keyboard.press("f");
  await expect(focused(page)).toHaveAccessibleName("Luminaire L1, box B7, circuit Q14");
  await page.keyboard.press("Shift+F");
  await expect(focused(page)).toHaveAccessibleName(/^12\/2 C7 black end at B7/);

  // Out of the box, out of the sheet; Shift and Tab come back to where it was.
  await page.keyboard.press("Escape");
  await expect(box(page, "B7")).toBeFocused();
  await page.keyboard.press("Escape");
  await page.keyboard.press("Tab");
  expect(await isInSheet(page)).toBe(false);
  await page.keyboard.press("Shift+Tab");
  await expect(box(page, "B7")).toBeFocused();
  await page.keyboard.press("Shift+Tab");
  expect(await isInSheet(page)).toBe(false);
  await expect(said(page)).toHaveCount(1);
});

test("the ring is two pixels wide or more, in view and under nothing, from near to afar", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  for (const level of ["near", "middle", "far"]) {
    await page.getByRole("button", { name: level, exact: true }).click();
    await box(page, "B1").focus();
    for (const key of ["Home", "End", "ArrowUp", "ArrowRight", "ArrowDown", "ArrowLeft"]) {
      await page.keyboard.press(key);
      await expect(page.locator(".react-flow__node:focus")).toHaveCount(1);
      const seen = await ringOf(page);
      expect(seen.width, `${level} ${key}`).toBeGreaterThanOrEqual(2);
      expect(seen.contrast, `${level} ${key}`).toBeGreaterThanOrEqual(3);
      expect(seen.hidden, `${level} ${key}`).toEqual([]);
    }
  }
  // The things in a box too, at the smallest size at which they are drawn.
  await page.getByRole("button", { name: "near", exact: true }).click();
  for (let times = 0; times < 2; times += 1) await page.getByRole("button", { name: "Smaller" }).click();
  await box(page, "B1").focus();
  await page.keyboard.press("Enter");
  await expect(page.locator("[data-item]:focus")).toHaveCount(1);
  expect((await ringOf(page)).width).toBeGreaterThanOrEqual(2);
});

/** Width of the ring on the screen in pixels, its contrast with the paper, and what lies over the corners of the element. */
const ringOf = (page: Page) =>
  page.evaluate(() => {
    const element = document.activeElement;
    const line = element?.querySelector(".sheet-wall-outer") ?? element?.querySelector(".sheet-hit");
    if (!(line instanceof SVGGraphicsElement)) throw new Error("Nothing of the sheet has the focus.");
    const style = getComputedStyle(line);
    const luminance = (colour: string): number => {
      const [r = 0, g = 0, b = 0] = (colour.match(/[\d.]+/g) ?? []).map((part) => Number(part) / 255);
      const linear = (part: number): number => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4);
      return 0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b);
    };
    const paper = getComputedStyle(document.querySelector(".sheet") as Element).backgroundColor;
    const [light = 0, dark = 0] = [luminance(style.stroke), luminance(paper)].sort((a, b) => b - a);
    const area = line.getBoundingClientRect();
    const over = [".sheet-bar", ".sheet-title-block", ".sheet-hint", ".notice"].filter((each) => {
      const other = document.querySelector(each)?.getBoundingClientRect();
      return (
        other !== undefined &&
        other.left < area.right &&
        area.left < other.right &&
        other.top < area.bottom &&
        area.top < other.bottom
      );
    });
    // A box higher than the view cannot be clear of all: its beginning is seen.
    const room = document.querySelector(".sheet-flow")?.getBoundingClientRect() ?? area;
    return {
      width: Number.parseFloat(style.strokeWidth) * (line.getScreenCTM()?.a ?? 0),
      contrast: (light + 0.05) / (dark + 0.05),
      hidden: area.height > room.height * 0.75 ? [] : over,
    };
  });

/** What is pressed and is smaller than a size, but for what lies in a line of words or has an equal that is large enough. */
const smallerThan = (page: Page, least: number) =>
  page.evaluate((size) => {
    const pressed =
      "button, a[href], input, select, textarea, summary, [role=tab], [role=menuitem], [role=treeitem], [role=option]";
    return [...document.querySelectorAll<HTMLElement>(pressed)].flatMap((each) => {
      const { width, height } = each.getBoundingClientRect();
      const { visibility, clipPath } = getComputedStyle(each);
      if (width === 0 || height === 0 || visibility === "hidden" || clipPath !== "none") return [];
      // The label of a box to tick is pressed with it.
      const label = each.closest("label")?.getBoundingClientRect();
      const [wide, high] = [Math.max(width, label?.width ?? 0), Math.max(height, label?.height ?? 0)];
      if (Math.round(wide) >= size && Math.round(high) >= size) return [];
      return [
        `${each.tagName} ${each.className} ${each.textContent?.slice(0, 24)} ${Math.round(width)}×${Math.round(height)}`,
      ];
    });
  }, least);

const SHOWN: readonly (readonly [string, (page: Page) => Promise<unknown>])[] = [
  ["start page", async () => {}],
  ["empty drawing", async (page) => page.getByRole("button", { name: "Empty drawing" }).click()],
  ["a house", openLaundrySample],
  [
    "a box selected",
    async (page) => {
      await box(page, "B1").focus();
      await page.keyboard.press("Space");
    },
  ],
  ["findings", async (page) => showPane(page, "Findings")],
  ["rooms", async (page) => showPane(page, "Rooms")],
  [
    "outline and its menu",
    async (page) => {
      await showPane(page, "Details");
      await page.getByRole("tab", { name: "Outline" }).click();
      await page.getByRole("tree").focus();
      await page.keyboard.press("ArrowRight");
      await page.keyboard.press("Shift+F10");
    },
  ],
  [
    "command field",
    async (page) => {
      await page.keyboard.press("Escape");
      await page.keyboard.press("Control+k");
      await page.keyboard.insertText("b1");
      await expect(page.locator(".command-line").first()).toBeVisible();
    },
  ],
];

for (const [hands, least, touches] of [
  ["a mouse", 24, false],
  ["fingers", 44, true],
] as const) {
  test(`everything that is pressed is at least ${least} pixels for ${hands}`, async ({ browser, address }) => {
    const context = await browser.newContext({ hasTouch: touches, viewport: { width: 1280, height: 720 } });
    const page = await context.newPage();
    await page.addInitScript(() => {
      localStorage.setItem("loadside.preferences", JSON.stringify({ theme: "light", cautionsRead: true }));
    });
    await page.goto(address);
    expect(await page.evaluate(() => matchMedia("(pointer: coarse)").matches)).toBe(touches);
    for (const [name, come] of SHOWN) {
      await come(page);
      expect(await smallerThan(page, least), name).toEqual([]);
    }
    await context.close();
  });
}

test("nothing is cut off at 320 pixels, nor at 200 %", async ({ quietPage: page, address }) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  for (const [width, height] of [
    [320, 640],
    [640, 360],
  ] as const) {
    await page.setViewportSize({ width, height });
    for (const tab of ["Details", "Findings", "Rooms"] as const) {
      await showPane(page, tab);
      await expect(pane(page)).toBeVisible();
      const wide = await page.evaluate(() =>
        [document.scrollingElement, ...document.querySelectorAll(".tab-body, .pane, .stock, .strip, .status")].flatMap(
          (each) =>
            each !== null && each.scrollWidth > each.clientWidth + 1 ? [`${each.className} ${each.scrollWidth}`] : [],
        ),
      );
      expect(wide, `${tab} at ${width}`).toEqual([]);
    }
  }
  await checked(page);
});
