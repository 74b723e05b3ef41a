/** Sheets on paper: chosen, seen, saved, printed and handed on as lists. */
import { readFile } from "node:fs/promises";
import type { Locator, Page } from "@playwright/test";
import { expect } from "@playwright/test";
import { HAS_POPPLER, textOfPdf } from "../sheets/read-pdf.ts";
import { storedText } from "./support/stored-files.ts";
import { checked, expectAccessible, openWindow, test } from "./support/window-test.ts";

const NAME = "1962 bungalow, laundry as proposed";

const dialog = (page: Page): Locator => page.getByRole("dialog", { name: "Print and export" });
const button = (page: Page, name: string): Locator => dialog(page).getByRole("button", { name, exact: true });
const shownPage = (page: Page, name: RegExp): Locator => dialog(page).getByRole("img", { name });

async function openProposed(page: Page, address: string): Promise<void> {
  // No file pickers: what is saved goes out as a download, which a test can look into.
  await page.addInitScript(() => {
    Object.assign(globalThis, { showSaveFilePicker: undefined });
  });
  await openWindow(page, address);
  await page.getByRole("button", { name: "Drawing", exact: true }).click();
  await page.getByRole("menuitem", { name: "Samples" }).click();
  await page.getByRole("button", { name: new RegExp(NAME) }).click();
  await expect(page.getByRole("banner")).toContainText(NAME);
  await checked(page);
}

async function saved(page: Page, act: () => Promise<void>): Promise<{ readonly name: string; readonly bytes: Buffer }> {
  const [file] = await Promise.all([page.waitForEvent("download"), act()]);
  await expect(dialog(page).getByText(`${file.suggestedFilename()} was handed to the browser`).first()).toBeVisible();
  return { name: file.suggestedFilename(), bytes: await readFile(await file.path()) };
}

/** Width and height of every page, in points. */
const sizesOf = (pdf: Buffer): readonly (readonly number[])[] =>
  [...pdf.toString("latin1").matchAll(/\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]/g)].map((box) =>
    box.slice(1).map(Number),
  );

/** 210 x 297 mm (ISO 216) at 72 points to the inch. */
const A4 = [595.28, 841.89] as const;

/** Browsers cut pages at whole pixels, which are three quarters of a point. */
const isNear = ([width = 0, height = 0]: readonly number[] = [], w: number, h: number): boolean =>
  Math.abs(width - w) < 0.75 && Math.abs(height - h) < 0.75;

test("a job is chosen, looked through, saved as a PDF, printed at its size and handed on as lists", async ({
  quietPage: page,
  address,
}) => {
  await openProposed(page, address);
  expect(
    page.workers().filter((worker) => worker.url().includes("paper")),
    "no paper worker before",
  ).toHaveLength(0);
  await page.keyboard.press("Control+p");
  await expect(shownPage(page, /^Page 1 of \d+: Drawing/)).toBeVisible();

  // What is usual for proposed is ticked; what has nothing to say says why.
  const tick = (name: string) => dialog(page).getByRole("checkbox", { name, exact: true });
  await expect(dialog(page).getByRole("checkbox", { checked: true })).toHaveCount(7);
  for (const name of ["Make-up card", "Scope", "Work steps", "Materials"]) await expect(tick(name)).toBeChecked();
  for (const name of ["Box fill", "As-found record"]) await expect(tick(name)).not.toBeChecked();
  await expect(tick("Labels")).toBeDisabled();
  await expect(tick("Labels")).toHaveAccessibleDescription("There is no label to fix.");

  // By keys: ticks, another paper, the next page.
  await button(page, "None").press("Enter");
  await expect(dialog(page).getByText("No sheet is ticked.")).toBeVisible();
  for (const name of ["Drawing", "Make-up card", "Box fill"])
    await dialog(page).getByLabel(name, { exact: true }).press("Space");
  await dialog(page).getByRole("combobox", { name: "Paper" }).selectOption("a4");
  const list = dialog(page).getByRole("navigation", { name: "Pages" });
  await expect(list.getByRole("button", { name: /Box fill/ }).first()).toBeVisible();
  await button(page, "Next").press("Enter");
  await expect(shownPage(page, /^Page 2 of \d: Make-up card B1/)).toBeVisible();
  await list.locator("[aria-current=page]").press("Home");
  await expect(shownPage(page, /^Page 1 of /)).toBeVisible();
  await expect(list.locator("[aria-current=page]")).toBeFocused();
  await dialog(page)
    .getByRole("button", { name: /^Page 1 of / })
    .press("PageDown");
  await expect(shownPage(page, /^Page 2 of /)).toBeVisible();
  await expectAccessible(page, "sheets to print");

  const pdf = await saved(page, () => button(page, "Save PDF").press("Enter"));
  expect(pdf.name).toBe(`${NAME} job folder.pdf`);
  expect(pdf.bytes.subarray(0, 4).toString()).toBe("%PDF");

  // What goes to the printer are the same pages on paper of their own size; the dialog of the browser cannot be driven.
  await page.evaluate(() => {
    globalThis.print = () => document.documentElement.setAttribute("data-printed", "");
  });
  await button(page, "Print").click();
  await expect(page.locator("html[data-printed]")).toBeAttached();
  const printed = await page.pdf({ preferCSSPageSize: true });
  await page.evaluate(() => dispatchEvent(new Event("afterprint")));
  await expect(page.locator(".print-pages")).toHaveCount(0);

  for (const one of [pdf.bytes, printed]) {
    const [first, second] = sizesOf(one);
    expect(isNear(first, A4[1], A4[0]), `the drawing lies: ${first}`).toBe(true);
    expect(isNear(second, A4[0], A4[1]), `the card stands: ${second}`).toBe(true);
    if (HAS_POPPLER) expect(textOfPdf(one)).toContain(NAME);
  }
  expect(sizesOf(printed)).toHaveLength(sizesOf(pdf.bytes).length);

  await list
    .getByRole("button", { name: /Box fill/ })
    .first()
    .click();
  const csv = await saved(page, async () => {
    await button(page, "Save this sheet").click();
    await page.getByRole("menuitem", { name: "List as text (CSV)" }).click();
  });
  expect(csv.bytes.toString()).toMatch(/\r\nB1,laundry,/);
  const png = await saved(page, async () => {
    await button(page, "Save this sheet").click();
    await page.getByRole("menuitem", { name: /^Page as picture \(PNG\) 2x/ }).click();
  });
  expect(png.bytes.subarray(1, 4).toString()).toBe("PNG");
  // 210 mm at 2 x 96 points to the inch.
  expect(png.bytes.readUInt32BE(16)).toBe(1587);
});

