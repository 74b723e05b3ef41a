import { findEnclosureItem } from "../../shared-model/catalog/enclosure-items.ts";
import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
import { clearPlace } from "../../shared-model/geometry/clear-place.ts";
import { SHEATH_REACH } from "../../shared-model/geometry/metrics.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { Point } from "../../shared-model/model/project.ts";
import { type DocumentState, installationOf } from "../state/document-store.ts";
import { placesOf } from "../state/sheet-places.ts";
import { drawingOf } from "./drawings.ts";

/** A box with one device, a panel with its bars: what a new one grows to with the first cables, its header before it. */
const PART = {
  box: { x: 0, y: -48, width: 480, height: 528 },
  panel: { x: 0, y: -48, width: 680, height: 728 },
} as const satisfies Record<string, Rect>;

/** The stubs of two boxes that face each other, and a bend of the cable between them. */
const GAP = 2 * SHEATH_REACH + 40;

/** Where an enclosure of the stock goes that was put down at a place: there, or the nearest place clear of the boxes. */
export function clearOfBoxes(document: DocumentState, item: string, wanted: Point): Point {
  const places = placesOf(document);
  const taken = (Object.keys(installationOf(document).enclosures) as EnclosureId[]).flatMap((id): readonly Rect[] => {
    const at = places[id];
    const drawing = drawingOf(document, id);
    return at && drawing ? [{ x: at.x, y: at.y - 48, width: drawing.width, height: drawing.height + 48 }] : [];
  });
  return clearPlace(taken, PART[findEnclosureItem(item)?.make.kind ?? "box"], wanted, GAP);
}
