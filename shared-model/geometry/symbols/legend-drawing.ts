import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { Point } from "../../model/project.ts";
import type { SymbolSet } from "../../model/symbol-set.ts";
import { textWidth } from "../text-width.ts";
import type { PlanSymbol } from "./plan-symbol.ts";
import { SET_WORDS } from "./plan-symbol.ts";
import type { LegendLine } from "./symbol-legend.ts";

const wording = catalogue({ shapes: (after: Part) => `Shapes ${after}.` });

/** A legend as it is drawn, on screen and on paper, in units of its letters: 12 high, as 9 points on paper. */
export interface LegendDrawing {
  readonly width: number;
  readonly height: number;
  readonly title: { readonly text: string; readonly at: Point };
  readonly lines: readonly LegendCell[];
  /** How far the shapes are backed, in lines that fit the width. */
  readonly note: readonly { readonly text: string; readonly at: Point }[];
}

interface LegendCell {
  readonly symbol: PlanSymbol;
  /** Upper left corner and side of its square. */
  readonly corner: Point;
  readonly side: number;
  readonly text: string;
  /** Baselines. */
  readonly textAt: Point;
  readonly count: string;
  /** Right end. */
  readonly countAt: Point;
}

export const LEGEND_LETTERS = { title: 13, line: 12, note: 11 } as const;
const PAD = 10;
const ROW = 28;
const SIDE = 24;
const GAP = 8;
/** Room for a count of three figures. */
const COUNT = 34;
const NOTE_LINE = 14;
/** Of a column, and between two. */
const MOST_ROWS = 11;
const LEAST = 200;
const APART = 24;

/** Lays a legend out: its lines one under another, in as many columns as they need, each as wide as the longest name. */
export function drawLegend(lines: readonly LegendLine[], set: SymbolSet): LegendDrawing {
  const { title, after } = SET_WORDS[set];
  const columns = Math.max(1, Math.ceil(lines.length / MOST_ROWS));
  const rows = Math.ceil(lines.length / columns);
  const longest = Math.max(
    LEAST,
    ...lines.map(({ symbol }) => SIDE + GAP + textWidth(symbol.name, LEGEND_LETTERS.line) + COUNT),
  );
  const column = Math.ceil(longest);
  const width = 2 * PAD + columns * column + (columns - 1) * APART;
  const top = PAD + 22;
  const cells = lines.map(({ symbol, count }, i): LegendCell => {
    const x = PAD + Math.floor(i / rows) * (column + APART);
    const y = top + (i % rows) * ROW;
    const base = y + SIDE / 2 + 4;
    return {
      symbol,
      corner: { x, y },
      side: SIDE,
      text: symbol.name,
      textAt: { x: x + SIDE + GAP, y: base },
      count: `${count}`,
      countAt: { x: x + column, y: base },
    };
  });
  const foot = top + rows * ROW + 10;
  const note = wrap(wording.shapes(after), width - 2 * PAD).map((text, i) => ({
    text,
    at: { x: PAD, y: foot + i * NOTE_LINE },
  }));
  return {
    width,
    height: foot + (note.length - 1) * NOTE_LINE + PAD,
    title: { text: title, at: { x: PAD, y: PAD + 11 } },
    lines: cells,
    note,
  };
}

/** Words in lines of at most a width; a word longer than that stands alone. */
function wrap(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(" ")) {
    const last = lines.at(-1);
    const longer = last === undefined ? word : `${last} ${word}`;
    if (last !== undefined && textWidth(longer, LEGEND_LETTERS.note) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}
