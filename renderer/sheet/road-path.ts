import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
import type { Point } from "../../shared-model/model/project.ts";

/** Where a cable leaves the drawing of a box, and which way: -1 left, 1 right; `upright` -1 up, 1 down. */
export interface RoadEnd {
  readonly at: Point;
  readonly out: 1 | -1;
  readonly upright?: true;
}

export interface RoadEnds {
  readonly a: RoadEnd;
  readonly b: RoadEnd;
}

/** Measures of roads, in drawing units. */
export interface RoadScale {
  /** Width of a road. */
  readonly road: number;
  /** Least distance between the middles of two that run side by side. */
  readonly lane: number;
  /** How far a road goes level before its first lane. */
  readonly stepOut: number;
  /** Height between two ends from which a road passes between them when they face away from each other. */
  readonly between: number;
  readonly around: number;
}

/** A road is a sheath: near, it goes on from the stub at the box. */
export const NEAR_ROADS: RoadScale = { road: 20, lane: 32, stepOut: 28, between: 240, around: 420 };
const TRIES = 60;
/** Widths of a road that its middle stays away from a wall. */
const BESIDE = 0.65;

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
export function layRoads(
  ends: readonly RoadEnds[],
  boxes: readonly Rect[],
  scale: RoadScale = NEAR_ROADS,
): readonly (readonly Point[])[] {
  const roads: (readonly Point[])[] = new Array(ends.length);
  const lay = (wanted: (each: RoadEnds) => boolean, turn: Turn): void => {
    const order = ends.flatMap((each, i) => (wanted(each) ? [{ each: turnedEnds(each, turn), i }] : []));
    if (order.length === 0) return;
    order.sort((p, q) => rank(p.each) - rank(q.each) || p.i - q.i);
    const ground = openGround(turn === asIs ? boxes : boxes.map(turnedRect), scale);
    for (const { each, i } of order) roads[i] = layRoad(each, ground, stepped(each, turn, scale)).map(turn);
  };
  lay((each) => !isUpright(each), asIs);
  // Up and down it is the same, seen with the sheet turned about its diagonal.
  lay(isUpright, turned);
  return roads;
}

type Turn = (point: Point) => Point;
const asIs: Turn = (point) => point;
const turned: Turn = ({ x, y }) => ({ x: y, y: x });
const turnedRect = ({ x, y, width, height }: Rect): Rect => ({ x: y, y: x, width: height, height: width });
const turnedEnds = ({ a, b }: RoadEnds, turn: Turn): RoadEnds => ({
  a: { out: a.out, at: turn(a.at) },
  b: { out: b.out, at: turn(b.at) },
});

/** Over and under a box are its name and its fill: a road passes them first, as far as there is room for both. */
function stepped({ a, b }: RoadEnds, turn: Turn, scale: RoadScale): RoadScale {
  if (turn === asIs) return scale;
  const half = (Math.abs(a.at.x - b.at.x) - scale.lane) / 2;
  return { ...scale, stepOut: Math.max(scale.stepOut, Math.min(PAST_WORDS * scale.lane, half)) };
}

/** Lanes. */
const PAST_WORDS = 1.6;

/** Both ends of a cable lie in side walls, or both in an upper and a lower one. */
const isUpright = ({ a }: RoadEnds): boolean => a.upright === true;

/** Going up, higher stubs come first; going down, lower ones. */
const rank = ({ a, b }: RoadEnds): number => (b.at.y < a.at.y ? a.at.y : -a.at.y);

/** One road alone, for a box on the move. */
export function looseRoad(ends: RoadEnds, scale: RoadScale): readonly Point[] {
  const turn = isUpright(ends) ? turned : asIs;
  const each = turnedEnds(ends, turn);
  return layRoad(each, { free: () => true, take: () => {} }, stepped(each, turn, scale)).map(turn);
}

function layRoad({ a, b }: RoadEnds, { free, take }: Ground, scale: RoadScale): readonly Point[] {
  const { lane, stepOut, between, around } = scale;
  const startX = a.at.x + a.out * stepOut;
  const endX = b.at.x + b.out * stepOut;
  const facing = a.out !== b.out && (endX - startX) * a.out >= 0;
  if (facing && Math.abs(a.at.y - b.at.y) < 1) return [a.at, b.at];
  if (facing || a.out === b.out) {
    const from = facing ? startX : a.out > 0 ? Math.max(startX, endX) : Math.min(startX, endX);
    const last = facing ? endX : from + a.out * TRIES * lane;
    const upright = search(from, last, a.out, lane, (x) => free(x, a.at.y, b.at.y));
    take(upright, a.at.y, b.at.y);
    return [a.at, { x: upright, y: a.at.y }, { x: upright, y: b.at.y }, b.at];
  }
  // They face away from each other: around, between the two where there is height, else above.
  const y = Math.abs(a.at.y - b.at.y) > between ? (a.at.y + b.at.y) / 2 : Math.min(a.at.y, b.at.y) - around;
  const x1 = search(startX, startX + a.out * TRIES * lane, a.out, lane, (x) => free(x, a.at.y, y));
  const x2 = search(endX, endX + b.out * TRIES * lane, b.out, lane, (x) => free(x, b.at.y, y));
  take(x1, a.at.y, y);
  take(x2, b.at.y, y);
  return [a.at, { x: x1, y: a.at.y }, { x: x1, y }, { x: x2, y }, { x: x2, y: b.at.y }, b.at];
}

/** The first free lane from a stub outward; the first of all where none is free. */
function search(from: number, last: number, out: 1 | -1, lane: number, free: (x: number) => boolean): number {
  for (let i = 0; i <= TRIES; i++) {
    const x = from + out * i * lane;
    if ((last - x) * out < 0) break;
    if (free(x)) return x;
  }
  return free(last) ? last : from;
}

function openGround(boxes: readonly Rect[], { road, lane }: RoadScale): Ground {
  const lanes = new Map<number, Upright[]>();
  const near = indexBoxes(boxes, road);
  const keyOf = (x: number): number => Math.floor(x / lane);
  return {
    free(x, y1, y2) {
      const top = Math.min(y1, y2) - road / 2;
      const bottom = Math.max(y1, y2) + road / 2;
      for (let key = keyOf(x) - 1; key <= keyOf(x) + 1; key++) {
        for (const other of lanes.get(key) ?? [])
          if (Math.abs(other.x - x) < lane && other.top < bottom && other.bottom > top) return false;
      }
      return !near(x).some(
        (box) =>
          x > box.x - road * BESIDE &&
          x < box.x + box.width + road * BESIDE &&
          top < box.y + box.height &&
          bottom > box.y,
      );
    },
    take(x, y1, y2) {
      const upright = { x, top: Math.min(y1, y2) - road / 2, bottom: Math.max(y1, y2) + road / 2 };
      const list = lanes.get(keyOf(x));
      if (list === undefined) lanes.set(keyOf(x), [upright]);
      else list.push(upright);
    },
  };
}

const CELL = 600;

/** Boxes near an upright, without asking each. */
function indexBoxes(boxes: readonly Rect[], road: number): (x: number) => readonly Rect[] {
  const cells = new Map<number, Rect[]>();
  for (const box of boxes) {
    for (let cell = Math.floor((box.x - road) / CELL); cell <= Math.floor((box.x + box.width + road) / CELL); cell++) {
      const list = cells.get(cell);
      if (list === undefined) cells.set(cell, [box]);
      else list.push(box);
    }
  }
  return (x) => cells.get(Math.floor(x / CELL)) ?? [];
}
