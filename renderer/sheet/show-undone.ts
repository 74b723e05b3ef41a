import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
import { hull } from "../../shared-model/geometry/free-group-place.ts";
import { documentStore, installationOf } from "../state/document-store.ts";
import type { Selected } from "../state/selection.ts";
import { placesOf } from "../state/sheet-places.ts";
import { restoreSelection } from "../state/undo-selection.ts";
import { drawingOf } from "./drawings.ts";
import { isAreaSeen, zoomAround, zoomNow } from "./sheet-view.ts";
import { boxesOf } from "./use-go-to.ts";

/** More boxes than these are no one place to look at. */
const FEW = 12;

/** Undo and redo bring what they select into view where nothing of it is seen, without a change of size. */
export const showUndone = (): (() => void) =>
  restoreSelection((selection) => requestAnimationFrame(() => show(selection)));

function show(selection: readonly Selected[]): void {
  const now = documentStore.get();
  const places = placesOf(now);
  const ids = [...new Set(selection.flatMap((item) => boxesOf(installationOf(now), item)))];
  if (ids.length > FEW) return;
  const areas = ids.flatMap((id): readonly Rect[] => {
    const at = places[id];
    const drawing = drawingOf(now, id);
    return at && drawing ? [{ ...at, width: drawing.width, height: drawing.height }] : [];
  });
  if (areas.length === 0 || areas.some(isAreaSeen)) return;
  const { x, y, width, height } = hull(areas);
  zoomAround({ x: x + width / 2, y: y + height / 2 }, zoomNow());
}
