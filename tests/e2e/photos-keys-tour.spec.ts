/** Photos of a box, chosen keys, common boxes and the tour, as one person would meet them. */
import { expect, type Locator, type Page } from "@playwright/test";
import { bytesOfBase64 } from "../../shared-model/lib/base64.ts";
import { readPictureHeader } from "../../shared-model/lib/picture-header.ts";
import { PHOTO_LIMITS } from "../../shared-model/model/photo-limits.ts";
import { answerPickers, choose, storedText } from "./support/stored-files.ts";
import {
  checked,
  expectAccessible,
  openLaundrySample,
  openStart,
  openWindow,
  pane,
  runByField,
  test,
} from "./support/window-test.ts";

const PLACE = "GPSLatitude 12.3456";
const photos = (page: Page) => pane(page).locator("figure.photo");
const undo = (page: Page) => page.getByRole("banner").getByRole("button", { name: /^Undo/ });

/** A photo as a telephone takes it: large, with much in it, and with a block that tells where it was taken. */
async function takePhoto(page: Page, width: number, height: number): Promise<Buffer> {
  const base64 = await page.evaluate(
    async ([wide, high, place]) => {
      const canvas = new OffscreenCanvas(wide, high);
      const pen = canvas.getContext("2d");
      if (pen === null) throw new Error("No canvas.");
      for (let spot = 0; spot < 9000; spot++) {
        pen.fillStyle = `hsl(${(spot * 47) % 360} 60% ${30 + (spot % 50)}%)`;
        pen.fillRect((spot * 7919) % wide, (spot * 104_729) % high, 24, 24);
      }
      const blob = await canvas.convertToBlob({ type: "image/jpeg", quality: 0.95 });
      const bytes = new Uint8Array(await blob.arrayBuffer());
      const block = new TextEncoder().encode(`Exif\0\0${place}`);
      // Start of the image, an APP1 block, then the rest.
      const parts = [Uint8Array.of(0xff, 0xd8, 0xff, 0xe1, 0, block.length + 2), block, bytes.subarray(2)];
      return new Promise<string>((done) => {
        const reader = new FileReader();
        reader.onload = () => done(String(reader.result).split(",")[1] ?? "");
        reader.readAsDataURL(new Blob(parts));
      });
    },
    [width, height, PLACE] as const,
  );
  return Buffer.from(base64, "base64");
}

interface SavedPhoto {
  readonly order: number;
  readonly base64: string;
  readonly caption?: string;
  readonly by?: string;
}

async function savedPhotos(page: Page, file: string): Promise<readonly SavedPhoto[]> {
  const { attachments } = JSON.parse(await storedText(page, file)) as {
    readonly attachments: Readonly<Record<string, SavedPhoto>>;
  };
  return Object.values(attachments).sort((a, b) => a.order - b.order);
}

