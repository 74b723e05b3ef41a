/** Named states of the window, one after the other, each looked over by the accessibility checker. */
import { expect, type Locator, type Page } from "@playwright/test";
import {
  checked,
  expectAccessible,
  leaveStart,
  openLaundrySample,
  openStart,
  pane,
  runByField,
  showPane,
  test,
} from "./support/window-test.ts";

test.use({ contextOptions: { reducedMotion: "reduce" } });

interface State {
  /** What a person would call it. */
  readonly name: string;
  /** Comes to it from the one before. */
  readonly come: (page: Page) => Promise<void>;
}

const button = (page: Page, name: string): Locator => page.getByRole("button", { name, exact: true });
const leave = (page: Page): Promise<void> => page.keyboard.press("Escape");
const thing = (page: Page, name: RegExp): Locator =>
  page.locator("[data-item]").and(page.getByRole("button", { name }));
const box = (page: Page, name: string): Locator => page.getByRole("group", { name: new RegExp(`^Box ${name}\\b`) });
const tree = (page: Page): Locator => page.getByRole("tree", { name: "Outline of the drawing" });
const inMenu = async (page: Page, menu: string, line: RegExp): Promise<void> => {
  await button(page, menu).click();
  await page.getByRole("menuitem", { name: line }).first().click();
};
const dialog = async (page: Page): Promise<void> => expect(page.getByRole("dialog")).toBeVisible();
const closed = async (page: Page): Promise<void> => {
  await leave(page);
  await expect(page.getByRole("dialog")).toHaveCount(0);
};
const selects = async (page: Page, row: RegExp): Promise<void> => {
  await tree(page).getByRole("treeitem", { name: row }).first().click();
};

