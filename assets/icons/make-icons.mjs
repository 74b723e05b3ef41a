/**
 * Makes the icons of the program from `loadside.svg`, in plain Node:
 *
 *   node assets/icons/make-icons.mjs
 *
 * The drawing is made of upright rectangles, with round corners or without, on a field of 32; nothing else is read.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { crc32, deflateSync } from "node:zlib";

const HERE = fileURLToPath(new URL(".", import.meta.url));
const FIELD = 32;
/** Of a system that sets programs beside one another in tiles of its own size: how much of the field ours takes. */
const TILE = 824 / 1024;
/** Points looked at in a pixel, across and down. */
const FINE = 8;

/** Sizes in pixels: pictures for Linux, those in the file for Windows, and those for macOS by their type. */
export const PNG_SIZES = [16, 32, 48, 64, 128, 256, 512, 1024];
const ICO_SIZES = [16, 24, 32, 48, 64, 128, 256];
/** Types that hold PNG, from the published description of the format; `@2x` types last. */
const ICNS_TYPES = /** @type {const} */ ([
  ["icp4", 16],
  ["icp5", 32],
  ["icp6", 64],
  ["ic07", 128],
  ["ic08", 256],
  ["ic09", 512],
  ["ic10", 1024],
  ["ic11", 32],
  ["ic12", 64],
  ["ic13", 256],
  ["ic14", 512],
]);

/**
 * @typedef {{ readonly x: number, readonly y: number, readonly width: number, readonly height: number,
 *   readonly rx: number, readonly colour: readonly [number, number, number] }} Shape
 */

/** @param {string} svg @returns {readonly Shape[]} The rectangles, from back to front. */
export function readShapes(svg) {
  const shapes = [...svg.matchAll(/<rect ([^>]*?)\/>/g)].map(([, attributes = ""]) => {
    const value = (/** @type {string} */ name) => {
      const found = new RegExp(`\\b${name}="([^"]*)"`).exec(attributes)?.[1];
      if (found === undefined) throw new Error(`A rectangle of the icon has no ${name}: ${attributes}`);
      return found;
    };
    const number = (/** @type {string} */ name) => {
      const read = Number(value(name));
      if (!Number.isFinite(read)) throw new Error(`${name} of a rectangle of the icon is no number: ${attributes}`);
      return read;
    };
    const fill = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/.exec(value("fill"));
    if (fill === null) throw new Error(`The fill of a rectangle of the icon is no colour: ${attributes}`);
    const channel = (/** @type {number} */ at) => Number.parseInt(fill[at] ?? "", 16);
    return {
      x: number("x"),
      y: number("y"),
      width: number("width"),
      height: number("height"),
      rx: number("rx"),
      colour: /** @type {const} */ ([channel(1), channel(2), channel(3)]),
    };
  });
  if (shapes.length === 0) throw new Error("The icon has no rectangles.");
  return shapes;
}

/** @param {Shape} shape @param {number} x @param {number} y */
function covers({ x: left, y: top, width, height, rx }, x, y) {
  const dx = Math.max(left + rx - x, x - (left + width - rx), 0);
  const dy = Math.max(top + rx - y, y - (top + height - rx), 0);
  return rx > 0 ? dx * dx + dy * dy <= rx * rx : dx === 0 && dy === 0;
}

/** Whether a pixel lies wholly on one side of each edge, so that one point of it tells all. */
const isPlain = (/** @type {readonly Shape[]} */ shapes, /** @type {number} */ x, /** @type {number} */ y, unit = 1) =>
  shapes.every(({ x: left, y: top, width, height, rx }) => {
    const right = left + width;
    const bottom = top + height;
    if (x >= right || x + unit <= left || y >= bottom || y + unit <= top) return true;
    const level = x >= left && x + unit <= right && y >= top + rx && y + unit <= bottom - rx;
    return level || (y >= top && y + unit <= bottom && x >= left + rx && x + unit <= right - rx);
  });

/**
 * @param {readonly Shape[]} shapes
 * @param {number} size In pixels.
 * @param {number} scale How much of the picture the field takes, in its middle.
 * @returns {Buffer} Red, green, blue and opacity of each pixel, row by row.
 */
