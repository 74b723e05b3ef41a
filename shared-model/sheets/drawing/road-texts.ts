import type { Rect } from "../../geometry/box-drawing.ts";
import type { Road } from "../../geometry/roads/road-map.ts";
import type { EnclosureId } from "../../model/ids.ts";
import type { Point } from "../../model/project.ts";
import type { Mark } from "../display-list.ts";
import { rect } from "../marks.ts";
import { PAPER } from "../page/inks.ts";
import { overlap, textsOf } from "../text-boxes.ts";
import { DRAWING } from "./drawing-words.ts";
import type { HouseScene } from "./house-scene.ts";
import { leavingWords, wayWithin } from "./leaving-words.ts";
import { roadWords } from "./middle-marks.ts";

/** Half of what words on a way are high, in pixels. */
const LETTERS_HALF = 8;

const inset = ({ x, y, width, height }: Rect, by: number): Rect => ({
  x: x + by,
  y: y + by,
  width: width - 2 * by,
  height: height - 2 * by,
});

/** Names of cables on their ways, and where they go that leave this part, as far as there is room for it. */
export function roadTexts(
  { installation }: HouseScene,
  roads: readonly Road[],
  shown: ReadonlySet<EnclosureId>,
  extent: Rect,
  wide: number,
  unit: number,
  bodies: readonly Mark[],
): readonly Mark[] {
  const marks: Mark[] = [];
  const taken = [...textsOf(bodies)];
  const isFree = (mark: Mark): boolean =>
    textsOf([mark]).every(({ box }) => !taken.some((each) => overlap(each.box, box)));
  const put = (each: readonly Mark[]): void => {
    marks.push(...each);
    taken.push(...textsOf(each));
  };
  // A way that runs along the edge is half cut off, and words on it would be too.
  const readable = inset(extent, wide / 2 + LETTERS_HALF * unit);
  for (const road of roads) {
    const on = (area: Rect) => roadWords(road, wayWithin(road.points, area), wide, unit);
    const words = [on(extent), on(readable)].find((each) => textsOf(each).every(({ box }) => isInside(box, extent)));
    if (words?.every(isFree)) put(words);
  }
  const ways = roads.flatMap(({ points }) => legsOf(points, wide + unit));
  for (const road of roads) {
    const away = road.boxes.find((id) => !shown.has(id));
    if (away === undefined) continue;
    const name = DRAWING.to(installation.enclosures[away]?.name ?? "");
    const free = leavingWords(road, extent, wide, unit, name).find(
      (mark) => isFree(mark) && isInside(mark.box, extent) && !ways.some((each) => overlap(each, mark.box)),
    );
    if (free !== undefined) put([free]);
  }
  return marks;
}

/** What a way covers, leg by leg. */
const legsOf = (points: readonly Point[], wide: number): readonly Rect[] =>
  points.slice(1).map((b, i) => {
    const a = points[i] ?? b;
    return {
      x: Math.min(a.x, b.x) - wide / 2,
      y: Math.min(a.y, b.y) - wide / 2,
      width: Math.abs(a.x - b.x) + wide,
      height: Math.abs(a.y - b.y) + wide,
    };
  });

const isInside = (a: Rect, area: Rect): boolean =>
  a.x >= area.x && a.y >= area.y && a.x + a.width <= area.x + area.width && a.y + a.height <= area.y + area.height;

/** Paper under words, so that the outline of a room does not run through them. */
export const groundsOf = (marks: readonly Mark[], unit: number): readonly Mark[] =>
  textsOf(marks).map(({ box: { x, y, width, height } }) =>
    rect({ x: x - unit, y: y - unit, width: width + 2 * unit, height: height + 2 * unit }, { fill: PAPER }),
  );
