import type { Point } from "../model/project.ts";
import type { Rect } from "./box-drawing.ts";
import { type EvenPlace, evenPlaces, type Gap } from "./even-gaps.ts";
import { PITCH } from "./metrics.ts";

/** A line that a moved box has come to lie on, drawn while it is held there. */
export interface Guide {
  readonly axis: "x" | "y";
  /** Where the line is on its axis. */
  readonly at: number;
  /** From where to where it runs on the other axis: both boxes included. */
  readonly from: number;
  readonly to: number;
}

export interface Snapped {
  /** How far to move instead. */
  readonly by: Point;
  readonly guides: readonly Guide[];
  /** Gaps that are as wide as each other now. */
  readonly gaps: readonly Gap[];
}

/**
 * Lets a move click into place: on each axis by itself, onto an edge or a middle of a box that stays, or where
 * the gaps to its neighbours are even, whichever is nearest; else onto the pitch of the drawing.
 * @param moving Walls of what moves, where it was before the move.
 * @param by How far it was moved by hand.
 * @param staying Walls of the other boxes.
 * @param reach How near, in drawing units, a line has to be.
 */
export function snapMove(moving: Rect, by: Point, staying: readonly Rect[], reach: number): Snapped {
  const x = snapAxis(moving, by, staying, reach, "x");
  const y = snapAxis(moving, by, staying, reach, "y");
  const at = { x: x.by, y: y.by };
  const guides = [...guidesAt(moving, at, staying, x), ...guidesAt(moving, at, staying, y)];
  return { by: at, guides, gaps: [...x.gaps, ...y.gaps] };
}

interface AxisSnap {
  readonly axis: "x" | "y";
  readonly by: number;
  /** The line it lies on; undefined on the pitch. */
  readonly line: number | undefined;
  readonly gaps: readonly Gap[];
}

const startOf = (rect: Rect, axis: "x" | "y"): number => rect[axis];
const longOf = (rect: Rect, axis: "x" | "y"): number => (axis === "x" ? rect.width : rect.height);

function snapAxis(moving: Rect, by: Point, staying: readonly Rect[], reach: number, axis: "x" | "y"): AxisSnap {
  const start = startOf(moving, axis) + by[axis];
  const long = longOf(moving, axis);
  let best: { readonly off: number; readonly line: number } | undefined;
  const offer = (line: number, own: number): void => {
    const off = line - own;
    const least = best === undefined ? reach : Math.abs(best.off);
    if (Math.abs(off) < least || (best === undefined && Math.abs(off) === reach)) best = { off, line };
  };
  for (const rect of staying) {
    const from = startOf(rect, axis);
    const to = from + longOf(rect, axis);
    offer(from, start);
    offer(to, start + long);
    offer((from + to) / 2, start + long / 2);
    offer(from, start + long);
    offer(to, start);
  }
  const even = nearestEven(evenPlaces({ ...moving, x: moving.x + by.x, y: moving.y + by.y }, staying, axis), start);
  const least = best === undefined ? reach : Math.abs(best.off);
  if (even !== undefined && (best === undefined ? even.far <= least : even.far < least))
    return { axis, by: Math.round(even.start - startOf(moving, axis)), line: undefined, gaps: even.gaps };
  if (best !== undefined) return { axis, by: Math.round(by[axis] + best.off), line: best.line, gaps: [] };
  return { axis, by: Math.round(start / PITCH) * PITCH - startOf(moving, axis), line: undefined, gaps: [] };
}

function nearestEven(places: readonly EvenPlace[], start: number): (EvenPlace & { readonly far: number }) | undefined {
  let best: (EvenPlace & { readonly far: number }) | undefined;
  for (const place of places) {
    const far = Math.abs(place.start - start);
    if (best === undefined || far < best.far) best = { ...place, far };
  }
  return best;
}

/** The line as far as the boxes on it reach. */
function guidesAt(moving: Rect, by: Point, staying: readonly Rect[], { axis, line }: AxisSnap): readonly Guide[] {
  if (line === undefined) return [];
  const other = axis === "x" ? "y" : "x";
  let from = startOf(moving, other) + by[other];
  let to = from + longOf(moving, other);
  for (const rect of staying) {
    const start = startOf(rect, axis);
    const end = start + longOf(rect, axis);
    if (start !== line && end !== line && (start + end) / 2 !== line) continue;
    from = Math.min(from, startOf(rect, other));
    to = Math.max(to, startOf(rect, other) + longOf(rect, other));
  }
  return [{ axis, at: line, from, to }];
}
