import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
import type { Point } from "../../shared-model/model/project.ts";

/** Where a cable leaves the drawing of a box, and which way: -1 left, 1 right. */
export interface RoadEnd {
  readonly at: Point;
  readonly out: 1 | -1;
}

export interface RoadEnds {
  readonly a: RoadEnd;
  readonly b: RoadEnd;
}

/** Width of a road, and the least distance between the middles of two that run side by side. */
export const ROAD = 20;
const LANE = 32;
/** How far a road goes level before its first lane. */
const STEP_OUT = 28;
const TRIES = 60;
/** Height between two stubs from which a road passes between them when they face away from each other. */
const BETWEEN = 240;
const AROUND = 420;

interface Upright {
  readonly x: number;
  readonly top: number;
  readonly bottom: number;
}

/** What stands in the way of an upright: roads that were laid before, and boxes. */
interface Ground {
  free(x: number, y1: number, y2: number): boolean;
  take(x: number, y1: number, y2: number): void;
}

/**
 * Lays roads: level out of the stubs, upright on a lane of their own, clear of boxes where there is room. Of the roads
 * that leave one wall, those going up take their lanes from the topmost stub outward and those going down from the
 * lowest, so that they do not cross each other. The same ends give the same roads.
 */
export function layRoads(ends: readonly RoadEnds[], boxes: readonly Rect[]): readonly (readonly Point[])[] {
  const ground = openGround(boxes);
  const roads: (readonly Point[])[] = new Array(ends.length);
  const order = ends.map((each, i) => ({ each, i })).sort((p, q) => rank(p.each) - rank(q.each) || p.i - q.i);
  for (const { each, i } of order) roads[i] = layRoad(each, ground);
  return roads;
}

/** Going up, higher stubs come first; going down, lower ones. */
const rank = ({ a, b }: RoadEnds): number => (b.at.y < a.at.y ? a.at.y : -a.at.y);

/** One road alone, for a box on the move. */
export const looseRoad = (ends: RoadEnds): readonly Point[] => layRoad(ends, { free: () => true, take: () => {} });

function layRoad({ a, b }: RoadEnds, { free, take }: Ground): readonly Point[] {
  const startX = a.at.x + a.out * STEP_OUT;
  const endX = b.at.x + b.out * STEP_OUT;
  const facing = a.out !== b.out && (endX - startX) * a.out >= 0;
  if (facing && Math.abs(a.at.y - b.at.y) < 1) return [a.at, b.at];
  if (facing || a.out === b.out) {
    const from = facing ? startX : a.out > 0 ? Math.max(startX, endX) : Math.min(startX, endX);
    const last = facing ? endX : from + a.out * TRIES * LANE;
    const x = search(from, last, a.out, (lane) => free(lane, a.at.y, b.at.y));
    take(x, a.at.y, b.at.y);
    return [a.at, { x, y: a.at.y }, { x, y: b.at.y }, b.at];
  }
  // They face away from each other: around, between the two where there is height, else above.
  const y = Math.abs(a.at.y - b.at.y) > BETWEEN ? (a.at.y + b.at.y) / 2 : Math.min(a.at.y, b.at.y) - AROUND;
  const x1 = search(startX, startX + a.out * TRIES * LANE, a.out, (lane) => free(lane, a.at.y, y));
  const x2 = search(endX, endX + b.out * TRIES * LANE, b.out, (lane) => free(lane, b.at.y, y));
  take(x1, a.at.y, y);
  take(x2, b.at.y, y);
  return [a.at, { x: x1, y: a.at.y }, { x: x1, y }, { x: x2, y }, { x: x2, y: b.at.y }, b.at];
}

/** The first free lane from a stub outward; the first of all where none is free. */
function search(from: number, last: number, out: 1 | -1, free: (x: number) => boolean): number {
  for (let i = 0; i <= TRIES; i++) {
    const x = from + out * i * LANE;
    if ((last - x) * out < 0) break;
    if (free(x)) return x;
  }
  return from;
}

function openGround(boxes: readonly Rect[]): Ground {
  const lanes = new Map<number, Upright[]>();
  const near = indexBoxes(boxes);
  const keyOf = (x: number): number => Math.floor(x / LANE);
  return {
    free(x, y1, y2) {
      const top = Math.min(y1, y2) - ROAD / 2;
      const bottom = Math.max(y1, y2) + ROAD / 2;
      for (let key = keyOf(x) - 1; key <= keyOf(x) + 1; key++) {
        for (const other of lanes.get(key) ?? [])
          if (Math.abs(other.x - x) < LANE && other.top < bottom && other.bottom > top) return false;
      }
      return !near(x).some(
        (box) => x > box.x - ROAD && x < box.x + box.width + ROAD && top < box.y + box.height && bottom > box.y,
      );
    },
    take(x, y1, y2) {
      const upright = { x, top: Math.min(y1, y2) - ROAD / 2, bottom: Math.max(y1, y2) + ROAD / 2 };
      const list = lanes.get(keyOf(x));
      if (list === undefined) lanes.set(keyOf(x), [upright]);
      else list.push(upright);
    },
  };
}

const CELL = 600;

/** Boxes near an upright, without asking each. */
function indexBoxes(boxes: readonly Rect[]): (x: number) => readonly Rect[] {
  const cells = new Map<number, Rect[]>();
  for (const box of boxes) {
    for (let cell = Math.floor((box.x - ROAD) / CELL); cell <= Math.floor((box.x + box.width + ROAD) / CELL); cell++) {
      const list = cells.get(cell);
      if (list === undefined) cells.set(cell, [box]);
      else list.push(box);
    }
  }
  return (x) => cells.get(Math.floor(x / CELL)) ?? [];
}
