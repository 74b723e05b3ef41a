import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { expect } from "@playwright/test";
import { answerPickers, choose, storeFile } from "./support/stored-files.ts";
import { openStart, ROOT, test } from "./support/window-test.ts";

const SAMPLE = join(ROOT, "assets/samples/laundry-box.loadside");

test("a file that is refused does not enter the list of recent ones, however it came", async ({
  quietPage: page,
  address,
}) => {
  await answerPickers(page);
  // A drop as the browser makes it of a file on disk: with a handle of it.
  await page.addInitScript(() => {
    async function getAsFileSystemHandle(this: DataTransferItem): Promise<FileSystemFileHandle> {
      const name = this.getAsFile()?.name ?? "";
      return (await navigator.storage.getDirectory()).getFileHandle(name);
    }
    Object.assign(DataTransferItem.prototype, { getAsFileSystemHandle });
  });
  await openStart(page, address);
  const sample = await readFile(SAMPLE, "utf8");
  const texts = {
    "bad.loadside": '{"format": "something else"}',
    "worse.loadside": "no JSON",
    "good.loadside": sample,
  };
  for (const [name, text] of Object.entries(texts)) await storeFile(page, name, text);
  const drop = async (name: string): Promise<void> => {
    const dropped = await page.evaluateHandle((called) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File(["what the handle reads"], called));
      return transfer;
    }, name);
    await page.getByRole("main").dispatchEvent("drop", { dataTransfer: dropped });
  };
  for (const bad of ["bad.loadside", "worse.loadside"]) {
    await drop(bad);
    await expect(page.getByRole("alert")).toContainText(`${bad} was not opened`);
    await page.getByRole("button", { name: "Close", exact: true }).click();
    await choose(page, bad);
    await page.keyboard.press("Control+o");
    await expect(page.getByRole("alert")).toContainText(`${bad} was not opened`);
    await page.getByRole("button", { name: "Close", exact: true }).click();
  }
  // What is written to the list is written in order: once the good one is there, no other comes.
  await drop("good.loadside");
  await expect(page.getByRole("banner")).toContainText("good.loadside");
  const recent = page.getByRole("region", { name: "Recent" }).getByRole("listitem");
  await expect(async () => {
    await page.reload();
    await expect(recent.first()).toBeVisible({ timeout: 2_000 });
  }).toPass();
  await expect(recent).toHaveText([/^good[.]loadside/]);
});
