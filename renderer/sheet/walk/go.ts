import type { Rect } from "../../../shared-model/geometry/box-drawing.ts";
import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import type { EnclosureId } from "../../../shared-model/model/ids.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { documentStore, shownInstallation } from "../../state/document-store.ts";
import { placesOf } from "../../state/sheet-places.ts";
import { type Direction, neighbour } from "../box-items.ts";
import { stepAt } from "../detail.ts";
import { drawingOf } from "../drawings.ts";
import { say } from "../gesture-store.ts";
import { isOpen } from "../open-boxes.ts";
import { bringAreaIntoView, zoomNow } from "../sheet-view.ts";
import { showOpened } from "../show-opened.ts";
import { beyond } from "./beyond.ts";
import { hereStore, wentFrom } from "./here.ts";
import type { Place } from "./place.ts";
import { wording } from "./words.ts";

/** The sheet brings what has the focus into view itself. */
const STILL = { preventScroll: true } as const;
/** What comes into view is drawn within so many frames. */
const FRAMES = 20;

const nodeOf = (box: EnclosureId): HTMLElement | null =>
  document.querySelector<HTMLElement>(`.react-flow__node[data-id="${CSS.escape(box)}"]`);

/** Gives a place the focus; brings it into view first, and opens its box where it is drawn too small. */
export function goTo(place: Place): void {
  if (place.kind === "cable") hereStore.merge({ at: place, stop: place });
  else {
    hereStore.merge({ at: place, stop: undefined });
    if (place.kind === "box") reach(place.box, () => nodeOf(place.box));
    else enterAt(place.box, place.key);
  }
}

/** Goes along what is connected, or says why there is no way on. */
export function goOn(from: Place): void {
  const { trail } = hereStore.get();
  const found = beyond(shownInstallation(), from, trail.at(-1));
  if ("why" in found) {
    say(found.why);
    return;
  }
  wentFrom(from);
  goTo(found.to);
}

/** Back to where `goOn` came from. */
export function goBack(): void {
  const { trail } = hereStore.get();
  const before = trail.at(-1);
  if (before === undefined) {
    say(wording.thisIsWhereYouBegan);
    return;
  }
  hereStore.merge({ trail: trail.slice(0, -1) });
  goTo(before);
}

/** To the nearest box in a direction, wherever it is on the sheet. @returns It, or undefined where there is none. */
export function goToNeighbour(box: EnclosureId, direction: Direction): EnclosureId | undefined {
  const centres = boxCentres();
  const here = centres.find((each) => each.box === box);
  const next = here && neighbour(centres, here.at, direction);
  if (next === undefined) say(wording.noBoxLiesThere);
  else goTo({ kind: "box", box: next.box });
  return next?.box;
}

/** To the first or the last box as the outline lists them. */
export function goToRim(which: "first" | "last"): void {
  const boxes = inOrder<Enclosure>(shownInstallation().enclosures);
  const found = which === "first" ? boxes[0] : boxes.at(-1);
  if (found !== undefined) goTo({ kind: "box", box: found.id });
}

/** To where the keys were last, else to the first box in view, else to the first of all. */
export function goHere(): void {
  const { at } = hereStore.get();
  if (at !== undefined && exists(at)) goTo(at.kind === "item" && !isDrawn(at.box) ? { kind: "box", box: at.box } : at);
  else {
    const seen = document.querySelector<HTMLElement>(".react-flow__node")?.dataset.id as EnclosureId | undefined;
    if (seen === undefined) goToRim("first");
    else goTo({ kind: "box", box: seen });
  }
}

const exists = (place: Place): boolean => {
  const { enclosures, cables } = shownInstallation();
  return place.box in enclosures && (place.kind !== "cable" || place.cable in cables);
};

/** Whether the things in a box are drawn one by one. */
const isDrawn = (box: EnclosureId): boolean => stepAt(zoomNow()) === 0 || isOpen(box);

const boxCentres = () => {
  const places = placesOf(documentStore.get());
  return (Object.keys(shownInstallation().enclosures) as EnclosureId[]).flatMap((box) => {
    const at = places[box];
    return at === undefined ? [] : [{ box, at }];
  });
};

function enterAt(box: EnclosureId, key: string): void {
  const item = (): SVGElement | null =>
    nodeOf(box)?.querySelector<SVGElement>(`[data-item="${CSS.escape(key)}"]`) ?? null;
  if (isDrawn(box)) reach(box, item);
  else showOpened(box, () => item()?.focus(STILL));
}

/** Focuses what is looked for, once it is drawn; the box it is in is brought into view where it is not drawn at all. */
function reach(box: EnclosureId, find: () => HTMLElement | SVGElement | null): void {
  const found = find();
  if (found !== null) {
    found.focus(STILL);
    return;
  }
  const area = areaOf(box);
  if (area !== undefined) bringAreaIntoView(area);
  let frames = 0;
  const look = (): void => {
    const element = find();
    frames += 1;
    if (element !== null) element.focus(STILL);
    else if (frames < FRAMES) requestAnimationFrame(look);
    else hereStore.merge({ stop: { kind: "box", box } });
  };
  requestAnimationFrame(look);
}

/** What a box covers on the sheet. */
export function areaOf(box: EnclosureId): Rect | undefined {
  const now = documentStore.get();
  const at = placesOf(now)[box];
  const bounds = drawingOf(now, box)?.bounds;
  return at && bounds && { x: at.x + bounds.x, y: at.y + bounds.y, width: bounds.width, height: bounds.height };
}
