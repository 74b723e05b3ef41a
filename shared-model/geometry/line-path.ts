import type { Point } from "../model/project.ts";

const round = (value: number): number => Math.round(value * 100) / 100;

/**
 * SVG path of a polyline whose corners are arcs of `radius` drawing units, or as large as the shorter leg allows.
 * Points that repeat are dropped; an empty list gives an empty path.
 */
export function linePath(points: readonly Point[], radius = 9): string {
  const kept = points.filter((point, i) => i === 0 || point.x !== points[i - 1]?.x || point.y !== points[i - 1]?.y);
  const [first] = kept;
  const last = kept[kept.length - 1];
  if (first === undefined || last === undefined) return "";
  let path = `M${round(first.x)} ${round(first.y)}`;
  for (let i = 1; i < kept.length - 1; i++) path += corner(kept[i - 1], kept[i], kept[i + 1], radius);
  return kept.length === 1 ? path : `${path}L${round(last.x)} ${round(last.y)}`;
}

function corner(a: Point | undefined, b: Point | undefined, c: Point | undefined, radius: number): string {
  if (a === undefined || b === undefined || c === undefined) return "";
  const inLength = Math.hypot(b.x - a.x, b.y - a.y);
  const outLength = Math.hypot(c.x - b.x, c.y - b.y);
  const cross = (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x);
  if (Math.abs(cross) < 1e-6) return `L${round(b.x)} ${round(b.y)}`;
  const cosine = ((b.x - a.x) * (c.x - b.x) + (b.y - a.y) * (c.y - b.y)) / (inLength * outLength);
  const half = Math.acos(Math.max(-1, Math.min(1, cosine))) / 2;
  const cut = Math.min(radius * Math.tan(half), inLength / 2, outLength / 2);
  const arc = round(cut / Math.tan(half));
  const from = along(b, a, cut / inLength);
  const to = along(b, c, cut / outLength);
  return `L${round(from.x)} ${round(from.y)}A${arc} ${arc} 0 0 ${cross > 0 ? 1 : 0} ${round(to.x)} ${round(to.y)}`;
}

const along = (from: Point, to: Point, share: number): Point => ({
  x: from.x + (to.x - from.x) * share,
  y: from.y + (to.y - from.y) * share,
});