test("photos are attached, told, seen large, kept in the file without their place, and removed again", async ({
  quietPage: page,
  address,
}) => {
  await answerPickers(page);
  await openWindow(page, address);
  await openLaundrySample(page);
  await runByField(page, "B1");
  const taken = await takePhoto(page, 3000, 2000);
  expect(taken.length).toBeGreaterThan(PHOTO_LIMITS.bytes);
  expect(taken.toString("latin1")).toContain(PLACE);
  const chooser = page.waitForEvent("filechooser");
  await pane(page)
    .getByRole("button", { name: /^Add photos/ })
    .click();
  await (await chooser).setFiles([
    { name: "open box.jpg", mimeType: "image/jpeg", buffer: taken },
    { name: "plan.jpg", mimeType: "image/jpeg", buffer: Buffer.from("<svg onload='alert(1)'/>") },
  ]);
  await expect(photos(page)).toHaveCount(1);
  await expect(page.getByText("plan.jpg is not a JPEG or PNG.")).toBeVisible();
  await page.getByRole("button", { name: "Close" }).click();
  await expect(undo(page)).toHaveAccessibleName("Undo: Attach a photo to B1");
  await pane(page).getByRole("textbox", { name: "What it shows" }).fill("Five cables, one clamp");
  await page.keyboard.press("Enter");
  await pane(page).getByRole("textbox", { name: "By", exact: true }).fill("Pat Example");
  await page.keyboard.press("Enter");
  await expectAccessible(page, "a box with a photo");

  // Dropped on another box of the sheet, and pasted while it is selected.
  const second = (await takePhoto(page, 900, 1200)).toString("base64");
  const carry = (onto: Locator, how: "drop" | "paste") =>
    onto.evaluate(
      (target, [base64, way]) => {
        const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
        const data = new DataTransfer();
        data.items.add(new File([bytes], "image.jpg", { type: "image/jpeg" }));
        const init = { bubbles: true, cancelable: true };
        target.dispatchEvent(
          way === "paste"
            ? new ClipboardEvent("paste", { clipboardData: data, ...init })
            : new DragEvent("drop", { dataTransfer: data, ...init }),
        );
      },
      [second, how] as const,
    );
  const onSheet = page.getByRole("group", { name: /^Box B3\b/ });
  await page.getByRole("button", { name: "Fit", exact: true }).click();
  await carry(onSheet, "drop");
  await expect(pane(page).getByRole("textbox", { name: "Name" })).toHaveValue("B3");
  await expect(photos(page)).toHaveCount(1);
  await carry(page.locator("body"), "paste");
  await expect(photos(page)).toHaveCount(2);

  await photos(page)
    .first()
    .getByRole("button", { name: /View large/ })
    .click();
  const large = page.getByRole("dialog", { name: "B3: Photo" });
  await expect(large.getByRole("img", { name: "B3: Photo" })).toBeVisible();
  await large.getByRole("button", { name: "Next photo" }).click();
  await expect(large).toContainText("2 of 2");
  await expectAccessible(page, "a photo seen large");
  await page.keyboard.press("Escape");
  await photos(page)
    .first()
    .getByRole("button", { name: /^Remove/ })
    .click();
  await expect(photos(page)).toHaveCount(1);
  await undo(page).click();
  await expect(photos(page)).toHaveCount(2);

  await choose(page, "photos.loadside");
  await page.keyboard.press("Control+Shift+s");
  await expect(page.getByRole("banner").getByText("saved", { exact: true })).toBeVisible();
  const saved = await savedPhotos(page, "photos.loadside");
  expect(saved).toHaveLength(3);
  expect([saved[0]?.caption, saved[0]?.by]).toEqual(["Five cables, one clamp", "Pat Example"]);
  for (const { base64 } of saved) {
    const bytes = bytesOfBase64(base64);
    expect(bytes.length).toBeLessThanOrEqual(PHOTO_LIMITS.bytes);
    expect(/Exif|GPS/.test(Buffer.from(bytes).toString("latin1")), "what a photo tells beside its picture").toBe(false);
  }
  const sizes = saved.map(({ base64 }) => readPictureHeader(bytesOfBase64(base64)));
  expect(sizes[0]).toEqual({ mediaType: "image/jpeg", width: 1600, height: 1067 });
  expect(sizes[1]).toEqual({ mediaType: "image/jpeg", width: 900, height: 1200 });
  // Edits go on being checked: the worker has no photos and needs none.
  await runByField(page, "B4");
  await runByField(page, "Remove B4");
  await checked(page);
});

