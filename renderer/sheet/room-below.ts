import { roomOf } from "../../shared-model/geometry/free-place.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { Installation, Layout } from "../../shared-model/model/project.ts";
import { type DocumentState, installationOf } from "../state/document-store.ts";
import { placesOf } from "../state/sheet-places.ts";
import { knownDrawingOf } from "./drawings.ts";

/** The upper left corner of a box. */
interface Corner {
  readonly id: EnclosureId;
  readonly left: number;
  readonly top: number;
}

/** Corners by the column that they stand in, each column from its head down. */
type Columns = ReadonlyMap<number, readonly Corner[]>;

const kept = new WeakMap<
  Layout["enclosures"],
  { readonly enclosures: Installation["enclosures"]; readonly columns: Columns }
>();
const CELL = 1200;
/** How many columns to the left of a box another one may begin that stands under it. */
const WIDEST = 3;

/**
 * How much of the sheet is free under a box, down to the next one that stands under any part of it, in drawing units;
 * infinite where there is none. One that is not drawn yet is taken to be as large as its kind usually is.
 */
export function roomBelow(document: DocumentState, id: EnclosureId): number {
  const at = placesOf(document)[id];
  const drawing = knownDrawingOf(document, id);
  let least = Number.POSITIVE_INFINITY;
  if (at === undefined || drawing === undefined) return least;
  const [left, right, bottom] = [at.x, at.x + drawing.width, at.y + drawing.height];
  const columns = columnsOf(document);
  for (let column = Math.floor(left / CELL) - WIDEST; column <= Math.floor(right / CELL); column++) {
    const corners = columns.get(column) ?? [];
    for (let i = firstFrom(corners, bottom); i < corners.length; i++) {
      const other = corners[i];
      if (other === undefined || other.top - bottom >= least) break;
      if (other.left < right && other.left + widthOf(document, other) > left) least = other.top - bottom;
    }
  }
  return least;
}

function widthOf(document: DocumentState, { id, left, top }: Corner): number {
  const drawing = knownDrawingOf(document, id);
  if (drawing !== undefined) return drawing.width;
  const kind = installationOf(document).enclosures[id]?.kind;
  return kind === undefined ? 0 : roomOf(kind, { x: left, y: top }).width / 2;
}

function columnsOf(document: DocumentState): Columns {
  const places = placesOf(document);
  const { enclosures } = installationOf(document);
  const known = kept.get(places);
  if (known?.enclosures === enclosures) return known.columns;
  const columns = new Map<number, Corner[]>();
  for (const id of Object.keys(enclosures) as EnclosureId[]) {
    const at = places[id];
    if (at === undefined) continue;
    const column = Math.floor(at.x / CELL);
    const corner = { id, left: at.x, top: at.y };
    const list = columns.get(column);
    if (list === undefined) columns.set(column, [corner]);
    else list.push(corner);
  }
  for (const list of columns.values()) list.sort((a, b) => a.top - b.top);
  kept.set(places, { enclosures, columns });
  return columns;
}

/** Index of the first corner that lies at a height or below it. */
function firstFrom(corners: readonly Corner[], height: number): number {
  let [low, high] = [0, corners.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((corners[middle]?.top ?? 0) < height) low = middle + 1;
    else high = middle;
  }
  return low;
}
