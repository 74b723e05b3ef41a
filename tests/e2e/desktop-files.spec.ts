/** The desktop program as it is compiled, with a stand-in for Electron; its limits are told in `stand-in.ts`. Menus, dialogs and files. */
import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { expect } from "@playwright/test";
import { recentId } from "../../electron/main/recent-files.ts";
import { banner, onDisk, ready, rename, test, withHouse } from "./support/desktop-test.ts";
import { checked, pane, runByField } from "./support/window-test.ts";

test("a file that it is started with opens, is saved over itself, and carries the mark of edits", async ({
  desktop,
}) => {
  const { standIn, page } = await withHouse(desktop);
  expect(standIn.windows[0]?.isShown).toBe(true);
  expect(standIn.windows[0]?.edited).toBe(false);
  await rename(page, "R1", "R1b");
  await expect.poll(() => standIn.windows[0]?.edited).toBe(true);
  await page.keyboard.press("Control+s");
  await expect.poll(() => standIn.windows[0]?.edited).toBe(false);
  expect(await onDisk(desktop.house)).toContain('"name": "R1b"');
  expect(standIn.app.recent).toContain(desktop.house);
  await expect.poll(() => onDisk(join(desktop.home, "userData", "recent-files.json"))).toContain(desktop.house);
});

test("menus open, save under another name, and undo; text fields keep their own undo", async ({ desktop }) => {
  const standIn = await desktop.start();
  const page = await ready(standIn);
  standIn.answers.push({ filePaths: [desktop.house] });
  standIn.press("File", "Open…");
  await expect(banner(page)).toContainText("house.loadside");
  await checked(page);
  await rename(page, "R1", "R1b");
  const copy = join(desktop.home, "copy.loadside");
  standIn.answers.push({ filePath: copy });
  standIn.press("File", "Save as…");
  await expect(banner(page)).toContainText("copy.loadside");
  expect(await onDisk(copy)).toContain('"name": "R1b"');
  expect(await onDisk(desktop.house)).not.toContain('"name": "R1b"');
  expect(standIn.dialogs.map(({ kind }) => kind)).toEqual(["open", "save"]);
  expect(standIn.dialogs[1]?.options).toMatchObject({ defaultPath: desktop.house });

  const name = pane(page).getByRole("textbox", { name: "Name" });
  await name.focus();
  await page.keyboard.type("x");
  await expect(name).toHaveValue(/x/);
  standIn.press("Edit", "Undo");
  await expect(name).not.toHaveValue(/x/);
  await page.getByRole("main").click({ position: { x: 5, y: 5 } });
  await runByField(page, "R1b");
  await page.getByRole("tab", { name: /^Details/ }).focus();
  standIn.press("Edit", "Undo");
  await expect(name).toHaveValue("R1");
  standIn.press("Edit", "Redo");
  await expect(name).toHaveValue("R1b");
  // Elsewhere than on a Mac the menu only shows keys that the window answers.
  const file = standIn.menu.find(({ label }) => label === "File")?.submenu ?? [];
  expect(file.find(({ label }) => label === "Save")).toMatchObject({
    accelerator: "CommandOrControl+S",
    registerAccelerator: process.platform === "darwin",
  });
});

test("a name without the ending gets it, and never takes the place of a file that was not shown", async ({
  desktop,
}) => {
  const { standIn, page } = await withHouse(desktop);
  await writeFile(join(desktop.home, "plan.loadside"), "theirs");
  standIn.answers.push({ filePath: join(desktop.home, "plan") });
  standIn.press("File", "Save as…");
  await expect(page.getByRole("alert").filter({ hasText: "Not saved" })).toContainText("has this name already");
  expect(await onDisk(join(desktop.home, "plan.loadside"))).toBe("theirs");
  standIn.answers.push({ filePath: join(desktop.home, "other") });
  standIn.press("File", "Save as…");
  await expect(banner(page)).toContainText("other.loadside");
  await rename(page, "R1", "R1b");
  await page.keyboard.press("Control+s");
  await expect.poll(() => onDisk(join(desktop.home, "other.loadside"))).toContain('"name": "R1b"');
});