test("keys are found, changed, taken from others, switched off and put back", async ({ quietPage: page, address }) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await runByField(page, "shortcuts");
  const dialog = page.getByRole("dialog", { name: "Keys" });
  await dialog.getByRole("searchbox", { name: "Find keys" }).fill("energise");
  await expect(dialog.getByRole("row")).toHaveCount(1);
  await expectAccessible(page, "keys, one found");
  const change = dialog.getByRole("button", { name: "Change the keys of: Energise" });
  await change.click();
  await page.keyboard.press("Control+c");
  await expect(dialog.getByRole("alert")).toHaveText("Text fields need these keys. Choose others.");
  await page.keyboard.press("Escape");
  await expect(change).toBeFocused();
  await change.press("Enter");
  await page.keyboard.press("Control+s");
  await expect(dialog.getByRole("alert")).toContainText("Ctrl S belongs to: Save.");
  await expectAccessible(page, "keys that belong to something else");
  await page.keyboard.press("Enter");
  await expect(dialog.getByRole("status")).toHaveText("Energise: Ctrl S.");
  await dialog.getByRole("searchbox").fill("connected");
  await dialog.getByRole("button", { name: "Change the keys of: On along what is connected" }).click();
  await page.keyboard.press("g");
  await page.keyboard.press("Escape");
  await expect(dialog).toHaveCount(0);

  // The menus and the field show what is in force, and it is what works.
  await page.keyboard.press("Control+s");
  await expect(page.getByText("Computed circuit, as found.")).toBeVisible();
  await page.keyboard.press("Control+s");
  await page.getByRole("button", { name: "Drawing", exact: true }).click();
  await expect(page.getByRole("menuitem", { name: "Save", exact: true })).not.toHaveAttribute("aria-keyshortcuts");
  await page.keyboard.press("Escape");
  const kept = await page.evaluate(() => JSON.parse(localStorage.getItem("loadside.preferences") ?? "{}"));
  expect(kept.keys).toEqual({ energise: "Mod+S", "save-document": null, follow: "G" });

  // A single key of the sheet, by its chosen letter, and not at all once these are off.
  const sheet = page.getByRole("main", { name: "Sheet" });
  const zoom = sheet.locator(".sheet-zoom .fig");
  await page.locator(".react-flow__node").first().focus();
  const before = await zoom.textContent();
  await page.keyboard.press("+");
  await expect(zoom).not.toHaveText(before ?? "");
  await runByField(page, "Keys");
  await dialog.getByRole("checkbox").click();
  await dialog.getByRole("button", { name: "Reset all" }).click();
  await page.keyboard.press("Escape");
  await page.locator(".react-flow__node").first().focus();
  const still = await zoom.textContent();
  await page.keyboard.press("+");
  await page.keyboard.press("1");
  // What would have happened by now has not: another key still answers.
  await page.keyboard.press("F9");
  await expect(page.getByText("Computed circuit, as found.")).toBeVisible();
  await expect(zoom).toHaveText(still ?? "");
});

test("a common box opens from the start page; the tour is taken by keys, left by Escape, and not offered again", async ({
  quietPage: page,
  address,
}) => {
  await openStart(page, address);
  const tour = page.getByRole("dialog", { name: "Tour of the window" });
  await page.getByRole("button", { name: "Tour in five steps" }).press("Enter");
  for (const step of [1, 2, 3, 4, 5]) {
    await expect(tour).toContainText(`Step ${step} of 5`);
    await expect(tour.getByRole("heading")).toBeFocused();
    // The card is whole in the window, and the ring is around something.
    const ring = await page.locator(".tour-ring").boundingBox();
    expect(ring?.width).toBeGreaterThan(40);
    await expect(tour).toBeInViewport({ ratio: 1 });
    if (step === 3) await expectAccessible(page, "tour");
    if (step < 5) await tour.getByRole("button", { name: "Next" }).press("Enter");
  }
  await page.keyboard.press("Escape");
  await expect(tour).toHaveCount(0);
  await expect(page.getByRole("heading", { name: "Common boxes" })).toBeVisible();
  await expect(page.getByRole("button", { name: "Tour in five steps" })).toHaveCount(0);

  await page.getByRole("button", { name: /^Ground-fault receptacle that protects/ }).click();
  await checked(page);
  await expect(page.getByRole("contentinfo")).toContainText("0 danger");
  await expect(page.getByRole("contentinfo")).toContainText("0 violation");
  // A command by its name asks for what it is about, there and then.
  await page.keyboard.press("Control+k");
  await page.keyboard.type("lift a conductr");
  await expect(page.locator(".command-line[aria-selected=true]")).toContainText("Lift a conductor");
  await page.keyboard.press("Enter");
  const field = page.getByRole("combobox", { name: "Lift a conductor: which conductor end?" });
  await expect(field).toBeFocused();
  await expectAccessible(page, "the command field asks");
  await page.keyboard.type("C2 BK");
  await page.keyboard.press("Enter");
  await expect(undo(page)).toHaveAccessibleName(/^Undo: (Lift|Leave) C2 BK/);
  // The next choice of a command is asked in the field as well.
  await page.keyboard.press("Control+k");
  await page.keyboard.type("place a device");
  await page.keyboard.press("Enter");
  await page.keyboard.type("B1");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("combobox", { name: /^Add a device to B1/ })).toBeFocused();
  await page.keyboard.press("Escape");
  await expect(page.getByRole("combobox", { name: "Command, part, tag or finding" })).toBeVisible();
  await page.keyboard.press("F1");
  await page.keyboard.type("describe a photo");
  await expect(page.locator(".command-line").first()).toContainText("Not now: There is no photo in this drawing yet.");
});
