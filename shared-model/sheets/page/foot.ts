import type { SheetInput } from "../../answers/sheet-input.ts";
import type { Mark, PageNumberSpot } from "../display-list.ts";
import { pt, text } from "../marks.ts";
import { GENERAL_CAUTIONS } from "./caution-words.ts";
import { THIRD_INK } from "./inks.ts";
import { cutToFit, wrap } from "./measure.ts";
import { printedFrom } from "./page-words.ts";
import { LEADING, RISE } from "./text-lines.ts";

const SIZE = pt(6.5);
const NUMBER_ROOM = 58;

/** The cautions that stand on every sheet, where it was made from, and the spot for its number. */
export interface Foot {
  readonly height: number;
  /** From the top left corner of the foot. */
  marks(x: number, y: number): readonly Mark[];
  number(x: number, y: number): PageNumberSpot;
}

export function footOf(input: SheetInput, width: number): Foot {
  const lines = wrap(GENERAL_CAUTIONS.join(" "), width, { size: SIZE });
  const last = 1 + (lines.length + RISE) * LEADING * SIZE;
  const made = printedFrom(input.fileName);
  return {
    height: last + 0.5,
    marks: (x, y) => [
      ...lines.map((each, i) => text(each, x, y + 1 + (RISE + i * LEADING) * SIZE, { size: SIZE, ink: THIRD_INK })),
      text(cutToFit(made, width - NUMBER_ROOM, { size: SIZE }), x, y + last, { size: SIZE, ink: THIRD_INK }),
    ],
    number: (x, y) => ({ x: x + width, y: y + last, anchor: "end", size: pt(7.5) }),
  };
}