test("a paper worker that breaks is told of and replaced, and the drawing can be edited all the while", async ({
  page,
  address,
}) => {
  let breaks = true;
  await page.route(/paper-worker[^/]*[.]js$/, (route) =>
    breaks ? route.fulfill({ contentType: "text/javascript", body: "throw new Error('planted');" }) : route.continue(),
  );
  await openProposed(page, address);
  await page.keyboard.press("Control+p");
  const broke = dialog(page).getByRole("alert").filter({ hasText: "Laying out the sheets broke off" });
  await expect(broke).toBeVisible();
  breaks = false;
  await broke.getByRole("button", { name: "Try again" }).click();
  await expect(shownPage(page, /^Page 1 of /)).toBeVisible();

  // A browser that asks for a place right after a press alone: the file is kept until there is one.
  await page.evaluate(() => {
    const pick = async ({ suggestedName }: { readonly suggestedName: string }) => {
      Object.assign(globalThis, { showSaveFilePicker: pickNow });
      throw new DOMException(suggestedName, "SecurityError");
    };
    const pickNow = async ({ suggestedName }: { readonly suggestedName: string }) =>
      (await navigator.storage.getDirectory()).getFileHandle(suggestedName, { create: true });
    Object.assign(globalThis, { showSaveFilePicker: pick });
  });
  await button(page, "Save PDF").click();
  await button(page, `Save ${NAME} job folder.pdf`).click();
  await expect(dialog(page).getByText(`Saved ${NAME} job folder.pdf, `).first()).toBeVisible();
  expect((await storedText(page, `${NAME} job folder.pdf`)).slice(0, 4)).toBe("%PDF");

  await page.keyboard.press("Escape");
  await expect(dialog(page)).toHaveCount(0);
  await page.getByRole("combobox", { name: "Code edition" }).selectOption("2017");
  await checked(page);

  // A text with letters that paper cannot show is told before anything is printed; a press shows where.
  await page.getByRole("textbox", { name: "Title" }).fill("House 日本");
  await page.getByRole("textbox", { name: "Title" }).press("Enter");
  await page.keyboard.press("Control+p");
  await expect(shownPage(page, /^Page 1 of /)).toBeVisible();
  const told = dialog(page).getByRole("region", { name: "Letters that paper cannot show are printed as “?”:" });
  await expect(told.getByRole("button")).toHaveText(["“House 日本”, title of the drawing, page 1"]);
  await button(page, "Next").click();
  await told.getByRole("button").click();
  await expect(shownPage(page, /^Page 1 of /)).toBeVisible();
  await expectAccessible(page, "letters that paper cannot show");
});
