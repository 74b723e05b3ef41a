import type { Point } from "../../model/project.ts";
import { textWidth } from "../text-width.ts";

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

/** Between words and the next bend. */
const MARGIN = 8;
const GAP = 5;

/**
 * The name, size and length of a cable in the middle of the longest level leg of its road that has room for them, else of
 * the longest upright leg; the length first and then the size stay away where there is no such leg.
 * @param size Of the letters; `unit` is a pixel, both in drawing units.
 */
export function roadLabel(points: readonly Point[], words: Words, size: number, unit: number): RoadLabel | undefined {
  const legs = points
    .slice(1)
    .map((b, i) => legOf(points[i] ?? b, b))
    .sort((p, q) => Number(p.upright) - Number(q.upright) || q.long - p.long);
  const rests = [[words.sizeText, words.lengthText], [words.sizeText], []].map((list) =>
    list.filter(Boolean).join("  "),
  );
  for (const rest of new Set(rests)) {
    const long = textWidth(words.name, size, 700) + (rest === "" ? 0 : GAP * unit + textWidth(rest, size));
    const leg = legs.find((each) => each.long >= long + 2 * MARGIN * unit);
    if (leg !== undefined) return { at: leg.middle, upright: leg.upright, name: words.name, rest, long };
  }
  return undefined;
}

const legOf = (a: Point, b: Point) => ({
  upright: a.x === b.x,
  long: Math.abs(a.x - b.x) + Math.abs(a.y - b.y),
  middle: { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 },
});
