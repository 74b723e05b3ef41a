import fc from "fast-check";
import { expect, test } from "vitest";
import { isEnd, isId, parseEnd } from "../../shared-model/model/ids.ts";

const RESERVED = ["constructor", "valueOf", "__proto__", "toString", "prototype"];
const part = fc.oneof(
  fc.string({ unit: fc.constantFrom("a", "Z", "9", "_", "-", ".", " ", "é"), maxLength: 42 }),
  fc.constantFrom("c1", "bk", "", ...RESERVED),
);
const text = fc.oneof(
  fc.tuple(part, part, fc.constantFrom("a", "b", "c", "")).map((parts) => parts.join(".")),
  fc.tuple(part, fc.constantFrom("a", "b", "ab", "")).map((parts) => parts.join(".")),
  part,
);

test("a text is the key of an end exactly where it can be taken apart", () => {
  let ends = 0;
  fc.assert(
    fc.property(text, (key) => {
      const parsed = parseEnd(key);
      if (parsed !== undefined) ends++;
      expect(isEnd(key)).toBe(parsed !== undefined);
    }),
    { numRuns: 5000 },
  );
  expect(ends).toBeGreaterThan(100);
});

test("no part of a key is a name that every object has", () => {
  for (const name of RESERVED) {
    expect([name, isId(name)]).toEqual([name, false]);
    for (const key of [`${name}.a`, `${name}.bk.a`, `c1.${name}.b`]) expect([key, isEnd(key)]).toEqual([key, false]);
  }
  expect(isEnd(`${"x".repeat(40)}.${"y".repeat(40)}.a`)).toBe(true);
  expect(isEnd(`${"x".repeat(41)}.bk.a`)).toBe(false);
});
