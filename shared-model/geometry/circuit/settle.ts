import type { EnclosureId } from "../../model/ids.ts";
import type { Installation, Point, Project } from "../../model/project.ts";
import type { Rect } from "../box-drawing.ts";
import { boxDrawing } from "../draw-box.ts";
import { roomOf } from "../free-place.ts";
import type { Sizes } from "./grow.ts";

export type Places = ReadonlyMap<EnclosureId, Point>;

/** Drawings of boxes grow and shrink with the side on which their cables enter; after so many tries they do not. */
const PASSES = 6;

/** How far a layout has come: boxes looked at, of so many at most. */
export interface Progress {
  readonly done: number;
  readonly of: number;
}

/** Work that may be left off between any two boxes, and dropped without a trace. */
export type InSteps<T> = Generator<Progress, T, undefined>;

/** Places in the making. */
export type Placing = Generator<undefined, Places, undefined>;

/** What every box is taken for before it was drawn. */
export const roughSizes = (installation: Installation, ids: readonly EnclosureId[]): ReadonlyMap<EnclosureId, Rect> =>
  new Map(ids.map((id) => [id, roomOf(installation.enclosures[id]?.kind ?? "box", { x: 0, y: 0 })]));

/** Places, and what the boxes measure there. */
export interface Settled {
  readonly places: Places;
  readonly sizes: ReadonlyMap<EnclosureId, Rect>;
}

/**
 * Places by what the boxes measure once they stand there. A box is drawn with its cables entering on the side that faces
 * their other ends, so sizes follow from places and places from sizes: begun with a common size and then only grown, so
 * that where the boxes stood before has no say. A step is one box: drawing it is what takes time.
 * @param place Places for given sizes; may be left off wherever it yields.
 * @param begun Sizes to begin with.
 */
export function* settle(
  project: Project,
  installation: Installation,
  ids: readonly EnclosureId[],
  place: (sizeOf: Sizes) => Placing,
  begun: ReadonlyMap<EnclosureId, Rect> = roughSizes(installation, ids),
): InSteps<Settled> {
  const sizes = new Map(begun);
  const sizeOf = (id: EnclosureId): Rect => sizes.get(id) ?? { x: 0, y: 0, width: 0, height: 0 };
  const placed = function* (): InSteps<Places> {
    const steps = place(sizeOf);
    for (let step = steps.next(); ; step = steps.next()) {
      if (step.done === true) return step.value;
      yield { done: ids.length, of: ids.length };
    }
  };
  let places = yield* placed();
  for (let pass = 1; pass < PASSES; pass++) {
    let grown = false;
    let done = 0;
    const standing = withPlaces(project, places);
    for (const id of ids) {
      // Drawn anew only where cables change their wall or their order there.
      const { bounds } = boxDrawing(standing, installation, id);
      const known = sizeOf(id);
      const size = pass === 1 ? bounds : around(known, bounds);
      grown ||= !isSame(size, known);
      sizes.set(id, size);
      done += 1;
      yield { done, of: ids.length };
    }
    if (!grown) break;
    places = yield* placed();
  }
  return { places, sizes };
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
