import type { Point } from "../../model/project.ts";
import { onPitch } from "../circuit/tree.ts";
import { PITCH } from "../metrics.ts";
import type { RoadEnd, RoadEnds, RoadScale } from "./road.ts";

type Axis = "x" | "y";

const across = (axis: Axis): Axis => (axis === "x" ? "y" : "x");
const axisOf = (end: RoadEnd): Axis => (end.upright === true ? "y" : "x");
const at = (axis: Axis, along: number, beside: number): Point =>
  axis === "x" ? { x: along, y: beside } : { x: beside, y: along };

/** Near, a cable is drawn with its stub, away without: up to here a bend beside a wall is one at the end of the stub. */
const STUB = 200;

/**
 * The way of a cable that a person has bent: out of both walls as it has to, level and upright, through its bends in
 * turn. A box that moves takes the end of its cable along and no bend.
 */
export function bentRoad({ a, b, bends = [] }: RoadEnds, { stepOut }: RoadScale): readonly Point[] {
  const points: Point[] = [a.at];
  let here = a.at;
  let axis = axisOf(a);
  const go = (to: Point): void => {
    points.push(to);
    here = to;
  };
  bends.forEach((bend, i) => {
    let to = bend;
    if (i === 0) to = besideStub(a, to, stepOut);
    if (i === bends.length - 1) to = besideStub(b, to, stepOut);
    if (i === 0 && !isOutside(a, to, stepOut)) {
      go(outOf(a, stepOut));
      axis = across(axis);
    }
    if (here.x !== to.x && here.y !== to.y) go(at(axis, to[axis], here[across(axis)]));
    else if (here[across(axis)] !== to[across(axis)]) axis = across(axis);
    // Where it came along one way it leaves by the other.
    if (here[axis] !== to[axis]) axis = across(axis);
    go(to);
  });
  const own = axisOf(b);
  if (!isOutside(b, here, stepOut)) {
    const step = outOf(b, stepOut);
    go(at(own, step[own], here[across(own)]));
    go(step);
  } else go(at(own, here[own], b.at[across(own)]));
  return tidied([...points, b.at]);
}

const outOf = (end: RoadEnd, stepOut: number): Point => {
  const axis = axisOf(end);
  return at(axis, end.at[axis] + end.out * stepOut, end.at[across(axis)]);
};

/** Whether a point lies so far out of a wall that a cable can come from there. */
const isOutside = (end: RoadEnd, point: Point, stepOut: number): boolean =>
  (point[axisOf(end)] - end.at[axisOf(end)]) * end.out >= stepOut - 0.01;

function besideStub(end: RoadEnd, bend: Point, stepOut: number): Point {
  const axis = axisOf(end);
  const out = (bend[axis] - end.at[axis]) * end.out;
  return out >= stepOut || out < -STUB ? bend : at(axis, outOf(end, stepOut)[axis], bend[across(axis)]);
}

/** Without points that the line passes straight, or where it only turns back on itself. */
export function tidied(points: readonly Point[]): readonly Point[] {
  const kept: Point[] = [];
  for (const point of points) {
    for (;;) {
      const [p, q] = [kept[kept.length - 2], kept[kept.length - 1]];
      const isSame = q !== undefined && q.x === point.x && q.y === point.y;
      const isStraight =
        p !== undefined && q !== undefined && ((p.x === q.x && q.x === point.x) || (p.y === q.y && q.y === point.y));
      if (!isSame && !isStraight) break;
      kept.pop();
    }
    kept.push(point);
  }
  return kept;
}

/** Which way a leg of a road can be drawn aside: across itself. */
export const acrossLeg = (a: Point, b: Point): Axis => (a.y === b.y ? "y" : "x");

/** A leg shorter than this beside a stub has no room for another bend. */
const ROOM = 2 * PITCH;

/**
 * The bends of a cable after one leg of its way was drawn aside. The legs at its ends stay where they leave the walls, so
 * a further bend is made there.
 * @param points The way as it was drawn.
 * @param leg 0: the one at end `a`.
 * @param to Where the leg is to run, across itself; it comes to lie on the pitch of the drawing.
 * @returns Undefined where there is no room for a bend.
 */
export function bendLeg(
  { a, b }: RoadEnds,
  points: readonly Point[],
  leg: number,
  to: number,
  { stepOut }: RoadScale,
): readonly Point[] | undefined {
  const [from, until] = [points[leg], points[leg + 1]];
  if (from === undefined || until === undefined) return undefined;
  const axis = acrossLeg(from, until);
  const aside = (point: Point): Point => ({ ...point, [axis]: onPitch(to) });
  const isFirst = leg === 0;
  const isLast = leg === points.length - 2;
  const start = isFirst ? outOf(a, stepOut) : from;
  const end = isLast ? outOf(b, stepOut) : until;
  if ((isFirst || isLast) && Math.abs(start.x - end.x) + Math.abs(start.y - end.y) < ROOM) return undefined;
  const corners = tidied([
    ...points.slice(0, leg),
    ...(isFirst ? [a.at, start] : []),
    aside(start),
    aside(end),
    ...(isLast ? [end, b.at] : []),
    ...points.slice(leg + 2),
  ]).slice(1, -1);
  return bendsOf(corners);
}

/**
 * What has to be kept of the corners of a way, so that it can be found again from its ends: the outermost two follow from
 * where the walls are. Of an upright between two boxes only where it runs is left.
 */
function bendsOf(corners: readonly Point[]): readonly Point[] {
  const [first, second] = corners;
  if (first === undefined || second === undefined) return [];
  if (corners.length > 2) return corners.slice(1, -1);
  return [{ x: Math.round((first.x + second.x) / 2), y: Math.round((first.y + second.y) / 2) }];
}
