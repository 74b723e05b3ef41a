import type { EnclosureId } from "../model/ids.ts";
import type { Point } from "../model/project.ts";
import type { Rect } from "./box-drawing.ts";
import { hull } from "./free-group-place.ts";

/** A box as it stands on the sheet, by its walls. The upper left corner is its place. */
export interface StandingBox {
  readonly id: EnclosureId;
  readonly rect: Rect;
}

export interface BoxMove {
  readonly id: EnclosureId;
  readonly to: Point;
}

/** Which lines of the boxes come to lie on one: an edge, or the middles. */
export const ALIGNMENTS = ["left", "right", "top", "bottom", "middles-upright", "middles-level"] as const;
export type Alignment = (typeof ALIGNMENTS)[number];

/**
 * Moves that bring boxes onto one line: edges onto the outermost of them, middles onto the middle of all. Boxes that lie
 * there already do not move, and fewer than two have no line.
 */
export function align(boxes: readonly StandingBox[], how: Alignment): readonly BoxMove[] {
  if (boxes.length < 2) return [];
  const all = hull(boxes.map(({ rect }) => rect));
  const across = (x: (rect: Rect) => number) => moved(boxes, (rect) => ({ x: Math.round(x(rect)), y: rect.y }));
  const down = (y: (rect: Rect) => number) => moved(boxes, (rect) => ({ x: rect.x, y: Math.round(y(rect)) }));
  switch (how) {
    case "left":
      return across(() => all.x);
    case "right":
      return across(({ width }) => all.x + all.width - width);
    case "middles-upright":
      return across(({ width }) => all.x + (all.width - width) / 2);
    case "top":
      return down(() => all.y);
    case "bottom":
      return down(({ height }) => all.y + all.height - height);
    case "middles-level":
      return down(({ height }) => all.y + (all.height - height) / 2);
  }
}

/** Between boxes that had no room between the first and the last of them, in drawing units. */
const LEAST_GAP = 64;

/**
 * Moves that leave the same gap between boxes, in the order in which they stand. The first and the last stay; where they
 * are too close together for the others, all but the first give way onward. Fewer than three are even already.
 */
export function distribute(boxes: readonly StandingBox[], axis: "across" | "down"): readonly BoxMove[] {
  if (boxes.length < 3) return [];
  const from = ({ rect }: StandingBox): number => (axis === "across" ? rect.x : rect.y);
  const long = ({ rect }: StandingBox): number => (axis === "across" ? rect.width : rect.height);
  const order = [...boxes].sort((a, b) => from(a) - from(b) || (a.id < b.id ? -1 : 1));
  const [first] = order;
  const last = order[order.length - 1];
  if (first === undefined || last === undefined) return [];
  const filled = order.reduce((sum, box) => sum + long(box), 0);
  const gap = (from(last) + long(last) - from(first) - filled) / (order.length - 1);
  const wide = gap >= 0 ? gap : LEAST_GAP;
  const starts = new Map<EnclosureId, number>();
  let at = from(first);
  for (const box of order) {
    starts.set(box.id, Math.round(at));
    at += long(box) + wide;
  }
  return boxes.flatMap((box) => {
    const start = starts.get(box.id) ?? from(box);
    const to = axis === "across" ? { x: start, y: box.rect.y } : { x: box.rect.x, y: start };
    return isThere(box.rect, to) ? [] : [{ id: box.id, to }];
  });
}

const isThere = (rect: Rect, to: Point): boolean => rect.x === to.x && rect.y === to.y;

const moved = (boxes: readonly StandingBox[], place: (rect: Rect) => Point): readonly BoxMove[] =>
  boxes.flatMap(({ id, rect }) => {
    const to = place(rect);
    return isThere(rect, to) ? [] : [{ id, to }];
  });
