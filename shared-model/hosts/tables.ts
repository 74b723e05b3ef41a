import type { CellObject, Sheet } from "write-excel-file/universal";
import writeExcelFile from "write-excel-file/universal";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { ListCell, ListColumn, ListTable } from "../sheets/tables/table.ts";
import { withoutClock } from "./zip-clock.ts";

const wording = catalogue({
  no: "no",
  yes: "yes",
  list: (number: Part) => `List ${number}`,
});

// Lists as tables for a spreadsheet. Whatever a drawing says stays a text: no cell is ever a formula.

/** Tells programs that the file is UTF-8; without it some of them break "in³" and "°C". */
const BYTE_ORDER_MARK = "\uFEFF";
const LINE_END = "\r\n";

/** What begins a formula or a command: = + - @, in ASCII or full width, and the minus sign. */
const STARTER = "=+\\-@＝＋－＠−";
/** At the beginning of a text, whatever cannot be seen before it; and a tab or a line end as the first letter. */
const AT_START = new RegExp(`^(?:[\\t\\r\\n]|[\\s\\p{Cf}\\p{Cc}]*[${STARTER}])`, "u");
/** After what parts cells where a semicolon or tab does, and after a line end that a reader takes for one of its own. */
const AFTER_PARTING = new RegExp(`([;\\t\\r\\n][\\s\\p{Cf}\\p{Cc}]*)(?=[${STARTER}])`, "gu");

/**
 * Tables as one CSV of RFC 4180: UTF-8 with a byte order mark, every line ended by CR LF, a head line with the names of the
 * columns. Of several tables each has a line with its name before its head, and an empty line parts them. A text that a
 * spreadsheet could take for a formula gets an apostrophe before it; negative numbers come from number cells alone.
 * Dates are "2026-05-04", yes and no "yes" and "no".
 */
export function csvOf(tables: readonly ListTable[]): Uint8Array<ArrayBuffer> {
  const parts = tables.map(({ name, columns, rows }) => [
    ...(tables.length > 1 ? [csvText(name)] : []),
    columns.map(({ head }) => csvText(head)).join(","),
    ...rows.map((row) => columns.map((column, i) => csvCell(column, row[i])).join(",")),
  ]);
  const lines = parts.flatMap((part, i) => (i === 0 ? part : ["", ...part]));
  return new TextEncoder().encode(BYTE_ORDER_MARK + lines.map((line) => line + LINE_END).join(""));
}

function csvCell(column: ListColumn, cell: ListCell): string {
  if (cell === undefined) return "";
  if (typeof cell === "number") return Number.isFinite(cell) ? numberText(column, cell) : "";
  if (typeof cell === "boolean") return cell ? wording.yes : wording.no;
  return csvText(cell);
}

/** Places of a number whose column says none: finer than anything that is measured. */
const FINEST = 12;

/** Digits and a point, never an exponent: as many places as the column says, else as the number has. */
function numberText({ decimals }: ListColumn, value: number): string {
  if (Math.abs(value) >= 1e21) return String(BigInt(value));
  return decimals === undefined ? value.toFixed(FINEST).replace(/[.]?0+$/, "") : value.toFixed(decimals);
}

