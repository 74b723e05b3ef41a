import { group, line, rect, text } from "../marks.ts";
import type { Block } from "../page/block.ts";
import { checkBox, TYPE } from "../page/flow-blocks.ts";
import { INK, PAPER, SECOND_INK } from "../page/inks.ts";
import { measure } from "../page/measure.ts";
import { RISE } from "../page/text-lines.ts";
import { BODY, linePieces, SMALL } from "./line-pieces.ts";
import { type ReadingLine, readingBlocks } from "./reading-blocks.ts";

export interface HoldBoxParts {
  /** "HP1". */
  readonly name: string;
  /** "HOLD POINT: stop here". */
  readonly head: string;
  readonly words: string;
  readonly details: readonly string[];
  readonly readings: readonly ReadingLine[];
  readonly cautions: readonly string[];
  /** Captions of the lines to sign on. */
  readonly fields: readonly string[];
}

const THICK = 0.9;
const SIDE = 3;
const PLATE = 16;

/**
 * A framed box that cannot be missed: its name white on black, what must be done with a square to tick for each reading, and
 * lines to sign on. Made of blocks, so that one higher than a page can be broken; each carries its part of the frame.
 */
export function holdBox(width: number, parts: HoldBoxParts): readonly Block[] {
  const inner = width - 2 * SIDE - PLATE;
  const left = PLATE + SIDE;
  const pieces: readonly Block[] = [
    ...headPieces(width, left, inner, parts),
    ...parts.details.flatMap((words) => linePieces(words, left, inner, BODY)),
    ...readingBlocks(inner, parts.readings).map((block) => shifted(block, left)),
    ...parts.cautions.flatMap((words) => linePieces(words, left, inner, SMALL)),
    signPiece(left, inner, parts.fields),
  ];
  return pieces.map(({ height, marks }, i) => ({
    height,
    ...(i === 0 && { above: 3 }),
    withNext: i < pieces.length - 1,
    marks: [
      ...marks,
      line(THICK / 2, 0, THICK / 2, height, { ink: INK, width: THICK }),
      line(width - THICK / 2, 0, width - THICK / 2, height, { ink: INK, width: THICK }),
      ...(i === 0 ? [line(0, THICK / 2, width, THICK / 2, { ink: INK, width: THICK })] : []),
      ...(i === pieces.length - 1
        ? [line(0, height - THICK / 2, width, height - THICK / 2, { ink: INK, width: THICK })]
        : []),
    ],
  }));
}

/** Lines of the words that stand beside the plate; further ones are pieces of their own. */
const BESIDE = 4;

function headPieces(width: number, left: number, inner: number, { name, head, words }: HoldBoxParts): readonly Block[] {
  const pieces = linePieces(words, left, inner, { size: TYPE.lead, weight: 700, ink: INK });
  const beside = pieces.slice(0, BESIDE);
  let y = 8.4;
  const lines = beside.map(({ height, marks }) => {
    const line = group(marks, { shift: { x: 0, y } });
    y += height;
    return line;
  });
  const height = Math.max(15, y + 1);
  const largest = TYPE.head * 1.25;
  const size = Math.min(largest, (largest * (PLATE - 3)) / measure(name, largest, 700));
  const plate: Block = {
    height,
    marks: [
      rect({ x: 0, y: 0, width: PLATE, height }, { fill: INK }),
      text(name, PLATE / 2, 9.2, { size, weight: 700, anchor: "middle", ink: PAPER }),
      text(head, left, 3 + RISE * TYPE.small, { size: TYPE.small, weight: 600, ink: SECOND_INK }),
      checkBox(width - SIDE - 5, 3, 4.4),
      ...lines,
    ],
  };
  return [plate, ...pieces.slice(BESIDE)];
}

const shifted = ({ height, marks }: Block, x: number): Block => ({
  height,
  marks: [group(marks, { shift: { x, y: 0 } })],
});

function signPiece(left: number, inner: number, fields: readonly string[]): Block {
  const each = inner / Math.max(1, fields.length);
  return {
    height: 13,
    marks: fields.flatMap((caption, i) => [
      line(left + i * each, 8.2, left + (i + 1) * each - 4, 8.2, { ink: INK, width: 0.25 }),
      text(caption, left + i * each, 11.2, { size: TYPE.small, ink: SECOND_INK }),
    ]),
  };
}
