import { expect, type Page } from "@playwright/test";
import { checked, fieldLeft, openStart, test } from "./support/window-test.ts";

const undoOf = (page: Page, words: string) => page.getByRole("button", { name: `Undo: ${words}`, exact: true });

/** Opens a drawing with B1 in it, the command field not yet used. */
async function openTemplate(page: Page, address: string): Promise<void> {
  await openStart(page, address);
  await page.getByRole("button", { name: /^Ground-fault receptacle that protects/ }).click();
  await checked(page);
}

test("what is typed and entered while the field fetches what it finds goes into its questions, in order", async ({
  quietPage: page,
  address,
}) => {
  let answer = (): void => undefined;
  const answered = new Promise<void>((resolve) => {
    answer = resolve;
  });
  await page.route(/\/offer-[^/]*\.js$/, async (route) => {
    await answered;
    await route.continue();
  });
  await openTemplate(page, address);
  await page.keyboard.press("Control+k");
  await page.keyboard.type("place a device");
  await page.keyboard.press("Enter");
  await page.keyboard.type("B12");
  // A slip, taken back.
  await page.keyboard.press("Backspace");
  await page.keyboard.press("Enter");
  await page.keyboard.type("single-pole sw");
  await page.keyboard.press("Enter");
  answer();
  await fieldLeft(page);
  await expect(undoOf(page, "Place S1 in B1")).toBeEnabled();
});

test("a hand that is quicker than the next question loses no key, and none goes elsewhere", async ({
  quietPage: page,
  address,
}) => {
  await openTemplate(page, address);
  await page.keyboard.press("Control+k");
  await expect(page.locator(".command-line").first()).toBeVisible();
  // All of it before anything that the field waits for can answer: nothing else runs meanwhile.
  const astray = await page.evaluate(() => {
    const stray: string[] = [];
    const type = (text: string): void => {
      for (const letter of text) if (!document.execCommand("insertText", false, letter)) stray.push(letter);
    };
    const press = (key: string): void => {
      const to = document.activeElement ?? document.body;
      if (to.getAttribute("role") !== "combobox") stray.push(key);
      to.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true, cancelable: true }));
    };
    type("place a device");
    press("Enter");
    type("B1");
    press("Enter");
    // The second of the switches.
    type("single-pole sw");
    press("ArrowUp");
    press("Enter");
    return stray;
  });
  expect(astray).toEqual([]);
  await fieldLeft(page);
  await expect(undoOf(page, "Place S1 in B1")).toBeEnabled();
});

test("a key after an Enter that did nothing is typed as ever", async ({ quietPage: page, address }) => {
  await openTemplate(page, address);
  await page.keyboard.press("Control+k");
  await page.keyboard.type("nothing is called that");
  await page.keyboard.press("Enter");
  await page.keyboard.type(" way");
  await expect(page.getByRole("combobox", { name: /^Command/ })).toHaveValue("nothing is called that way");
});
