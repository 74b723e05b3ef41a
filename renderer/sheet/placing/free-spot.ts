import type { Point } from "../../../shared-model/model/project.ts";
import { documentStore } from "../../state/document-store.ts";
import { placesOf } from "../../state/sheet-places.ts";
import { toSheet } from "../sheet-view.ts";

/** A spot in view where no box stands yet, tried from the upper left in rows. */
export function freeSpot(): Point {
  const host = document.querySelector(".sheet-flow")?.getBoundingClientRect();
  const from = toSheet({ clientX: (host?.left ?? 0) + 60, clientY: (host?.top ?? 0) + 70 });
  const taken = Object.values(placesOf(documentStore.get()));
  for (let i = 0; ; i++) {
    const spot = { x: from.x + (i % 3) * APART.x, y: from.y + Math.floor(i / 3) * APART.y };
    if (taken.every(({ x, y }) => Math.abs(x - spot.x) >= APART.x || Math.abs(y - spot.y) >= APART.y)) return spot;
  }
}

/** Room for a box with its cable stubs. */
const APART = { x: 900, y: 800 };
