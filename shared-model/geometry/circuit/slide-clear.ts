import type { Rect } from "../box-drawing.ts";
import { hull } from "../free-group-place.ts";
import { PITCH } from "../metrics.ts";

/** Room between a circuit and what stands around it: the fill and the name of a box, and roads. */
const GAP = 200;

/**
 * How far down, or up where negative, a group has to go so that none of its parts comes near anything that stands: not at
 * all where it has room, else the least way for the rectangle around it; of two ways as long, down.
 */
export function slideClear(group: readonly Rect[], taken: readonly Rect[]): number {
  if (group.length === 0 || isClear(group, taken)) return 0;
  const around = hull(group);
  const beside = taken.filter((rect) => isNear(around.x, around.width, rect.x, rect.width));
  const ways = beside.flatMap((rect) => [
    Math.ceil((rect.y + rect.height + GAP - around.y) / PITCH) * PITCH,
    Math.floor((rect.y - GAP - around.y - around.height) / PITCH) * PITCH,
  ]);
  ways.sort((a, b) => Math.abs(a) - Math.abs(b) || b - a);
  return ways.find((way) => isClear([{ ...around, y: around.y + way }], beside)) ?? 0;
}

const isClear = (group: readonly Rect[], taken: readonly Rect[]): boolean =>
  group.every((part) =>
    taken.every(
      (rect) => !isNear(part.x, part.width, rect.x, rect.width) || !isNear(part.y, part.height, rect.y, rect.height),
    ),
  );

const isNear = (from: number, long: number, otherFrom: number, otherLong: number): boolean =>
  from < otherFrom + otherLong + GAP && otherFrom < from + long + GAP;
