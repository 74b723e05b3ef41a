import type { Ink, Mark, Weight } from "../display-list.ts";
import { line, pt, rect, text } from "../marks.ts";
import type { Block } from "./block.ts";
import { HAIR, INK, SECOND_INK, TINT } from "./inks.ts";
import { measure, wrap } from "./measure.ts";
import { LEADING, RISE } from "./text-lines.ts";

export interface TableColumn {
  readonly head: string;
  /** Millimetres; absent: a share of what is left. */
  readonly width?: number;
  /** Of what fixed columns leave; absent: 1. */
  readonly share?: number;
  readonly align?: "start" | "middle" | "end";
  readonly weight?: Weight;
  /** Figures of one width. */
  readonly tabular?: boolean;
}

export interface TableCell {
  readonly text: string;
  readonly weight?: Weight;
  readonly ink?: Ink;
  /** Smaller words under the text. */
  readonly note?: string;
  /** Figures that are left out at the end, as ".50": their room is kept, so that points stand under one another. */
  readonly unsaid?: string;
  /** An empty square before the text. */
  readonly check?: boolean;
  /** Drawn before the text: marks about their own origin, which lies at the middle of the capitals of the first line. */
  readonly sign?: { readonly marks: readonly Mark[]; readonly width: number };
  /** Reaches over this many columns. */
  readonly span?: number;
}

export interface TableRow {
  readonly cells: readonly (string | TableCell)[];
  /** Bold with a line above, as a total. */
  readonly strong?: boolean;
  /** On a grey ground, as the name of a group; stays with the row that follows. */
  readonly group?: boolean;
  /** At least this high: room to write. */
  readonly height?: number;
}

export interface Table {
  readonly columns: readonly TableColumn[];
  readonly rows: readonly TableRow[];
  /** Height of text, mm; absent 8.5 points. */
  readonly size?: number;
  /** Upright hairlines between columns, for tables that are written into. */
  readonly grid?: boolean;
}

interface TableBlock {
  readonly block: Block;
  /** The head as it is repeated above this row on a fresh page; absent for the head itself. */
  readonly headAgain?: Block;
}

const PAD = 1;
const NOTE = 0.86;

interface Measured extends TableColumn {
  readonly x: number;
  readonly wide: number;
}

/** The head and every row of a table as blocks; a row higher than a page is cut between its lines. */
export function tableBlocks(table: Table, width: number, pageHeight: number): readonly TableBlock[] {
  const size = table.size ?? pt(8.5);
  const columns = placed(table.columns, width);
  const head = headBlock(columns, width, size);
  const most = Math.max(3, Math.floor((pageHeight - head.height - 4 * PAD) / (LEADING * size)));
  return [
    { block: { ...head, above: 1.5, withNext: true } },
    ...table.rows.flatMap((row) =>
      rowBlocks(row, columns, width, size, most, table.grid === true).map((block) => ({ block, headAgain: head })),
    ),
  ];
}

function placed(columns: readonly TableColumn[], width: number): readonly Measured[] {
  const fixed = columns.reduce((sum, column) => sum + (column.width ?? 0), 0);
  const shares = columns.reduce((sum, column) => sum + (column.width === undefined ? (column.share ?? 1) : 0), 0);
  let x = 0;
  return columns.map((column) => {
    const wide = column.width ?? (Math.max(0, width - fixed) * (column.share ?? 1)) / shares;
    const here = { ...column, x, wide };
    x += wide;
    return here;
  });
}

function headBlock(columns: readonly Measured[], width: number, size: number): Block {
  const small = size * 0.9;
  const heads = columns.map(({ head, wide }) => wrap(head, wide - 2 * PAD, { size: small, weight: 600 }));
  const lines = Math.max(1, ...heads.map(({ length }) => length));
  const height = lines * LEADING * small + 2 * PAD;
  return {
    height,
    withNext: true,
    marks: [
      rect({ x: 0, y: 0, width, height }, { fill: TINT }),
      line(0, height, width, height, { ink: INK, width: 0.3 }),
      ...columns.flatMap((column, i) =>
        (heads[i] ?? []).map((words, n) =>
          text(words, anchorX(column), height - PAD - (lines0(heads[i]) - n - RISE) * LEADING * small - 0.28 * small, {
            size: small,
            weight: 600,
            anchor: column.align ?? "start",
            ink: SECOND_INK,
          }),
        ),
      ),
    ],
  };
}

const lines0 = (lines: readonly string[] | undefined): number => lines?.length ?? 0;

const anchorX = ({ x, wide, align }: Measured): number =>
  align === "end" ? x + wide - PAD : align === "middle" ? x + wide / 2 : x + PAD;

