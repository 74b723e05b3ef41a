import type { Mark } from "../display-list.ts";
import { rect, text } from "../marks.ts";
import type { Block } from "../page/block.ts";
import { TYPE } from "../page/flow-blocks.ts";
import { INK, SECOND_INK } from "../page/inks.ts";
import { cutToFit, wrap } from "../page/measure.ts";
import { LEADING, RISE } from "../page/text-lines.ts";

export interface CutOutLine {
  readonly words: string;
  readonly size: number;
  readonly bold: boolean;
  /** White above it. */
  readonly above?: number;
}

/** A piece of paper to cut out: lines of text in a dashed frame, and below the frame where it belongs. */
export interface CutOut {
  readonly lines: readonly CutOutLine[];
  readonly below: string;
}

export interface CutOutGrid {
  readonly columns: number;
  /** Of the frame, at least. */
  readonly height: number;
  readonly centred: boolean;
}

const GAP = 5;
const PAD = 2.5;
const BELOW = 4.5;
const DASH = { ink: INK, width: 0.25, dash: [1.6, 1.1] } as const;

/** Rows of cut-outs, each as high as its highest. `most` is the height of a page: words that do not fit it are cut off. */
export function cutOutRows(width: number, most: number, grid: CutOutGrid, all: readonly CutOut[]): readonly Block[] {
  const { columns, centred } = grid;
  const wide = (width - (columns - 1) * GAP) / columns;
  return Array.from({ length: Math.ceil(all.length / columns) }, (_, row) => {
    const placed = all
      .slice(row * columns, (row + 1) * columns)
      .map((one) => ({ below: one.below, lines: fitted(one, wide - 2 * PAD, most - BELOW - 2 * PAD - GAP) }));
    const height = Math.max(grid.height, ...placed.map(({ lines }) => heightOf(lines) + 2 * PAD));
    return {
      height: height + BELOW,
      above: GAP,
      marks: placed.flatMap(({ lines, below }, column): readonly Mark[] => {
        const x = column * (wide + GAP);
        let y = (height - heightOf(lines)) / 2;
        return [
          rect({ x, y: 0, width: wide, height }, { stroke: DASH }),
          ...lines.map(({ words, size, bold, above = 0 }) => {
            y += above;
            const baseline = y + RISE * size;
            y += LEADING * size;
            return text(words, centred ? x + wide / 2 : x + PAD, baseline, {
              size,
              weight: bold ? 700 : 400,
              anchor: centred ? "middle" : "start",
            });
          }),
          text(cutToFit(below, wide, { size: TYPE.small }), x, height + 1 + RISE * TYPE.small, {
            size: TYPE.small,
            ink: SECOND_INK,
          }),
        ];
      }),
    };
  });
}

type Lines = readonly CutOutLine[];

const heightOf = (lines: Lines): number => lines.reduce((sum, { size, above = 0 }) => sum + LEADING * size + above, 0);

function fitted({ lines }: CutOut, wide: number, most: number): Lines {
  const wrapped = lines.flatMap(({ words, size, bold, above = 0 }) =>
    wrap(words, wide, { size, weight: bold ? 700 : 400 }).map((part, i) => ({
      words: part,
      size,
      bold,
      above: i === 0 ? above : 0,
    })),
  );
  let used = 0;
  const kept = wrapped.filter(({ size, above }) => {
    used += LEADING * size + above;
    return used <= most;
  });
  const last = kept[kept.length - 1];
  if (last === undefined || kept.length === wrapped.length) return wrapped;
  return [
    ...kept.slice(0, -1),
    { ...last, words: cutToFit(`${last.words} …`, wide, { size: last.size, weight: last.bold ? 700 : 400 }) },
  ];
}
