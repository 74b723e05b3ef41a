import type { Mark } from "../display-list.ts";
import { group, line, pt } from "../marks.ts";
import type { Block } from "./block.ts";
import {
  type CheckLineOptions,
  checkBlock,
  continuedBlock,
  headingBlock,
  type ParagraphOptions,
  paragraphBlocks,
  signOffBlock,
} from "./flow-blocks.ts";
import { HAIR } from "./inks.ts";
import { type Table, tableBlocks } from "./table-blocks.ts";

/** Room for what a flow fills, on one page. */
export interface Column {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
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
  /** Columns with wrapped cells. The head is repeated on each page, under the heading that the rows belong to. */
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

/**
 * A flow into pages whose column is told by `columnOf`: the first page may have less room than those that follow. All
 * columns are equally wide.
 */
export function openFlow(columnOf: (page: number) => Column): Flowed {
  const pages: Mark[][] = [[]];
  let used = 0;
  let waiting: Block[] = [];
  let underHeading = "";

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
    headed: (words) => {
      underHeading = words;
    },
    table: (table) => {
      const again = underHeading === "" ? [] : [continuedBlock(width, underHeading)];
      const blocks = tableBlocks(table, width, columnOf(1).height - heightOf(again, true));
      for (const [i, block] of blocks.entries()) {
        // The name of a group goes over together with its first row, and the head comes before both.
        const next = block.block.withNext ? blocks.slice(i + 1, i + 2).map((one) => one.block) : [];
        const needed = heightOf([...waiting, block.block, ...next], used === 0);
        const isTop = used + needed > column().height + 1e-6;
        if (isTop && block.headAgain !== undefined && waiting.length === 0 && used > 0) {
          begin();
          for (const each of again) put(each);
          put(block.headAgain);
        }
        put(block.block);
      }
    },
    keepTogether: (write) => {
      const kept: Block[] = [];
      const inner = writerOf(width, (block) => kept.push(block), {
        headed: (words) => {
          underHeading = words;
        },
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
  /** Takes note of the heading that follows stand under. */
  readonly headed: (words: string) => void;
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
    heading: (words, note) => {
      inner.headed(words);
      put(headingBlock(width, words, note));
    },
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
