/** Every command that is no row of the outline, by keys alone and by presses alone. */
import { expect, type Locator, type Page } from "@playwright/test";
import { type WindowCommandId, windowCommands } from "../../shared-model/commands/catalog/commands.ts";
import { documentCommands } from "../../shared-model/commands/catalog/document-commands.ts";
import { type Controls, KeyControls, PressControls } from "./support/controls.ts";
import { type Hands, Keys, Presses } from "./support/hands.ts";
import { answerPickers, choose } from "./support/stored-files.ts";
import { type ControlWay, WAYS } from "./support/ways.ts";
import { checked, expectAccessible, openLaundrySample, openWindow, test } from "./support/window-test.ts";

const FILE = "ways.loadside";
const banner = (page: Page) => page.getByRole("banner");
const step = (page: Page, word: "Undo" | "Redo") => banner(page).getByRole("button", { name: new RegExp(`^${word}`) });

/** What shows that the window has done it; for what is no step that Undo could name. */
const SHOWN: Readonly<Partial<Record<WindowCommandId, (page: Page) => Promise<void>>>> = {
  undo: (page) => expect(step(page, "Redo")).toBeEnabled(),
  redo: (page) => expect(step(page, "Redo")).toBeDisabled(),
  copy: (page) =>
    expect.poll(() => page.evaluate(() => navigator.clipboard.readText())).toMatch(/"format": ?"loadside"/),
  "copy-picture": (page) => expect(page.getByText("Copied as a picture and as text")).toBeVisible(),
  energise: (page) => expect(page.getByText("Computed circuit, as found.")).toBeVisible(),
  "start-page": (page) => expect(page.getByRole("main", { name: "New from what I see" })).toBeVisible(),
  "save-document-as": (page) => expect(banner(page)).toContainText(FILE),
  "save-document": (page) => expect(banner(page).getByText("saved", { exact: true })).toBeVisible(),
  "open-document": (page) => expect(step(page, "Undo")).toBeDisabled(),
  // Its Close was pressed, so that it was open.
  "show-rules": (page) => expect(page.getByRole("dialog", { name: "Rule book" })).toBeHidden(),
  "new-document": (page) => expect(banner(page)).toContainText("Untitled drawing"),
  "other-state": (page) =>
    expect(banner(page).getByRole("button", { name: /^Proposed/ })).toHaveAttribute("aria-pressed", "true"),
  "show-scope": (page) =>
    expect(banner(page).getByRole("button", { name: /^Proposed/ })).toHaveAttribute("aria-pressed", "true"),
  overview: (page) => expect(page.getByRole("region", { name: "Overview of the drawing" })).toBeVisible(),
  "fold-left": (page) => expect(page.getByRole("tab", { name: "Outline" })).toBeVisible(),
  "fold-right": (page) => expect(page.getByRole("tab", { name: "Details" })).toBeVisible(),
  "find-anything": async (page) => {
    await expect(page.getByRole("combobox", { name: "Command, part, tag or finding" })).toBeFocused();
    await page.keyboard.press("Escape");
  },
  "show-keys": (page) => seenAndLeft(page, page.getByRole("dialog", { name: "Keys" })),
  "show-signs": (page) => seenAndLeft(page, page.getByRole("dialog", { name: "Signs and letters" })),
  "print-export": (page) => seenAndLeft(page, page.getByRole("dialog", { name: "Print and export" })),
  "show-cautions": (page) => seenAndLeft(page, page.getByRole("dialog", { name: "Before you draw" })),
  "take-tour": (page) => seenAndLeft(page, page.getByText("Step 1 of 5")),
};

/** Escape is asked of nobody here: it only makes way for the next command. */
async function seenAndLeft(page: Page, what: Locator): Promise<void> {
  await expect(what).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(what).toHaveCount(0);
}

test("the table of ways has every command, and each way names what shows that it worked", () => {
  const ids = [...documentCommands, ...windowCommands].map(({ id }) => id);
  expect(Object.keys(WAYS).sort()).toEqual(ids.sort());
  for (const [id, way] of Object.entries(WAYS)) {
    if (way.by === "outline") continue;
    expect(way.steps.length, id).toBeGreaterThan(0);
    expect([way.undoes !== undefined, id in SHOWN], id).toContain(true);
  }
});

for (const [way, handsOf, controlsOf] of [
  ["keys", (page: Page): Hands => new Keys(page), (page: Page): Controls => new KeyControls(page)],
  ["presses", (page: Page): Hands => new Presses(page), (page: Page): Controls => new PressControls(page)],
] as const) {
  test(`every other command is given by ${way} alone`, async ({ quietPage: page, context, address }) => {
    test.setTimeout(240_000);
    await context.grantPermissions(["clipboard-read", "clipboard-write"]);
    await page.setViewportSize({ width: 1440, height: 1800 });
    await answerPickers(page);
    await openWindow(page, address);
    await openLaundrySample(page);
    await choose(page, FILE);
    await page.getByRole("tab", { name: "Outline" }).click();
    const hands = handsOf(page);
    const controls = controlsOf(page);
    const ways = Object.entries(WAYS).filter((entry): entry is [string, ControlWay] => entry[1].by === "control");
    expect(ways.length).toBeGreaterThanOrEqual(25);
    for (const [command, { first = [], steps, undoes }] of ways) {
      await test.step(command, async () => {
        for (const one of first) {
          if ("do" in one) await controls.take(one);
          else await hands.act(one.box, one.row, one.action, ...(one.choices ?? []));
        }
        if (undoes !== undefined) await expect(step(page, "Undo"), command).not.toHaveAccessibleName(undoes);
        for (const one of steps) await controls.take(one);
        await SHOWN[command as WindowCommandId]?.(page);
        if (undoes === undefined) return;
        await expect(step(page, "Undo"), command).toHaveAccessibleName(undoes);
        await checked(page);
      });
    }
    await expectAccessible(page, "after every other command");
  });
}
