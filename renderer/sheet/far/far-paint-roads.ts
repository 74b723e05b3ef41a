import type { Point } from "../../../shared-model/model/project.ts";
import type { Road } from "../sheet-roads.ts";
import type { Ground } from "./far-paint.ts";

/** What is to be told apart among the cables. */
export interface RoadTraits {
  readonly isNew: (road: Road) => boolean;
  readonly isChosen: (road: Road) => boolean;
  /** On LOAD of a ground-fault device: with feet. */
  readonly isGuarded: (road: Road) => boolean;
}

/** In pixels. */
const LINE = 1.5;
const NEW_LINE = 2.6;
const BEND = 4;
const FOOT = { long: 4, apart: 6, clear: 5 } as const;
/** More than this in view are drawn without bends: from so far they cannot be seen. */
const MANY = 500;
/** A leg shorter than this has no room for feet. */
const LEAST_LEG = 16;

/** Paints the cables in view as single lines, those on LOAD with feet. */
export function paintRoads(ground: Ground, roads: readonly Road[], traits: RoadTraits): void {
  const seen = roads.filter(({ points }) => isSeen(ground, points));
  const { context, dots, ink } = ground;
  context.setTransform(1, 0, 0, 1, 0, 0);
  const many = seen.length > MANY;
  const plain: Road[] = [];
  const fresh: Road[] = [];
  const chosen: Road[] = [];
  for (const road of seen) (traits.isChosen(road) ? chosen : traits.isNew(road) ? fresh : plain).push(road);
  const paint = many ? paintStraight : paintBent;
  paint(ground, plain, ink.quiet, many && dots < 1.5 ? 1 : LINE);
  paint(ground, fresh, ink.fresh, NEW_LINE);
  paint(ground, chosen, ink.accent, NEW_LINE);
  paintFeet(ground, seen.filter(traits.isGuarded));
}

function isSeen({ x, y, zoom, width, height }: Ground, points: readonly Point[]): boolean {
  let [left, top, right, bottom] = [1e9, 1e9, -1e9, -1e9];
  for (const point of points) {
    if (point.x < left) left = point.x;
    if (point.x > right) right = point.x;
    if (point.y < top) top = point.y;
    if (point.y > bottom) bottom = point.y;
  }
  return left * zoom + x < width && right * zoom + x > 0 && top * zoom + y < height && bottom * zoom + y > 0;
}

/**
 * Level and upright legs as bars on whole pixels: crisp, and far faster than strokes. What goes on straight as far as
 * pixels tell is one bar: from so far most legs are shorter than a pixel.
 */
function paintStraight({ context, x, y, zoom, dots }: Ground, roads: readonly Road[], ink: string, line: number): void {
  const thick = Math.max(1, Math.round(line * dots));
  const half = thick >> 1;
  const [scale, left, top] = [zoom * dots, x * dots, y * dots];
  context.fillStyle = ink;
  const bar = (ax: number, ay: number, bx: number, by: number): void =>
    context.fillRect(Math.min(ax, bx), Math.min(ay, by), Math.abs(ax - bx) + thick, Math.abs(ay - by) + thick);
  for (const { points } of roads) {
    let from: Point | undefined;
    // The bar that is being made longer, and where it has come to.
    let [startX, startY, endX, endY] = [0, 0, 0, 0];
    for (const to of points) {
      const [toX, toY] = [Math.round(to.x * scale + left) - half, Math.round(to.y * scale + top) - half];
      if (from === undefined) [startX, startY, endX, endY] = [toX, toY, toX, toY];
      else if (from.x !== to.x && from.y !== to.y) {
        // A person may lead a cable as it likes.
        bar(startX, startY, endX, endY);
        context.lineWidth = thick;
        context.strokeStyle = ink;
        context.beginPath();
        context.moveTo(endX + half, endY + half);
        context.lineTo(toX + half, toY + half);
        context.stroke();
        [startX, startY, endX, endY] = [toX, toY, toX, toY];
      } else if (goesOn(startX, endX, toX, startY, endY, toY) || goesOn(startY, endY, toY, startX, endX, toX))
        [endX, endY] = [toX, toY];
      else {
        bar(startX, startY, endX, endY);
        [startX, startY, endX, endY] = [endX, endY, toX, toY];
      }
      from = to;
    }
    if (from !== undefined) bar(startX, startY, endX, endY);
  }
}

/** Whether what came from `start` to `end` goes on to `to` without turning back, all of it on one line across. */
const goesOn = (start: number, end: number, to: number, ...across: [number, number, number]): boolean =>
  across[0] === across[1] && across[1] === across[2] && (end - start) * (to - end) >= 0;

function paintBent({ context, x, y, zoom, dots }: Ground, roads: readonly Road[], ink: string, line: number): void {
  if (roads.length === 0) return;
  const thick = line * dots;
  // A line of an odd number of pixels is crisp in the middle of one.
  const shift = Math.round(thick) % 2 === 1 ? 0.5 : 0;
  const place = (at: number, offset: number): number => Math.round((at * zoom + offset) * dots) + shift;
  context.strokeStyle = ink;
  context.lineWidth = thick;
  context.lineJoin = "round";
  context.beginPath();
  for (const { points } of roads) {
    for (let i = 0; i < points.length; i++) {
      const at = points[i];
      if (at === undefined) break;
      const next = points[i + 1];
      if (i === 0) context.moveTo(place(at.x, x), place(at.y, y));
      else if (next === undefined) context.lineTo(place(at.x, x), place(at.y, y));
      else
        context.arcTo(
          place(at.x, x),
          place(at.y, y),
          place(next.x, x),
          place(next.y, y),
          radiusAt(points, i, zoom, dots),
        );
    }
  }
  context.stroke();
}

/** Of a bend: less where a leg beside it is short. */
function radiusAt(points: readonly Point[], i: number, zoom: number, dots: number): number {
  const [before, at, after] = [points[i - 1], points[i], points[i + 1]];
  if (before === undefined || at === undefined || after === undefined) return 0;
  const legs = Math.min(
    Math.abs(before.x - at.x) + Math.abs(before.y - at.y),
    Math.abs(after.x - at.x) + Math.abs(after.y - at.y),
  );
  return Math.min(BEND, (legs * zoom) / 2) * dots;
}

/** On the lower or right-hand side of a line, as near. */
function paintFeet({ context, x, y, zoom, dots, ink }: Ground, roads: readonly Road[]): void {
  const thick = Math.max(1, Math.round(dots));
  const long = Math.round(FOOT.long * dots);
  context.fillStyle = ink.quiet;
  for (const { points } of roads) {
    for (let i = 1; i < points.length; i++) {
      const [a, b] = [points[i - 1], points[i]];
      if (a === undefined || b === undefined || (a.x !== b.x && a.y !== b.y)) continue;
      const length = (Math.abs(a.x - b.x) + Math.abs(a.y - b.y)) * zoom;
      if (length < LEAST_LEG) continue;
      const count = Math.floor((length - 2 * FOOT.clear) / FOOT.apart);
      const rest = (length - count * FOOT.apart) / 2;
      const [left, top] = [Math.min(a.x, b.x) * zoom + x, Math.min(a.y, b.y) * zoom + y];
      for (let n = 0; n <= count; n++) {
        const along = rest + n * FOOT.apart;
        if (a.y === b.y) context.fillRect(Math.round((left + along) * dots), Math.round(top * dots), thick, long);
        else context.fillRect(Math.round(left * dots), Math.round((top + along) * dots), long, thick);
      }
    }
  }
}
