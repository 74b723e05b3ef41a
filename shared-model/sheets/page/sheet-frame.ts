import type { Rect } from "../../geometry/box-drawing.ts";
import type { Mark } from "../display-list.ts";
import { line, path, pt, rect, text, tidy } from "../marks.ts";
import { INK, SECOND_INK } from "./inks.ts";
import { PAGE } from "./page-words.ts";
import { textLines } from "./text-lines.ts";

/** Zones of a drawing sheet: 1 to 8 across, A to F down, as on the screen. */
const COLUMNS = 8;
const ROWS = ["A", "B", "C", "D", "E", "F"] as const;

/** Between the outer edge of the frame and the line around the drawing: room for the letters of the zones. */
export const FRAME_THICK = 5;

/**
 * The line around a drawing with its zones; proposed has a double line as far down as the drawing. `outer` is all that the
 * frame covers, `drawn` the height of the drawing in it.
 */
export function frameMarks(outer: Rect, drawn: number, isProposed: boolean): readonly Mark[] {
  const inside = insideOf(outer);
  const [across, down] = [inside.width / COLUMNS, inside.height / ROWS.length];
  const [right, bottom] = [inside.x + inside.width, inside.y + inside.height];
  const size = pt(7);
  const words = { size, anchor: "middle", ink: SECOND_INK } as const;
  const letterX = [outer.x + FRAME_THICK / 2, right + FRAME_THICK / 2];
  const letterY = [outer.y + FRAME_THICK / 2 + size * 0.33, bottom + FRAME_THICK / 2 + size * 0.33];
  const ticks = [
    ...Array.from({ length: COLUMNS - 1 }, (_, i) => inside.x + across * (i + 1)).map(
      (x) =>
        `M${tidy(x)} ${tidy(outer.y + 0.8)}V${tidy(inside.y)}M${tidy(x)} ${tidy(bottom)}V${tidy(bottom + FRAME_THICK - 0.8)}`,
    ),
    ...ROWS.slice(1).map((_, i) => {
      const y = tidy(inside.y + down * (i + 1));
      return `M${tidy(outer.x + 0.8)} ${y}H${tidy(inside.x)}M${tidy(right)} ${y}H${tidy(right + FRAME_THICK - 0.8)}`;
    }),
  ].join("");
  return [
    rect(inside, { stroke: { ink: INK, width: 0.4 } }),
    ...(isProposed
      ? [
          rect(
            { x: inside.x + 1, y: inside.y + 1, width: inside.width - 2, height: drawn - 2 },
            { stroke: { ink: INK, width: 0.2 } },
          ),
        ]
      : []),
    path(ticks, { stroke: { ink: INK, width: 0.2 } }),
    ...Array.from({ length: COLUMNS }, (_, i) => inside.x + across * (i + 0.5)).flatMap((x, i) =>
      letterY.map((y) => text(String(i + 1), x, y, words)),
    ),
    ...ROWS.flatMap((letter, i) =>
      letterX.map((x) => text(letter, x, inside.y + down * (i + 0.5) + size * 0.33, words)),
    ),
  ];
}

export const insideOf = ({ x, y, width, height }: Rect): Rect => ({
  x: x + FRAME_THICK,
  y: y + FRAME_THICK,
  width: width - 2 * FRAME_THICK,
  height: height - 2 * FRAME_THICK,
});

export const SCALE_BAR = { length: 100, height: 6 } as const;

/** A bar of 100 mm in alternating pieces of 10: whoever holds a rule to it sees whether the printer kept the size. `width` is the room for bar and words. */
export function scaleBarMarks(x: number, y: number, width: number, words: string): readonly Mark[] {
  const size = pt(6.5);
  const stroke = { ink: INK, width: 0.2 } as const;
  return [
    rect({ x, y, width: SCALE_BAR.length, height: 1.6 }, { stroke }),
    ...Array.from({ length: 5 }, (_, i) => rect({ x: x + 20 * i, y, width: 10, height: 1.6 }, { fill: INK })),
    line(x, y - 0.8, x, y + 2.4, stroke),
    line(x + SCALE_BAR.length, y - 0.8, x + SCALE_BAR.length, y + 2.4, stroke),
    text("0", x, y + 4.6, { size, anchor: "start" }),
    text("50", x + 50, y + 4.6, { size, anchor: "middle" }),
    text(PAGE.scaleEnd, x + 100, y + 4.6, { size, anchor: "end" }),
    ...textLines(words, x + 104, y - 0.9, width - 104, { size, ink: SECOND_INK }).marks.slice(0, 2),
  ];
}
