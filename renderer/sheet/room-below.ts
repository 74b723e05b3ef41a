import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { Layout } from "../../shared-model/model/project.ts";
import { type DocumentState, installationOf } from "../state/document-store.ts";
import { placesOf } from "../state/sheet-places.ts";
import { knownDrawingOf } from "./drawings.ts";

interface Standing {
  readonly id: EnclosureId;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const kept = new WeakMap<Layout["enclosures"], Map<string, ReadonlyMap<EnclosureId, number>>>();
/** Boxes wider than this are few: how far beside a box another one may begin that stands under it. */
const CELL = 1200;

/**
 * How much of the sheet is free under a box, down to the next one that stands under any part of it, in drawing units;
 * infinite where there is none.
 */
export function roomBelow(document: DocumentState, id: EnclosureId): number {
  const installation = installationOf(document);
  const places = placesOf(document);
  let byState = kept.get(places);
  if (byState === undefined) {
    byState = new Map();
    kept.set(places, byState);
  }
  const key = `${document.state} ${Object.keys(installation.enclosures).length} ${document.revision}`;
  let rooms = byState.get(key);
  if (rooms === undefined) {
    byState.clear();
    rooms = measure(document);
    byState.set(key, rooms);
  }
  return rooms.get(id) ?? Number.POSITIVE_INFINITY;
}

function measure(document: DocumentState): ReadonlyMap<EnclosureId, number> {
  const places = placesOf(document);
  const boxes = (Object.keys(installationOf(document).enclosures) as EnclosureId[]).flatMap(
    (id): readonly Standing[] => {
      const at = places[id];
      const drawing = knownDrawingOf(document, id);
      if (at === undefined || drawing === undefined) return [];
      const { x: left, y: top } = at;
      return [{ id, left, top, right: left + drawing.width, bottom: top + drawing.height }];
    },
  );
  const columns = new Map<number, Standing[]>();
  for (const box of boxes)
    for (let column = Math.floor(box.left / CELL); column <= Math.floor(box.right / CELL); column++) {
      const list = columns.get(column);
      if (list === undefined) columns.set(column, [box]);
      else list.push(box);
    }
  const rooms = new Map<EnclosureId, number>();
  for (const list of columns.values())
    for (const box of list)
      for (const other of list) {
        const isUnder = other.top >= box.bottom && other.left < box.right && other.right > box.left;
        if (isUnder) rooms.set(box.id, Math.min(rooms.get(box.id) ?? Number.POSITIVE_INFINITY, other.top - box.bottom));
      }
  return rooms;
}
