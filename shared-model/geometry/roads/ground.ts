import type { Point } from "../../model/project.ts";
import type { Rect } from "../box-drawing.ts";
import type { RoadScale } from "./road.ts";

/** Widths of a road that its middle stays away from a wall; from afar, where a road is a line, that share of its lane. */
const BESIDE = 0.65;
const LANE_SHARE = 0.7;
/** Between more boxes than this no way is looked for: nobody could follow it. */
const MOST_NEAR = 120;

/** What stands in the way of a leg: roads that were laid before, and boxes. */
export interface Ground {
  /** Whether an upright leg may run there. */
  free(x: number, y1: number, y2: number): boolean;
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
  const besides = indexOf(boxes, ({ x, width }) => [x - road, x + width + road]);
  const rows = indexOf(boxes, ({ y, height }) => [y - road, y + height + road]);
  const off = Math.max(road, lane * LANE_SHARE) * BESIDE;
  let asked = 0;
  const isClear = (x: number, y1: number, y2: number): boolean => {
    const top = Math.min(y1, y2) - road / 2;
    const bottom = Math.max(y1, y2) + road / 2;
    return !besides(x).some(
      (box) => x > box.x - off && x < box.x + box.width + off && top < box.y + box.height && bottom > box.y,
    );
  };
  return {
    free(x, y1, y2) {
      asked += 1;
      return uprights.isFree(x, Math.min(y1, y2) - road / 2, Math.max(y1, y2) + road / 2) && isClear(x, y1, y2);
    },
    isClear,
    freeLevel(y, x1, x2) {
      asked += 1;
      const left = Math.min(x1, x2);
      const right = Math.max(x1, x2);
      return (
        levels.isFree(y, left, right) &&
        !rows(y).some(
          (box) => y > box.y - off && y < box.y + box.height + off && left < box.x + box.width && right > box.x,
        )
      );
    },
    asked: () => asked,
    reach(y, x, out, last) {
      let end = last;
      for (const box of rows(y)) {
        if (y <= box.y - off || y >= box.y + box.height + off) continue;
        const wall = out > 0 ? box.x : box.x + box.width;
        if ((wall - x) * out > 0 && (wall - end) * out < 0) end = wall - out * off;
      }
      return end;
    },
    passages(x1, x2, top, bottom) {
      const left = Math.min(x1, x2);
      const right = Math.max(x1, x2);
      const found = new Map<number, boolean>();
      for (const box of boxes) {
        if (box.x >= right || box.x + box.width <= left || box.y > bottom || box.y + box.height < top) continue;
        found.set(box.y - past, true);
        found.set(box.y + box.height + past, false);
      }
      return [...found];
    },
    linesBeside(area) {
      const near = boxes.filter(
        (box) =>
          box.x < area.x + area.width &&
          box.x + box.width > area.x &&
          box.y < area.y + area.height &&
          box.y + box.height > area.y,
      );
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

/** Legs that run the same way, at least a lane apart where they run side by side. */
function openLanes(lane: number, road: number) {
  const lanes = new Map<number, Leg[]>();
  const keyOf = (at: number): number => Math.floor(at / lane);
  return {
    isFree(at: number, from: number, to: number): boolean {
      // As many figures as are told apart on the sheet.
      const apart = lane - road / 100;
      for (let key = keyOf(at) - 1; key <= keyOf(at) + 1; key++)
        for (const other of lanes.get(key) ?? [])
          if (Math.abs(other.at - at) < apart && other.from < to && other.to > from) return false;
      return true;
    },
    take(leg: Leg): void {
      const list = lanes.get(keyOf(leg.at));
      if (list === undefined) lanes.set(keyOf(leg.at), [leg]);
      else list.push(leg);
    },
  };
}

const CELL = 600;

/** Boxes that a line may meet, without asking each. */
function indexOf(
  boxes: readonly Rect[],
  span: (box: Rect) => readonly [number, number],
): (at: number) => readonly Rect[] {
  const cells = new Map<number, Rect[]>();
  for (const box of boxes) {
    const [from, to] = span(box);
    for (let cell = Math.floor(from / CELL); cell <= Math.floor(to / CELL); cell++) {
      const list = cells.get(cell);
      if (list === undefined) cells.set(cell, [box]);
      else list.push(box);
    }
  }
  return (at) => cells.get(Math.floor(at / CELL)) ?? [];
}
