import { spawnSync } from "node:child_process";
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, type Page } from "@playwright/test";
import { startBrowserHost } from "../../electron/browser-host.mjs";
import { openFile } from "../../electron/opened-file.mjs";
import { answerPickers, choose, storedText, storeFile } from "./support/stored-files.ts";
import {
  checked,
  expectAccessible,
  openLaundrySample,
  openStart,
  openWindow,
  pane,
  ROOT,
  runByField,
  test,
} from "./support/window-test.ts";

const SAMPLE = join(ROOT, "assets/samples/laundry-box.loadside");

async function rename(page: Page, from: string, to: string): Promise<void> {
  await runByField(page, from);
  const name = pane(page).getByRole("textbox", { name: "Name" });
  await name.fill(to);
  await name.press("Enter");
}

const drawingMenu = async (page: Page, item: string): Promise<void> => {
  await page.getByRole("button", { name: "Drawing", exact: true }).click();
  await page.getByRole("menuitem", { name: item, exact: true }).click();
};

test("an unedited drawing is saved with every byte, an edited one with its edit, and both open again", async ({
  quietPage: page,
  address,
}) => {
  await answerPickers(page);
  await openWindow(page, address);
  // Spacing and an unknown field that only the file's own bytes hold.
  const text = `${JSON.stringify({ ...JSON.parse(await readFile(SAMPLE, "utf8")), madeBy: "another program" })}\r\n`;
  await storeFile(page, "house.loadside", text);
  await choose(page, "house.loadside");
  await drawingMenu(page, "Open");
  await expect(page.getByRole("banner")).toContainText("house.loadside");
  await checked(page);
  await choose(page, "copy.loadside");
  await drawingMenu(page, "Save as");
  await expect(page.getByRole("banner")).toContainText("copy.loadside");
  expect(await storedText(page, "copy.loadside")).toBe(text);

  await rename(page, "R1", "R1b");
  await page.keyboard.press("Control+s");
  await expect(page.getByRole("banner").getByText("saved", { exact: true })).toBeVisible();
  const saved = await storedText(page, "copy.loadside");
  expect(saved).toContain('"name": "R1b"');
  expect(saved).toContain('"madeBy": "another program"');
  expect(await storedText(page, "house.loadside")).toBe(text);

  await page.reload();
  await drawingMenu(page, "Open");
  await expect(page.getByRole("banner")).toContainText("copy.loadside");
  await runByField(page, "R1b");
  await expect(pane(page).getByRole("textbox", { name: "Name" })).toHaveValue("R1b");
});

test("a file that another program changed is not written over without a word", async ({ quietPage: page, address }) => {
  await answerPickers(page);
  await openWindow(page, address);
  await storeFile(page, "house.loadside", await readFile(SAMPLE, "utf8"));
  await choose(page, "house.loadside");
  await drawingMenu(page, "Open");
  await expect(page.getByRole("banner")).toContainText("house.loadside");
  await checked(page);
  await rename(page, "R1", "R1b");
  await page.waitForTimeout(20);
  await storeFile(page, "house.loadside", "theirs");
  await page.keyboard.press("Control+s");
  const question = page.getByRole("dialog", { name: "Replace house.loadside?" });
  await expect(question).toContainText("was changed by another program");
  await expectAccessible(page, "replace question");
  await question.getByRole("button", { name: "Cancel" }).click();
  expect(await storedText(page, "house.loadside")).toBe("theirs");
  await page.keyboard.press("Control+s");
  await question.getByRole("button", { name: "Replace it" }).click();
  await expect(page.getByRole("banner").getByText("saved", { exact: true })).toBeVisible();
  expect(await storedText(page, "house.loadside")).toContain('"name": "R1b"');
});

test("unsaved work is asked about before it goes", async ({ quietPage: page, address }) => {
  await answerPickers(page);
  await openWindow(page, address);
  await openLaundrySample(page);
  await rename(page, "R1", "R1b");
  await drawingMenu(page, "New");
  const question = page.getByRole("dialog", { name: /^Save .* first\?$/ });
  await expectAccessible(page, "unsaved question");
  await question.getByRole("button", { name: "Cancel" }).click();
  await expect(page.getByRole("banner")).toContainText("1962 bungalow");
  await drawingMenu(page, "New");
  await choose(page, "kept.loadside");
  await question.getByRole("button", { name: "Save", exact: true }).click();
  await expect(page.getByRole("banner")).toContainText("Untitled drawing");
  expect(await storedText(page, "kept.loadside")).toContain('"name": "R1b"');

  await openLaundrySample(page);
  await rename(page, "R1", "R1c");
  const closing = page.waitForEvent("dialog");
  const reload = page.reload().catch(() => undefined);
  const dialog = await closing;
  expect(dialog.type()).toBe("beforeunload");
  await dialog.accept();
  await reload;
});

