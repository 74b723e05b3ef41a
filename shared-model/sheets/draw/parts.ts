import type {
  BondDrawing,
  BoxDrawing,
  CapDrawing,
  Plate,
  Rect,
  SpliceDrawing,
  Wall,
} from "../../geometry/box-drawing.ts";
import { limitFeet, limitPath } from "../../geometry/limit-path.ts";
import { SPLICE_HALF, WALL } from "../../geometry/metrics.ts";
import type { LimitDrawing } from "../../geometry/protected-limit.ts";
import type { Mark, Stroke } from "../display-list.ts";
import { circle, path, rect, text } from "../marks.ts";
import { INK, PAPER, SECOND_INK } from "../page/inks.ts";
import { cutToFit, measure } from "../page/measure.ts";
import { DRAW_WORDS } from "./draw-words.ts";
import { screwMarks } from "./screw.ts";

/** Sizes and widths in this folder are drawing units of the near drawing. */
export const stroke = (width: number): Stroke => ({ ink: INK, width });

/** The box itself: metal walls hatched, nonmetallic ones dotted, walls of unknown make empty. */
export function wallMarks({ material }: BoxDrawing, { x, y, width, height }: Rect): readonly Mark[] {
  const [right, bottom] = [x + width, y + height];
  const outer = `M${x - WALL} ${y - WALL}H${right + WALL}V${bottom + WALL}H${x - WALL}Z`;
  return [
    path(`${outer}M${x} ${y}V${bottom}H${right}V${y}Z`, {
      fill: PAPER,
      evenOdd: true,
      ...(material === "metal" && {
        hatch: { kind: "lines" as const, ink: SECOND_INK, gap: 5, width: 0.9, angle: -45 },
      }),
      ...(material === "nonmetallic" && { hatch: { kind: "dots" as const, ink: SECOND_INK, gap: 5, width: 1.6 } }),
    }),
    rect({ x: x - WALL, y: y - WALL, width: width + 2 * WALL, height: height + 2 * WALL }, { stroke: stroke(1.6) }, 3),
    rect({ x, y, width, height }, { stroke: stroke(1.1) }, 1),
  ];
}

const PLATE = { size: 11, pad: 3 } as const;

/** A code set into its line: a plate of paper interrupts the conductor. */
export function plateMarks({ at, text: words, vertical }: Plate): readonly Mark[] {
  const half = measure(words, PLATE.size, 600) / 2 + PLATE.pad;
  const box = vertical
    ? { x: at.x - 7, y: at.y - half, width: 14, height: half * 2 }
    : { x: at.x - half, y: at.y - 7, width: half * 2, height: 14 };
  return [
    rect(box, { fill: PAPER }),
    vertical
      ? text(words, at.x + 4, at.y, { size: PLATE.size, weight: 600, anchor: "middle", turn: -90 })
      : text(words, at.x, at.y + 4, { size: PLATE.size, weight: 600, anchor: "middle" }),
  ];
}

/** A splice as a capsule: a row and a dot per end, one bar through the dots. */
export function spliceMarks({ x, rows, freeRow, name, caption, labelAt }: SpliceDrawing): readonly Mark[] {
  const ys = rows.length === 0 ? [freeRow.y] : rows.map((row) => row.y);
  const [top, bottom] = [Math.min(...ys) - SPLICE_HALF, Math.max(...ys) + SPLICE_HALF];
  const capsule = { x: x - SPLICE_HALF, y: top, width: SPLICE_HALF * 2, height: bottom - top };
  return [
    rect(capsule, { fill: PAPER, stroke: stroke(1.75) }, SPLICE_HALF),
    ...(rows.length > 1 ? [path(`M${x} ${Math.min(...ys)}V${Math.max(...ys)}`, { stroke: stroke(3) })] : []),
    ...rows.map(({ y }) => circle(x, y, 3.9, { fill: INK })),
    ...underlaid(name, labelAt.x, labelAt.y, 15, 700),
    ...underlaid(caption, labelAt.x, labelAt.y + 13.5, 11, 400),
  ];
}

