import type { Point } from "../model/project.ts";
import type { Rect } from "./box-drawing.ts";

/** Room between a group and what stands beside it, for the roads of cables. */
const GAP = 160;

/** A larger group is taken as one rectangle, so that a whole drawing finds its place at once. */
const MOST_PARTS = 24;

/**
 * Where the origin of a group could go so that none of its parts lies on anything: beside `near` on the right or below
 * it, whichever is closer once what is in the way has been passed. On an empty sheet the group stands where it is.
 * @param group Parts of the group, relative to its origin.
 */
export function freeGroupPlace(taken: readonly Rect[], group: readonly Rect[], near: Rect | undefined): Point {
  if (near === undefined || taken.length === 0) return { x: 0, y: 0 };
  const around = hull(group);
  const parts = group.length > MOST_PARTS ? [around] : group;
  const right = pass(taken, parts, { x: near.x + near.width + GAP - around.x, y: near.y - around.y }, "x");
  const below = pass(taken, parts, { x: near.x - around.x, y: near.y + near.height + GAP - around.y }, "y");
  const isRight = right.x + around.x - near.x - near.width <= below.y + around.y - near.y - near.height;
  const { x, y } = isRight ? right : below;
  return { x: Math.round(x), y: Math.round(y) };
}

/**
 * Where the origin of a group goes so that its middle lies on a point, or, where something stands there, beside or below
 * it, whichever is closer.
 */
export function groupPlaceAt(taken: readonly Rect[], group: readonly Rect[], middle: Point): Point {
  const around = hull(group);
  const parts = group.length > MOST_PARTS ? [around] : group;
  const from = { x: middle.x - around.x - around.width / 2, y: middle.y - around.y - around.height / 2 };
  const right = pass(taken, parts, from, "x");
  const below = pass(taken, parts, from, "y");
  const { x, y } = right.x - from.x <= below.y - from.y ? right : below;
  return { x: Math.round(x), y: Math.round(y) };
}

/** The smallest rectangle around one or more. */
export function hull(rects: readonly Rect[]): Rect {
  let [x, y, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const rect of rects) {
    x = Math.min(x, rect.x);
    y = Math.min(y, rect.y);
    right = Math.max(right, rect.x + rect.width);
    bottom = Math.max(bottom, rect.y + rect.height);
  }
  return { x, y, width: right - x, height: bottom - y };
}

/** Moves the group on along one axis until it lies on nothing. Each step leaves one rectangle behind for good. */
function pass(taken: readonly Rect[], group: readonly Rect[], from: Point, axis: "x" | "y"): Point {
  let at = from;
  for (;;) {
    let step = 0;
    for (const rect of taken) for (const part of group) step = Math.max(step, overlap(rect, part, at, axis));
    if (step === 0) return at;
    at = { ...at, [axis]: at[axis] + step };
  }
}

/** How far a part has to go on along an axis to lie clear of a rectangle; 0 when it does already. */
function overlap(rect: Rect, part: Rect, at: Point, axis: "x" | "y"): number {
  const x = at.x + part.x;
  const y = at.y + part.y;
  const apart =
    x >= rect.x + rect.width + GAP ||
    rect.x >= x + part.width + GAP ||
    y >= rect.y + rect.height + GAP ||
    rect.y >= y + part.height + GAP;
  if (apart) return 0;
  return axis === "x" ? rect.x + rect.width + GAP - x : rect.y + rect.height + GAP - y;
}
