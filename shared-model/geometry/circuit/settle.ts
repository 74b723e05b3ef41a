import type { EnclosureId } from "../../model/ids.ts";
import type { Installation, Point, Project } from "../../model/project.ts";
import type { Rect } from "../box-drawing.ts";
import { boxDrawing } from "../draw-box.ts";
import { roomOf } from "../free-place.ts";
import type { Sizes } from "./grow.ts";

export type Places = ReadonlyMap<EnclosureId, Point>;

/** Drawings of boxes grow and shrink with the side on which their cables enter; after so many tries they do not. */
const PASSES = 6;

/**
 * Places by what the boxes measure once they stand there. A box is drawn with its cables entering on the side that faces
 * their other ends, so sizes follow from places and places from sizes: begun with a common size and then only grown, so
 * that where the boxes stood before has no say.
 * @param place Places for given sizes.
 */
export function settle(
  project: Project,
  installation: Installation,
  ids: readonly EnclosureId[],
  place: (sizeOf: Sizes) => Places,
): Places {
  const sizes = new Map(ids.map((id) => [id, roomOf(installation.enclosures[id]?.kind ?? "box", { x: 0, y: 0 })]));
  const sizeOf = (id: EnclosureId): Rect => sizes.get(id) ?? { x: 0, y: 0, width: 0, height: 0 };
  let places = place(sizeOf);
  for (let pass = 1; pass < PASSES; pass++) {
    let grown = false;
    const standing = withPlaces(project, places);
    for (const id of ids) {
      // Drawn anew only where cables change their wall or their order there.
      const { bounds } = boxDrawing(standing, installation, id);
      const known = sizeOf(id);
      const size = pass === 1 ? bounds : around(known, bounds);
      grown ||= !isSame(size, known);
      sizes.set(id, size);
    }
    if (!grown) break;
    places = place(sizeOf);
  }
  return places;
}

/** A document in which boxes stand elsewhere. */
export const withPlaces = (project: Project, places: Places): Project => ({
  ...project,
  layout: { ...project.layout, enclosures: { ...project.layout.enclosures, ...Object.fromEntries(places) } },
});

function around(a: Rect, b: Rect): Rect {
  const x = Math.min(a.x, b.x);
  const y = Math.min(a.y, b.y);
  return {
    x,
    y,
    width: Math.max(a.x + a.width, b.x + b.width) - x,
    height: Math.max(a.y + a.height, b.y + b.height) - y,
  };
}

const isSame = (a: Rect, b: Rect): boolean =>
  a.x === b.x && a.y === b.y && a.width === b.width && a.height === b.height;