interface CellLine {
  readonly words: string;
  readonly size: number;
  readonly weight: Weight;
  readonly ink: Ink;
}

interface SetCell {
  readonly column: Measured;
  readonly lines: readonly CellLine[];
  readonly before: number;
  readonly cell: TableCell;
}

function rowBlocks(
  row: TableRow,
  columns: readonly Measured[],
  width: number,
  size: number,
  most: number,
  grid: boolean,
): readonly Block[] {
  const cells = setCells(row, columns, size);
  const lines = Math.max(1, ...cells.map((cell) => cell.lines.length));
  const parts = Math.ceil(lines / most);
  return Array.from({ length: parts }, (_, part) => {
    const shown = cells.map((cell) => ({ ...cell, lines: cell.lines.slice(part * most, (part + 1) * most) }));
    const count = Math.max(1, ...shown.map((cell) => cell.lines.length));
    const height = Math.max(count * LEADING * size + 2 * PAD, part === 0 ? (row.height ?? 0) : 0);
    return {
      height,
      withNext: row.group === true,
      marks: [
        ...(row.group ? [rect({ x: 0, y: 0, width, height }, { fill: TINT })] : []),
        ...(row.strong ? [line(0, 0, width, 0, { ink: INK, width: 0.3 })] : []),
        ...shown.flatMap((cell) => cellMarks(cell, size, part === 0)),
        ...(grid ? columns.slice(1).map(({ x }) => line(x, 0, x, height, { ink: HAIR, width: 0.2 })) : []),
        line(0, height, width, height, { ink: HAIR, width: 0.2 }),
      ],
    };
  });
}

function setCells(row: TableRow, columns: readonly Measured[], size: number): readonly SetCell[] {
  const bold: Weight = row.strong || row.group ? 700 : 400;
  let at = 0;
  return row.cells.flatMap((each) => {
    const cell: TableCell = typeof each === "string" ? { text: each } : each;
    const [first] = columns.slice(at, at + 1);
    if (first === undefined) return [];
    const span = cell.span ?? 1;
    const wide = columns.slice(at, at + span).reduce((sum, column) => sum + column.wide, 0);
    at += span;
    const before = (cell.check ? size + 1.2 : 0) + (cell.sign === undefined ? 0 : cell.sign.width + 1);
    const room = wide - 2 * PAD - before;
    const weight = cell.weight ?? (bold === 700 ? 700 : (first.weight ?? 400));
    const ink = cell.ink ?? INK;
    const lined = (words: string, lineSize: number, lineWeight: Weight, lineInk: Ink): readonly CellLine[] =>
      wrap(words, room, { size: lineSize, weight: lineWeight, tabular: first.tabular === true }).map((part) => ({
        words: part,
        size: lineSize,
        weight: lineWeight,
        ink: lineInk,
      }));
    const lines = [
      ...(cell.text === "" && cell.note !== undefined ? [] : lined(cell.text, size, weight, ink)),
      ...(cell.note === undefined || cell.note === "" ? [] : lined(cell.note, size * NOTE, 400, SECOND_INK)),
    ];
    return [{ column: { ...first, wide }, lines, before, cell }];
  });
}

function cellMarks({ column, lines, before, cell }: SetCell, size: number, isFirst: boolean): readonly Mark[] {
  const y = (n: number): number => PAD + (RISE + n * LEADING) * size;
  const left = column.x + PAD;
  const signY = y(0) - 0.334 * size;
  const check = size * 0.95;
  const unsaid =
    cell.unsaid === undefined ? 0 : measure(cell.unsaid, size, lines[0]?.weight ?? 400, 0, column.tabular === true);
  return [
    ...(isFirst && cell.check
      ? [rect({ x: left, y: signY - check / 2, width: check, height: check }, { stroke: { ink: INK, width: 0.3 } })]
      : []),
    ...(isFirst && cell.sign !== undefined
      ? [
          {
            kind: "group" as const,
            marks: cell.sign.marks,
            shift: { x: left + (cell.check ? size + 1.2 : 0) + cell.sign.width / 2, y: signY },
          },
        ]
      : []),
    ...lines
      .filter(({ words }) => words !== "")
      .map(({ words, size: own, weight, ink }, n) =>
        text(
          words,
          (column.align === "end" || column.align === "middle" ? anchorX(column) : left + before) - unsaid,
          y(n),
          {
            size: own,
            weight,
            ink,
            anchor: column.align ?? "start",
            ...(column.tabular && { tabular: true }),
          },
        ),
      ),
  ];
}
