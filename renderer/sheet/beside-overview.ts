import type { Point } from "../../shared-model/model/project.ts";

type Edges = Pick<DOMRect, "left" | "top" | "right" | "bottom">;

/** Of the ring around what has the focus, in pixels. */
const RING = 6;

/** How far something in view must move, the shorter way, so that the overview does not lie over it. */
export function besideOverview({ left, top, right, bottom }: Edges): Point {
  const over = document.querySelector(".sheet-overview")?.getBoundingClientRect();
  if (over === undefined || left >= over.right || right <= over.left || top >= over.bottom || bottom <= over.top)
    return { x: 0, y: 0 };
  const isLeft = document.querySelector('.sheet-overview[data-corner$="left"]') !== null;
  const side = isLeft ? over.right + RING - left : over.left - RING - right;
  const up = over.top - RING - bottom;
  return Math.abs(side) <= Math.abs(up) ? { x: side, y: 0 } : { x: 0, y: up };
}
