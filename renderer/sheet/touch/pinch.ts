import type { Point } from "../../../shared-model/model/project.ts";
import type { Viewport } from "../view-fit.ts";

/** Where some fingers are: their middle, and how far they are from it together. */
export interface Grasp {
  readonly middle: Point;
  /** 0 for one finger: it moves the sheet and leaves its size. */
  readonly spread: number;
}

export function graspOf(fingers: readonly Point[]): Grasp {
  const count = Math.max(1, fingers.length);
  const middle = {
    x: fingers.reduce((sum, { x }) => sum + x, 0) / count,
    y: fingers.reduce((sum, { y }) => sum + y, 0) / count,
  };
  const spread = fingers.reduce((sum, { x, y }) => sum + Math.hypot(x - middle.x, y - middle.y), 0);
  return { middle, spread };
}

/** Fingers nearer together than this, in pixels, say nothing of a size. */
const LEAST_SPREAD = 16;

/**
 * The view after fingers have gone from one grasp to another: what lay between them still does.
 * @param grasps Places in pixels from the corner of the view.
 */
export function viewAfter(
  view: Viewport,
  from: Grasp,
  to: Grasp,
  { least, most }: { readonly least: number; readonly most: number },
): Viewport {
  const wanted = from.spread < LEAST_SPREAD || to.spread < LEAST_SPREAD ? 1 : to.spread / from.spread;
  const zoom = Math.min(most, Math.max(least, view.zoom * wanted));
  const ratio = zoom / view.zoom;
  return {
    x: to.middle.x - (from.middle.x - view.x) * ratio,
    y: to.middle.y - (from.middle.y - view.y) * ratio,
    zoom,
  };
}
