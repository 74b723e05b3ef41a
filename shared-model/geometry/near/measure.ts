import type { Point } from "../../model/project.ts";
import type { BoxDrawing, ConductorDrawing, Rect } from "../box-drawing.ts";

type Segment = readonly [Point, Point];

/** Stretches of a conductor outside its fans. */
export function segmentsOf(conductor: ConductorDrawing): Segment[] {
  const { points } = conductor;
  const first = Math.max(0, conductor.fanPoints - 1);
  const last = points.length - 1 - Math.max(0, (conductor.fanPointsEnd ?? 0) - 1);
  const segments: Segment[] = [];
  for (let index = first; index < last; index += 1) segments.push([points[index] as Point, points[index + 1] as Point]);
  return segments;
}

const turn = (p: Point, q: Point, r: Point): number => Math.sign((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x));

const cross = ([a, b]: Segment, [c, d]: Segment): boolean => {
  const p = turn(a, b, c);
  const q = turn(a, b, d);
  const r = turn(c, d, a);
  const s = turn(c, d, b);
  return p !== 0 && q !== 0 && r !== 0 && s !== 0 && p !== q && r !== s;
};

/** Two stretches on one line that have more than a point in common. */
const share = ([a, b]: Segment, [c, d]: Segment): boolean => {
  const along = (k: "x" | "y", o: "x" | "y"): boolean =>
    a[o] === b[o] &&
    c[o] === d[o] &&
    a[o] === c[o] &&
    Math.min(Math.max(a[k], b[k]), Math.max(c[k], d[k])) - Math.max(Math.min(a[k], b[k]), Math.min(c[k], d[k])) > 0.5;
  return along("x", "y") || along("y", "x");
};

/** A stretch enters a body by more than a conductor may to reach its place at the edge. */
const enters = ([a, b]: Segment, body: Rect): boolean => {
  const inset = 2;
  const left = body.x + inset;
  const right = body.x + body.width - inset;
  const top = body.y + inset;
  const bottom = body.y + body.height - inset;
  return (
    Math.max(a.x, b.x) > left && Math.min(a.x, b.x) < right && Math.max(a.y, b.y) > top && Math.min(a.y, b.y) < bottom
  );
};

/** A body, and the conductors that may end in it. */
export interface Body {
  readonly rect: Rect;
  readonly own: (conductor: ConductorDrawing) => boolean;
}

export function measure(conductors: readonly ConductorDrawing[], bodies: readonly Body[]): BoxDrawing["measure"] {
  const all = conductors.map((conductor) => ({ conductor, segments: segmentsOf(conductor) }));
  let bends = 0;
  let crossings = 0;
  let insulatedCrossings = 0;
  let bodyHits = 0;
  let sharedSegments = 0;
  all.forEach(({ conductor, segments }, index) => {
    bends += segments.length - 1;
    for (const other of all.slice(index + 1)) {
      for (const s of segments) {
        for (const t of other.segments) {
          if (cross(s, t)) {
            crossings += 1;
            if (!conductor.grounding && !other.conductor.grounding) insulatedCrossings += 1;
          } else if (share(s, t)) sharedSegments += 1;
        }
      }
    }
    for (const body of bodies)
      if (!body.own(conductor) && segments.some((segment) => enters(segment, body.rect))) bodyHits += 1;
  });
  return { bends, crossings, insulatedCrossings, bodyHits, sharedSegments };
}
