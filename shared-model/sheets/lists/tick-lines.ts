import { group, text } from "../marks.ts";
import type { Block } from "../page/block.ts";
import { checkBox, TYPE } from "../page/flow-blocks.ts";
import { INK, SECOND_INK } from "../page/inks.ts";
import { measure, wrap } from "../page/measure.ts";
import { RISE } from "../page/text-lines.ts";
import { BODY, linePieces } from "./line-pieces.ts";

const CHECK = 5;
/** White between two columns. */
const BETWEEN = 6;

/** An instruction to tick, with what is to be known of it. */
export interface TickLine {
  readonly number: string;
  readonly words: string;
  readonly more: string;
}

/** White between an instruction and what follows it on its line. */
const AFTER = 2.5;

/** A text as it is set where it has the room that it wants; "" of one that is of several lines by itself. */
function onOneLine(words: string): string {
  const lines = wrap(words, Number.POSITIVE_INFINITY, { size: TYPE.body });
  return lines.length === 1 ? (lines[0] ?? "") : "";
}

/** How long an instruction is with what is to be known of it beside it. */
function longOf({ words, more }: TickLine): number {
  const [first, second] = [onOneLine(words), onOneLine(more)];
  if (first === "" || (second === "" && more !== "")) return Number.POSITIVE_INFINITY;
  return measure(first, TYPE.body) + (more === "" ? 0 : AFTER + measure(second, TYPE.body));
}

/** Instructions of one line each, two side by side where two that follow each other are short; a longer one takes lines of its own. */
export function tickRows(width: number, indent: number, lines: readonly TickLine[]): readonly Block[] {
  const half = (width - BETWEEN) / 2;
  const rows: Block[] = [];
  for (let i = 0; i < lines.length; i += 1) {
    const [line, next] = lines.slice(i, i + 2);
    if (line === undefined) break;
    const pair = next !== undefined && [line, next].every((each) => longOf(each) <= half - indent);
    const [left, right] = [tickBlocks(width, indent, line), pair ? tickBlocks(width, indent, next) : []];
    rows.push(
      ...left.map((block, n) => ({
        ...block,
        withNext: n < left.length - 1,
        marks: [
          ...block.marks,
          ...right.flatMap(({ marks }) => [group(marks, { shift: { x: half + BETWEEN, y: 0 } })]),
        ],
      })),
    );
    if (pair) i += 1;
  }
  return rows;
}

/** An instruction as lines to tick: a square, its number, its words, what is to be known of it, one block a line. */
export function tickBlocks(width: number, indent: number, { number, words, more }: TickLine): readonly Block[] {
  const size = TYPE.body;
  const room = width - indent;
  const beside = more !== "" && longOf({ number, words, more }) <= room;
  const after = indent + measure(onOneLine(words), size) + AFTER;
  const lines = [
    ...linePieces(words, indent, room, { size, ink: INK }).map((piece) =>
      beside
        ? { ...piece, marks: [...piece.marks, text(onOneLine(more), after, RISE * size, { size, ink: SECOND_INK })] }
        : piece,
    ),
    ...(beside || more === "" ? [] : linePieces(more, indent, room, BODY)),
  ];
  return lines.map(({ height, marks }, i) => ({
    height,
    ...(i === 0 && { above: 1.6 }),
    marks:
      i > 0
        ? marks
        : [checkBox(0, 0.5), text(number, CHECK, RISE * size, { size, weight: 700, tabular: true }), ...marks],
  }));
}