function csvText(text: string): string {
  const apart = text.replace(AFTER_PARTING, "$1'");
  const shown = AT_START.test(apart) ? `'${apart}` : apart;
  return /[",;\r\n]/.test(shown) || shown !== shown.trim() ? `"${shown.replaceAll('"', '""')}"` : shown;
}

/** As many letters as a cell of a spreadsheet holds. */
const MOST_LETTERS = 32_767;

/**
 * Tables as one workbook, a worksheet each, with typed cells: numbers are numbers, dates dates, yes and no booleans, and
 * every text a text. The head is bold and stays in sight. The same tables make the same bytes. Runs in Node and in workers.
 * Throws when there is no table.
 */
export async function xlsxOf(tables: readonly ListTable[]): Promise<Uint8Array<ArrayBuffer>> {
  if (tables.length === 0) throw new Error("There is no list to write.");
  const names = sheetNames(tables.map(({ name }) => name));
  const sheets = tables.map(
    ({ columns, rows }, i): Sheet<Blob> => ({
      sheet: names[i] ?? `${i + 1}`,
      stickyRowsCount: 1,
      columns: columns.map(({ width, head }) => ({ width: Math.max(width ?? 0, head.length + 2, 8) })),
      data: [
        columns.map(({ head }) => headCell(head)),
        ...rows.map((row) => columns.map((one, c) => cellOf(one, row[c]))),
      ],
    }),
  );
  const file = await writeExcelFile(sheets).toBlob();
  return withoutClock(new Uint8Array(await file.arrayBuffer()));
}

const headCell = (head: string): CellObject => ({
  ...textCell(head),
  fontWeight: "bold",
  bottomBorderStyle: "thin",
});

function cellOf({ kind, decimals }: ListColumn, cell: ListCell): CellObject | null {
  if (cell === undefined || cell === "") return null;
  if (typeof cell === "boolean") return { type: Boolean, value: cell, alignVertical: "top" };
  if (typeof cell === "number") {
    if (!Number.isFinite(cell)) return null;
    const format = decimals === undefined ? {} : { format: decimals === 0 ? "0" : `0.${"0".repeat(decimals)}` };
    return { type: Number, value: cell, alignVertical: "top", ...format };
  }
  const day = kind === "date" ? dayOf(cell) : undefined;
  if (day !== undefined) return { type: Date, value: day, format: "yyyy-mm-dd", alignVertical: "top" };
  return textCell(cell);
}

/** The format @ keeps a text a text when somebody edits the cell. */
const textCell = (text: string): CellObject => ({
  type: String,
  value: escaped(text).slice(0, MOST_LETTERS),
  format: "@",
  wrap: true,
  alignVertical: "top",
});

/**
 * "_x0041_" is how the format itself writes a letter (ECMA-376, ST_Xstring): a text of that look has its line written so. So
 * has the first letter of a text that every JavaScript object inherits a member of that name from, because the writer
 * keeps texts in a plain object and would take the member for its number.
 */
const escaped = (text: string): string =>
  INHERITED.has(text)
    ? `_x${text.charCodeAt(0).toString(16).padStart(4, "0")}_${text.slice(1)}`
    : text.replace(/_(?=x[0-9A-Fa-f]{4}_)/g, "_x005F_");

const INHERITED: ReadonlySet<string> = new Set(Object.getOwnPropertyNames(Object.prototype));

/** First day whose number all spreadsheets agree on. */
const FIRST_DAY = Date.UTC(1900, 2, 1);

/** "2026-05-04" as midnight in UTC; undefined for what is no day. */
function dayOf(text: string): Date | undefined {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text) ?? [];
  if (year === undefined) return undefined;
  const date = new Date(Date.UTC(Number(year), Number(month) - 1, Number(day)));
  return date.toISOString().startsWith(text) && date.getTime() >= FIRST_DAY ? date : undefined;
}

const LONGEST_NAME = 31;

/** Names that a workbook takes: without what it forbids, none twice. */
function sheetNames(names: readonly string[]): readonly string[] {
  const taken = new Set<string>();
  return names.map((name, i) => {
    const plain = name.replace(/[[\]/\\:*?\p{Cc}]/gu, " ").replace(/^['\s]+|['\s]+$/g, "") || wording.list(i + 1);
    let own = plain.slice(0, LONGEST_NAME).trim();
    for (let n = 2; taken.has(own.toLowerCase()); n += 1)
      own = `${plain.slice(0, LONGEST_NAME - 1 - String(n).length).trim()} ${n}`;
    taken.add(own.toLowerCase());
    return own;
  });
}
