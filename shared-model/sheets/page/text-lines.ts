import type { Ink, TextMark, Weight } from "../display-list.ts";
import { text } from "../marks.ts";
import { wrap } from "./measure.ts";

/** Baseline to baseline, in em. */
export const LEADING = 1.28;
/** From the top of a line to its baseline, in em, so that capitals stand in the middle of the line. */
export const RISE = 0.97;

export interface TextLines {
  readonly height: number;
  readonly marks: readonly TextMark[];
}

/** Wrapped text whose first line has its top at `y`. */
export function textLines(
  words: string,
  x: number,
  y: number,
  width: number,
  { size, weight = 400, ink }: { readonly size: number; readonly weight?: Weight; readonly ink?: Ink },
): TextLines {
  const lines = wrap(words, width, { size, weight });
  return {
    height: lines.length * LEADING * size,
    marks: lines.map((each, i) =>
      text(each, x, y + (RISE + i * LEADING) * size, { size, weight, ...(ink !== undefined && { ink }) }),
    ),
  };
}