const deep = `${"[".repeat(200_000)}${"]".repeat(200_000)}`;
const HOSTILE: readonly (readonly [what: string, text: (sample: string) => string, says: RegExp])[] = [
  ["garbage", () => "not a drawing", /not JSON|JSON/i],
  ["an empty file", () => "", /empty/i],
  [
    "two hundred thousand levels",
    (sample) => sample.replace(/"notes": "[^"]*"/, `"notes": ${deep}`),
    /deep|inside one another|level/i,
  ],
  ["a prototype key", (sample) => sample.replace("{", '{"__proto__": {"polluted": true},'), /__proto__/],
  ["an end that is landed on nothing", (sample) => sample.replace('"splice": "', '"splice": "no-such-'), /no-such-/],
];

for (const [what, make, says] of HOSTILE) {
  test(`${what} is refused in words, and the drawing stays`, async ({ quietPage: page, address }) => {
    await answerPickers(page);
    await openWindow(page, address);
    await openLaundrySample(page);
    await storeFile(page, "bad.loadside", make(await readFile(SAMPLE, "utf8")));
    await choose(page, "bad.loadside");
    await drawingMenu(page, "Open");
    const alert = page.getByRole("alert").filter({ hasText: "bad.loadside was not opened" });
    await expect(alert).toContainText(says);
    await expect(page.getByRole("banner")).toContainText("1962 bungalow, laundry circuit");
    await expectAccessible(page, what);
    await alert.getByRole("button", { name: "Close" }).click();
    await expect(alert).toHaveCount(0);
  });
}

test("a drawing that is dropped on the window opens", async ({ quietPage: page, address }) => {
  await openWindow(page, address);
  const dropped = await page.evaluateHandle(
    ([name, text]) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([text], name));
      return transfer;
    },
    ["dropped.loadside", await readFile(SAMPLE, "utf8")] as const,
  );
  await page.getByRole("main").dispatchEvent("drop", { dataTransfer: dropped });
  await expect(page.getByRole("banner")).toContainText("dropped.loadside");
  await runByField(page, "B1");
  await expect(pane(page).getByRole("textbox", { name: "Name" })).toHaveValue("B1");
});

test("without file handles a drawing is uploaded and downloaded", async ({ quietPage: page, address }) => {
  await page.addInitScript(() => {
    Object.assign(globalThis, { showOpenFilePicker: undefined, showSaveFilePicker: undefined });
  });
  await openWindow(page, address);
  const chooser = page.waitForEvent("filechooser");
  await drawingMenu(page, "Open");
  await (await chooser).setFiles(SAMPLE);
  await expect(page.getByRole("banner")).toContainText("laundry-box.loadside");
  const download = page.waitForEvent("download");
  await drawingMenu(page, "Save");
  const saved = await download;
  expect(saved.suggestedFilename()).toBe("laundry-box.loadside");
  expect(await readFile(await saved.path(), "utf8")).toBe(await readFile(SAMPLE, "utf8"));
});

test("the file that the window was started with opens, and is saved over itself", async ({
  quietPage: page,
  folder,
}) => {
  const built = spawnSync(process.execPath, ["shared-model/hosts/build.mjs", "host"], { cwd: ROOT, encoding: "utf8" });
  expect(built.status, built.stderr).toBe(0);
  const { replaceFile } = await import(new URL("../../dist/host/atomic-file.mjs", import.meta.url).href);
  const own = await mkdtemp(join(tmpdir(), "loadside-window-"));
  const path = join(own, "house.loadside");
  await writeFile(path, await readFile(SAMPLE));
  const opened = await openFile(path, replaceFile);
  if (!opened.ok) throw new Error(opened.message);
  const host = await startBrowserHost({ folder, openedFile: opened.file });
  try {
    await openWindow(page, host.url);
    await expect(page.getByRole("banner")).toContainText("house.loadside");
    await checked(page);
    await rename(page, "R1", "R1b");
    await page.keyboard.press("Control+s");
    await expect(page.getByRole("banner").getByText("saved", { exact: true })).toBeVisible();
    expect(await readFile(path, "utf8")).toContain('"name": "R1b"');
  } finally {
    await host.close();
    await rm(own, { recursive: true });
  }
});

