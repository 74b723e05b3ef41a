import type { Rect } from "../../geometry/box-drawing.ts";
import type { Point } from "../../model/project.ts";

/** What stands or lies about a box on a page, in drawing units. */
export interface Surroundings {
  /** Outsides of all boxes. */
  readonly boxes: readonly Rect[];
  readonly ways: readonly (readonly Point[])[];
  /** How wide a way is drawn. */
  readonly wide: number;
  /** Names of rooms. */
  readonly names: readonly Rect[];
  /** What is shown at all. */
  readonly extent: Rect;
  /** A pixel. */
  readonly unit: number;
}

/** Free to the right of a box, drawing units: for words over its wall, and under it. */
export interface RoomBeside {
  readonly over: number;
  readonly under: number;
}

/** In pixels: how high the words over a box and under it are, and what stays free before the next thing. */
const OVER = 24;
const UNDER = 26;
const APART = 8;

/** How far words at a box may run on beyond its right wall without meeting anything. */
export function roomBeside({ x, y, width, height }: Rect, around: Surroundings): RoomBeside {
  const { boxes, ways, wide, names, extent, unit } = around;
  const right = x + width;
  const others = boxes.filter((box) => box.x !== x || box.y !== y);
  const taken: readonly Rect[] = [
    ...others.map((box) => ({ ...box, y: box.y - OVER * unit, height: box.height + (OVER + UNDER) * unit })),
    ...ways.flatMap((way) => legsOf(way, wide)),
    ...names,
  ];
  const free = (top: number, bottom: number): number => {
    const next = taken
      .filter((each) => each.x + each.width > right && each.y < bottom && each.y + each.height > top)
      .map((each) => each.x);
    return Math.max(0, Math.min(extent.x + extent.width, ...next) - right - APART * unit);
  };
  return {
    over: free(y - OVER * unit, y),
    under: free(y + height, y + height + UNDER * unit),
  };
}

/** What a way covers, leg by leg. */
export const legsOf = (points: readonly Point[], wide: number): readonly Rect[] =>
  points.slice(1).map((b, i) => {
    const a = points[i] ?? b;
    return {
      x: Math.min(a.x, b.x) - wide / 2,
      y: Math.min(a.y, b.y) - wide / 2,
      width: Math.abs(a.x - b.x) + wide,
      height: Math.abs(a.y - b.y) + wide,
    };
  });
