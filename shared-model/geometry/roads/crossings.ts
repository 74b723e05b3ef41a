import type { Point } from "../../model/project.ts";

interface Way {
  readonly points: readonly Point[];
}

/** A level or upright leg: where it lies across, and from where to where it goes. */
interface Leg {
  readonly across: number;
  readonly from: number;
  readonly to: number;
}

/** Tells where other roads lie over a leg. */
export interface Crossings {
  /** Spans of a leg that are free, along it, in drawing units: x of a level leg, y of an upright one. */
  readonly free: (a: Point, b: Point) => readonly (readonly [from: number, to: number])[];
}

/** Side of the strips that legs are looked up in, in drawing units. */
const STRIP = 1200;

/** @param road How wide all are drawn; looked into when it is first asked. */
export function crossingsOf(roads: readonly Way[], road: number): Crossings {
  let strips: { readonly upright: Strips; readonly level: Strips } | undefined;
  return {
    free(a, b) {
      strips ??= stripsOf(roads);
      const isUpright = a.x === b.x;
      const [across, p, q] = isUpright ? [a.x, a.y, b.y] : [a.y, a.x, b.x];
      const [from, to] = [Math.min(p, q), Math.max(p, q)];
      const over: number[] = [];
      const side = isUpright ? strips.level : strips.upright;
      for (let strip = Math.floor(from / STRIP); strip <= Math.floor(to / STRIP); strip++)
        // Strictly inside: at its ends stand the legs that it goes on in.
        for (const leg of side.get(strip) ?? [])
          if (leg.across > from && leg.across < to && leg.from - road / 2 < across && leg.to + road / 2 > across)
            over.push(leg.across);
      return spansBetween(from, to, over, road / 2);
    },
  };
}

type Strips = ReadonlyMap<number, readonly Leg[]>;

function stripsOf(roads: readonly Way[]): { readonly upright: Strips; readonly level: Strips } {
  const [upright, level] = [new Map<number, Leg[]>(), new Map<number, Leg[]>()];
  const add = (to: Map<number, Leg[]>, across: number, p: number, q: number): void => {
    const strip = Math.floor(across / STRIP);
    const leg = { across, from: Math.min(p, q), to: Math.max(p, q) };
    const list = to.get(strip);
    if (list === undefined) to.set(strip, [leg]);
    else list.push(leg);
  };
  for (const { points } of roads)
    for (let i = 1; i < points.length; i++) {
      const [a, b] = [points[i - 1], points[i]];
      if (a === undefined || b === undefined) continue;
      if (a.x === b.x) add(upright, a.x, a.y, b.y);
      else if (a.y === b.y) add(level, a.y, a.x, b.x);
    }
  return { upright, level };
}

function spansBetween(
  from: number,
  to: number,
  over: number[],
  half: number,
): readonly (readonly [from: number, to: number])[] {
  const spans: (readonly [number, number])[] = [];
  let at = from;
  for (const place of over.sort((a, b) => a - b)) {
    if (place - half > at) spans.push([at, place - half]);
    at = Math.max(at, place + half);
  }
  if (to > at) spans.push([at, to]);
  return spans;
}