for (const comes of [true, false]) {
  test(`a file that the window is started with is waited for, and ${comes ? "no start page flashes up" : "the start page comes when it cannot be read"}`, async ({
    quietPage: page,
    folder,
  }) => {
    const text = await readFile(SAMPLE, "utf8");
    let release = (): void => {};
    const released = new Promise<void>((done) => {
      release = done;
    });
    const openedFile = {
      name: "house.loadside",
      token: "house",
      limit: text.length,
      async read() {
        await released;
        return comes ? { ok: true as const, text } : { ok: true as const, text: "not a drawing" };
      },
      save: async () => ({ ok: true as const }),
    };
    const host = await startBrowserHost({ folder, openedFile });
    try {
      await page.addInitScript(() => {
        new MutationObserver(() => {
          if (document.querySelector(".start") !== null) Object.assign(globalThis, { startWasShown: true });
        }).observe(document, { childList: true, subtree: true });
      });
      await openStart(page, host.url);
      await expect(page.getByText("Opening the drawing.")).toBeVisible();
      await expect(page.getByRole("banner")).toHaveCount(0);
      await expect(page.locator(".sheet-flow")).toBeHidden();
      await expectAccessible(page, "opening");
      release();
      if (comes) await expect(page.getByRole("banner")).toContainText("house.loadside");
      else await expect(page.getByRole("alert")).toContainText("house.loadside was not opened");
      await expect(page.getByText("Opening the drawing.")).toHaveCount(0);
      expect(await page.evaluate("globalThis.startWasShown === true")).toBe(!comes);
      if (comes) await checked(page);
    } finally {
      await host.close();
    }
  });
}

/** Each is at odds with itself in another way; all but the last have the right shape. */
const AT_ODDS: readonly (readonly [what: string, from: RegExp, to: string, seen: boolean])[] = [
  ["ends that are landed on nothing", /"splice": "[^"]+"/g, '"splice": "nowhere"', true],
  ["devices that no catalogue has", /"type": "receptacle-15"/g, '"type": "receptacle-from-nowhere"', false],
  ["cables that end in no box", /"enclosure": "[^"]+"/g, '"enclosure": "nowhere"', true],
  ["rooms that there are not", /"roomId": "[^"]+"/g, '"roomId": "nowhere"', true],
  ["places of no known kind", /"kind": "terminal"/g, '"kind": "somewhere"', true],
];

for (const [what, from, to, seen] of AT_ODDS) {
  test(`a large file with ${what} ${seen ? "is seen, and goes again once that is known" : "is not even seen"}, and says why`, async ({
    quietPage: page,
    folder,
  }) => {
    // Long enough to be shown before all of it is judged, whatever it is that makes it so.
    const text = (await readFile(SAMPLE, "utf8")).replaceAll(from, to) + " ".repeat(3 * 1024 * 1024);
    const openedFile = {
      name: "house.loadside",
      token: "house",
      limit: text.length,
      read: async () => ({ ok: true as const, text }),
      save: async () => ({ ok: true as const }),
    };
    const host = await startBrowserHost({ folder, openedFile });
    try {
      await page.addInitScript(() => {
        new MutationObserver(() => {
          const seen = document.querySelector("header")?.textContent?.includes("house.loadside");
          if (seen) Object.assign(globalThis, { drawingWasSeen: true });
        }).observe(document, { childList: true, subtree: true, characterData: true });
      });
      await openStart(page, host.url);
      await expect(page.getByRole("alert")).toContainText("house.loadside was not opened");
      await expect(page.getByRole("alert")).toContainText("/asFound/");
      await expect(page.getByRole("main", { name: "New from what I see" })).toBeVisible();
      expect(await page.evaluate("globalThis.drawingWasSeen === true")).toBe(seen);
      // What comes next is drawn as if nothing had been.
      await page.getByRole("button", { name: /laundry circuit(?!, proposed)/ }).click();
      await expect(page.getByRole("banner")).toContainText("1962 bungalow, laundry circuit");
      await checked(page);
    } finally {
      await host.close();
    }
  });
}
