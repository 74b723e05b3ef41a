import { expect, test } from "vitest";
import { drawingOf, knownDrawingOf } from "../../renderer/sheet/drawings.ts";
import { roomBelow } from "../../renderer/sheet/room-below.ts";
import { createKeeper } from "../../renderer/sheet/sheet-drawings.ts";
import { createRoads } from "../../renderer/sheet/sheet-roads.ts";
import { dispatch, documentStore, installationOf, openDocument } from "../../renderer/state/document-store.ts";
import { placesOf } from "../../renderer/state/sheet-places.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import { bigHouse } from "../bench/big-house.ts";

const idsNow = (): readonly EnclosureId[] =>
  Object.keys(installationOf(documentStore.get()).enclosures) as EnclosureId[];

/** As it is said: each box asked about each other one. */
function askEach(id: EnclosureId): number {
  const document = documentStore.get();
  const standing = idsNow().flatMap((other) => {
    const [at, drawing] = [placesOf(document)[other], drawingOf(document, other)];
    if (at === undefined || drawing === undefined) return [];
    return [{ id: other, left: at.x, right: at.x + drawing.width, top: at.y, bottom: at.y + drawing.height }];
  });
  const box = standing.find((each) => each.id === id);
  if (box === undefined) return Number.POSITIVE_INFINITY;
  const under = standing.filter(({ left, right, top }) => top >= box.bottom && left < box.right && right > box.left);
  return Math.min(Number.POSITIVE_INFINITY, ...under.map(({ top }) => top - box.bottom));
}

test("a box that waits to be drawn is taken into account before it is", () => {
  // The first document of this file: drawings are remembered from one to the next.
  openDocument({ project: bigHouse(40, 10) });
  const document = documentStore.get();
  const ids = idsNow();
  const [first = "" as EnclosureId] = ids.filter((id) => id === "b4");
  drawingOf(document, first);
  expect(ids.filter((id) => knownDrawingOf(document, id) === undefined).length).toBeGreaterThan(20);
  const early = roomBelow(document, first);
  for (const id of ids) drawingOf(document, id);
  expect(early).toBeLessThan(Number.POSITIVE_INFINITY);
  expect(roomBelow(document, first)).toBe(early);
});

test("free under a box is what there is down to the next one, also after one has moved", () => {
  openDocument({ project: bigHouse(60, 10) });
  for (const id of idsNow()) drawingOf(documentStore.get(), id);
  for (const id of idsNow()) expect(roomBelow(documentStore.get(), id)).toBe(askEach(id));
  const [mover = "" as EnclosureId] = idsNow().slice(20);
  const [onto = "" as EnclosureId] = idsNow().slice(33);
  const at = placesOf(documentStore.get())[onto] ?? { x: 0, y: 0 };
  const before = roomBelow(documentStore.get(), onto);
  const moves = [{ id: mover, to: { x: at.x + 37, y: at.y + 5000 } }];
  expect(dispatch({ command: "move-enclosures", args: { moves } }).ok).toBe(true);
  for (const id of idsNow()) expect(roomBelow(documentStore.get(), id)).toBe(askEach(id));
  expect(before).toBeGreaterThan(0);
});

test("roads laid in steps are those laid at once, and what was left off leaves no trace", () => {
  openDocument({ project: bigHouse(60, 10) });
  const shown = createKeeper()(documentStore.get(), Number.POSITIVE_INFINITY);
  const roads = createRoads();
  const dropped = roads.inSteps(shown, 4);
  for (let i = 0; i < 20; i++) dropped.next();
  const steps = roads.inSteps(shown, 4);
  let count = 0;
  let map: ReturnType<typeof roads> | undefined;
  while (map === undefined) {
    const step = steps.next();
    if (step.done === true) map = step.value;
    else count += 1;
  }
  expect(count).toBeGreaterThan(map.roads.length);
  expect(map.roads.length).toBe(60);
  expect(map).toEqual(createRoads()(shown, 4));
  // Known now: nothing is laid anew.
  expect(roads(shown, 4)).toBe(map);
});
