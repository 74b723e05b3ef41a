import { expect, test } from "vitest";
import { FAR_NAME_WEIGHT, type FarSubject, farBox } from "../../shared-model/geometry/far-box.ts";
import { textWidth } from "../../shared-model/geometry/text-width.ts";

const sizes = [2, 6, 8, 11, 14, 17, 20, 22, 25, 29, 33, 38, 43, 45, 50, 58, 70, 90, 150];
const subjects: readonly FarSubject[] = sizes.flatMap((width) =>
  sizes.flatMap((height) =>
    ["P", "B104"].flatMap((name) =>
      [0, 1, 5].flatMap((symbols) =>
        [undefined, 0.4].flatMap((ratio) =>
          [false, true].map((marked): FarSubject => ({ width, height, name, symbols, ratio, marked })),
        ),
      ),
    ),
  ),
);

const wordsOf = (subject: FarSubject) => {
  const { name } = farBox(subject);
  if (name === undefined) return undefined;
  const long = textWidth(subject.name, name.size, FAR_NAME_WEIGHT);
  const left = name.centred ? name.x - long / 2 : name.x;
  return { ...name, left, right: left + long, top: name.y - 0.72 * name.size };
};

test("nothing of a box is drawn outside it, but for a name that is longer than a small box", () => {
  for (const subject of subjects) {
    const { symbols, bar } = farBox(subject);
    const { width, height } = subject;
    if (symbols !== undefined) {
      const half = symbols.size / 2;
      expect(symbols.x - half).toBeGreaterThanOrEqual(-1e-9);
      expect(symbols.x + (symbols.count - 1) * symbols.size + half).toBeLessThanOrEqual(width + 1e-9);
      expect(symbols.y - half).toBeGreaterThanOrEqual(-1e-9);
      expect(symbols.y + half).toBeLessThanOrEqual(height + 1e-9);
    }
    if (bar !== undefined) {
      expect(bar.y + bar.height).toBeLessThanOrEqual(height);
      expect(bar.x + bar.width).toBeLessThanOrEqual(width);
    }
    const words = wordsOf(subject);
    if (words !== undefined) {
      expect(words.left).toBeGreaterThanOrEqual(words.centred ? -7 : 0);
      expect(words.right).toBeLessThanOrEqual(width + (words.centred ? 7 : 0));
    }
  }
});

test("name, symbols and bar do not lie over each other, and the sign of a finding does not lie on the name", () => {
  for (const subject of subjects) {
    const { symbols, bar } = farBox(subject);
    const words = wordsOf(subject);
    if (symbols !== undefined && bar !== undefined)
      expect(symbols.y + symbols.size / 2).toBeLessThanOrEqual(bar.y + 1e-9);
    if (symbols !== undefined && words !== undefined) {
      const beside = symbols.x - symbols.size / 2 >= words.right - 1e-9;
      const under = symbols.y - symbols.size / 2 >= words.y - 1e-9;
      const over = symbols.y + symbols.size / 2 <= words.top + 1e-9;
      expect(beside || under || over, JSON.stringify(subject)).toBe(true);
    }
    if (bar !== undefined && words !== undefined) expect(words.y).toBeLessThanOrEqual(bar.y);
    // The sign is 17 pixels, half of it over the corner.
    if (subject.marked && words !== undefined && !words.centred)
      expect(words.right, JSON.stringify(subject)).toBeLessThanOrEqual(subject.width - 8);
  }
});

test("letters are at least 11 pixels, symbols at least 7, at most three of them", () => {
  for (const subject of subjects) {
    const { name, symbols } = farBox(subject);
    if (name !== undefined) expect(name.size).toBeGreaterThanOrEqual(11);
    if (symbols !== undefined) {
      expect(symbols.size).toBeGreaterThanOrEqual(7);
      expect(symbols.count).toBe(Math.min(3, subject.symbols));
    }
  }
});

test("in a box too small for both, the name comes first; in one too small for a name, the symbol", () => {
  const small = { width: 28, height: 18, name: "B12", symbols: 1, ratio: undefined, marked: false };
  expect(farBox(small).name?.centred).toBe(true);
  expect(farBox(small).symbols).toBeUndefined();
  const narrow = { ...small, width: 12, height: 14, name: "B1043" };
  expect(farBox(narrow).name).toBeUndefined();
  expect(farBox(narrow).symbols?.count).toBe(1);
  expect(farBox({ ...small, width: 3, height: 3 })).toEqual({ name: undefined, symbols: undefined, bar: undefined });
});

test("a name stands out over a small box only as far as there is room beside it", () => {
  const small: FarSubject = { width: 28, height: 18, name: "B1234", symbols: 1, ratio: undefined, marked: false };
  const over = (textWidth(small.name, 11, FAR_NAME_WEIGHT) - small.width) / 2;
  expect(over).toBeGreaterThan(0);
  expect(over).toBeLessThan(7);
  expect(farBox(small).name?.centred).toBe(true);
  expect(farBox({ ...small, aside: over + 0.01 }).name?.centred).toBe(true);
  expect(farBox({ ...small, aside: over - 0.01 }).name).toBeUndefined();
  // What has room for its name asks nobody.
  expect(farBox({ ...small, name: "B1", aside: 0 }).name).toBeDefined();
  // However much room there is, it does not stand out farther than usual.
  expect(farBox({ ...small, name: "B12345678", aside: 100 }).name).toBeUndefined();
});
