import { type Block, movedTo } from "./block.ts";
import { scaleOnPaper } from "./paper.ts";

/** Room between blocks, in drawing units. */
export interface Gaps {
  readonly across: number;
  readonly down: number;
  /** More over a row, for each block in it that is not its first: its cable comes along there. */
  readonly lane: number;
}

export interface Shelved {
  readonly blocks: readonly Block[];
  readonly width: number;
  readonly height: number;
  /** How well it comes out on paper, to be compared. */
  readonly worth: number;
}

/** Blocks in their order from left to right in rows under each other, none wider than asked unless one block is. */
function shelve(blocks: readonly Block[], most: number, { across, down, lane }: Gaps): Omit<Shelved, "worth"> {
  const rows: Block[][] = [];
  let wide = 0;
  for (const block of blocks) {
    const row = rows[rows.length - 1];
    if (row !== undefined && wide + across + block.area.width <= most) {
      row.push(block);
      wide += across + block.area.width;
    } else {
      rows.push([block]);
      wide = block.area.width;
    }
  }
  const done: Block[] = [];
  let [y, width] = [0, 0];
  rows.forEach((row, i) => {
    if (i > 0) y += down;
    y += lane * (row.length - 1);
    let x = 0;
    for (const block of row) {
      done.push(movedTo(block, { x, y }));
      x += block.area.width + across;
    }
    width = Math.max(width, x - across);
    y += Math.max(...row.map(({ area }) => area.height));
  });
  return { blocks: done, width, height: y };
}

/** Columns that are tried. */
const MOST_COLUMNS = 12;

/**
 * Blocks in rows of such a width that the whole comes out largest on paper.
 * @param dearer What a further column has to bring, as a share of that: cables to it are long, and cross others.
 * @param beside What else stands beside the rows: how wide it is, and how high.
 */
export function bestShelves(
  blocks: readonly Block[],
  gaps: Gaps,
  dearer: number,
  beside = { width: 0, height: 0 },
): Shelved {
  let best: Shelved = { blocks: [], width: 0, height: 0, worth: 0 };
  const widest = Math.max(0, ...blocks.map(({ area }) => area.width));
  const all = blocks.reduce((sum, { area }) => sum + area.width + gaps.across, 0);
  let before = -1;
  for (let columns = 1; columns <= Math.min(MOST_COLUMNS, blocks.length); columns++) {
    const most = columns === 1 ? 0 : Math.max(widest, (all * columns) / blocks.length);
    if (most === before) continue;
    before = most;
    const tried = shelve(blocks, most, gaps);
    const size = { width: tried.width + beside.width, height: Math.max(tried.height, beside.height) };
    const worth = scaleOnPaper(size) / (1 + dearer * (columns - 1));
    if (worth > best.worth * 1.001) best = { ...tried, worth };
  }
  return best;
}
