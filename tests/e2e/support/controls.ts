/** Two ways to work the controls of the window that are no rows of the outline: by keys alone, and by presses alone. */
import { expect, type Locator, type Page } from "@playwright/test";
import { TINY_JPEG } from "../../builders/tiny-jpeg.ts";
import type { ControlStep } from "./ways.ts";
import { fieldLeft } from "./window-test.ts";

/** What a person does with a button, a list or a field; everything is named as the window names it. */
export interface Controls {
  take(step: ControlStep): Promise<void>;
}

const paneOf = (page: Page): Locator => page.getByRole("complementary", { name: "Details, findings and rooms" });
const dialogOf = (page: Page): Locator => page.getByRole("dialog");
const treeOf = (page: Page): Locator => page.getByRole("tree", { name: "Outline of the drawing" });

const PHOTO = { name: "open box.jpg", mimeType: "image/jpeg", buffer: Buffer.from(TINY_JPEG, "base64") };

/** The control that a step is about; only looks. */
function controlOf(page: Page, step: Extract<ControlStep, { readonly name: string | RegExp }>): Locator {
  const { name, near } = step;
  const exact = typeof name === "string";
  const inside = near === undefined ? page : paneOf(page).getByRole("listitem").filter({ hasText: near });
  const role = { press: "button", "choose-photo": "button", pick: "combobox", write: "textbox" } as const;
  return inside.getByRole(role[step.do], { name, exact }).first();
}

/** Only `page.keyboard` acts; everything else looks. */
export class KeyControls implements Controls {
  readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  async take(step: ControlStep): Promise<void> {
    const { keyboard } = this.page;
    switch (step.do) {
      case "select":
        return this.field(step.box);
      case "show":
        await this.field(`show ${step.pane.toLowerCase()}`);
        await expect(this.page.getByRole("tab", { name: step.pane })).toHaveAttribute("aria-selected", "true");
        return;
      case "press":
        await this.reach(controlOf(this.page, step));
        return keyboard.press("Enter");
      case "pick":
        return this.pick(controlOf(this.page, step), step.option);
      case "write":
        await this.reach(controlOf(this.page, step));
        await keyboard.press("Control+a");
        return keyboard.insertText(step.text);
      case "choose":
        await expect(dialogOf(this.page).getByRole("combobox")).toBeFocused();
        await keyboard.insertText(step.line);
        return keyboard.press("Enter");
      case "answer":
        await this.reach(dialogOf(this.page).getByRole("button", { name: step.answer, exact: true }));
        return keyboard.press("Enter");
      case "choose-photo": {
        // Asked for first: what is asked of the browser on one way is overtaken by a key, which goes another.
        const chooser = this.page.waitForEvent("filechooser");
        await this.reach(controlOf(this.page, step));
        await keyboard.press("Enter");
        return (await chooser).setFiles(PHOTO);
      }
      case "menu":
        if (step.keys !== undefined) return keyboard.press(step.keys);
        return this.menu(step.menu, step.line);
    }
  }

  /** Runs a line of the command field. */
  private async field(words: string): Promise<void> {
    await this.page.keyboard.press("Control+k");
    await this.page.keyboard.insertText(words);
    await this.page.keyboard.press("Enter");
    await fieldLeft(this.page);
  }

  /** F6 to the region of the window, then Tab, or Shift and Tab where the control stands before. */
  private async reach(target: Locator): Promise<void> {
    for (let presses = 0; presses < 200; presses += 1) {
      // The list of findings is made anew when the checks answer: what is looked for is looked for again each time.
      const key = await target.evaluate((element) => {
        const focused = document.activeElement;
        if (focused === element) return undefined;
        const region = element.closest("[role='dialog'], [data-region]");
        if (region !== null && !region.contains(focused)) return region.matches("[role='dialog']") ? "Tab" : "F6";
        const stands = element.compareDocumentPosition(focused ?? document.body);
        return (stands & Node.DOCUMENT_POSITION_FOLLOWING) === 0 ? "Tab" : "Shift+Tab";
      });
      if (key === undefined) return;
      await this.page.keyboard.press(key);
    }
    throw new Error(`${target} is not reached by keys.`);
  }

  /** Arrow keys on a list that is closed; each of them chooses. */
  private async pick(list: Locator, option: string): Promise<void> {
    await this.reach(list);
    const steps = await list.evaluate((element, wanted) => {
      const { options, selectedIndex } = element as HTMLSelectElement;
      return [...options].findIndex(({ text }) => text === wanted) - selectedIndex;
    }, option);
    for (let step = 0; step < Math.abs(steps); step += 1)
      await this.page.keyboard.press(steps < 0 ? "ArrowUp" : "ArrowDown");
    await expect(list.locator("option:checked")).toHaveText(option);
  }

  /** Opens a menu of the strip and goes down to a line. */
  private async menu(menu: string, line: string): Promise<void> {
    await this.reach(this.page.getByRole("button", { name: menu, exact: true }));
    await this.page.keyboard.press("Enter");
    const items = this.page.getByRole("menu", { name: menu }).locator("[role^=menuitem]");
    await expect(items.first()).toBeFocused();
    const at = (await items.allInnerTexts()).findIndex((text) => text.startsWith(line));
    expect(at, line).toBeGreaterThanOrEqual(0);
    for (let step = 0; step < at; step += 1) await this.page.keyboard.press("ArrowDown");
    await expect(items.nth(at)).toBeFocused();
    await this.page.keyboard.press("Enter");
  }
}

/** Only single presses act, and typing where a text is asked for. */
export class PressControls implements Controls {
  readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  async take(step: ControlStep): Promise<void> {
    switch (step.do) {
      case "select":
        return treeOf(this.page)
          .getByRole("treeitem", { name: new RegExp(`^${step.box}, `) })
          .click();
      case "show":
        return this.page.getByRole("tab", { name: step.pane }).click();
      case "press":
        return controlOf(this.page, step).click();
      case "pick":
        // The list that opens is the browser's own, and no test can press in it.
        await controlOf(this.page, step).selectOption({ label: step.option });
        return;
      case "write":
        await controlOf(this.page, step).click();
        return this.page.keyboard.insertText(step.text);
      case "choose":
        return dialogOf(this.page)
          .getByRole("option")
          .filter({ has: this.page.getByText(step.line, { exact: true }) })
          .first()
          .click();
      case "answer":
        return dialogOf(this.page).getByRole("button", { name: step.answer, exact: true }).click();
      case "choose-photo": {
        const chooser = this.page.waitForEvent("filechooser");
        await controlOf(this.page, step).click();
        return (await chooser).setFiles(PHOTO);
      }
      case "menu":
        await this.page.getByRole("button", { name: step.menu, exact: true }).click();
        return this.page
          .getByRole("menuitem", { name: new RegExp(`^${step.line}`) })
          .first()
          .click();
    }
  }
}
