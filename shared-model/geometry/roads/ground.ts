import type { Point } from "../../model/project.ts";
import type { Rect } from "../box-drawing.ts";
import type { RoadScale } from "./road.ts";
import { openStrips } from "./strips.ts";

/** Widths of a road that its middle stays away from a wall; from afar, where a road is a line, that share of its lane. */
const BESIDE = 0.65;
const LANE_SHARE = 0.7;
/** Least distance of two roads where lanes are scarce, in widths of a road and in lanes: two edges still show. */
const CLOSE = 1.1;
const CLOSE_LANE = 0.75;
/** Between more boxes than this no way is looked for: nobody could follow it. */
const MOST_NEAR = 120;

/** What stands in the way of a leg: roads that were laid before, and boxes. */
export interface Ground {
  /** Whether an upright leg may run there. */
  free(x: number, y1: number, y2: number): boolean;
  /** Whether an upright leg may run there nearer to others than a lane, though not on one of them. */
  freeClose(x: number, y1: number, y2: number): boolean;
  /** How near that is. */
  readonly closest: number;
  /** Whether an upright leg there is clear of boxes, though not of other roads. */
  isClear(x: number, y1: number, y2: number): boolean;
  /** Whether a level leg may run there. */
  freeLevel(y: number, x1: number, x2: number): boolean;
  /** Where a level leg that sets out at `x` has to end before the first box, at the latest at `last`. */
  reach(y: number, x: number, out: 1 | -1, last: number): number;
  /** Heights at which a level leg passes the boxes between two uprights: under one of them, and over one. */
  passages(x1: number, x2: number, top: number, bottom: number): readonly (readonly [y: number, over: boolean])[];
  /** Lines beside the boxes near a stretch of the sheet, along which a way may be found. */
  linesBeside(area: Rect): { readonly xs: readonly number[]; readonly ys: readonly number[] };
  take(points: readonly Point[]): void;
  /** How often it was asked whether a leg may run: the measure of what laying roads has cost. */
  asked(): number;
}

/** A leg that was laid: where it runs, and from where to where. */
interface Leg {
  readonly at: number;
  readonly from: number;
  readonly to: number;
}

export function openGround(boxes: readonly Rect[], { road, lane, past }: RoadScale): Ground {
  const uprights = openLanes(lane, road);
  const levels = openLanes(lane, road);
  const beside = boxIndex(boxes, road, "x");
  const level = boxIndex(boxes, road, "y");
  const boxesIn = areaIndex(boxes);
  const closest = Math.max(road * CLOSE, lane * CLOSE_LANE);
  const off = Math.max(road, lane * LANE_SHARE) * BESIDE;
  let asked = 0;
  const isClear = (x: number, y1: number, y2: number): boolean => {
    const top = Math.min(y1, y2) - road / 2;
    const bottom = Math.max(y1, y2) + road / 2;
    return !beside(
      x,
      top,
      bottom,
      (box) => x > box.x - off && x < box.x + box.width + off && top < box.y + box.height && bottom > box.y,
    );
  };
  return {
    free(x, y1, y2) {
      asked += 1;
      return uprights.isFree(x, Math.min(y1, y2) - road / 2, Math.max(y1, y2) + road / 2) && isClear(x, y1, y2);
    },
    freeClose(x, y1, y2) {
      asked += 1;
      // As many figures as are told apart on the sheet.
      const least = closest - road / 100;
      return uprights.isFree(x, Math.min(y1, y2) - road / 2, Math.max(y1, y2) + road / 2, least) && isClear(x, y1, y2);
    },
    closest,
    isClear,
    freeLevel(y, x1, x2) {
      asked += 1;
      const left = Math.min(x1, x2);
      const right = Math.max(x1, x2);
      return (
        levels.isFree(y, left, right) &&
        !level(
          y,
          left,
          right,
          (box) => y > box.y - off && y < box.y + box.height + off && left < box.x + box.width && right > box.x,
        )
      );
    },
    asked: () => asked,
    reach(y, x, out, last) {
      let end = last;
      level(y, Math.min(x, last), Math.max(x, last), (box) => {
        if (y <= box.y - off || y >= box.y + box.height + off) return false;
        const wall = out > 0 ? box.x : box.x + box.width;
        if ((wall - x) * out > 0 && (wall - end) * out < 0) end = wall - out * off;
        return false;
      });
      return end;
    },
    passages(x1, x2, top, bottom) {
      const left = Math.min(x1, x2);
      const right = Math.max(x1, x2);
      const found = new Map<number, boolean>();
      let before: Rect | undefined;
      for (const box of boxesIn(left, right, top, bottom)) {
        // Boxes in a row leave the same passages.
        if (before?.y === box.y && before.height === box.height) continue;
        before = box;
        found.set(box.y - past, true);
        found.set(box.y + box.height + past, false);
      }
      return [...found];
    },
    linesBeside(area) {
      const near = boxesIn(area.x, area.x + area.width, area.y, area.y + area.height, MOST_NEAR);
      if (near.length > MOST_NEAR) return { xs: [], ys: [] };
      const beside = (from: number, long: number, first: number): readonly number[] =>
        [0, 1].flatMap((i) => [from - first - i * lane, from + long + first + i * lane]);
      return {
        xs: near.flatMap(({ x, width }) => beside(x, width, off + lane)),
        ys: near.flatMap(({ y, height }) => beside(y, height, past)),
      };
    },
    take(points) {
      points.forEach((b, i) => {
        const a = points[i - 1];
        if (a === undefined) return;
        if (a.x === b.x)
          uprights.take({ at: a.x, from: Math.min(a.y, b.y) - road / 2, to: Math.max(a.y, b.y) + road / 2 });
        else levels.take({ at: a.y, from: Math.min(a.x, b.x), to: Math.max(a.x, b.x) });
      });
    },
  };
}

