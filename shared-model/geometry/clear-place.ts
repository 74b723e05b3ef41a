import type { Point } from "../model/project.ts";
import type { Rect } from "./box-drawing.ts";

/**
 * The place nearest to the wanted one where a part lies clear of everything: the wanted one itself, or one beside, above
 * or below what is in the way.
 * @param part What is put down, relative to its place.
 * @param gap Drawing units between the part and what stands beside it.
 */
export function clearPlace(taken: readonly Rect[], part: Rect, wanted: Point, gap: number): Point {
  const grown = taken.map(({ x, y, width, height }) => ({
    left: x - gap - part.width - part.x,
    top: y - gap - part.height - part.y,
    right: x + width + gap - part.x,
    bottom: y + height + gap - part.y,
  }));
  const isClear = ({ x, y }: Point): boolean =>
    grown.every(({ left, top, right, bottom }) => x <= left || x >= right || y <= top || y >= bottom);
  if (isClear(wanted)) return wanted;
  // The nearest clear place lies on an edge, or in a corner of two edges.
  const nearestTo = (middle: number, all: readonly number[]): readonly number[] =>
    [middle, ...all].sort((a, b) => Math.abs(a - middle) - Math.abs(b - middle));
  const xs = nearestTo(
    wanted.x,
    grown.flatMap(({ left, right }) => [left, right]),
  );
  const ys = nearestTo(
    wanted.y,
    grown.flatMap(({ top, bottom }) => [top, bottom]),
  );
  let best: Point | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const x of xs) {
    if (Math.abs(x - wanted.x) >= least) break;
    for (const y of ys) {
      const far = Math.hypot(x - wanted.x, y - wanted.y);
      if (far >= least) break;
      if (!isClear({ x, y })) continue;
      best = { x, y };
      least = far;
      break;
    }
  }
  // The outermost edges are clear always, so there is one.
  return best ?? wanted;
}
