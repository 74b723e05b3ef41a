import { describe, expect, test } from "vitest";
import type { SpliceId } from "../../shared-model/model/ids.ts";
import { type SharedItem, shareOut } from "../../shared-model/planning/share-out.ts";

const [X, Y] = ["x", "y"] as unknown as readonly [SpliceId, SpliceId];
const member = { awg: "12", material: "copper", stranded: false, grounding: false } as const;
const item = (now: SpliceId | undefined, more: Partial<SharedItem> = {}): SharedItem => ({
  member,
  now,
  move: now === undefined ? 1 : 2,
  isCable: true,
  ...more,
});
const bin = (home: SpliceId | undefined, most: number, closed?: number) => ({
  links: [member],
  home,
  closed,
  accepts: (members: () => readonly unknown[]) => members().length <= most,
});

describe("sharing the ends of a net out", () => {
  test("what is in a splice stays, however the numbers could be cut otherwise", () => {
    const items = [item(X), item(Y), item(Y), item(Y)];
    expect(shareOut(items, [bin(X, 4), bin(Y, 4)])).toEqual({ cost: 0, binOf: [0, 1, 1, 1] });
  });

  test("the end that is dearest to move stays where not all can", () => {
    const items = [item(X), item(X, { move: 5 }), item(X)];
    expect(shareOut(items, [bin(X, 2), bin(undefined, 3)])).toEqual({ cost: 4, binOf: [1, 0, 1] });
  });

  test("among equals the first splice holds as many cable ends as it can, pigtails go to the next", () => {
    const items = [item(undefined, { isCable: false }), ...Array.from({ length: 5 }, () => item(undefined))];
    expect(shareOut(items, [bin(undefined, 5), bin(undefined, 5)])?.binOf).toEqual([1, 0, 0, 0, 0, 1]);
  });

  test("a splice that cannot be opened is kept whole or not at all", () => {
    const items = [item(X), item(X), item(undefined)];
    expect(shareOut(items, [{ ...bin(X, 9, 2), links: [] }])).toBeUndefined();
    expect(shareOut(items.slice(0, 2), [{ ...bin(X, 9, 2), links: [] }])).toEqual({ cost: 0, binOf: [0, 0] });
  });

  test("a splice that would keep nothing of its own is no home", () => {
    expect(shareOut([item(undefined), item(undefined)], [{ ...bin(X, 9), links: [] }])).toBeUndefined();
  });

  test("nothing is found where no numbers fit, or where all cost too much", () => {
    const items = [item(X), item(undefined)];
    expect(shareOut(items, [{ ...bin(X, 1), links: [] }])).toBeUndefined();
    expect(shareOut(items, [{ ...bin(X, 2), links: [] }], 1)).toBeUndefined();
  });
});
