/** The desktop program as it is compiled, with a stand-in for Electron; its limits are told in `stand-in.ts`. Closing, quitting and crashing. */
import { expect, type Page } from "@playwright/test";
import { banner, onDisk, rename, test, withHouse } from "./support/desktop-test.ts";
import { expectAccessible } from "./support/window-test.ts";

test.describe("closing", () => {
  const question = (page: Page) => page.getByRole("dialog", { name: "Save house.loadside first?" });

  test("goes at once without unsaved work, and ends the program", async ({ desktop }) => {
    const { standIn } = await withHouse(desktop);
    standIn.windows[0]?.close();
    await expect.poll(() => standIn.windows.length).toBe(0);
    if (process.platform !== "darwin") expect(standIn.app.hasQuit).toBe(true);
  });

  test("with unsaved work asks; Cancel stays, Save saves and closes", async ({ desktop }) => {
    const { standIn, page } = await withHouse(desktop);
    await rename(page, "R1", "R1b");
    await expect.poll(() => standIn.windows[0]?.edited).toBe(true);
    standIn.windows[0]?.close();
    await expectAccessible(page, "closing question");
    await question(page).getByRole("button", { name: "Cancel" }).click();
    await expect(question(page)).toHaveCount(0);
    expect(standIn.windows).toHaveLength(1);
    expect(await onDisk(desktop.house)).not.toContain('"R1b"');

    standIn.windows[0]?.close();
    await question(page).getByRole("button", { name: "Save", exact: true }).click();
    await expect.poll(() => standIn.windows.length).toBe(0);
    expect(await onDisk(desktop.house)).toContain('"name": "R1b"');
  });

  test("gives the work up when the person says so, and quitting goes on", async ({ desktop }) => {
    const { standIn, page } = await withHouse(desktop);
    await rename(page, "R1", "R1b");
    await expect.poll(() => standIn.windows[0]?.edited).toBe(true);
    standIn.quit();
    await expect(question(page)).toBeVisible();
    expect(standIn.app.hasQuit).toBe(false);
    await question(page).getByRole("button", { name: "Cancel" }).click();
    await expect(question(page)).toHaveCount(0);
    standIn.quit();
    await question(page).getByRole("button", { name: "Do not save" }).click();
    await expect.poll(() => standIn.app.hasQuit).toBe(true);
    expect(await onDisk(desktop.house)).not.toContain('"R1b"');
  });

  test("is possible where the question gets no answer", async ({ desktop }) => {
    const { standIn, page } = await withHouse(desktop);
    await rename(page, "R1", "R1b");
    await expect.poll(() => standIn.windows[0]?.edited).toBe(true);
    standIn.windows[0]?.close();
    await expect(question(page)).toBeVisible();
    standIn.answers.push({ response: 0 }, { response: 1 });
    standIn.windows[0]?.close();
    await expect.poll(() => standIn.dialogs.length).toBe(1);
    expect(standIn.windows).toHaveLength(1);
    standIn.windows[0]?.close();
    await expect.poll(() => standIn.windows.length).toBe(0);
  });
});

test("a page that crashes starts again with its file; one that does so again asks", async ({ desktop }) => {
  const { standIn, page } = await withHouse(desktop);
  const { webContents } = standIn.windows[0] ?? {};
  const reloaded = page.waitForEvent("load");
  webContents?.emit("render-process-gone", {}, { reason: "crashed" });
  await reloaded;
  await expect(banner(page)).toContainText("house.loadside");
  standIn.answers.push({ response: 1 });
  webContents?.emit("render-process-gone", {}, { reason: "oom" });
  await expect.poll(() => standIn.windows.length).toBe(0);
  expect(standIn.dialogs[0]?.options).toMatchObject({ buttons: ["Open it again", "Close it"] });
});
