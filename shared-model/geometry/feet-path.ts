import type { Point } from "../model/project.ts";

/**
 * Short feet along a way on LOAD, on its lower or right-hand side: from `edge` units off its middle, `long` units. Corners
 * keep `clear` units free, and feet stand about `step` apart. The sign of protection in one ink.
 */
export function feetPath(points: readonly Point[], edge: number, long = 6, clear = 16, step = 14): string {
  let path = "";
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1];
    const b = points[i];
    if (a === undefined || b === undefined) continue;
    const length = Math.abs(a.x - b.x) + Math.abs(a.y - b.y);
    const level = a.y === b.y;
    const count = Math.floor((length - 2 * clear) / step);
    const rest = (length - count * step) / 2;
    for (let n = 0; n <= count; n++) {
      const at = rest + n * step;
      if (level) path += `M${Math.min(a.x, b.x) + at} ${a.y + edge}v${long}`;
      else path += `M${a.x + edge} ${Math.min(a.y, b.y) + at}h${long}`;
    }
  }
  return path;
}
