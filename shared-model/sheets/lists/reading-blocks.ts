import type { Mark } from "../display-list.ts";
import { line, text } from "../marks.ts";
import type { Block } from "../page/block.ts";
import { checkBox, TYPE } from "../page/flow-blocks.ts";
import { INK, SECOND_INK } from "../page/inks.ts";
import { measure, printable, wrap } from "../page/measure.ts";
import { LEADING, RISE, type TextLines, textLines } from "../page/text-lines.ts";
import { STEPS } from "./steps-words.ts";

/** A thing to be measured, with what is to be expected and a line to write what was found on. */
export interface ReadingLine {
  readonly what: string;
  readonly expect: string;
}

const GAP = 3;
const BETWEEN = 6;
/** Of a line: what is measured, what is expected; the rest is to write on. */
const SHARES = { what: 0.43, expect: 0.36 } as const;
/** The least to write a figure with its unit on. */
const LEAST_BLANK = 14;

/** Readings one under another, or two side by side where all of them are short. */
export function readingBlocks(width: number, readings: readonly ReadingLine[], indent = 0): readonly Block[] {
  const half = (width - indent - BETWEEN) / 2;
  const halfRoom = readings.length > 1 ? roomInHalf(half, readings) : undefined;
  const columns = halfRoom === undefined ? 1 : 2;
  const each = halfRoom === undefined ? width - indent : half;
  const room = halfRoom ?? roomOf(each);
  const rows = Array.from({ length: Math.ceil(readings.length / columns) }, (_, i) =>
    readingRow(readings.slice(columns * i, columns * (i + 1)), indent, each, room),
  );
  return rows.length === 0 ? [] : [headRow(columns, indent, each, room), ...rows];
}

/** What stands in the columns of a reading. */
function headRow(columns: number, indent: number, width: number, { what, blank }: ReadingRoom): Block {
  const size = TYPE.small;
  const look = { size, ink: SECOND_INK };
  return {
    height: LEADING * size + 0.8,
    withNext: true,
    marks: Array.from({ length: columns }, (_, i) => indent + i * (width + BETWEEN)).flatMap((x) => [
      text(STEPS.expect, x + CHECK + what + GAP, RISE * size, look),
      text(STEPS.found, x + width - blank, RISE * size, look),
    ]),
  };
}

const CHECK = 5;

interface ReadingRoom {
  readonly what: number;
  readonly expect: number;
  readonly blank: number;
}

function roomOf(width: number): ReadingRoom {
  const room = width - CHECK - 2 * GAP;
  return { what: room * SHARES.what, expect: room * SHARES.expect, blank: room * (1 - SHARES.what - SHARES.expect) };
}

/** Of half the width: the usual columns where the words fit them, else as wide as they need; undefined where they are too long. */
function roomInHalf(width: number, readings: readonly ReadingLine[]): ReadingRoom | undefined {
  const longest = (of: (reading: ReadingLine) => string): number =>
    Math.max(...readings.map((reading) => measure(printable(of(reading)), TYPE.body))) + 0.1;
  const [what, expect] = [longest((reading) => reading.what), longest((reading) => reading.expect)];
  const usual = roomOf(width);
  if (what <= usual.what && expect <= usual.expect) return usual;
  const blank = width - CHECK - 2 * GAP - what - expect;
  return blank < LEAST_BLANK ? undefined : { what, expect, blank };
}

/** White below words of several lines, so that they do not run into the next reading. */
const BELOW = 1.5;

/** A square, what is measured, what is expected, and a line to write on; one or two of them. */
function readingRow(
  readings: readonly ReadingLine[],
  indent: number,
  width: number,
  { what, expect, blank }: ReadingRoom,
): Block {
  const size = TYPE.body;
  const cells = readings.map((reading, i) => {
    const x = indent + i * (width + BETWEEN);
    return {
      x,
      measured: linesIn(reading.what, x + CHECK, what),
      expected: linesIn(reading.expect, x + CHECK + what + GAP, expect),
    };
  });
  const lines = cells.flatMap(({ measured, expected }) => [measured.height, expected.height]);
  const height = Math.max(5.6, ...lines.map((high) => high + BELOW)) + 0.5;
  const y = RISE * size + 0.9;
  return {
    height,
    marks: cells.flatMap(({ x, measured, expected }): readonly Mark[] => [
      checkBox(x, 0.5),
      ...measured.marks,
      ...expected.marks,
      line(x + width - blank, y, x + width, y, { ink: INK, width: 0.25 }),
    ]),
  };
}

/** What no reading needs that was not made to fill the page. */
const MOST_LINES = 16;

function linesIn(words: string, x: number, width: number): TextLines {
  const size = TYPE.body;
  const lines = textLines(words, x, 0, width, { size });
  if (lines.marks.length <= MOST_LINES) return lines;
  const kept = wrap(words, width, { size }).slice(0, MOST_LINES - 1);
  return textLines([...kept, "…"].join("\n"), x, 0, width, { size });
}
