import { beforeEach, expect, test } from "vitest";
import { nextStep } from "../../renderer/sheet/next-step.ts";
import { documentStore, installationOf, newDocument, openDocument } from "../../renderer/state/document-store.ts";
import { landHeld, landingStore, watchHeldEnd } from "../../renderer/state/landing-store.ts";
import { placeDevice, placeEnclosure } from "../../renderer/state/placing.ts";
import { routeToOutside } from "../../renderer/state/route-outside.ts";
import { hold } from "../../renderer/state/session-store.ts";
import { enclosureItems } from "../../shared-model/catalog/enclosure-items.ts";
import type { EndKey } from "../../shared-model/model/ids.ts";
import { drawing, laundryAsFound } from "../builders/drawing.ts";

const SQUARE = enclosureItems.find(({ make }) => make.kind === "box");
const now = () => nextStep(installationOf(documentStore.get()));
const box = () => {
  const [first] = Object.values(installationOf(documentStore.get()).enclosures);
  if (first === undefined) throw new Error("There is no box.");
  return first;
};

beforeEach(() => openDocument(newDocument()));

test("a drawing that was just begun is told its next step until the first end is landed", () => {
  expect(now()).toBeUndefined();
  placeEnclosure(SQUARE?.id ?? "", { x: 0, y: 0 });
  expect(now()).toBe("cable");
  routeToOutside("nm-12-2-g", box().id);
  placeDevice("receptacle-15", box().id);
  expect(now()).toBe("land");
  const stop = watchHeldEnd(() => Promise.resolve(undefined));
  hold({ enclosure: box().id, end: Object.keys(box().places)[0] as EndKey });
  const choice = landingStore.get().choices.find(({ place }) => place.kind === "terminal");
  if (choice === undefined) throw new Error("There is no terminal.");
  landHeld(choice);
  stop();
  expect(now()).toBeUndefined();
});

test("a drawing of many boxes is nobody's first", () => {
  openDocument({ project: laundryAsFound() });
  expect(now()).toBeUndefined();
});

test("what is landed in a panel that came with the box is no first landing", () => {
  const house = drawing().panel("P", "panel-16").box("B1").device("R1", "receptacle-15", "B1").breaker("Q1", "P");
  house.cable("C1", "P", "B1", { ft: 20 }).land("C1.bk@P", "Q1.OUT").land("C1.wh@P", "P neutral.BAR");
  openDocument({ project: house.project });
  expect(now()).toBe("land");
  openDocument({ project: house.land("C1.bk@B1", "R1.H1").project });
  expect(now()).toBeUndefined();
});
