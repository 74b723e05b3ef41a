import type { Point } from "../model/project.ts";
import type { ConductorDrawing, Plate } from "./box-drawing.ts";
import { textWidth } from "./text-width.ts";

/**
 * Where the two bands of a re-identified end lie across its conductor: before its code plate, beyond it, or past the next
 * bend. Undefined without room.
 */
export function bandLegs(
  { points, plates }: ConductorDrawing,
  end: Point,
): readonly (readonly [Point, Point])[] | undefined {
  const start = bandSpot(fromEnd(points, end), plates);
  return start && ([0, 7] as const).map((offset) => [start(offset), start(offset + 5)] as const);
}

/** Length of both bands, and what keeps them off a hole, a plate or a bend. */
const BANDS = 12;
const CLEAR = 9;

/** Points from one end inward. */
function fromEnd(points: readonly Point[], at: Point): readonly Point[] {
  const [first = at] = points;
  const last = points[points.length - 1] ?? at;
  const near = Math.hypot(first.x - at.x, first.y - at.y) < Math.hypot(last.x - at.x, last.y - at.y);
  return near ? points : [...points].reverse();
}

/** The point of the conductor at some units past where the bands may begin. */
function bandSpot(points: readonly Point[], plates: readonly Plate[]): ((past: number) => Point) | undefined {
  for (let i = 1; i < Math.min(points.length, 4); i++) {
    const a = points[i - 1];
    const b = points[i];
    if (a === undefined || b === undefined) continue;
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    const stops = [...plateSpans(plates, a, b), { from: length, to: length }].sort((p, q) => p.from - q.from);
    let from = CLEAR;
    for (const stop of stops) {
      if (stop.from - from >= BANDS + 2) {
        const start = from;
        return (past) => ({
          x: a.x + ((b.x - a.x) * (start + past)) / length,
          y: a.y + ((b.y - a.y) * (start + past)) / length,
        });
      }
      from = Math.max(from, stop.to + 2);
    }
  }
  return undefined;
}

/** Stretches of a leg that code plates cover. */
function plateSpans(
  plates: readonly Plate[],
  a: Point,
  b: Point,
): readonly { readonly from: number; readonly to: number }[] {
  const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  return plates.flatMap(({ at, text, vertical }) => {
    const along = ((at.x - a.x) * (b.x - a.x) + (at.y - a.y) * (b.y - a.y)) / length;
    const across = Math.abs((at.x - a.x) * (b.y - a.y) - (at.y - a.y) * (b.x - a.x)) / length;
    if (across > 8 || along < -60 || along > length + 60) return [];
    const isUpright = a.x === b.x;
    const half = isUpright === vertical ? textWidth(text, 11, 640) / 2 + 3 : 7;
    return [{ from: along - half, to: along + half }];
  });
}
