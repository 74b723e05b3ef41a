import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { expect, test } from "vitest";
import { sfntOfWoff } from "../shared-model/hosts/cli/sfnt-of-woff.ts";

const require = createRequire(import.meta.url);
const { create } = createRequire(require.resolve("pdfkit"))("fontkit") as {
  create(bytes: Uint8Array): {
    readonly type: string;
    readonly postscriptName: string;
    layout(text: string): { readonly advanceWidth: number };
  };
};
const woff = readFileSync(
  require.resolve("@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-700-normal.woff"),
);

test("an unpacked font is the same font, as another reader has it", () => {
  const [packed, plain] = [create(woff), create(Buffer.from(sfntOfWoff(woff)))];
  expect([packed.type, plain.type]).toEqual(["WOFF", "TTF"]);
  expect(plain.postscriptName).toBe(packed.postscriptName);
  expect(plain.layout("C3 BK to AV 30.3").advanceWidth).toBe(packed.layout("C3 BK to AV 30.3").advanceWidth);
});

test("each table of it has the sum that its directory tells, as the format asks", () => {
  const sfnt = sfntOfWoff(woff);
  const view = new DataView(sfnt.buffer);
  const count = view.getUint16(4);
  expect(count).toBeGreaterThan(8);
  for (let i = 0; i < count; i += 1) {
    const at = 12 + i * 16;
    const tag = Buffer.from(sfnt.subarray(at, at + 4)).toString("latin1");
    const [sum, offset, length] = [view.getUint32(at + 4), view.getUint32(at + 8), view.getUint32(at + 12)];
    let own = 0;
    for (let word = 0; word < Math.ceil(length / 4); word += 1) {
      // The sum of the whole file is set later, and is left out of that of its table.
      if (tag === "head" && word === 2) continue;
      own = (own + view.getUint32(offset + word * 4)) >>> 0;
    }
    expect(own, tag).toBe(sum);
  }
});

test("what is no such file is refused", () => {
  expect(() => sfntOfWoff(new Uint8Array(100))).toThrow("Not a WOFF file");
  expect(() => sfntOfWoff(new Uint8Array(3))).toThrow("Not a WOFF file");
});
