import type { Point } from "../../model/project.ts";
import type { Plate, Rect } from "../box-drawing.ts";
import { CONDUCTOR_HALF, PLATE } from "../metrics.ts";
import type { Net } from "./net.ts";
import { plateWidth } from "./plate-text.ts";

/** A routed conductor on its way to becoming a drawing. */
export interface Drawn {
  readonly net: Net;
  readonly points: Point[];
  readonly fan: number;
  readonly fanEnd: number;
  readonly plates: Plate[];
}

export const plateRect = ({ at, text, vertical }: Plate): Rect => {
  const long = plateWidth(text);
  const width = vertical ? PLATE.height : long;
  const height = vertical ? long : PLATE.height;
  return { x: at.x - width / 2, y: at.y - height / 2, width, height };
};

export const overlap = (a: Rect, b: Rect, by = 0): boolean =>
  a.x < b.x + b.width + by && b.x < a.x + a.width + by && a.y < b.y + b.height + by && b.y < a.y + a.height + by;

const rectOfSegment = (a: Point, b: Point): Rect => ({
  x: Math.min(a.x, b.x) - CONDUCTOR_HALF,
  y: Math.min(a.y, b.y) - CONDUCTOR_HALF,
  width: Math.abs(a.x - b.x) + 2 * CONDUCTOR_HALF,
  height: Math.abs(a.y - b.y) + 2 * CONDUCTOR_HALF,
});

/**
 * Name of a jumper at the end that has no plate yet, or once in the middle of a short one; also of a cable conductor
 * under a green screw. The plate takes the first stretch near that end where it covers nothing else.
 */
export function placeJumperPlates(drawn: readonly Drawn[], bodies: readonly Rect[]): void {
  for (const each of drawn) {
    const missing = [each.net.a, each.net.b].map(
      (port) => port.what !== "wall" && port.what !== "splice" && !(port.what === "hole" && each.net.of === "cable"),
    );
    if (each.points.length === 2 && each.plates.length > 0 && each.net.of === "jumper") {
      const [a, b] = each.points as [Point, Point];
      const fixed = each.plates[0];
      const length = Math.abs(a.x - b.x);
      if (fixed && length < 2 * plateWidth(fixed.text) + 60) {
        // Short and straight: one plate says it for both ends.
        if (each.plates.length > 1) each.plates.length = 1;
        continue;
      }
    }
    if (missing[0]) tryPlate(each, each.points, drawn, bodies);
    if (missing[1]) tryPlate(each, [...each.points].reverse(), drawn, bodies);
  }
}

function tryPlate(own: Drawn, points: readonly Point[], drawn: readonly Drawn[], bodies: readonly Rect[]): void {
  const text = own.net.name;
  for (const clear of [7, 2]) if (tryClear(own, text, points, drawn, bodies, clear)) return;
}

/** Takes the first stretch with this much paper to the next conductor; true when one was found. */
function tryClear(
  own: Drawn,
  text: string,
  points: readonly Point[],
  drawn: readonly Drawn[],
  bodies: readonly Rect[],
  clear: number,
): boolean {
  for (const plate of candidates(text, points)) {
    const rect = plateRect(plate);
    if (bodies.some((body) => overlap(rect, body, 3))) continue;
    const blocked = drawn.some(
      (other) =>
        other.plates.some((placed) => overlap(rect, plateRect(placed), 2)) ||
        (other !== own && hits(other.points, rect, clear)) ||
        (other === own && crossesOwn(points, plate, rect)),
    );
    if (blocked) continue;
    // So near another plate of the same conductor it would say nothing new.
    if (own.plates.some(({ at }) => Math.hypot(at.x - plate.at.x, at.y - plate.at.y) < NEAR)) return true;
    own.plates.push(plate);
    return true;
  }
  return false;
}

const NEAR = 72;

const hits = (points: readonly Point[], rect: Rect, clear: number): boolean =>
  points.some((point, index) => {
    const next = points[index + 1];
    return next !== undefined && overlap(rectOfSegment(point, next), rect, clear);
  });

/** A plate lies on one stretch of its conductor; no other stretch may pass beneath it. */
function crossesOwn(points: readonly Point[], plate: Plate, rect: Rect): boolean {
  return points.some((point, index) => {
    const next = points[index + 1];
    if (next === undefined) return false;
    const on = (point.x === next.x && plate.at.x === point.x) || (point.y === next.y && plate.at.y === point.y);
    return !on && overlap(rectOfSegment(point, next), rect, 0);
  });
}

/** Along the first stretches from an end: level text where it fits, else turned along an upright stretch. */
function* candidates(text: string, points: readonly Point[]): Generator<Plate> {
  const width = plateWidth(text);
  const shares = [0.5, 0.35, 0.65, 0.2, 0.8];
  for (let index = 0; index + 1 < points.length; index += 1) {
    const a = points[index] as Point;
    const b = points[index + 1] as Point;
    const level = a.y === b.y;
    const length = Math.abs(a.x - b.x) + Math.abs(a.y - b.y);
    if (!level && a.x !== b.x) continue;
    for (const vertical of level ? [false] : [false, true]) {
      const needed = level || vertical ? width + 12 : PLATE.height + 16;
      if (length < needed) continue;
      const nearEnd = index === 0 && level ? [(width / 2 + 14) / length, ...shares] : shares;
      for (const share of nearEnd) {
        if (share * length < needed / 2 || (1 - share) * length < needed / 2) continue;
        yield { at: { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share }, text, vertical };
      }
    }
  }
}