export function paint(shapes, size, scale = 1) {
  const pixels = Buffer.alloc(size * size * 4);
  const unit = FIELD / (size * scale);
  const from = (FIELD - FIELD / scale) / 2;
  for (let row = 0; row < size; row += 1) {
    for (let column = 0; column < size; column += 1) {
      const sum = [0, 0, 0];
      let covered = 0;
      const fine = isPlain(shapes, from + column * unit, from + row * unit, unit) ? 1 : FINE;
      for (let point = 0; point < fine * fine; point += 1) {
        const x = from + (column + ((point % fine) + 0.5) / fine) * unit;
        const y = from + (row + (Math.floor(point / fine) + 0.5) / fine) * unit;
        const top = shapes.findLast((shape) => covers(shape, x, y));
        if (top === undefined) continue;
        covered += 1;
        for (const at of [0, 1, 2]) sum[at] = (sum[at] ?? 0) + (top.colour[at] ?? 0);
      }
      const pixel = (row * size + column) * 4;
      for (const at of [0, 1, 2]) pixels[pixel + at] = covered === 0 ? 0 : Math.round((sum[at] ?? 0) / covered);
      pixels[pixel + 3] = Math.round((covered * 255) / (fine * fine));
    }
  }
  return pixels;
}

/** @param {string} type @param {Buffer} data */
function pngChunk(type, data) {
  const named = Buffer.concat([Buffer.from(type, "latin1"), data]);
  const chunk = Buffer.alloc(named.length + 8);
  chunk.writeUInt32BE(data.length, 0);
  named.copy(chunk, 4);
  chunk.writeUInt32BE(crc32(named), named.length + 4);
  return chunk;
}

/** A PNG with eight bits a channel (ISO/IEC 15948). @param {Buffer} pixels @param {number} size @returns {Buffer} */
export function writePng(pixels, size) {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(size, 0);
  head.writeUInt32BE(size, 4);
  head.set([8, 6, 0, 0, 0], 8);
  const rows = Array.from({ length: size }, (_, row) =>
    Buffer.concat([Buffer.from([0]), pixels.subarray(row * size * 4, (row + 1) * size * 4)]),
  );
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    pngChunk("IHDR", head),
    pngChunk("IDAT", deflateSync(Buffer.concat(rows), { level: 9 })),
    pngChunk("IEND", Buffer.alloc(0)),
  ]);
}

/** A file with several pictures for Windows. @param {readonly (readonly [number, Buffer])[]} pictures */
function writeIco(pictures) {
  const head = Buffer.alloc(6 + 16 * pictures.length);
  head.writeUInt16LE(1, 2);
  head.writeUInt16LE(pictures.length, 4);
  let offset = head.length;
  for (const [index, [size, png]] of pictures.entries()) {
    const at = 6 + 16 * index;
    // 0 stands for 256.
    head.set([size % 256, size % 256, 0, 0], at);
    head.writeUInt16LE(1, at + 4);
    head.writeUInt16LE(32, at + 6);
    head.writeUInt32LE(png.length, at + 8);
    head.writeUInt32LE(offset, at + 12);
    offset += png.length;
  }
  return Buffer.concat([head, ...pictures.map(([, png]) => png)]);
}

/** A file with several pictures for macOS. @param {readonly (readonly [string, Buffer])[]} pictures */
function writeIcns(pictures) {
  const parts = pictures.map(([type, png]) => {
    const head = Buffer.alloc(8);
    head.write(type, "latin1");
    head.writeUInt32BE(png.length + 8, 4);
    return Buffer.concat([head, png]);
  });
  const head = Buffer.alloc(8);
  head.write("icns", "latin1");
  head.writeUInt32BE(parts.reduce((sum, { length }) => sum + length, 8), 4);
  return Buffer.concat([head, ...parts]);
}

/** @returns {ReadonlyMap<string, Buffer>} Every icon by the name of its file in this folder. */
export function makeIcons() {
  const shapes = readShapes(readFileSync(join(HERE, "loadside.svg"), "utf8"));
  const png = (/** @type {number} */ size, /** @type {number} */ scale = 1) => writePng(paint(shapes, size, scale), size);
  /** @type {Map<number, Buffer>} */
  const full = new Map([...new Set([...PNG_SIZES, ...ICO_SIZES])].map((size) => [size, png(size)]));
  /** @type {Map<number, Buffer>} */
  const tiles = new Map([...new Set(ICNS_TYPES.map(([, size]) => size))].map((size) => [size, png(size, TILE)]));
  const none = Buffer.alloc(0);
  return new Map([
    ...PNG_SIZES.map((size) => /** @type {const} */ ([`${size}x${size}.png`, full.get(size) ?? none])),
    ["loadside.ico", writeIco(ICO_SIZES.map((size) => [size, full.get(size) ?? none]))],
    ["loadside.icns", writeIcns(ICNS_TYPES.map(([type, size]) => [type, tiles.get(size) ?? none]))],
  ]);
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href)
  for (const [name, bytes] of makeIcons()) writeFileSync(join(HERE, name), bytes);
