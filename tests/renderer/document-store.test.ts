import { beforeEach, expect, test } from "vitest";
import {
  type DocumentChange,
  dispatch,
  documentStore,
  followDocument,
  isDirty,
  lastSerial,
  markSaved,
  newDocument,
  nextUndo,
  openDocument,
  redo,
  refusalOf,
  shownInstallation,
  undo,
} from "../../renderer/state/document-store.ts";
import { placeEnclosure } from "../../renderer/state/placing.ts";
import { canonicalText } from "../../shared-model/lib/canonical-text.ts";

const names = () => Object.values(shownInstallation().enclosures).map(({ name }) => name);
const text = () => canonicalText(documentStore.get().project);
const place = () => placeEnclosure("square-4-2-1-8", { x: 0, y: 0 });

beforeEach(() => {
  openDocument(newDocument());
});

test("boxes placed one after the other are named B1 and B2, undone and redone", () => {
  const empty = text();
  place();
  place();
  expect(names()).toEqual(["B1", "B2"]);
  const full = text();
  undo();
  undo();
  expect(text()).toBe(empty);
  expect(undo()).toBeUndefined();
  redo();
  redo();
  expect(text()).toBe(full);
});

test("every change is followed with its base, undo and redo included, and another document comes whole", () => {
  const seen: DocumentChange[] = [];
  const stop = followDocument((change) => seen.push(change));
  const { revision } = documentStore.get();
  place();
  undo();
  openDocument(newDocument());
  stop();
  place();
  expect(
    seen.map(({ base, revision: to, patches }) => [base - revision, to - revision, patches !== undefined]),
  ).toEqual([
    [0, 1, true],
    [1, 2, true],
    [2, 3, false],
  ]);
});

test("a refused command changes nothing and says why", () => {
  const before = documentStore.get();
  const call = { command: "set-edition", args: { edition: 1999 as 2020 } } as const;
  const done = dispatch(call);
  expect(done.ok).toBe(false);
  expect(refusalOf(call)?.message).toBeTruthy();
  expect(documentStore.get()).toBe(before);
});

test("a change that was undone needs no saving, one made after a save does", () => {
  expect(isDirty(documentStore.get())).toBe(false);
  place();
  expect(isDirty(documentStore.get())).toBe(true);
  undo();
  expect(isDirty(documentStore.get())).toBe(false);
  redo();
  const serial = lastSerial(documentStore.get());
  place();
  // The file was written with the first box only, while the second was already being placed.
  markSaved({ serial, file: { text: "", project: documentStore.get().project }, fileName: "f", target: undefined });
  expect(isDirty(documentStore.get())).toBe(true);
  undo();
  expect(isDirty(documentStore.get())).toBe(false);
});

test("a drawing of a newer version is looked at, not changed", () => {
  openDocument({ ...newDocument(), readOnly: true });
  const done = place();
  expect(done.ok ? "" : done.refusal.code).toBe("read-only");
  expect(names()).toEqual([]);
  expect(nextUndo(documentStore.get())).toBeUndefined();
});
