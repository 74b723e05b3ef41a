import type { Point } from "../../model/project.ts";
import type { BoxDrawing, ConductorDrawing, Rect, SpliceDrawing } from "../box-drawing.ts";
import { PLATE, SPLICE_HALF } from "../metrics.ts";
import { textWidth } from "../text-width.ts";

/** A straight stretch of a conductor, upright or level. */
export interface Leg {
  readonly from: Point;
  readonly to: Point;
}

export const legsOf = (points: readonly Point[]): readonly Leg[] =>
  points.slice(1).flatMap((to, i) => {
    const from = points[i];
    return from === undefined || (from.x === to.x && from.y === to.y) ? [] : [{ from, to }];
  });

/** Legs of a conductor beyond the fan out of its sheath. */
export const clearLegs = ({ points, fanPoints, fanPointsEnd = 0 }: ConductorDrawing): readonly Leg[] =>
  legsOf(points.slice(Math.max(0, fanPoints - 1), points.length - Math.max(0, fanPointsEnd - 1)));

export const overlaps = (a: Rect, b: Rect): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

export const grown = ({ x, y, width, height }: Rect, by: number): Rect => ({
  x: x - by,
  y: y - by,
  width: width + 2 * by,
  height: height + 2 * by,
});

export const around = ({ x, y }: Point, width: number, height: number): Rect => ({
  x: x - width / 2,
  y: y - height / 2,
  width,
  height,
});

export const legArea = ({ from, to }: Leg, by: number): Rect =>
  grown(
    {
      x: Math.min(from.x, to.x),
      y: Math.min(from.y, to.y),
      width: Math.abs(to.x - from.x),
      height: Math.abs(to.y - from.y),
    },
    by,
  );

/** Everything that is drawn in a box besides its lines. */
export const takenAreas = (drawing: BoxDrawing): readonly Rect[] => [...thingAreas(drawing), ...wordAreas(drawing)];

/** Bodies, capsules, plates. */
export const thingAreas = (drawing: BoxDrawing): readonly Rect[] => [
  ...drawing.devices.flatMap(({ body, terminals }) => [
    body,
    ...terminals.map(({ block, screw }) => block ?? around(screw, 24, 24)),
  ]),
  ...drawing.splices.map(capsuleArea),
  ...plateAreas(drawing),
  ...drawing.caps.map(({ at }) => around(at, 26, 16)),
  ...(drawing.bond === undefined ? [] : [around({ x: drawing.bond.at.x, y: drawing.bond.at.y + 8 }, 26, 40)]),
];

export function capsuleArea({ x, rows, freeRow }: SpliceDrawing): Rect {
  const ys = rows.length === 0 ? [freeRow.y] : rows.map(({ y }) => y);
  const top = Math.min(...ys) - SPLICE_HALF;
  return { x: x - SPLICE_HALF, y: top, width: 2 * SPLICE_HALF, height: Math.max(...ys) + SPLICE_HALF - top };
}

/** Of a name: its flag stands beside it, and beside that what a splice was called. */
const FLAGGED = { left: 30, right: 60 } as const;

/** Names, captions and the words of terminals. */
export const wordAreas = ({ devices, splices, bond, rings }: BoxDrawing): readonly Rect[] => [
  ...devices.flatMap(({ labelAt, name, caption, terminals }) => [
    named(labelAt, name, caption, FLAGGED.left, 6),
    ...terminals.map(({ labelAt: at, label, word, labelAnchor }) => {
      const width = Math.max(textWidth(label, 13, 700), textWidth(word, 11));
      const x = labelAnchor === "start" ? at.x : labelAnchor === "end" ? at.x - width : at.x - width / 2;
      return { x, y: at.y - 11, width, height: word === "" ? 14 : 27 };
    }),
  ]),
  ...splices.map(({ labelAt, name, caption }) => named(labelAt, name, caption, 6, FLAGGED.right)),
  ...rings.map(({ text, at }) => ({ x: at.x, y: at.y - 11, width: textWidth(text, 12), height: 14 })),
  ...(bond === undefined
    ? []
    : [{ x: bond.labelAt.x - (bond.labelAnchor === "end" ? 60 : 0), y: bond.labelAt.y - 12, width: 60, height: 30 }]),
];

/** A name with its caption under it, and what stands beside the name. */
function named({ x, y }: Point, name: string, caption: string, before: number, after: number): Rect {
  const half = textWidth(name, 15, 700) / 2;
  const under = textWidth(caption, 12) / 2;
  const [left, right] = [Math.max(half + before, under), Math.max(half + after, under)];
  return { x: x - left, y: y - 14, width: left + right, height: 32 };
}

const plateAreas = (drawing: BoxDrawing): readonly Rect[] =>
  drawing.conductors.flatMap(({ plates }) =>
    plates.map(({ at, text, vertical }) => {
      const wide = textWidth(text, PLATE.size, PLATE.weight) + 2 * PLATE.pad;
      return vertical ? around(at, PLATE.height, wide) : around(at, wide, PLATE.height);
    }),
  );