const STATES: readonly State[] = [
  { name: "start page", come: async () => {} },
  { name: "empty drawing", come: leaveStart },
  { name: "house from middle distance", come: openLaundrySample },
  { name: "house from afar", come: async (page) => button(page, "far").click() },
  { name: "house from near", come: async (page) => button(page, "near").click() },
  {
    name: "a box selected",
    come: async (page) => {
      await button(page, "Fit").click();
      await runByField(page, "B1");
      await expect(pane(page).getByText("Fill ledger")).toBeVisible();
    },
  },
  {
    name: "a box opened, with the focus in it",
    come: async (page) => {
      await button(page, "Fit").click();
      await box(page, "B1").focus();
      await page.keyboard.press("Enter");
      await expect(page.locator("[data-item]:focus")).toHaveCount(1);
    },
  },
  {
    name: "an end in the hand, with its places",
    come: async (page) => {
      await thing(page, /^12\/2 C1 black end at B1/).press("Enter");
      await expect(page.locator(".sheet-target:focus")).toBeVisible();
    },
  },
  {
    name: "a jumper in the hand",
    come: async (page) => {
      await leave(page);
      await thing(page, /^Splice X,/).press("Shift+F10");
      await page.getByRole("menuitem", { name: "Pigtail or jumper from here" }).press("Enter");
      await expect(page.locator(".sheet-target").first()).toBeVisible();
    },
  },
  {
    name: "the menu of a device",
    come: async (page) => {
      await leave(page);
      await thing(page, / R1, box /).press("Shift+F10");
      await expect(page.getByRole("menu")).toBeVisible();
    },
  },
  {
    name: "a list of that menu",
    come: async (page) => page.getByRole("menuitem", { name: "Pigtail or jumper from" }).press("ArrowRight"),
  },
  {
    name: "a cable between boxes, come to by keys",
    come: async (page) => {
      for (let times = 0; times < 4; times += 1) await leave(page);
      await box(page, "B1").focus();
      await page.keyboard.press("f");
      await expect(page.locator("[data-walk-stop]:focus")).toHaveCount(1);
    },
  },
  {
    name: "several boxes chosen",
    come: async (page) => {
      await leave(page);
      await page.keyboard.press("Space");
      await page.keyboard.press("Shift+ArrowRight");
      await button(page, "Choose several").click();
    },
  },
  {
    name: "outline with a box open",
    come: async (page) => {
      await button(page, "Done choosing").click();
      await page.getByRole("tab", { name: "Outline" }).click();
      await selects(page, /^B1, /);
      await page.keyboard.press("ArrowRight");
    },
  },
  { name: "details of a device", come: async (page) => selects(page, /^R1, /) },
  { name: "details of a cable", come: async (page) => selects(page, /^C1, /) },
  { name: "details of a splice", come: async (page) => selects(page, /^X, /) },
  {
    name: "the menu of a row",
    come: async (page) => {
      await page.keyboard.press("Shift+F10");
      await expect(page.getByRole("menu")).toBeVisible();
    },
  },
  {
    name: "a name being changed in the outline",
    come: async (page) => {
      await leave(page);
      await page.keyboard.press("F2");
      await expect(page.getByRole("textbox", { name: "Name of X" })).toBeFocused();
    },
  },
  {
    name: "places to choose from",
    come: async (page) => {
      await leave(page);
      await page.keyboard.press("Shift+F10");
      await page.getByRole("menuitem", { name: /^Join an end to X/ }).click();
      await dialog(page);
    },
  },
  {
    name: "findings",
    come: async (page) => {
      await closed(page);
      await showPane(page, "Findings");
    },
  },
  {
    name: "rooms",
    come: async (page) => showPane(page, "Rooms"),
  },
  {
    name: "a menu of the strip",
    come: async (page) => button(page, "Drawing").click(),
  },
  {
    name: "samples",
    come: async (page) => {
      await page.getByRole("menuitem", { name: "Samples" }).click();
      await dialog(page);
    },
  },
  {
    name: "list of keys",
    come: async (page) => {
      await closed(page);
      await inMenu(page, "Help and view", /^Keys/);
      await dialog(page);
    },
  },
  {
    name: "local amendments",
    come: async (page) => {
      await closed(page);
      await inMenu(page, "Drawing", /^Local amendments/);
      await dialog(page);
    },
  },
  {
    name: "sheets to print, with the first page",
    come: async (page) => {
      await closed(page);
      await page.keyboard.press("Control+p");
      await expect(page.getByRole("img", { name: /^Page 1 of / })).toBeVisible();
    },
  },
  {
    name: "what a sheet can be saved as",
    come: async (page) => {
      await button(page, "Save this sheet").click();
      await expect(page.getByRole("menu", { name: "Save this sheet" })).toBeVisible();
    },
  },
  {
    name: "nothing ticked to print",
    come: async (page) => {
      await leave(page);
      await button(page, "None").click();
      await expect(page.getByText("No sheet is ticked.")).toBeVisible();
    },
  },
  {
    name: "command field with its lines",
    come: async (page) => {
      await closed(page);
      await page.keyboard.press("Control+k");
      await page.keyboard.insertText("b1");
      await expect(page.locator(".command-line").first()).toBeVisible();
    },
  },
  {
    name: "which cable is which",
    come: async (page) => {
      await leave(page);
      await runByField(page, "B1");
      await pane(page).getByRole("button", { name: "Which cable is which…" }).click();
      await expect(pane(page).getByText("What to do next")).toBeVisible();
    },
  },
  {
    name: "map of circuits",
    come: async (page) => {
      await inMenu(page, "Drawing", /^Map the circuits/);
      await expect(pane(page).getByText("Outlets and their breakers")).toBeVisible();
    },
  },
  {
    name: "energised",
    come: async (page) => {
      await button(page, "Close").click();
      await button(page, "Energise").click();
      await expect(page.getByText("Computed circuit, as found.")).toBeVisible();
    },
  },
  {
    name: "the question before proposed",
    come: async (page) => {
      await button(page, "Energise").click();
      await page
        .getByRole("banner")
        .getByRole("button", { name: /^Proposed/ })
        .click();
      await dialog(page);
    },
  },
  {
    name: "proposed, with fixes",
    come: async (page) => {
      await button(page, "Start proposed").click();
      await checked(page);
      await showPane(page, "Findings");
    },
  },
  {
    name: "a ground-fault device being fitted",
    come: async (page) => {
      await runByField(page, "R1");
      await runByField(page, "Fit a ground-fault device at R1");
      await expect(pane(page).getByText("detach 10, attach 16, 3 new joints", { exact: true })).toBeVisible();
    },
  },
  {
    name: "what it would move, on the sheet",
    come: async (page) => {
      await button(page, "Show on the sheet").click();
      await expect(page.getByRole("img", { name: /^B1 as it would be/ })).toBeVisible();
    },
  },
  {
    name: "a make-up left, with the focus back",
    come: async (page) => {
      await button(page, "Cancel").click();
      await expect(page.getByRole("tab", { name: "Make-up" })).toHaveCount(0);
      await showPane(page, "Findings");
    },
  },
  {
    name: "scope, with nothing changed yet",
    come: async (page) => {
      await button(page, "Scope").click();
      await expect(pane(page).getByText(/^Proposed is as found so far/)).toBeVisible();
    },
  },
  {
    name: "proposed again",
    come: async (page) => {
      await page.keyboard.press("Shift+F8");
      await showPane(page, "Findings");
    },
  },
  {
    name: "200 % at 1280 × 720",
    come: async (page) => page.setViewportSize({ width: 640, height: 360 }),
  },
  {
    name: "320 pixels wide",
    come: async (page) => page.setViewportSize({ width: 320, height: 640 }),
  },
  {
    name: "dark",
    come: async (page) => {
      await page.setViewportSize({ width: 1280, height: 720 });
      await page.evaluate(() => {
        document.documentElement.dataset.theme = "dark";
      });
    },
  },
  {
    name: "a person's own colours",
    come: async (page) => page.emulateMedia({ forcedColors: "active" }),
  },
];

test("no violation in any of the named states", async ({ quietPage: page, address }) => {
  test.setTimeout(300_000);
  expect(STATES.length).toBeGreaterThanOrEqual(25);
  await openStart(page, address);
  for (const { name, come } of STATES)
    await test.step(name, async () => {
      await come(page);
      await expectAccessible(page, name);
    });
});
