import type { Rect } from "../../geometry/box-drawing.ts";
import type { Road } from "../../geometry/roads/road-map.ts";
import type { Point } from "../../model/project.ts";
import type { TextMark } from "../display-list.ts";
import { text } from "../marks.ts";

const LETTERS = 11;

/** The part of a way that lies in an area, from the end that does, to where it leaves; all of it where it does not leave. */
export function wayWithin(points: readonly Point[], area: Rect): readonly Point[] {
  const first = points[0];
  const way = first !== undefined && isWithin(first, area) ? points : [...points].reverse();
  const kept: Point[] = [];
  for (const point of way) {
    const last = kept[kept.length - 1];
    if (isWithin(point, area)) kept.push(point);
    else {
      const edge = {
        x: Math.max(area.x, Math.min(area.x + area.width, point.x)),
        y: Math.max(area.y, Math.min(area.y + area.height, point.y)),
      };
      if (last !== undefined) kept.push(edge);
      break;
    }
  }
  return kept;
}

/** Places beside a cable, at the edge over which it leaves an area, for the word where it goes; the best first. */
export function leavingWords(
  { points }: Road,
  area: Rect,
  road: number,
  unit: number,
  words: string,
): readonly TextMark[] {
  const way = wayWithin(points, area);
  const [from, to] = [way[way.length - 2], way[way.length - 1]];
  if (from === undefined || to === undefined) return [];
  const lettering = { size: LETTERS * unit, weight: 600 } as const;
  const over = to.y - road / 2 - 4 * unit;
  const under = to.y + road / 2 + (4 + LETTERS * 0.7) * unit;
  const right = area.x + area.width;
  if (from.y === to.y && to.x !== from.x) {
    const atRight = to.x >= right;
    const x = atRight ? right - 2 * unit : area.x + 2 * unit;
    const anchor = atRight ? "end" : "start";
    // The last is clear of the feet of a cable on LOAD.
    return [over, under, under + 5 * unit].map((y) => text(words, x, y, { ...lettering, anchor }));
  }
  const y = to.y >= area.y + area.height ? area.y + area.height - 3 * unit : area.y + LETTERS * unit;
  const side = road / 2 + 4 * unit;
  return [text(words, to.x + side, y, lettering), text(words, to.x - side, y, { ...lettering, anchor: "end" })];
}

const isWithin = ({ x, y }: Point, area: Rect): boolean =>
  x >= area.x && x <= area.x + area.width && y >= area.y && y <= area.y + area.height;
