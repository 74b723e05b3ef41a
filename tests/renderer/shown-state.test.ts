/** Which account of the wiring the window shows, and what of the selection goes along. */
import { afterEach, beforeEach, expect, test } from "vitest";
import {
  dispatch,
  documentStore,
  newDocument,
  nextUndo,
  openDocument,
  redo,
  setShownState,
  shownInstallation,
  undo,
} from "../../renderer/state/document-store.ts";
import { placeDevice, placeEnclosure } from "../../renderer/state/placing.ts";
import { linkedDevice, replacementName, tryReplacement } from "../../renderer/state/replacing.ts";
import { resetSession, select, sessionStore } from "../../renderer/state/session-store.ts";
import { keepSelectionTrue, startProposed } from "../../renderer/state/shown-state.ts";
import type { Device } from "../../shared-model/model/device.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";

let stop = (): void => undefined;

beforeEach(() => {
  resetSession();
  openDocument(newDocument());
  stop = keepSelectionTrue();
});
afterEach(() => stop());

const shown = () => documentStore.get().state;
const boxes = () => Object.values(shownInstallation().enclosures).map(({ name }) => name);
const place = () => placeEnclosure("square-4-2-1-8", { x: 0, y: 0 });

function box(): Enclosure {
  const [enclosure] = Object.values(shownInstallation().enclosures);
  if (enclosure === undefined) throw new Error("No box.");
  return enclosure;
}

function device(): Device {
  const [only] = Object.values(box().devices);
  if (only === undefined) throw new Error("No device.");
  return only;
}

test("proposed is shown when it is started, as a copy; undo takes both away", () => {
  place();
  expect(setShownState("proposed")).toBe(false);
  startProposed();
  expect(shown()).toBe("proposed");
  expect(boxes()).toEqual(["B1"]);
  undo();
  expect(shown()).toBe("as-found");
  redo();
  expect(shown()).toBe("proposed");
});

test("what proposed gets is not as found", () => {
  startProposed();
  place();
  expect(boxes()).toEqual(["B1"]);
  setShownState("as-found");
  expect(boxes()).toEqual([]);
});

test("undo shows the account of the wiring that it changes", () => {
  startProposed();
  place();
  setShownState("as-found");
  undo();
  expect(shown()).toBe("proposed");
  setShownState("as-found");
  redo();
  expect(shown()).toBe("proposed");
  expect(boxes()).toEqual(["B1"]);
});

test("a step that changes both accounts, or neither, leaves the one that is shown", () => {
  startProposed();
  setShownState("as-found");
  place();
  setShownState("proposed");
  undo();
  expect(shown()).toBe("proposed");
  redo();
  expect(boxes()).toEqual(["B1"]);
  dispatch({ command: "set-edition", args: { edition: 2017 } });
  setShownState("as-found");
  undo();
  expect(shown()).toBe("as-found");
});

test("discarding proposed shows as found, and its undo brings back what was discarded to be seen", () => {
  startProposed();
  place();
  dispatch({ command: "discard-proposed", args: {} });
  expect(shown()).toBe("as-found");
  expect(nextUndo(documentStore.get())).toBe("Discard proposed");
  undo();
  expect(shown()).toBe("proposed");
  expect(boxes()).toEqual(["B1"]);
});

test("what is selected stays selected where it exists in both, and nothing stays in the hand", () => {
  place();
  const found = box();
  startProposed();
  place();
  const [, planned] = Object.values(shownInstallation().enclosures);
  if (planned === undefined) throw new Error("No second box.");
  select({ kind: "enclosure", id: found.id }, { kind: "enclosure", id: planned.id });
  sessionStore.merge({ routeFrom: planned.id });
  setShownState("as-found");
  expect(sessionStore.get().selection).toEqual([{ kind: "enclosure", id: found.id }]);
  expect(sessionStore.get().routeFrom).toBeUndefined();
});

test("a replaced device is named after the one it replaces, linked both ways, and hands the selection over", () => {
  place();
  placeDevice("receptacle-20", box().id);
  const old = device();
  startProposed();
  const name = replacementName(documentStore.get(), old);
  expect(name).toBe("R1b");
  const tried = tryReplacement(box(), old, "gfci-receptacle-20", name);
  expect(device().name).toBe("R1");
  expect(dispatch(tried.call)).toEqual({ ok: true });
  const fresh = device();
  expect(replacementName(documentStore.get(), fresh)).toBe("R1b");
  const { project } = documentStore.get();
  expect(linkedDevice(project, "proposed", fresh.id)).toEqual({ state: "as-found", id: old.id, name: "R1" });
  expect(linkedDevice(project, "as-found", old.id)).toEqual({ state: "proposed", id: fresh.id, name: "R1b" });
  select({ kind: "device", id: fresh.id });
  setShownState("as-found");
  expect(sessionStore.get().selection).toEqual([{ kind: "device", id: old.id }]);
  setShownState("proposed");
  expect(sessionStore.get().selection).toEqual([{ kind: "device", id: fresh.id }]);
});

test("as found, a replacement corrects the record and keeps the name", () => {
  place();
  placeDevice("receptacle-20", box().id);
  expect(replacementName(documentStore.get(), device())).toBe("R1");
});