test("sheets go through a dialog to a file of their own, and the drawing stays the one that is open", async ({
  desktop,
}) => {
  const { standIn, page } = await withHouse(desktop);
  standIn.press("File", "Print and export…");
  const dialog = page.getByRole("dialog", { name: "Print and export" });
  await expect(dialog.getByRole("img", { name: /^Page 1 of / })).toBeVisible();
  const pdf = join(desktop.home, "for the inspector.pdf");
  standIn.answers.push({ filePath: pdf });
  await dialog.getByRole("button", { name: "Save PDF" }).click();
  await expect(dialog.getByText(/^Saved for the inspector[.]pdf, /).first()).toBeVisible();
  const bytes = await readFile(pdf);
  expect(bytes.subarray(0, 4).toString()).toBe("%PDF");
  expect(bytes.subarray(-6).toString()).toContain("%%EOF");
  expect(standIn.dialogs.at(-1)?.options).toMatchObject({
    defaultPath: join(desktop.home, "1962 bungalow, laundry circuit job folder.pdf"),
    filters: [{ extensions: ["pdf"] }],
  });
  standIn.answers.push({ canceled: true });
  await dialog.getByRole("button", { name: "Save PDF" }).click();
  await expect(dialog.getByText("Nothing was saved.").first()).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(banner(page)).toContainText("house.loadside");
  expect(standIn.windows[0]?.edited).toBe(false);
});

test("a file that another program changed is replaced, kept beside, or left as the person says", async ({
  desktop,
}) => {
  const { standIn, page } = await withHouse(desktop);
  await rename(page, "R1", "R1b");
  await writeFile(desktop.house, "theirs");
  const question = page.getByRole("dialog", { name: "Replace house.loadside?" });
  await page.keyboard.press("Control+s");
  await question.getByRole("button", { name: "Cancel" }).click();
  expect(await onDisk(desktop.house)).toBe("theirs");

  const copy = join(desktop.home, "mine.loadside");
  await page.keyboard.press("Control+s");
  standIn.answers.push({ filePath: copy });
  await question.getByRole("button", { name: "Save as" }).click();
  await expect(banner(page)).toContainText("mine.loadside");
  expect([await onDisk(desktop.house), (await onDisk(copy)).includes('"R1b"')]).toEqual(["theirs", true]);

  await rename(page, "R1b", "R1c");
  await writeFile(copy, "theirs too");
  await page.keyboard.press("Control+s");
  await page
    .getByRole("dialog", { name: "Replace mine.loadside?" })
    .getByRole("button", { name: "Replace it" })
    .click();
  await expect.poll(() => onDisk(copy)).toContain('"name": "R1c"');
});

test("a drawing of the list is shown in small on the start page, under the name that its line has", async ({
  desktop,
}) => {
  const { page } = await withHouse(desktop);
  const kept = (): Promise<readonly { readonly id: string; readonly text: string }[]> =>
    page.evaluate(
      () =>
        new Promise((resolve) => {
          const opening = indexedDB.open("loadside-pictures", 1);
          opening.onupgradeneeded = () => opening.result.createObjectStore("pictures", { keyPath: "id" });
          opening.onsuccess = () => {
            const asked = opening.result.transaction("pictures").objectStore("pictures").getAll();
            asked.onsuccess = () => {
              opening.result.close();
              resolve(asked.result);
            };
          };
        }),
    );
  await expect
    .poll(async () => (await kept()).map(({ id }) => id), { timeout: 30_000 })
    .toEqual([recentId(desktop.house)]);
  expect(JSON.stringify(await kept())).not.toContain(desktop.home);
  await runByField(page, "Start page");
  const side = page.getByRole("complementary", { name: "Continue, open or look at a sample" });
  await expect(side.locator(".start-again .drawing-picture .drawing-name").filter({ hasText: /^B1$/ })).toBeVisible();
  await side.getByRole("button", { name: "Take house.loadside off the list" }).click();
  await expect.poll(kept).toEqual([]);
});
