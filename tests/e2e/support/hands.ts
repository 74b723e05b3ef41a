/** Two ways to draw without a drag: by keys alone, and by presses alone. */
import { expect, type Locator, type Page } from "@playwright/test";
import { fieldLeft } from "./window-test.ts";

/** What a person does to draw; everything is named as the window names it. */
export interface Hands {
  begin(): Promise<void>;
  addEnclosure(item: string): Promise<void>;
  /** Runs a line of a thing's menu and then takes the choices it asks for, each by its words. */
  act(box: string, row: string | undefined, action: string, ...choices: readonly string[]): Promise<void>;
  /** As `act` for an action whose list of choices stays open: takes one and leaves. */
  actAndLeave(box: string, row: string | undefined, action: string, choice: string): Promise<void>;
  rename(box: string, name: string): Promise<void>;
  splice(box: string, ...ends: readonly string[]): Promise<void>;
}

const dialogOf = (page: Page): Locator => page.getByRole("dialog");
const tree = (page: Page): Locator => page.getByRole("tree", { name: "Outline of the drawing" });

/** Only `page.keyboard` acts; everything else looks. */
export class Keys implements Hands {
  readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  /** Runs a line of the command field. */
  async field(words: string): Promise<void> {
    await this.page.keyboard.press("Control+k");
    await this.page.keyboard.insertText(words);
    await this.page.keyboard.press("Enter");
    await fieldLeft(this.page);
  }

  async begin(): Promise<void> {
    await expect(this.page.getByRole("combobox", { name: "Command, part, tag or finding" })).toBeVisible();
    await this.field("new drawing");
    await expect(this.page.getByRole("contentinfo")).toBeVisible();
    await this.field("show the outline");
    await expect(this.page.getByRole("button", { name: "Add a box or panel" })).toBeFocused();
  }

  async choose(...choices: readonly string[]): Promise<void> {
    const field = dialogOf(this.page).getByRole("combobox");
    for (const words of choices) {
      await expect(field).toBeFocused();
      await expect(field).toHaveValue("");
      await this.page.keyboard.insertText(words);
      await this.page.keyboard.press("Enter");
    }
    await expect(dialogOf(this.page)).toHaveCount(0);
  }

  async addEnclosure(item: string): Promise<void> {
    await this.page.keyboard.press("Control+k");
    await this.page.keyboard.insertText("add a box or panel…");
    await this.page.keyboard.press("Enter");
    // The field asks for what the command needs.
    await expect(this.page.getByRole("combobox", { name: /box or panel/i })).toHaveValue("");
    await this.page.keyboard.insertText(item);
    await this.page.keyboard.press("Enter");
    await fieldLeft(this.page);
  }

  /** The row that keys go from. */
  async activeRow(): Promise<Locator> {
    const id = await tree(this.page).getAttribute("aria-activedescendant");
    return this.page.locator(`[id="${id}"]`);
  }

  /** Name of the row that keys go from, as it is read. */
  async active(): Promise<string> {
    return (await (await this.activeRow()).getAttribute("aria-label")) ?? "";
  }

  async isClosed(): Promise<boolean> {
    return (await (await this.activeRow()).getAttribute("aria-expanded")) === "false";
  }

  /** Goes to a box with everything in it open, then to a row in it. */
  async goTo(box: string, row?: string): Promise<void> {
    // The focus is where it was after nearly everything.
    if (!(await tree(this.page).evaluate((element) => element === document.activeElement))) {
      await this.field("show the outline");
      await expect(tree(this.page)).toBeFocused();
    }
    await this.field(box);
    await expect.poll(() => this.active()).toMatch(new RegExp(`^${box}, (box|panel)`));
    if (row === undefined) return;
    if (await this.isClosed()) await this.page.keyboard.press("ArrowRight");
    await expect.poll(() => this.isClosed()).toBe(false);
    await this.page.keyboard.press("ArrowDown");
    await this.page.keyboard.press("*");
    const path = row.split("/");
    for (const [place, name] of path.entries()) {
      if (place > 0) {
        if (await this.isClosed()) await this.page.keyboard.press("ArrowRight");
        await this.page.keyboard.press("ArrowRight");
      }
      await this.type(name);
    }
  }

  /** Types a name into the outline. */
  async type(row: string): Promise<void> {
    const now = await this.active();
    if (!now.startsWith(`${row},`)) await this.page.keyboard.type(row);
    await expect.poll(() => this.active()).toMatch(new RegExp(`^${row}, `));
  }

  async act(box: string, row: string | undefined, action: string, ...choices: readonly string[]): Promise<void> {
    await this.goTo(box, row);
    await this.page.keyboard.press("Shift+F10");
    await this.menu(action);
    if (choices.length > 0) await this.choose(...choices);
    await expect(this.page.locator(":focus")).toHaveCount(1);
  }

  async actAndLeave(box: string, row: string | undefined, action: string, choice: string): Promise<void> {
    await this.goTo(box, row);
    await this.page.keyboard.press("Shift+F10");
    await this.menu(action);
    const field = dialogOf(this.page).getByRole("combobox");
    await expect(field).toBeFocused();
    await this.page.keyboard.insertText(choice);
    await this.page.keyboard.press("Enter");
    await expect(dialogOf(this.page)).toBeVisible();
    await this.page.keyboard.press("Escape");
    await expect(dialogOf(this.page)).toHaveCount(0);
  }

