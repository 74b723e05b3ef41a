import { findEnclosureItem } from "../../../shared-model/catalog/enclosure-items.ts";
import type { BoxDrawing, Rect } from "../../../shared-model/geometry/box-drawing.ts";
import { boxDrawing } from "../../../shared-model/geometry/draw-box.ts";
import type { Gap } from "../../../shared-model/geometry/even-gaps.ts";
import { type Guide, snapMove } from "../../../shared-model/geometry/snap.ts";
import type { DeviceId, EnclosureId } from "../../../shared-model/model/ids.ts";
import type { Point } from "../../../shared-model/model/project.ts";
import { getInstallation } from "../../../shared-model/queries/installation-of.ts";
import { type DocumentState, documentStore, installationOf, tryCall } from "../../state/document-store.ts";
import { placesOf } from "../../state/sheet-places.ts";
import { clearOfBoxes } from "../clear-of-boxes.ts";
import { knownDrawingOf } from "../drawings.ts";
import { altIsDown } from "../held-keys.ts";
import { zoomNow } from "../sheet-view.ts";

/** Pixels at which a line of a neighbour is near enough, and drawing units in which a box is a neighbour. */
const REACH = 6;
const AROUND = 2400;

/** Where a box of the stock goes that is put down at a place. */
export interface Spot {
  readonly at: Point;
  readonly guides: readonly Guide[];
  readonly gaps: readonly Gap[];
  /** A box stood in the way: it goes beside it. */
  readonly aside: boolean;
}

/** Clicked into place beside its neighbours as a moved box is, unless Alt is down, and clear of all of them. */
export function spotOf(document: DocumentState, item: string, wanted: Point): Spot {
  const drawing = newBox(item);
  const snapped = altIsDown() || drawing === undefined ? undefined : snapTo(document, drawing, wanted);
  const asked = snapped === undefined ? wanted : { x: wanted.x + snapped.by.x, y: wanted.y + snapped.by.y };
  const at = clearOfBoxes(document, item, asked);
  const aside = at.x !== asked.x || at.y !== asked.y;
  return { at, aside, guides: aside ? [] : (snapped?.guides ?? []), gaps: aside ? [] : (snapped?.gaps ?? []) };
}

function snapTo(document: DocumentState, { width, height }: BoxDrawing, { x, y }: Point) {
  return snapMove({ x, y, width, height }, { x: 0, y: 0 }, wallsAround(document, { x, y }), REACH / zoomNow());
}

function wallsAround(document: DocumentState, { x, y }: Point): readonly Rect[] {
  const places = placesOf(document);
  return (Object.keys(installationOf(document).enclosures) as EnclosureId[]).flatMap((id): readonly Rect[] => {
    const at = places[id];
    if (at === undefined || Math.abs(at.x - x) > AROUND || Math.abs(at.y - y) > AROUND) return [];
    const drawing = knownDrawingOf(document, id);
    return drawing === undefined ? [] : [{ x: at.x, y: at.y, width: drawing.width, height: drawing.height }];
  });
}

const drawn = new Map<string, BoxDrawing>();
const NEW = "new" as EnclosureId;

/** A box of the stock as it is drawn while nothing is in it. */
export function newBox(item: string): BoxDrawing | undefined {
  const known = drawn.get(item);
  if (known !== undefined) return known;
  const { state } = documentStore.get();
  const panel = findEnclosureItem(item)?.make.kind === "panel";
  const bars = { neutral: "new-neutral" as DeviceId, ground: "new-ground" as DeviceId };
  const args = { state, id: NEW, item, name: "-", at: { x: 0, y: 0 }, ...(panel && { bars }) };
  const tried = tryCall({ command: "place-enclosure", args });
  if (!tried.ok) return undefined;
  const drawing = boxDrawing(tried.project, getInstallation(tried.project, state), NEW);
  drawn.set(item, drawing);
  return drawing;
}
