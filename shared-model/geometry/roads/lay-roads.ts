import { allAtOnce } from "../../lib/in-slices.ts";
import type { Point } from "../../model/project.ts";
import type { Rect } from "../box-drawing.ts";
import { bentRoad, tidied } from "./bends.ts";
import { findWay } from "./find-way.ts";
import { type Ground, openGround } from "./ground.ts";
import { type Lanes, overAt, plainRoad, type Tried } from "./plain-road.ts";
import type { RoadEnds, RoadScale } from "./road.ts";
import { NEAR_ROADS } from "./road.ts";
import { openStubs, wallOf } from "./stubs.ts";

/**
 * Lays roads: level out of the stubs, upright on a lane of their own, around boxes. Of the roads that leave one wall,
 * those going up take their lanes from the topmost stub outward and those going down from the lowest, each beyond the
 * lanes of those whose stubs it passes, so that they do not cross each other. A road that a person has bent goes as it was led, whatever stands there, and the others make room for
 * it. The same ends give the same roads.
 */
export function layRoads(
  ends: readonly RoadEnds[],
  boxes: readonly Rect[],
  scale: RoadScale = NEAR_ROADS,
): readonly (readonly Point[])[] {
  return allAtOnce(layingRoads(ends, boxes, scale));
}

/** As `layRoads`, left off after each road: with many it takes longer than a window should be held up. */
export function* layingRoads(
  ends: readonly RoadEnds[],
  boxes: readonly Rect[],
  scale: RoadScale,
): Generator<undefined, readonly (readonly Point[])[]> {
  const roads: (readonly Point[])[] = new Array(ends.length);
  const bent = ends.flatMap((each, i) => {
    const points = isBent(each) ? bentRoad(each, scale) : undefined;
    if (points !== undefined) roads[i] = points;
    return points === undefined ? [] : [points];
  });
  const lay = function* (wanted: (each: RoadEnds) => boolean, turn: Turn): Generator<undefined> {
    const order = ends.flatMap((each, i) =>
      !isBent(each) && wanted(each) ? [{ each: turnedEnds(each, turn), i }] : [],
    );
    if (order.length === 0) return;
    order.sort((p, q) => rank(p.each) - rank(q.each) || p.i - q.i);
    const standing = turn === asIs ? boxes : boxes.map(turnedRect);
    const budget = AT_LEAST + A_ROAD * order.length;
    /** @returns Walls from which a cable found no lane of its own. */
    const layAll = function* (tight: ReadonlySet<string>): Generator<undefined, ReadonlySet<string>> {
      const ground = openGround(standing, scale);
      for (const points of bent) ground.take(points.map(turn));
      const full = new Set<string>();
      const stubs = openStubs();
      for (const { each, i } of order) {
        const wall = wallOf(each);
        const lanes = { tight: tight.has(wall), past: stubs.passedBy(each) };
        const laid = layRoad(each, ground, stepped(each, turn, scale), budget, lanes);
        if (laid.shares) full.add(wall);
        ground.take(laid.points);
        stubs.take(each, laid.points);
        roads[i] = laid.points.map(turn);
        yield;
      }
      return full;
    };
    const full = yield* layAll(NO_WALLS);
    // Where a wall has more cables than lanes before it, all of that wall run closer together.
    if (full.size > 0 && order.length <= MOST_ANEW) yield* layAll(full);
  };
  yield* lay((each) => !isUpright(each), asIs);
  // Up and down it is the same, seen with the sheet turned about its diagonal.
  yield* lay(isUpright, turned);
  return roads;
}

/** Roads that are laid anew for the sake of a few: a large building is laid once. */
const MOST_ANEW = 400;
const NO_WALLS: ReadonlySet<string> = new Set();

const isBent = ({ bends }: RoadEnds): boolean => bends !== undefined && bends.length > 0;

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

const ALONE: Lanes = { tight: false, past: undefined };

