import fc from "fast-check";
import { expect, test } from "vitest";
import { around, shownOf } from "../../renderer/sheet/view-fit.ts";
import { documentStore, openDocument } from "../../renderer/state/document-store.ts";
import { keyOfView, recallView, rememberView } from "../../renderer/state/remembered-views.ts";
import { laundryAsFound } from "../builders/drawing.ts";

function memory() {
  const kept = new Map<string, string>();
  return {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
    kept,
  };
}
const HERE = { x: 100, y: -40, zoom: 0.5 };

test("a document that has a file is told by its name and its boxes; one without is nobody's to come back to", () => {
  openDocument({ project: laundryAsFound() });
  expect(keyOfView(documentStore.get())).toBeUndefined();
  const target = { name: "a.loadside", write: () => Promise.resolve({ kind: "saved" } as const) };
  openDocument({ project: laundryAsFound(), text: "{}", fileName: "a.loadside", target });
  expect(keyOfView(documentStore.get())).toMatch(/^a\.loadside \S/);
});

test("the view of a document is kept, replaced and forgotten, and the oldest of many goes", () => {
  const store = memory();
  rememberView(store, "a", HERE);
  expect(recallView(store, "a")).toEqual(HERE);
  expect(recallView(store, "b")).toBeUndefined();
  rememberView(store, "a", { ...HERE, zoom: 2 });
  expect(recallView(store, "a")?.zoom).toBe(2);
  for (let i = 0; i < 50; i++) rememberView(store, `other ${i}`, HERE);
  expect(recallView(store, "a")).toBeUndefined();
  expect(recallView(store, "other 49")).toEqual(HERE);
  rememberView(store, "other 49", undefined);
  expect(recallView(store, "other 49")).toBeUndefined();
});

test("what is kept elsewhere under the name does no harm", () => {
  const store = memory();
  for (const odd of [
    "{",
    "7",
    '[["a"]]',
    '[["a",{"x":0,"y":0,"zoom":0}]]',
    '[["a",{"x":null,"y":0,"zoom":1}]]',
    "null",
  ]) {
    store.setItem("loadside.views", odd);
    expect(recallView(store, "a")).toBeUndefined();
  }
  rememberView(store, "a", HERE);
  expect(recallView(store, "a")).toEqual(HERE);
});

test("a view that shows nothing of what is drawn is told from one that shows some or all of it", () => {
  const view = { width: 800, height: 600 };
  const box = { x: 0, y: 0, width: 100, height: 100 };
  const far = { x: 4000, y: 0, width: 100, height: 100 };
  expect(shownOf([box, far], view, { x: 10, y: 10, zoom: 1 })).toBe("some");
  expect(shownOf([box], view, { x: 10, y: 10, zoom: 1 })).toBe("all");
  expect(shownOf([box, far], view, { x: -200, y: 10, zoom: 1 })).toBe("none");
  expect(shownOf([box], view, { x: 10, y: 601, zoom: 1 })).toBe("none");
  // An empty sheet has nothing to come back to.
  expect(shownOf([], view, { x: 0, y: 0, zoom: 1 })).toBe("all");
});

test("the same point is in the middle of a window of any size", () => {
  const side = fc.integer({ min: 100, max: 3000 });
  fc.assert(
    fc.property(side, side, fc.double({ min: 0.01, max: 4, noNaN: true }), (width, height, zoom) => {
      const { x, y } = around({ x: 320, y: -75, zoom }, { width, height });
      expect(320 * zoom + x).toBeCloseTo(width / 2, 6);
      expect(-75 * zoom + y).toBeCloseTo(height / 2, 6);
    }),
  );
});
