import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { Point } from "../../shared-model/model/project.ts";
import { selectedBoxes } from "../state/arranging.ts";
import { documentStore } from "../state/document-store.ts";
import { placesOf } from "../state/sheet-places.ts";
import { type Level, ZOOM_OF } from "./detail.ts";
import { drawingOf } from "./drawings.ts";
import { centreNow, zoomAround } from "./sheet-view.ts";

/** Shows the sheet at one of its levels, around the selected box, or the one nearest to the middle of the view. */
export function showLevel(level: Level): void {
  const document = documentStore.get();
  const places = placesOf(document);
  const [first] = selectedBoxes();
  const id = first ?? nearest(places, centreNow());
  const at = id && places[id];
  const drawing = id && drawingOf(document, id);
  if (at === undefined || drawing === undefined) zoomAround(centreNow(), ZOOM_OF[level]);
  else zoomAround({ x: at.x + drawing.width / 2, y: at.y + drawing.height / 2 }, ZOOM_OF[level]);
}

/** Of the upper left corners of the boxes: good enough to go on from. */
function nearest(places: Readonly<Record<EnclosureId, Point>>, to: Point): EnclosureId | undefined {
  let best: EnclosureId | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const id of Object.keys(places) as EnclosureId[]) {
    const at = places[id];
    const distance = at === undefined ? Number.POSITIVE_INFINITY : Math.hypot(at.x + HALF - to.x, at.y + HALF - to.y);
    if (distance < least) [best, least] = [id, distance];
  }
  return best;
}

/** About half a box. */
const HALF = 360;
