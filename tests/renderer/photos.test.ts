/** Files that are taken in as photos; a stand-in presses them, since only a browser can. */
import { beforeEach, expect, test } from "vitest";
import { documentStore, nextUndo, openDocument, undo } from "../../renderer/state/document-store.ts";
import { takeIn } from "../../renderer/state/photos/take-in.ts";
import { preferencesStore } from "../../renderer/state/preferences-store.ts";
import { resetSession, sessionStore } from "../../renderer/state/session-store.ts";
import { PHOTO_LIMITS } from "../../shared-model/model/photo-limits.ts";
import { laundryAsFound } from "../builders/drawing.ts";
import { boxId } from "../builders/ids.ts";
import { TINY_JPEG } from "../builders/tiny-jpeg.ts";

const JPEG = Uint8Array.from(Buffer.from(TINY_JPEG, "base64"));
/** Start of image and of a frame of 65 535 by 65 535, by ITU-T T.81 B.2.2. */
const BOMB = Uint8Array.of(0xff, 0xd8, 0xff, 0xc0, 0, 11, 8, 0xff, 0xff, 0xff, 0xff, 1, 1, 17, 0);

const file = (name: string, bytes: Uint8Array<ArrayBuffer> = JPEG): File =>
  new File([bytes], name, { type: "image/jpeg", lastModified: new Date(2026, 4, 4, 12).getTime() });

let pressed = 0;
const press = async (): Promise<Uint8Array> => {
  pressed++;
  return JPEG;
};
const photos = () => Object.values(documentStore.get().project.attachments);
const told = () => sessionStore.get().notice?.lines ?? [];

beforeEach(() => {
  pressed = 0;
  resetSession();
  openDocument({ project: laundryAsFound() });
  preferencesStore.merge({ name: "Pat Example" });
});

test("several come in one step, called as their files, with day and person", async () => {
  await takeIn(boxId("B1"), [file("open box.JPG"), file("image.png"), file(`${"x".repeat(100)}.jpeg`)], { press });
  expect(photos().map(({ name, takenAt, by, enclosure }) => [name, takenAt, by, enclosure])).toEqual([
    ["open box", "2026-05-04", "Pat Example", boxId("B1")],
    ["Photo", "2026-05-04", "Pat Example", boxId("B1")],
    ["x".repeat(80), "2026-05-04", "Pat Example", boxId("B1")],
  ]);
  expect(nextUndo(documentStore.get())).toBe("Attach 3 photos to B1");
  undo();
  expect(photos()).toEqual([]);
});

test("what is no picture, would unfold to fill the memory, or is too large is not even drawn", async () => {
  const text = Uint8Array.from(Buffer.from("<svg onload='alert(1)'/>"));
  const heavy = Object.defineProperty(file("heavy.jpg"), "size", { value: 50_000_001 });
  await takeIn(boxId("B1"), [file("a.jpg", text), file("bomb.jpg", BOMB), heavy, file("good.jpg")], { press });
  expect(pressed).toBe(1);
  expect(photos()).toHaveLength(1);
  expect(told()).toEqual([
    "a.jpg is not a JPEG or PNG. Save it as one of these and add that.",
    "bomb.jpg has more than 50 million pixels. Save a smaller copy and add that.",
    "heavy.jpg is larger than 50 MB. Save a smaller copy and add that.",
  ]);
});

test("a damaged one is told by its name, and the others come in", async () => {
  const fails = async (picture: Blob) => {
    if ((picture as File).name === "broken.jpg") throw new Error("decode");
    return JPEG;
  };
  await takeIn(boxId("B1"), [file("broken.jpg"), file("good.jpg")], { press: fails });
  expect([photos().length, told()]).toEqual([
    1,
    ["broken.jpg is damaged: it cannot be drawn. Take it again, or add another copy."],
  ]);
});

test("more than a box takes are refused in words, and nothing is half done", async () => {
  const many = Array.from({ length: PHOTO_LIMITS.ofBox + 1 }, (_, index) => file(`p${index}.jpg`));
  await takeIn(boxId("B1"), many, { press });
  expect([photos().length, told().length]).toEqual([PHOTO_LIMITS.ofBox, 1]);
  await takeIn(boxId("B1"), [file("one more.jpg")], { press });
  expect(photos()).toHaveLength(PHOTO_LIMITS.ofBox);
  expect(told()[0]).toMatch(/^A box takes 12 photos/);
});
