import type { BoxDrawing, Rect } from "../../shared-model/geometry/box-drawing.ts";
import { textWidth } from "../../shared-model/geometry/text-width.ts";
import type { Point } from "../../shared-model/model/project.ts";
import { lineAt, plateArea } from "./line-at.ts";
import { wording } from "./words.ts";

/** Drawing units from one try to the next, and how many of them to each side. */
const STEP = 8;
const ACROSS = 26;
const DOWN = 40;
/** What it costs to lie on a conductor, in drawing units of way: they are drawn under everything and found again. */
const ON_A_LINE = 90;
const WALL_ROOM = 4;

/**
 * The spot nearest to a wanted one where a disc covers nothing that is pressed or read, nor a disc that is there already;
 * over a conductor only where everything else is far. The wanted spot itself where the box has no room at all.
 * @param radius Of the disc, in drawing units.
 */
export function clearSpot(
  drawing: BoxDrawing,
  wanted: Point,
  radius: number,
  discs: readonly (Point & { readonly radius: number })[],
): Point {
  const taken = takenAreas(drawing);
  let best = wanted;
  let least = Number.POSITIVE_INFINITY;
  for (let i = -ACROSS; i <= ACROSS; i++) {
    for (let j = -DOWN; j <= DOWN; j++) {
      const at = { x: wanted.x + i * STEP, y: wanted.y + j * STEP };
      const way = Math.hypot(at.x - wanted.x, at.y - wanted.y);
      if (way >= least || !isInside(drawing, at, radius)) continue;
      if (taken.some((area) => touches(area, at, radius))) continue;
      if (discs.some((disc) => Math.hypot(disc.x - at.x, disc.y - at.y) < disc.radius + radius + 1)) continue;
      const cost = way + (lineAt(drawing, at) === undefined ? 0 : ON_A_LINE);
      if (cost < least) [best, least] = [at, cost];
    }
  }
  return best;
}

const isInside = ({ width, height }: BoxDrawing, { x, y }: Point, radius: number): boolean => {
  const room = radius + WALL_ROOM;
  return x >= room && y >= room && x <= width - room && y <= height - room;
};

const touches = (area: Rect, { x, y }: Point, radius: number): boolean =>
  Math.hypot(
    x - Math.min(Math.max(x, area.x), area.x + area.width),
    y - Math.min(Math.max(y, area.y), area.y + area.height),
  ) < radius;

const square = ({ x, y }: Point, half: number): Rect => ({
  x: x - half,
  y: y - half,
  width: 2 * half,
  height: 2 * half,
});

/** Words that stand over a middle, with those under them. */
const words = ({ x, y }: Point, text: string, size: number): Rect => {
  const width = textWidth(text, size, 700);
  return { x: x - width / 2, y: y - size, width, height: size + 4 };
};

/** Everything in a box that must stay seen and pressable, conductors apart. */
function takenAreas(drawing: BoxDrawing): readonly Rect[] {
  return [
    ...drawing.devices.flatMap(({ body, terminals }) => [
      body,
      ...terminals.flatMap(({ block, screw, holes }) => [
        ...(block === undefined ? [] : [block]),
        square(screw, 8),
        ...holes.map(({ at }) => square(at, 8)),
      ]),
    ]),
    ...drawing.splices.flatMap(({ x, rows, freeRow, name, caption, labelAt }) => {
      const ys = [...rows.map(({ y }) => y), freeRow.y];
      const top = Math.min(...ys) - 12;
      return [
        { x: x - 12, y: top, width: 24, height: Math.max(...ys) + 12 - top },
        words(labelAt, name, 15),
        words({ x: labelAt.x, y: labelAt.y + 13.5 }, caption, 11),
      ];
    }),
    ...drawing.caps.map(({ at }) => square(at, 12)),
    ...drawing.conductors.flatMap(({ plates, grips }) => [
      ...plates.map(plateArea),
      ...grips.map((grip) => square(grip, 8)),
    ]),
    ...drawing.sheaths.map(({ at }) => square(at, 26)),
    ...(drawing.bond === undefined
      ? []
      : [
          square(drawing.bond.at, 26),
          words(drawing.bond.labelAt, wording.groundScrew, 11.5),
          square(drawing.bond.labelAt, 10),
        ]),
  ];
}
