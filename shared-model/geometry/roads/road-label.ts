import type { Point } from "../../model/project.ts";
import { textWidth } from "../text-width.ts";
import type { Crossings } from "./crossings.ts";

/** Words of a cable on its road. */
export interface RoadLabel {
  readonly at: Point;
  /** Read from below upward. */
  readonly upright: boolean;
  readonly name: string;
  readonly rest: string;
  /** Length of the words along the road. */
  readonly long: number;
}

interface Words {
  readonly name: string;
  readonly sizeText: string;
  readonly lengthText: string;
}

/** Between words and the next bend, in pixels. */
const MARGIN = 8;
const GAP = 5;

/**
 * The name, size and length of a cable in the middle of the longest level stretch of its road that has room for them, else
 * of the longest upright one; the length first and then the size stay away where there is no such stretch.
 * @param size Of the letters; `unit` is a pixel, both in drawing units.
 * @param crossed What crosses the road: words stand on no other cable, and none lies over them.
 * @param margin Between words and the next bend, in pixels.
 */
export function roadLabel(
  points: readonly Point[],
  words: Words,
  size: number,
  unit: number,
  crossed?: Crossings,
  margin: number = MARGIN,
): RoadLabel | undefined {
  const stretches = points
    .slice(1)
    .flatMap((b, i) => stretchesOf(points[i] ?? b, b, crossed))
    .sort((p, q) => Number(p.upright) - Number(q.upright) || q.long - p.long);
  const rests = [[words.sizeText, words.lengthText], [words.sizeText], []].map((list) =>
    list.filter(Boolean).join("  "),
  );
  for (const rest of new Set(rests)) {
    const long = textWidth(words.name, size, 700) + (rest === "" ? 0 : GAP * unit + textWidth(rest, size));
    const stretch = stretches.find((each) => each.long >= long + 2 * margin * unit);
    if (stretch !== undefined) return { at: stretch.middle, upright: stretch.upright, name: words.name, rest, long };
  }
  return undefined;
}

/** A leg, or where others cross it what lies between them. */
function stretchesOf(a: Point, b: Point, crossed: Crossings | undefined) {
  const upright = a.x === b.x;
  if (crossed === undefined || (!upright && a.y !== b.y)) return [{ upright, ...between(a, b) }];
  return crossed.free(a, b).map(([from, to]) => ({
    upright,
    ...between(upright ? { x: a.x, y: from } : { x: from, y: a.y }, upright ? { x: a.x, y: to } : { x: to, y: a.y }),
  }));
}

const between = (a: Point, b: Point) => ({
  long: Math.abs(a.x - b.x) + Math.abs(a.y - b.y),
  middle: { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 },
});