/** One road alone, for a box on the move. */
export function looseRoad(ends: RoadEnds, scale: RoadScale): readonly Point[] {
  if (isBent(ends)) return bentRoad(ends, scale);
  const turn = isUpright(ends) ? turned : asIs;
  const each = turnedEnds(ends, turn);
  return layRoad(each, openGround([], scale), stepped(each, turn, scale), 0, ALONE).points.map(turn);
}

/**
 * Questions to the ground after which no more ways around boxes are looked for: where boxes lie on each other there are
 * none, and the sheet must not wait for that.
 */
const AT_LEAST = 40_000;
const A_ROAD = 60;

/** The simplest road that is clear of boxes; where there is none, the simplest of all. */
function layRoad(ends: RoadEnds, ground: Ground, scale: RoadScale, budget: number, lanes: Lanes): Tried {
  const plain = plainRoad(ends, ground, scale, lanes);
  if (plain.clear || ground.asked() > budget) return plain;
  const points = passingRoad(ends, ground, scale) ?? wayAround(ends, ground, scale);
  return points === undefined ? plain : { points, clear: true };
}

/** A way through the gaps between boxes, where no simple road is clear. */
function wayAround(ends: RoadEnds, ground: Ground, scale: RoadScale): readonly Point[] | undefined {
  const { a, b } = ends;
  const area = {
    x: Math.min(a.at.x, b.at.x) - AROUND,
    y: Math.min(a.at.y, b.at.y) - AROUND,
    width: Math.abs(a.at.x - b.at.x) + 2 * AROUND,
    height: Math.abs(a.at.y - b.at.y) + 2 * AROUND,
  };
  const { xs, ys } = ground.linesBeside(area);
  if (xs.length === 0) return undefined;
  const lanes = [a, b].flatMap(({ at, out }) =>
    Array.from({ length: LANES }, (_, i) => at.x + out * (scale.stepOut + i * scale.lane)),
  );
  const way = findWay(ends, ground, scale, { xs: [...xs, ...lanes], ys });
  return way && tidied(way);
}

/** How far beyond its ends a way is looked for, in drawing units. */
const AROUND = 1200;
/** Beside each end, for where many cables leave one wall. */
const LANES = 30;

/** Heights that are tried for a road past boxes, the least detour first, and lanes beside each. */
const PASSAGES = 24;
const BESIDES = 4;
/** How far beyond its ends a road goes around, in drawing units. */
const FARTHEST = 4000;

/** A road that passes over or under what is in the way, with the least detour. */
function passingRoad(ends: RoadEnds, ground: Ground, scale: RoadScale): readonly Point[] | undefined {
  const { a, b } = ends;
  const [top, bottom] = [Math.min(a.at.y, b.at.y), Math.max(a.at.y, b.at.y)];
  const detour = (y: number): number => Math.max(0, top - y) + Math.max(0, y - bottom);
  const middle = (top + bottom) / 2;
  const heights = [...ground.passages(a.at.x, b.at.x, top - FARTHEST, bottom + FARTHEST)]
    // Over boxes stand their names and those of rooms.
    .sort(
      ([p, overP], [q, overQ]) =>
        detour(p) - detour(q) || Number(overP) - Number(overQ) || Math.abs(p - middle) - Math.abs(q - middle) || p - q,
    )
    .slice(0, PASSAGES);
  let best: readonly Point[] | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const [height] of heights) {
    if (2 * detour(height) >= least) break;
    for (let i = 0; i < 2 * BESIDES - 1; i++) {
      // The lane itself, then one to either side by turns.
      const y = height + (i % 2 === 0 ? -1 : 1) * Math.ceil(i / 2) * scale.lane;
      const { points, clear } = overAt(ends, y, ground, scale);
      const long = lengthOf(points);
      if (!clear || long >= least) continue;
      best = points;
      least = long;
      break;
    }
  }
  return best;
}

const lengthOf = (points: readonly Point[]): number =>
  points.reduce((sum, { x, y }, i) => {
    const before = points[i - 1];
    return before === undefined ? 0 : sum + Math.abs(x - before.x) + Math.abs(y - before.y);
  }, 0);
