/** The desktop program as it is compiled, with a stand-in for Electron; its limits are told in `stand-in.ts`. Files that come from outside. */
import { readFile, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { expect } from "@playwright/test";
import { banner, onDisk, ready, rename, SAMPLE, test, withHouse } from "./support/desktop-test.ts";
import { checked, pane } from "./support/window-test.ts";

test.describe("files from outside", () => {
  test("open in a window that is free, else in another one, and each in one window only", async ({ desktop }) => {
    const standIn = await desktop.start();
    const first = await ready(standIn);
    const other = join(desktop.home, "other.loadside");
    await writeFile(other, await readFile(SAMPLE));
    const open = (...files: unknown[]) => standIn.app.emit("second-instance", {}, [], desktop.home, { files });
    open(desktop.house);
    await expect(banner(first)).toContainText("house.loadside");
    await expect.poll(() => standIn.windows[0]?.edited).toBe(false);
    open(other);
    const second = await ready(standIn, 1);
    await expect(banner(second)).toContainText("other.loadside");
    open(desktop.house);
    open("relative.loadside", 7, "/etc/passwd", "app://window/x.loadside");
    standIn.app.emit("second-instance", {}, [], "/", "junk");
    await first.waitForTimeout(200);
    expect(standIn.windows).toHaveLength(2);
    // Chosen in a dialog, a file that is open elsewhere only brings that window to the front.
    standIn.answers.push({ filePaths: [other] });
    standIn.windows[0]?.focus();
    standIn.press("File", "Open…");
    await expect.poll(() => standIn.dialogs.length).toBe(1);
    await first.waitForTimeout(200);
    await expect(banner(first)).toContainText("house.loadside");
  });

  test("that are handed over before there is a window wait for it", async ({ desktop }) => {
    const standIn = await desktop.start({ handedOver: [desktop.house] });
    await expect(banner(await ready(standIn))).toContainText("house.loadside");
    expect(standIn.windows).toHaveLength(1);
  });

  test("that cannot be opened are told, and leave the window free for the next", async ({ desktop }) => {
    const standIn = await desktop.start({ args: [join(desktop.home, "gone.loadside")] });
    const page = await ready(standIn);
    const says = (text: string) => expect(page.getByRole("alert").filter({ hasText: text })).toBeVisible();
    await says("gone.loadside: there is no such file");
    const event = { prevented: false, preventDefault: () => {} };
    const bad = join(desktop.home, "bad.loadside");
    await writeFile(bad, "{}");
    standIn.app.emit("open-file", event, bad);
    await says("bad.loadside was not opened");
    standIn.app.emit("open-file", event, join(desktop.home, "no-document.txt"));
    await expect.poll(() => standIn.windows[0]?.edited).toBe(false);
    standIn.app.emit("open-file", event, desktop.house);
    await expect(banner(page)).toContainText("house.loadside");
    expect(standIn.windows).toHaveLength(1);
  });

  test("wait for the question about unsaved work, and stay closed when it is cancelled", async ({ desktop }) => {
    const standIn = await desktop.start();
    const page = await ready(standIn);
    // The edit falls between the news of a file and its opening.
    standIn.answers.push({ filePaths: [desktop.house] });
    standIn.press("File", "Open…");
    await expect(banner(page)).toContainText("house.loadside");
    await checked(page);
    await rename(page, "R1", "R1b");
    const channel = "loadside:fileWaiting";
    standIn.windows[0]?.webContents.send(channel, {});
    const question = page.getByRole("dialog", { name: "Save house.loadside first?" });
    await question.getByRole("button", { name: "Cancel" }).click();
    await expect(question).toHaveCount(0);
    await expect(banner(page)).toContainText("house.loadside");
    await expect(pane(page).getByRole("textbox", { name: "Name" })).toHaveValue("R1b");
  });

  test("go to the program that runs already", async ({ desktop }) => {
    const standIn = await desktop.start({ args: ["house.loadside", "--flag", desktop.house], isFirst: false });
    expect(standIn.app.hasQuit).toBe(true);
    expect(standIn.app.lock).toEqual({ files: [join(process.cwd(), "house.loadside"), desktop.house] });
    expect(standIn.windows).toHaveLength(0);
  });

  test("that are dropped on the window are saved back where they came from", async ({ desktop }) => {
    const standIn = await desktop.start();
    const page = await ready(standIn);
    const dropped = await page.evaluateHandle(
      ([path, text]) => {
        Object.assign(globalThis, { __paths: { "house.loadside": path } });
        const transfer = new DataTransfer();
        transfer.items.add(new File([text], "house.loadside"));
        return transfer;
      },
      [desktop.house, await onDisk(desktop.house)] as const,
    );
    await page.locator("body").dispatchEvent("drop", { dataTransfer: dropped });
    await expect(banner(page)).toContainText("house.loadside");
    await checked(page);
    await rename(page, "R1", "R1b");
    await page.keyboard.press("Control+s");
    await expect.poll(() => onDisk(desktop.house)).toContain('"name": "R1b"');
    expect(standIn.dialogs).toEqual([]);
  });

  test("opened lately are listed, those that are gone as well, and open by the menu", async ({ desktop }) => {
    const { standIn, page } = await withHouse(desktop);
    const gone = join(desktop.home, "gone.loadside");
    standIn.answers.push({ filePath: gone });
    standIn.press("File", "Save as…");
    await expect(banner(page)).toContainText("gone.loadside");
    await rm(gone);
    // A disk that takes its time to answer counts as away, until the list is asked for again.
    const listed = () => page.evaluate(() => Reflect.get(globalThis, "loadside").recentFiles());
    await expect.poll(listed).toMatchObject({
      ok: true,
      value: [
        { name: "gone.loadside", isThere: false, folder: "~" },
        { name: "house.loadside", isThere: true, folder: "~" },
      ],
    });
    standIn.press("File", "Open recent", "house.loadside");
    await expect(banner(await ready(standIn, 1))).toContainText("house.loadside");
    standIn.press("File", "Open recent", "Clear this list");
    expect(standIn.app.recent).toEqual([]);
    expect(() => standIn.press("File", "Open recent")).toThrow();
  });
});
