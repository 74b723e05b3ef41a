/** The icons are those of the drawing, in containers that systems read. */
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { inflateSync } from "node:zlib";
import { beforeAll, describe, expect, test } from "vitest";
import { makeIcons, PNG_SIZES, paint, readShapes } from "../../assets/icons/make-icons.mjs";
import { ROOT } from "../small-project.ts";

const FOLDER = join(ROOT, "assets/icons");
const ACCENT = [0x8f, 0x1d, 0x7c, 255];
const WHITE = [255, 255, 255, 255];
const NOTHING = [0, 0, 0, 0];
const read = (name: string): Buffer => readFileSync(join(FOLDER, name));

/** Pixels of a PNG as its published description has them; our own writer is not asked. Filter 0 only. */
function pixelsOf(png: Buffer): { readonly size: number; readonly pixels: Buffer } {
  expect(png.subarray(0, 8).toString("hex")).toBe("89504e470d0a1a0a");
  const parts: Buffer[] = [];
  let size = 0;
  for (let at = 8; at < png.length; at += png.readUInt32BE(at) + 12) {
    const type = png.toString("latin1", at + 4, at + 8);
    const data = png.subarray(at + 8, at + 8 + png.readUInt32BE(at));
    if (type === "IHDR") {
      size = data.readUInt32BE(0);
      expect([data.readUInt32BE(4), ...data.subarray(8)]).toEqual([size, 8, 6, 0, 0, 0]);
    }
    if (type === "IDAT") parts.push(data);
  }
  const rows = inflateSync(Buffer.concat(parts));
  expect(rows.length).toBe(size * (size * 4 + 1));
  return {
    size,
    pixels: Buffer.concat(
      Array.from({ length: size }, (_, row) => rows.subarray(row * (size * 4 + 1) + 1, (row + 1) * (size * 4 + 1))),
    ),
  };
}

function colourAt(png: Buffer, x: number, y: number): readonly number[] {
  const { size, pixels } = pixelsOf(png);
  const at = (Math.floor(y * size) * size + Math.floor(x * size)) * 4;
  return [...pixels.subarray(at, at + 4)];
}

describe("the icons", () => {
  let made: ReadonlyMap<string, Buffer>;
  beforeAll(() => {
    made = makeIcons();
  }, 60_000);

  test.each(PNG_SIZES)("%d pixels: the file shows the drawing as it is now", (size) => {
    const name = `${size}x${size}.png`;
    const shown = pixelsOf(read(name));
    expect(shown.size).toBe(size);
    expect(shown.pixels.equals(pixelsOf(made.get(name) ?? Buffer.alloc(0)).pixels)).toBe(true);
    // One line comes to the line side of the device, three leave its load side; the sides do not touch; corners are round.
    expect(colourAt(read(name), 6 / 32, 15 / 32)).toEqual(WHITE);
    expect(colourAt(read(name), 6 / 32, 9 / 32)).toEqual(ACCENT);
    expect(colourAt(read(name), 15 / 32, 15 / 32)).toEqual(ACCENT);
    for (const y of [9, 16, 23]) expect(colourAt(read(name), 24 / 32, y / 32)).toEqual(WHITE);
    expect(colourAt(read(name), 24 / 32, 12 / 32)).toEqual(ACCENT);
    expect((colourAt(read(name), 0, 0)[3] ?? 255) < 128).toBe(true);
  });

  test("the file for Windows names each picture by its size and place", () => {
    const ico = read("loadside.ico");
    expect([ico.readUInt16LE(0), ico.readUInt16LE(2)]).toEqual([0, 1]);
    const count = ico.readUInt16LE(4);
    let end = 6 + 16 * count;
    for (let index = 0; index < count; index += 1) {
      const at = 6 + 16 * index;
      const [bytes, offset] = [ico.readUInt32LE(at + 8), ico.readUInt32LE(at + 12)];
      expect(offset).toBe(end);
      end += bytes;
      const { size, pixels } = pixelsOf(ico.subarray(offset, offset + bytes));
      expect(size % 256).toBe(ico[at]);
      expect(pixels.equals(paint(readShapes(read("loadside.svg").toString()), size))).toBe(true);
    }
    expect(end).toBe(ico.length);
    expect(count).toBeGreaterThanOrEqual(4);
  });

  test("the file for macOS holds pictures with room around them, up to 1024 pixels", () => {
    const icns = read("loadside.icns");
    expect(icns.toString("latin1", 0, 4)).toBe("icns");
    expect(icns.readUInt32BE(4)).toBe(icns.length);
    const sizes: number[] = [];
    for (let at = 8; at < icns.length; at += icns.readUInt32BE(at + 4)) {
      const png = icns.subarray(at + 8, at + icns.readUInt32BE(at + 4));
      sizes.push(pixelsOf(png).size);
      expect(colourAt(png, 0.02, 0.5)).toEqual(NOTHING);
      expect(colourAt(png, 0.5, 0.82)).toEqual(ACCENT);
    }
    expect([...new Set(sizes)].sort((a, b) => a - b)).toEqual([16, 32, 64, 128, 256, 512, 1024]);
    expect(pixelsOf(made.get("loadside.icns")?.subarray(16) ?? Buffer.alloc(0)).size).toBe(16);
  });

  test("a drawing that cannot be painted is told, not painted wrongly", () => {
    expect(() => readShapes('<svg><path d="M0 0" /></svg>')).toThrow("no rectangles");
    expect(() => readShapes('<rect x="0" y="0" width="a" height="1" rx="0" fill="#000000" />')).toThrow("width");
    expect(() => readShapes('<rect x="0" y="0" width="1" height="1" rx="0" fill="red" />')).toThrow("fill");
  });

  test("the packager is told of files that are there", () => {
    const config = readFileSync(join(ROOT, "electron-builder.yml"), "utf8");
    const named = [...config.matchAll(/(?:icon:|-) (assets\/icons\S*)/g)].map(([, path = ""]) => path);
    expect(named).toHaveLength(4);
    expect(named.filter((path) => !existsSync(join(ROOT, path)))).toEqual([]);
  });
});