  async rename(box: string, name: string): Promise<void> {
    await this.goTo(box);
    await this.page.keyboard.press("F2");
    await expect(this.page.getByRole("textbox", { name: `Name of ${box}` })).toBeFocused();
    await this.page.keyboard.insertText(name);
    await this.page.keyboard.press("Enter");
    await expect(tree(this.page)).toBeFocused();
  }

  /** Goes down a menu to a line and takes it. */
  async menu(action: string): Promise<void> {
    const items = this.page.getByRole("menuitem");
    await expect(items.first()).toBeFocused();
    const words = await items.allInnerTexts();
    const at = words.findIndex((text) => text.startsWith(action));
    expect(at, `${action} among ${words.join(" | ")}`).toBeGreaterThanOrEqual(0);
    for (let step = 0; step < at; step += 1) await this.page.keyboard.press("ArrowDown");
    await this.page.keyboard.press("Enter");
  }

  async splice(box: string, ...ends: readonly string[]): Promise<void> {
    const [first = "", ...others] = ends;
    await this.goTo(box, first);
    await this.page.keyboard.press("Enter");
    for (const end of others) {
      await this.type(end);
      await this.page.keyboard.press("Space");
    }
    await this.page.keyboard.press("Shift+F10");
    await this.menu(`Splice the ${ends.length} selected ends`);
    await expect.poll(() => this.active()).toMatch(/, splice, /);
  }
}

/** Only single presses act: no drag, no typing, no key held down. */
export class Presses implements Hands {
  readonly page: Page;
  /** The one box that is open. */
  #opened: string | undefined;

  constructor(page: Page) {
    this.page = page;
  }

  async begin(): Promise<void> {
    await this.page.getByRole("button", { name: /^Empty drawing/ }).click();
    await this.page.getByRole("tab", { name: "Outline" }).click();
  }

  async choose(...choices: readonly string[]): Promise<void> {
    for (const words of choices) {
      const options = dialogOf(this.page).getByRole("option");
      await options
        .filter({ has: this.page.getByText(words, { exact: true }) })
        .first()
        .click();
    }
    await expect(dialogOf(this.page)).toHaveCount(0);
  }

  async addEnclosure(item: string): Promise<void> {
    await this.page.getByRole("button", { name: "Add a box or panel" }).click();
    await this.choose(item);
  }

  row(name: string): Locator {
    return tree(this.page)
      .getByRole("treeitem", { name: new RegExp(`^${name}, `) })
      .first();
  }

  /** Opens a box and all that is in it, every other one closed. */
  async open(box: string): Promise<void> {
    if (box === this.#opened) return;
    await this.page.getByRole("button", { name: "Close all" }).click();
    await this.row(box).getByLabel(`Open ${box}`).click();
    this.#opened = box;
  }

  /** Opens what a row stands under: what its path names, or the cable of an end. */
  async reach(row: string): Promise<Locator> {
    const [parent = "", child] = row.split("/");
    if (child !== undefined) {
      if ((await this.row(parent).getByLabel(`Open ${parent}`).count()) > 0)
        await this.row(parent).getByLabel(`Open ${parent}`).click();
      return this.row(child);
    }
    const found = this.row(row);
    if ((await found.count()) === 0) {
      const [cable = ""] = row.split(" ");
      await this.row(cable)
        .getByRole("button", { name: `Open ${cable}` })
        .click();
    }
    return found;
  }

  async menu(row: Locator, action: string): Promise<void> {
    await row.getByRole("button", { name: /^Actions for / }).click();
    await this.page.getByRole("menuitem", { name: action }).first().click();
  }

  async act(box: string, row: string | undefined, action: string, ...choices: readonly string[]): Promise<void> {
    if (row === undefined) this.#opened = undefined;
    else await this.open(box);
    await this.menu(row === undefined ? this.row(box) : await this.reach(row), action);
    if (choices.length > 0) await this.choose(...choices);
  }

  async actAndLeave(box: string, row: string | undefined, action: string, choice: string): Promise<void> {
    if (row !== undefined) await this.open(box);
    await this.menu(row === undefined ? this.row(box) : await this.reach(row), action);
    await dialogOf(this.page).getByRole("option").getByText(choice, { exact: true }).click();
    await dialogOf(this.page).getByRole("button", { name: "Cancel" }).click();
    await expect(dialogOf(this.page)).toHaveCount(0);
  }

  /** Only the name itself is typed. */
  async rename(box: string, name: string): Promise<void> {
    await this.menu(this.row(box), `Rename ${box}`);
    const field = this.page.getByRole("textbox", { name: `Name of ${box}` });
    await field.fill(name);
    await this.page.getByRole("button", { name: "Close all" }).click();
    await expect(field).toHaveCount(0);
    this.#opened = undefined;
  }

  async splice(box: string, ...ends: readonly string[]): Promise<void> {
    const [first = "", ...others] = ends;
    await this.open(box);
    await (await this.reach(first)).click();
    for (const end of others) await this.menu(await this.reach(end), "Select as well");
    await this.menu(this.row(ends.at(-1) ?? ""), `Splice the ${ends.length} selected ends`);
  }
}
