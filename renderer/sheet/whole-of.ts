import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
import { hull } from "../../shared-model/geometry/free-group-place.ts";
import { roomOf } from "../../shared-model/geometry/free-place.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import { type DocumentState, installationOf } from "../state/document-store.ts";
import { placesOf } from "../state/sheet-places.ts";
import { knownDrawingOf } from "./drawings.ts";

/** What all drawn boxes cover on the sheet; undefined where there is none. */
export function wholeOf(document: DocumentState): { readonly area: Rect; readonly boxes: number } | undefined {
  const areas = areasOf(document, Object.keys(installationOf(document).enclosures) as EnclosureId[]);
  return areas.length === 0 ? undefined : { area: hull(areas), boxes: areas.length };
}

/** About what all boxes cover, drawn or not; undefined where there is none. */
export function roomsOf(document: DocumentState): Rect | undefined {
  const places = placesOf(document);
  const rooms = Object.values(installationOf(document).enclosures).flatMap(({ id, kind }) => {
    const at = places[id];
    return at === undefined ? [] : [roomOf(kind, at)];
  });
  return rooms.length === 0 ? undefined : hull(rooms);
}

/** What each drawn box covers on the sheet. */
export const areasOfAll = (document: DocumentState): readonly Rect[] =>
  areasOf(document, Object.keys(installationOf(document).enclosures) as EnclosureId[]);

/** What some boxes cover on the sheet; undefined where none of them is drawn. */
export function areaOfBoxes(document: DocumentState, ids: readonly EnclosureId[]): Rect | undefined {
  const areas = areasOf(document, ids);
  return areas.length === 0 ? undefined : hull(areas);
}

function areasOf(document: DocumentState, ids: readonly EnclosureId[]): readonly Rect[] {
  const places = placesOf(document);
  return ids.flatMap((id): readonly Rect[] => {
    const at = places[id];
    const drawing = knownDrawingOf(document, id);
    if (at === undefined || drawing === undefined) return [];
    const { x, y, width, height } = drawing.bounds;
    return [{ x: at.x + x, y: at.y + y, width, height }];
  });
}
