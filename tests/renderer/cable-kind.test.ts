/** Kinds by what the trade types: sizes as printed on cables, with a slash, a hyphen or a gap. */
import { expect, test } from "vitest";
import { kindsFor, settledKind } from "../../renderer/state/cable-kind.ts";
import { cableItems } from "../../shared-model/catalog/cable-items.ts";

const first = (typed: string, last?: string) => kindsFor(typed, last)[0]?.id;

test("a size finds its cable, however it is written", () => {
  for (const typed of ["12/2", "12-2", "12/2 "]) expect(first(typed)).toBe("nm-12-2-g");
  expect(first("14/3")).toBe("nm-14-3-g");
  expect(first("12/3")).toBe("nm-12-3-g");
  expect(first("12/2/2")).toBe("nm-12-2-2-g");
});

test("words narrow it, and nothing that is not in stock is found", () => {
  for (const { title } of kindsFor("aluminium", undefined)) expect(title.toLowerCase()).toMatch(/alumin|old/);
  expect(kindsFor("99/9", undefined)).toEqual([]);
  expect(kindsFor("", undefined).map(({ id }) => id)).toEqual(cableItems.map(({ id }) => id));
});

test("what was drawn last comes first, but not before a size that was typed", () => {
  expect(first("", "nm-14-3-g")).toBe("nm-14-3-g");
  expect(kindsFor("", "nm-14-3-g")).toHaveLength(cableItems.length);
  expect(first("12/2", "nm-12-2-2-g")).toBe("nm-12-2-g");
});

test("a size settles the kind; nothing typed, or a gauge alone, does not unless one was drawn before", () => {
  expect(settledKind({ typed: "12-2", last: undefined })?.id).toBe("nm-12-2-g");
  expect(settledKind({ typed: " ", last: "nm-12-2-g" })).toBeUndefined();
  expect(settledKind({ typed: "14", last: undefined })).toBeUndefined();
  expect(settledKind({ typed: "99", last: undefined })).toBeUndefined();
  expect(settledKind({ typed: "knob", last: undefined })).toBeUndefined();
  expect(settledKind({ typed: "14", last: "nm-14-3-g" })?.id).toBe("nm-14-3-g");
});
