import { expect, test } from "vitest";
import { findTyped, heirOf, moveInTree, type TreeRow } from "../../renderer/ui/tree-rows.ts";

/** "a" open with "a1" and "a2", "b" closed, "c" a leaf. */
const ROWS: readonly TreeRow[] = [
  { key: "a", parent: undefined, level: 1, position: 1, count: 3, open: true, text: "Alpha" },
  { key: "a1", parent: "a", level: 2, position: 1, count: 2, open: undefined, text: "C1 BK" },
  { key: "a2", parent: "a", level: 2, position: 2, count: 2, open: undefined, text: "C1 WH" },
  { key: "b", parent: undefined, level: 1, position: 2, count: 3, open: false, text: "Beta" },
  { key: "c", parent: undefined, level: 1, position: 3, count: 3, open: undefined, text: "C1" },
];

// The keys of the tree view pattern: WAI-ARIA Authoring Practices, "Tree View Pattern", keyboard interaction.
test.each([
  [0, "ArrowDown", { to: 1 }],
  [4, "ArrowDown", { to: 4 }],
  [0, "ArrowUp", { to: 0 }],
  [3, "ArrowRight", { open: "b" }],
  [0, "ArrowRight", { to: 1 }],
  [1, "ArrowRight", undefined],
  [0, "ArrowLeft", { close: "a" }],
  [2, "ArrowLeft", { to: 0 }],
  [3, "ArrowLeft", undefined],
  [2, "Home", { to: 0 }],
  [0, "End", { to: 4 }],
  [0, "PageDown", { to: 3 }],
  [4, "PageUp", { to: 1 }],
  [3, "*", { openLike: "b" }],
  [3, "x", undefined],
])("from row %i the key %s leads to %o", (at, key, leads) => {
  expect(moveInTree(ROWS, at, key, 3)).toEqual(leads);
});

test("typing goes on to the next row with one letter and stays with more", () => {
  expect(findTyped(ROWS, 0, "c")).toBe(1);
  expect(findTyped(ROWS, 1, "c")).toBe(2);
  expect(findTyped(ROWS, 4, "c")).toBe(1);
  expect(findTyped(ROWS, 2, "c1 w")).toBe(2);
  expect(findTyped(ROWS, 2, "c1 b")).toBe(1);
  expect(findTyped(ROWS, 0, "z")).toBe(-1);
  expect(findTyped([], -1, "z")).toBe(-1);
});

test("a row that leaves hands over to the next beside it, the one before, or what it stood in", () => {
  expect(heirOf(ROWS, "a1")).toBe("a2");
  expect(heirOf(ROWS, "a2")).toBe("a1");
  expect(heirOf(ROWS, "a")).toBe("b");
  expect(
    heirOf(
      ROWS.filter(({ key }) => key !== "a2"),
      "a1",
    ),
  ).toBe("a");
  expect(heirOf(ROWS, "gone")).toBeUndefined();
});
