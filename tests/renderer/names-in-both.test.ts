/** A name that either account of the wiring uses is not given to something new in the other. */
import { beforeEach, expect, test } from "vitest";
import { createClipboardActions } from "../../renderer/state/clipboard-actions.ts";
import {
  dispatch,
  newDocument,
  openDocument,
  setShownState,
  shownInstallation,
} from "../../renderer/state/document-store.ts";
import { nextCableName, nextJumperName, nextSpliceName } from "../../renderer/state/naming.ts";
import { placeDevice, placeEnclosure, routeCable } from "../../renderer/state/placing.ts";
import { tryReplacement } from "../../renderer/state/replacing.ts";
import { resetSession, select } from "../../renderer/state/session-store.ts";
import { startProposed } from "../../renderer/state/shown-state.ts";
import { splitSplice } from "../../renderer/state/split-splice.ts";
import { cableItems } from "../../shared-model/catalog/cable-items.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import { membersOf } from "../../shared-model/queries/landings.ts";
import { boxId, laundryDrawing, spliceId } from "../builders/drawing.ts";

const CABLE = cableItems[0]?.id ?? "";
const clip = createClipboardActions({ parse: () => Promise.reject(new Error("Nothing is pasted here.")) });
const place = () => placeEnclosure("square-4-2-1-8", { x: 0, y: 0 });

function box(): Enclosure {
  const [enclosure] = Object.values(shownInstallation().enclosures);
  if (enclosure === undefined) throw new Error("No box.");
  return enclosure;
}

const deviceNames = () =>
  Object.values(shownInstallation().enclosures)
    .flatMap(({ devices }) => Object.values(devices).map(({ name }) => name))
    .sort();

beforeEach(() => {
  resetSession();
  openDocument(newDocument());
  place();
  placeDevice("receptacle-15", box().id);
});

function replaceInProposed(): void {
  startProposed();
  const [device] = Object.values(box().devices);
  if (device === undefined) throw new Error("No device.");
  expect(dispatch(tryReplacement(box(), device, "gfci-receptacle-20", "R1b").call).ok).toBe(true);
  expect(deviceNames()).toEqual(["R1b"]);
}

test("a copy of what replaces R1 is not called R1, which is another device as found", () => {
  replaceInProposed();
  select(...Object.values(box().devices).map(({ id }) => ({ kind: "device", id }) as const));
  clip.duplicateSelection();
  expect(deviceNames()).toEqual(["R1b", "R2"]);
});

test("nor is a new device of proposed", () => {
  replaceInProposed();
  placeDevice("receptacle-15", box().id);
  expect(deviceNames()).toEqual(["R1b", "R2"]);
});

test("a box and a cable of proposed keep their names from new ones as found", () => {
  startProposed();
  place();
  const [first, second] = Object.values(shownInstallation().enclosures);
  if (first === undefined || second === undefined) throw new Error("No two boxes.");
  expect(routeCable(CABLE, first.id, second.id).ok).toBe(true);
  setShownState("as-found");
  expect(nextCableName(shownInstallation())).toBe("C2");
  place();
  const names = Object.values(shownInstallation().enclosures).map(({ name }) => name);
  expect(names.sort()).toEqual(["B1", "B3"]);
});

test("so do a splice and a jumper within their box", () => {
  openDocument({ project: laundryDrawing().propose().project });
  setShownState("proposed");
  const b1 = () => shownInstallation().enclosures[boxId("B1")] as Enclosure;
  const grounds = membersOf(b1(), spliceId("Z"));
  splitSplice(spliceId("Z"));
  const fresh = Object.values(b1().splices).at(-1)?.name;
  const link = Object.values(b1().jumpers).at(-1)?.name;
  setShownState("as-found");
  expect(nextSpliceName(shownInstallation(), b1(), grounds)).not.toBe(fresh);
  expect(nextJumperName(b1())).not.toBe(link);
  expect([fresh, link]).toEqual(["E1", "a"]);
});
