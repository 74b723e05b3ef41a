import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
import { hull } from "../../shared-model/geometry/free-group-place.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import { type DocumentState, installationOf } from "../state/document-store.ts";
import { placesOf } from "../state/sheet-places.ts";
import { knownDrawingOf } from "./drawings.ts";

/** What all drawn boxes cover on the sheet; undefined where there is none. */
export function wholeOf(document: DocumentState): { readonly area: Rect; readonly boxes: number } | undefined {
  const places = placesOf(document);
  const areas = (Object.keys(installationOf(document).enclosures) as EnclosureId[]).flatMap((id): readonly Rect[] => {
    const at = places[id];
    const drawing = knownDrawingOf(document, id);
    if (at === undefined || drawing === undefined) return [];
    const { x, y, width, height } = drawing.bounds;
    return [{ x: at.x + x, y: at.y + y, width, height }];
  });
  return areas.length === 0 ? undefined : { area: hull(areas), boxes: areas.length };
}
