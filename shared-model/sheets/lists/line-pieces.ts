import type { Ink, Weight } from "../display-list.ts";
import type { Block } from "../page/block.ts";
import { TYPE } from "../page/flow-blocks.ts";
import { SECOND_INK } from "../page/inks.ts";
import { LEADING, textLines } from "../page/text-lines.ts";

export interface Look {
  readonly size: number;
  readonly weight?: Weight;
  readonly ink: Ink;
}

export const BODY: Look = { size: TYPE.body, ink: SECOND_INK };
export const SMALL: Look = { size: TYPE.small, ink: SECOND_INK };

/** One piece a line, so that long words may go over to the next page. */
export function linePieces(words: string, left: number, inner: number, look: Look): readonly Block[] {
  return textLines(words, left, 0, inner, look).marks.map((mark, i) => {
    const up = i * LEADING * look.size;
    return {
      height: LEADING * look.size,
      marks: [{ ...mark, y: mark.y - up, box: { ...mark.box, y: mark.box.y - up } }],
    };
  });
}