/** A word in the middle of its place, on a ground of paper that keeps lines off it. */
export function underlaid(words: string, x: number, y: number, size: number, weight: 400 | 600 | 700): readonly Mark[] {
  const mark = text(words, x, y, { size, weight, anchor: "middle", ink: weight === 400 ? SECOND_INK : INK });
  const { box } = mark;
  if (box.width === 0) return [];
  const ground = { x: box.x - 2, y: box.y - 1, width: box.width + 4, height: box.height + 1 };
  return [rect(ground, { fill: PAPER }), mark];
}

/** The grounding screw in the metal of the box: a green hexagon over a ground mark. */
export function bondMarks({ at: { x, y }, labelAt, labelAnchor }: BondDrawing): readonly Mark[] {
  return [
    ...screwMarks("green", x, y),
    path(`M${x} ${y + 10}v8M${x - 9} ${y + 18}h18M${x - 5.5} ${y + 21.6}h11M${x - 2.5} ${y + 25}h5`, {
      stroke: stroke(1.3),
    }),
    text(DRAW_WORDS.groundScrew, labelAt.x, labelAt.y, { size: 11.5, weight: 600, anchor: labelAnchor }),
    text(DRAW_WORDS.green, labelAt.x, labelAt.y + 13, { size: 11, anchor: labelAnchor, ink: SECOND_INK }),
  ];
}

/** Which way the far end of a cap lies from where the conductor comes into it. */
const AWAY: Readonly<Record<Wall, readonly [number, number]>> = {
  left: [1, 0],
  top: [0, 1],
  right: [-1, 0],
  bottom: [0, -1],
};

/** A capped end wears its connector; a loose one shows bare copper in the open. */
export function capMarks({ at: { x, y }, kind, from }: CapDrawing): readonly Mark[] {
  const [dx, dy] = AWAY[from];
  if (kind === "loose") {
    const d = `M${x} ${y}l${14 * dx} ${14 * dy}`;
    return [
      path(d, { stroke: { ink: INK, width: 6.4, cap: "round" } }),
      path(d, { stroke: { ink: PAPER, width: 4, cap: "round" } }),
    ];
  }
  const r = 5.6;
  const [sx, sy] = [-dy, dx];
  const corner = (along: number, across: number): string =>
    `${x + along * dx + across * r * sx} ${y + along * dy + across * r * sy}`;
  return [
    path(`M${corner(-2, -1)}L${corner(9, -1)}A${r} ${r} 0 0 1 ${corner(9, 1)}L${corner(-2, 1)}Z`, {
      fill: PAPER,
      stroke: stroke(1.3),
    }),
  ];
}

const LIMIT = 11.5;

/** The limit of what lies behind a ground-fault device: dashed, with feet that point into it, and its words. */
export function limitMarks(limit: LimitDrawing, words: string | undefined): readonly Mark[] {
  const { x, y, width } = limit.area;
  const shown = words === undefined ? undefined : cutToFit(words, Math.max(60, width - 24), { size: LIMIT });
  return [
    path(limitPath(limit), { stroke: { ...stroke(1.2), dash: [12, 4] } }),
    path(limitFeet(limit), { stroke: stroke(1.2) }),
    ...(shown === undefined
      ? []
      : [
          rect({ x: x + 9, y: y - 7, width: measure(shown, LIMIT) + 8, height: 14 }, { fill: PAPER }),
          text(shown, x + 13, y + 4, { size: LIMIT }),
        ]),
  ];
}

/** A breaker space with nothing in it: dashed, with its number. */
export const freeSlotMarks = ({ slot, at }: NonNullable<BoxDrawing["freeSlots"]>[number]): readonly Mark[] => [
  rect(at, { stroke: { ...stroke(1.1), dash: [5, 4] } }, 6),
  text(String(slot), at.x + at.width / 2, at.y + at.height / 2 + 4, { size: 11, anchor: "middle", ink: SECOND_INK }),
];
