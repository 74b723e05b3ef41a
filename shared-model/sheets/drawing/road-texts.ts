import type { Rect } from "../../geometry/box-drawing.ts";
import { type Crossings, crossingsOf } from "../../geometry/roads/crossings.ts";
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
import { roadWords } from "./road-marks.ts";
import { legsOf } from "./room-beside.ts";
import { isOnLoad } from "./scene-answers.ts";

/** Half of what words on a way are high, in pixels. */
const LETTERS_HALF = 8;

const inset = ({ x, y, width, height }: Rect, by: number): Rect => ({
  x: x + by,
  y: y + by,
  width: width - 2 * by,
  height: height - 2 * by,
});

/** What the feet of a cable on LOAD reach out below it or to its right, in pixels. */
const FEET = 6;

/** Names of cables on their ways, and where they go that leave this part, as far as there is room for it. */
export function roadTexts(
  { input, installation }: HouseScene,
  roads: readonly Road[],
  shown: ReadonlySet<EnclosureId>,
  extent: Rect,
  wide: number,
  unit: number,
  bodies: readonly Mark[],
): readonly Mark[] {
  const marks: Mark[] = [];
  const taken = [...textsOf(bodies)];
  const occupied = [...taken.map(({ box }) => box), ...hatched(bodies)];
  const isFree = (mark: Mark): boolean =>
    textsOf([mark]).every(({ box }) => !taken.some((each) => overlap(each.box, box)));
  const put = (each: readonly Mark[]): void => {
    marks.push(...each);
    const texts = textsOf(each);
    taken.push(...texts);
    occupied.push(...texts.map(({ box }) => box));
  };
  // A way that runs along the edge is half cut off, and words on it would be too.
  const readable = inset(extent, wide / 2 + LETTERS_HALF * unit);
  const crossed = clearOf(crossingsOf(roads, wide + unit), occupied, LETTERS_HALF * unit);
  // Where lanes lie side by side, the shortest way has the fewest places for its words.
  for (const road of [...roads].sort((p, q) => longOf(p.points) - longOf(q.points))) {
    const on = (area: Rect) => roadWords(road, wayWithin(road.points, area), wide, unit, crossed);
    const words = [on(extent), on(readable)].find((each) => textsOf(each).every(({ box }) => isInside(box, extent)));
    if (words?.every(isFree)) put(words);
  }
  const ways = roads.flatMap(({ cable: id, points }) => {
    const cable = installation.cables[id];
    const isFooted = cable !== undefined && isOnLoad(input, cable);
    const feet = isFooted ? points.map(({ x, y }) => ({ x: x + FEET * unit, y: y + FEET * unit })) : [];
    return [points, feet].flatMap((each) => legsOf(each, wide + unit));
  });
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

const longOf = (points: readonly Point[]): number =>
  points.reduce(
    (sum, { x, y }, i) => sum + Math.abs(x - (points[i - 1]?.x ?? x)) + Math.abs(y - (points[i - 1]?.y ?? y)),
    0,
  );

/** What is free of a leg besides, where words and hatching stand over it. @param half Of what words on it are high. */
const clearOf = (crossed: Crossings, occupied: readonly Rect[], half: number): Crossings => ({
  free(a, b) {
    const isUpright = a.x === b.x;
    const lane = legsOf([a, b], 2 * half)[0] ?? { ...a, width: 0, height: 0 };
    const over = occupied
      .filter((box) => overlap(box, lane))
      .map(({ x, y, width, height }) => (isUpright ? ([y, y + height] as const) : ([x, x + width] as const)));
    return over.reduce((spans, taken) => spans.flatMap((span) => without(span, taken)), crossed.free(a, b));
  },
});

type Span = readonly [from: number, to: number];

const without = ([from, to]: Span, [start, end]: Span): readonly Span[] =>
  (
    [
      [from, Math.min(to, start)],
      [Math.max(from, end), to],
    ] as const
  ).filter(([first, last]) => last > first);

/** Too much in a box is hatched beyond its frame, and no words stand there. */
const hatched = (marks: readonly Mark[], dx = 0, dy = 0): readonly Rect[] =>
  marks.flatMap((mark) => {
    if (mark.kind === "group") {
      const { x, y } = mark.shift ?? { x: 0, y: 0 };
      return mark.scale === undefined ? hatched(mark.marks, dx + x, dy + y) : [];
    }
    const { kind } = mark;
    return kind === "rect" && mark.hatch !== undefined ? [{ ...mark, x: dx + mark.x, y: dy + mark.y }] : [];
  });

const isInside = (a: Rect, area: Rect): boolean =>
  a.x >= area.x && a.y >= area.y && a.x + a.width <= area.x + area.width && a.y + a.height <= area.y + area.height;

/** Paper under words, so that the outline of a room does not run through them. */
export const groundsOf = (marks: readonly Mark[], unit: number): readonly Mark[] =>
  textsOf(marks).map(({ box }) => groundOf(box, unit));

/** Paper under words at boxes that a cable runs through: they are read, and the eye finds the cable again beyond them. */
export function groundsOnWays(
  bodies: readonly Mark[],
  ways: readonly (readonly Point[])[],
  wide: number,
  unit: number,
): readonly Mark[] {
  const legs = ways.flatMap((points) => legsOf(points, wide));
  return textsOf(bodies).flatMap(({ box }) =>
    legs.some((leg) => overlap(leg, box)) ? [groundOf(box, 0.5 * unit)] : [],
  );
}

const groundOf = ({ x, y, width, height }: Rect, by: number): Mark =>
  rect({ x: x - by, y: y - by, width: width + 2 * by, height: height + 2 * by }, { fill: PAPER });
