import type { Colour } from "../../units/colour.ts";
import { colourCode } from "../../units/colour.ts";
import { COLOUR_WORDS } from "../../units/colour-words.ts";
import type { Mark } from "../display-list.ts";
import { strandMarks } from "../draw/strand.ts";
import { group, line, path, pt, rect, text } from "../marks.ts";
import { INK } from "../page/inks.ts";
import { measure } from "../page/measure.ts";
import { LEGEND } from "./drawing-words.ts";

/** One sign of a drawing and what it means; the sign is drawn about its own middle, at most 12 mm wide. */
export interface LegendItem {
  readonly marks: readonly Mark[];
  readonly words: string;
}

const SIZE = pt(7.5);
const ROW = 6;
const SIGN = 13;
const GAP = 5;

/** A legend in rows as wide as it may be. @returns Its marks from its own upper left corner, with its height. */
export function legendMarks(
  items: readonly LegendItem[],
  width: number,
): { readonly height: number; readonly marks: readonly Mark[] } {
  if (items.length === 0) return { height: 0, marks: [] };
  const title = measure(LEGEND.title, SIZE, 700) + GAP;
  let [x, row] = [title, 0];
  const marks: Mark[] = [text(LEGEND.title, 0, 3.9, { size: SIZE, weight: 700 })];
  for (const { marks: sign, words } of items) {
    const wide = SIGN + measure(words, SIZE) + GAP;
    if (x + wide - GAP > width && x > title) {
      x = title;
      row += 1;
    }
    const y = row * ROW + ROW / 2;
    marks.push(group(sign, { shift: { x: x + SIGN / 2 - 0.5, y } }), text(words, x + SIGN, y + 0.9, { size: SIZE }));
    x += wide;
  }
  return { height: (row + 1) * ROW, marks };
}

export const conductorItem = (colour: Colour): LegendItem => ({
  marks: [group(strandMarks("M-22 0H22", colour), { scale: 0.25 })],
  words: colour === "bare" ? COLOUR_WORDS.bare : `${colourCode(colour)} ${COLOUR_WORDS[colour]}`,
});

const road = (marks: readonly Mark[] = []): readonly Mark[] => [
  line(-5.5, -1.4, 5.5, -1.4, { ink: INK, width: 0.25 }),
  line(-5.5, 1.4, 5.5, 1.4, { ink: INK, width: 0.25 }),
  ...marks,
];

export const ROAD_ITEM: LegendItem = { marks: road(), words: LEGEND.cable };
export const LOAD_ITEM: LegendItem = {
  marks: road([
    path("M-4.5 1.4v1M-2.7 1.4v1M-0.9 1.4v1M0.9 1.4v1M2.7 1.4v1M4.5 1.4v1", { stroke: { ink: INK, width: 0.25 } }),
  ]),
  words: LEGEND.load,
};
export const FAR_ROAD_ITEM: LegendItem = {
  marks: [line(-5.5, 0, 5.5, 0, { ink: INK, width: 0.3 })],
  words: LEGEND.cable,
};
export const FAR_LOAD_ITEM: LegendItem = {
  marks: [
    line(-5.5, 0, 5.5, 0, { ink: INK, width: 0.3 }),
    path("M-4.2 0v0.9M-2.8 0v0.9M-1.4 0v0.9M0 0v0.9M1.4 0v0.9M2.8 0v0.9M4.2 0v0.9", {
      stroke: { ink: INK, width: 0.2 },
    }),
  ],
  words: LEGEND.load,
};
export const FILL_ITEM: LegendItem = {
  marks: [
    rect({ x: -5, y: -0.5, width: 7, height: 1 }, { fill: INK }),
    path("M-5 -0.9v1.8M5 -0.9v1.8", { stroke: { ink: INK, width: 0.2 } }),
  ],
  words: LEGEND.fill,
};
export const LIMIT_ITEM: LegendItem = {
  marks: [
    path("M-5.5 1.2V-1.2H5.5", { stroke: { ink: INK, width: 0.25, dash: [2, 0.8] } }),
    path("M-3.5 -1.2v1M-1 -1.2v1M1.5 -1.2v1M4 -1.2v1", { stroke: { ink: INK, width: 0.25 } }),
  ],
  words: LEGEND.limit,
};