/** Drawing units. */
const STRETCH = 2400;
const CELL = 600;

/** Legs that run the same way, at least a lane apart where they run side by side. */
function openLanes(lane: number, road: number) {
  const legs = openStrips<Leg>(STRETCH);
  const laneOf = (at: number): number => Math.floor(at / lane);
  // As many figures as are told apart on the sheet.
  const apart = lane - road / 100;
  return {
    isFree(at: number, from: number, to: number, least = apart): boolean {
      const meets = (other: Leg): boolean => Math.abs(other.at - at) < least && other.from < to && other.to > from;
      const here = laneOf(at);
      return !(
        legs.some(here - 1, from, to, meets) ||
        legs.some(here, from, to, meets) ||
        legs.some(here + 1, from, to, meets)
      );
    },
    take: (leg: Leg): void => legs.put(laneOf(leg.at), leg.from, leg.to, leg),
  };
}

/**
 * Boxes that a line may meet, without asking each.
 * @param near How near a line may come to a box and still be told about it.
 * @param across "x": of upright lines.
 * @returns Whether a box that a line may meet, from one place of it to another, passes a test.
 */
function boxIndex(
  boxes: readonly Rect[],
  near: number,
  across: "x" | "y",
): (at: number, from: number, to: number, test: (box: Rect) => boolean) => boolean {
  const strips = openStrips<Rect>(CELL);
  for (const box of boxes) {
    const [place, wide, start, long] =
      across === "x" ? [box.x, box.width, box.y, box.height] : [box.y, box.height, box.x, box.width];
    for (let strip = Math.floor((place - near) / CELL); strip <= Math.floor((place + wide + near) / CELL); strip++)
      strips.put(strip, start, start + long, box);
  }
  return (at, from, to, test) => strips.some(Math.floor(at / CELL), from, to, test);
}

/**
 * Boxes in an area, in their order. Each question looks at all of them: their edges side by side, since that is several
 * times faster than from object to object.
 * @returns At most one more than `most`.
 */
function areaIndex(boxes: readonly Rect[]) {
  const edges = new Float64Array(boxes.length * 4);
  boxes.forEach(({ x, y, width, height }, i) => {
    edges.set([x, x + width, y, y + height], i * 4);
  });
  return (left: number, right: number, top: number, bottom: number, most = boxes.length): readonly Rect[] => {
    const found: Rect[] = [];
    for (let i = 0; i < boxes.length && found.length <= most; i++) {
      const [at, box] = [i * 4, boxes[i]];
      const isIn =
        (edges[at] ?? 0) < right &&
        (edges[at + 1] ?? 0) > left &&
        (edges[at + 2] ?? 0) < bottom &&
        (edges[at + 3] ?? 0) > top;
      if (isIn && box !== undefined) found.push(box);
    }
    return found;
  };
}
