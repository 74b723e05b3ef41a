import type { Rect } from "../geometry/box-drawing.ts";
import type {
  Anchor,
  GroupMark,
  Hatch,
  Ink,
  Mark,
  PathMark,
  RectMark,
  Stroke,
  TextMark,
  Weight,
} from "./display-list.ts";
import { INK } from "./page/inks.ts";
import { legible, measure, printable } from "./page/measure.ts";

/** Points (1/72 in.) in millimetres. */
export const pt = (points: number): number => (points * 25.4) / 72;

/** Two places are a hundredth of a millimetre, a third of what the finest printer shows. */
export const tidy = (millimetres: number): number => Math.round(millimetres * 1000) / 1000;

interface Paint {
  readonly fill?: Ink;
  readonly stroke?: Stroke;
  readonly hatch?: Hatch;
}

export const line = (x1: number, y1: number, x2: number, y2: number, stroke: Stroke): PathMark => ({
  kind: "path",
  d: `M${tidy(x1)} ${tidy(y1)}L${tidy(x2)} ${tidy(y2)}`,
  stroke,
});

export const path = (d: string, paint: Paint & { readonly evenOdd?: boolean }): PathMark => ({
  kind: "path",
  d,
  ...paint,
});

export const rect = (at: Rect, paint: Paint, radius?: number): RectMark => ({
  kind: "rect",
  x: at.x,
  y: at.y,
  width: at.width,
  height: at.height,
  ...paint,
  ...(radius !== undefined && { radius }),
});

export const circle = (x: number, y: number, radius: number, paint: Paint): PathMark => {
  const r = tidy(radius);
  return {
    kind: "path",
    d: `M${tidy(x - radius)} ${tidy(y)}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`,
    ...paint,
  };
};

export const group = (marks: readonly Mark[], options: Omit<GroupMark, "kind" | "marks"> = {}): GroupMark => ({
  kind: "group",
  marks,
  ...options,
});

export interface TextOptions {
  /** Height of the em, mm. */
  readonly size: number;
  readonly weight?: Weight;
  readonly anchor?: Anchor;
  readonly ink?: Ink;
  readonly track?: number;
  readonly tabular?: boolean;
  readonly turn?: -90 | 90;
  readonly over?: true;
}

/** Of the face, in em: how high capitals stand, and how far the tails of letters hang. */
const CAPITALS = 0.668;
const TAILS = 0.21;

/** One line of text on a baseline, cleaned and measured. An empty text gives a mark without width. */
export function text(words: string, x: number, y: number, options: TextOptions): TextMark {
  const { size, weight = 400, anchor = "start", ink = INK, track = 0, tabular = false, turn, over } = options;
  const written = legible(words);
  const clean = printable(written);
  const width = measure(clean, size, weight, track, tabular);
  const back = anchor === "start" ? 0 : anchor === "middle" ? width / 2 : width;
  const [above, below] = [CAPITALS * size, TAILS * size];
  return {
    kind: "text",
    text: clean,
    ...(clean !== written && { written }),
    x,
    y,
    anchor,
    size,
    weight,
    ink,
    ...(track !== 0 && { track }),
    ...(tabular && { tabular }),
    ...(turn !== undefined && { turn }),
    ...(over && { over }),
    box: boxOf(x, y, back, width, above, below, turn),
  };
}

function boxOf(
  x: number,
  y: number,
  back: number,
  width: number,
  above: number,
  below: number,
  turn: -90 | 90 | undefined,
): Rect {
  if (turn === undefined) return { x: x - back, y: y - above, width, height: above + below };
  if (turn === -90) return { x: x - above, y: y + back - width, width: above + below, height: width };
  return { x: x - below, y: y - back, width: above + below, height: width };
}
