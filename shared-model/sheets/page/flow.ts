import type { Ink, Mark, Weight } from "../display-list.ts";
import { group, line, pt, rect, text } from "../marks.ts";
import type { Block } from "./block.ts";
import { HAIR, INK, SECOND_INK } from "./inks.ts";
import { cutToFit, measure } from "./measure.ts";
import { type Table, tableBlocks } from "./table-blocks.ts";
import { RISE, textLines } from "./text-lines.ts";

/** Sizes of text on list sheets, mm. */
export const TYPE = { head: pt(12), lead: pt(10), body: pt(9), small: pt(7.5) } as const;

/** Room for what a flow fills, on one page. */
export interface Column {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

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

/**
 * Writes down a column from page to page. What is written last stands lowest; a page is begun when the next thing does not
 * fit. Things that do not fit a whole page are broken where they can be, rows of tables between lines.
 */
export interface Flow {
  /** Of the column. */
  readonly width: number;
  /** Height of the column on a fresh page. */
  readonly height: number;
  /** What is free on this page. */
  room(): number;
  /** Large bold words with smaller ones after them; stays with what follows. */
  heading(words: string, note?: string): void;
  paragraph(words: string, options?: ParagraphOptions): void;
  /** Columns with wrapped cells. The head is repeated on each page. */
  table(table: Table): void;
  /** An empty square to tick, then words. */
  check(words: string, options?: CheckLineOptions): void;
  /** Lines to write on, each with its caption below: "name", "date". */
  signOff(captions: readonly string[]): void;
  /** A hairline across. */
  rule(): void;
  /** White; none at the top of a page. */
  space(millimetres: number): void;
  /** A drawing of one's own. */
  block(block: Block): void;
  /** What is written inside stands on one page, where one page can hold it. */
  keepTogether(write: (flow: Flow) => void): void;
  newPage(): void;
}

/** Marks of each page in the coordinates of the paper. */
export interface Flowed {
  readonly flow: Flow;
  pages(): readonly (readonly Mark[])[];
}

const CHECK = 3;

/**
 * A flow into pages whose column is told by `columnOf`: the first page may have less room than those that follow. All
 * columns are equally wide.
 */
export function openFlow(columnOf: (page: number) => Column): Flowed {
  const pages: Mark[][] = [[]];
  let used = 0;
  let waiting: Block[] = [];

  const column = (): Column => columnOf(pages.length - 1);
  const width = columnOf(0).width;
  const heightOf = (blocks: readonly Block[], atTop: boolean): number =>
    blocks.reduce((sum, { height, above = 0 }, i) => sum + height + (atTop && i === 0 ? 0 : above), 0);

  function begin(): void {
    pages.push([]);
    used = 0;
  }

  function set(blocks: readonly Block[]): void {
    if (used > 0 && used + heightOf(blocks, false) > column().height + 1e-6) begin();
    for (const { height, marks, above = 0 } of blocks) {
      if (used > 0) used += above;
      if (used > 0 && used + height > column().height + 1e-6) begin();
      const { x, y } = column();
      if (marks.length > 0) pages[pages.length - 1]?.push(group(marks, { shift: { x, y: y + used } }));
      used += height;
    }
  }

  function put(block: Block): void {
    waiting.push(block);
    if (block.withNext) return;
    const blocks = waiting;
    waiting = [];
    set(blocks);
  }

  function flush(): void {
    const blocks = waiting;
    waiting = [];
    set(blocks);
  }

  const flow = writerOf(width, put, {
    height: () => columnOf(1).height,
    room: () => column().height - used - heightOf(waiting, used === 0),
    table: (table) => {
      const blocks = tableBlocks(table, width, columnOf(1).height);
      for (const [i, block] of blocks.entries()) {
        // The name of a group goes over together with its first row, and the head comes before both.
        const next = block.block.withNext ? blocks.slice(i + 1, i + 2).map((one) => one.block) : [];
        const needed = heightOf([...waiting, block.block, ...next], used === 0);
        const isTop = used + needed > column().height + 1e-6;
        if (isTop && block.headAgain !== undefined && waiting.length === 0 && used > 0) {
          begin();
          put(block.headAgain);
        }
        put(block.block);
      }
    },
    keepTogether: (write) => {
      const kept: Block[] = [];
      const inner = writerOf(width, (block) => kept.push(block), {
        height: () => columnOf(1).height,
        room: () => columnOf(1).height - heightOf(kept, true),
        table: (table) => kept.push(...tableBlocks(table, width, columnOf(1).height).map(({ block }) => block)),
        keepTogether: (more) => more(inner),
        newPage: () => undefined,
      });
      write(inner);
      const blocks = [...waiting, ...kept];
      waiting = [];
      if (heightOf(blocks, true) <= columnOf(pages.length).height) set(blocks);
      else for (const block of blocks) put(block);
    },
    newPage: () => {
      flush();
      if (used > 0) begin();
    },
  });
  return {
    flow,
    pages: () => {
      flush();
      return pages;
    },
  };
}

interface Inner {
  readonly height: () => number;
  readonly room: () => number;
  readonly table: (table: Table) => void;
  readonly keepTogether: (write: (flow: Flow) => void) => void;
  readonly newPage: () => void;
}

function writerOf(width: number, put: (block: Block) => void, inner: Inner): Flow {
  return {
    width,
    get height() {
      return inner.height();
    },
    room: inner.room,
    table: inner.table,
    keepTogether: inner.keepTogether,
    newPage: inner.newPage,
    block: put,
    heading: (words, note) => put(headingBlock(width, words, note)),
    paragraph: (words, options = {}) => {
      for (const block of paragraphBlocks(width, words, options)) put(block);
    },
    check: (words, options = {}) => put(checkBlock(width, words, options)),
    signOff: (captions) => put(signOffBlock(width, captions)),
    rule: () =>
      put({ height: pt(3), above: pt(3), marks: [line(0, 0, width, 0, { ink: HAIR, width: 0.2 })], withNext: true }),
    space: (millimetres) => put({ height: 0, above: millimetres, marks: [], withNext: true }),
  };
}

function headingBlock(width: number, words: string, note: string | undefined): Block {
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

/** One block a line, so that a long text may go over to the next page; its first two lines stay together. */
function paragraphBlocks(width: number, words: string, options: ParagraphOptions): readonly Block[] {
  const { size = TYPE.body, weight = 400, ink = SECOND_INK, indent = 0, withNext = false } = options;
  const { marks } = textLines(words, indent, 0, width - indent, { size, weight, ink });
  return marks.map((mark, i) => ({
    height: mark.size * 1.28,
    ...(i === 0 && { above: 1 }),
    marks: [{ ...mark, y: mark.y - i * mark.size * 1.28, box: { ...mark.box, y: mark.box.y - i * mark.size * 1.28 } }],
    withNext: i === marks.length - 1 ? withNext : i === 0 || i === marks.length - 2,
  }));
}

function checkBlock(width: number, words: string, options: CheckLineOptions): Block {
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

function signOffBlock(width: number, captions: readonly string[]): Block {
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
