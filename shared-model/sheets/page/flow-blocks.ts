import type { Ink, Mark, Weight } from "../display-list.ts";
import { line, pt, rect, text } from "../marks.ts";
import type { Block } from "./block.ts";
import { INK, SECOND_INK } from "./inks.ts";
import { cutToFit, measure } from "./measure.ts";
import { PAGE } from "./page-words.ts";
import { RISE, textLines } from "./text-lines.ts";

/** Sizes of text on list sheets, mm. */
export const TYPE = { head: pt(12), lead: pt(10), body: pt(9), small: pt(7.5) } as const;

export interface ParagraphOptions {
  readonly size?: number;
  readonly weight?: Weight;
  readonly ink?: Ink;
  /** From the left edge. */
  readonly indent?: number;
  readonly withNext?: boolean;
}

export interface CheckLineOptions extends ParagraphOptions {
  /** Bold words before the text, as "HP1"; all of a sheet stand in a column this wide. */
  readonly lead?: string;
  readonly leadWidth?: number;
  /** Words at the right edge, as a value to be expected. */
  readonly tail?: string;
}

const CHECK = 3;

/** Large bold words with smaller ones after them. */
export function headingBlock(width: number, words: string, note: string | undefined): Block {
  const size = TYPE.head;
  const title = cutToFit(words, width, { size, weight: 700 });
  const after = measure(title, size, 700) + 2.5;
  const room = width - after;
  const noted = note === undefined || note === "" || room < 15 ? undefined : note;
  const y = RISE * size;
  const lines =
    noted === undefined ? undefined : textLines(noted, after, y - RISE * TYPE.body, room, { size: TYPE.body });
  return {
    height: Math.max(size * 1.5, (lines?.height ?? 0) + (y - RISE * TYPE.body) + 1),
    above: 4,
    withNext: true,
    marks: [text(title, 0, y, { size, weight: 700 }), ...(lines?.marks ?? [])],
  };
}

/** Over the rows of a table that goes on: what they belong to. */
export function continuedBlock(width: number, words: string): Block {
  const size = TYPE.body;
  return {
    height: size * 1.7,
    withNext: true,
    marks: [text(cutToFit(PAGE.continued(words), width, { size, weight: 600 }), 0, RISE * size, { size, weight: 600 })],
  };
}

/** One block a line, so that a long text may go over to the next page; its first two lines stay together. */
export function paragraphBlocks(width: number, words: string, options: ParagraphOptions): readonly Block[] {
  const { size = TYPE.body, weight = 400, ink = SECOND_INK, indent = 0, withNext = false } = options;
  const { marks } = textLines(words, indent, 0, width - indent, { size, weight, ink });
  return marks.map((mark, i) => ({
    height: mark.size * 1.28,
    ...(i === 0 && { above: 1 }),
    marks: [{ ...mark, y: mark.y - i * mark.size * 1.28, box: { ...mark.box, y: mark.box.y - i * mark.size * 1.28 } }],
    withNext: i === marks.length - 1 ? withNext : i === 0 || i === marks.length - 2,
  }));
}

export function checkBlock(width: number, words: string, options: CheckLineOptions): Block {
  const {
    size = TYPE.body,
    weight = 400,
    ink = INK,
    indent = 0,
    lead,
    leadWidth = 12,
    tail,
    withNext = false,
  } = options;
  const from = indent + CHECK + 2 + (lead === undefined ? 0 : leadWidth);
  const tailWidth = tail === undefined ? 0 : measure(tail, size) + 3;
  const { height, marks } = textLines(words, from, 0, width - from - tailWidth, { size, weight, ink });
  const y = RISE * size;
  return {
    height: Math.max(height, CHECK + 1) + 0.6,
    above: 0.6,
    withNext,
    marks: [
      checkBox(indent, y - 0.668 * size - (CHECK - 0.668 * size) / 2),
      ...(lead === undefined ? [] : [text(lead, indent + CHECK + 2, y, { size, weight: 700, ink })]),
      ...marks,
      ...(tail === undefined ? [] : [text(tail, width, y, { size, anchor: "end", ink })]),
    ],
  };
}

/** An empty square whose top left corner is at a point. */
export const checkBox = (x: number, y: number, size = CHECK): Mark =>
  rect({ x, y, width: size, height: size }, { stroke: { ink: INK, width: 0.3 } });

export function signOffBlock(width: number, captions: readonly string[]): Block {
  const each = width / Math.max(1, captions.length);
  return {
    height: 13,
    above: 2,
    marks: captions.flatMap((caption, i) => {
      const x = i * each;
      return [
        line(x, 9, x + each - 4, 9, { ink: INK, width: 0.25 }),
        text(caption, x, 12.2, { size: TYPE.small, ink: SECOND_INK }),
      ];
    }),
  };
}
