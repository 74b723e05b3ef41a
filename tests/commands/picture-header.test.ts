import fc from "fast-check";
import { expect, test } from "vitest";
import { base64Of, bytesOfBase64, isBase64 } from "../../shared-model/lib/base64.ts";
import { readPictureHeader } from "../../shared-model/lib/picture-header.ts";
import { TINY_JPEG } from "../builders/tiny-jpeg.ts";

const bytes = (...list: readonly number[]) => Uint8Array.from(list);

test("base64 is what Node makes of it, both ways", () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 60 }), (all) => {
      const text = Buffer.from(all).toString("base64");
      expect(base64Of(all)).toBe(text);
      expect(isBase64(text)).toBe(true);
      expect(bytesOfBase64(text)).toEqual(Uint8Array.from(all));
    }),
  );
  for (const text of ["A", "AB=A", "====", "AAA", "AA A", "AAAA\n", "AAA_"])
    expect([text, isBase64(text)]).toEqual([text, false]);
});

test("the picture that a browser made is 8 by 6", () => {
  expect(readPictureHeader(bytesOfBase64(TINY_JPEG))).toEqual({ mediaType: "image/jpeg", width: 8, height: 6 });
});

/** W3C Portable Network Graphics, 11.2.1: signature, then IHDR with width and height of four bytes each. */
test("a PNG tells its size in its first block", () => {
  const png = bytes(0x89, 80, 78, 71, 13, 10, 26, 10, 0, 0, 0, 13, 73, 72, 68, 82, 0, 1, 0, 2, 0, 0, 3, 0);
  expect(readPictureHeader(png)).toEqual({ mediaType: "image/png", width: 65_538, height: 768 });
  expect(readPictureHeader(png.slice(0, 23))).toBeUndefined();
  expect(readPictureHeader(png.map((byte, index) => (index === 12 ? 0 : byte)))).toBeUndefined();
});

/** ITU-T T.81, B.1.1.2 and B.2.2: markers may be padded; SOF0 to SOF15 but C4, C8 and CC tell height, then width. */
test("a JPEG tells its size in its frame, after whatever stands before it", () => {
  const frame = (marker: number, width = 8) => [0xff, marker, 0, 11, 8, 0, 6, 0, width, 1];
  const size = { mediaType: "image/jpeg", width: 8, height: 6 };
  expect(readPictureHeader(bytes(0xff, 0xd8, ...frame(0xc0), 0))).toEqual(size);
  expect(readPictureHeader(bytes(0xff, 0xd8, 0xff, 0xe1, 0, 4, 9, 9, 0xff, ...frame(0xc2), 0))).toEqual(size);
  for (const table of [0xc4, 0xc8, 0xcc])
    expect(readPictureHeader(bytes(0xff, 0xd8, ...frame(table), 0, 0, 0, ...frame(0xc1, 9), 0))?.width).toBe(9);
  expect(readPictureHeader(bytes(0xff, 0xd8, 0xff, 0xda, 0, 4, 0, 0, ...frame(0xc0), 0))).toBeUndefined();
  expect(readPictureHeader(bytes(0xff, 0xd8, ...frame(0xc0).slice(0, 7)))).toBeUndefined();
});

test("nothing that is put in makes it throw or look for ever", () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 80 }), fc.boolean(), (rest, asJpeg) => {
      const all = asJpeg ? bytes(0xff, 0xd8, 0xff, ...rest) : rest;
      const header = readPictureHeader(all);
      expect(header === undefined || (header.width > 0 && header.height > 0)).toBe(true);
    }),
    { numRuns: 2000 },
  );
});
