import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { inflateRawSync } from "node:zlib";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { csvOf, xlsxOf } from "../shared-model/hosts/tables.ts";
import { SHEETS } from "../shared-model/sheets/registry.ts";
import type { ListCell, ListColumn, ListTable } from "../shared-model/sheets/tables/table.ts";
import { getOpenpyxl, NO_OPENPYXL } from "./get-openpyxl.mjs";
import { inputOf, sampleProject } from "./sheets/sheet-inputs.ts";

const python = getOpenpyxl();
if (python === undefined) console.error(`SKIPPED, proves nothing here: ${NO_OPENPYXL}`);

const STARTERS = ["=", "+", "-", "@", "＝", "＋", "－", "＠", "−"];

/** What has been put into cells to make a spreadsheet do something, in the shapes that are published; and near misses. */
const PAYLOADS: readonly string[] = [
  "=1+1",
  "+1+1",
  "-1+1",
  "@SUM(1+1)",
  "=SUM(A1:A9)",
  "=cmd|' /C calc'!A0",
  "+cmd|' /C calc'!A0",
  "-cmd|' /C calc'!A0",
  "@cmd|' /C calc'!A0",
  '=DDE("cmd";"/C calc";"x")',
  '=HYPERLINK("http://127.0.0.1/?"&A1,"click")',
  '=IMPORTXML(CONCAT("http://127.0.0.1/",A1),"//a")',
  '=WEBSERVICE("http://127.0.0.1/")',
  "=2+5+cmd|' /C calc'!A0",
  "\t=1+1",
  "\r=1+1",
  "\n=1+1",
  " =1+1",
  "  \t +1+1",
  "\u00a0=1+1",
  "\u200b=1+1",
  "\u202e=1+1",
  "\ufeff=1+1",
  "＝1+1",
  "＋1+1",
  "－1+1",
  "＠SUM(1+1)",
  "−1+1",
  '"=1+1',
  '","=1+1',
  '"",=1+1',
  "a,=1+1",
  "a;=1+1",
  "a;-1",
  "a\n=1+1",
  "a\r\n@SUM(1)",
  "a\t+1",
  ";=1+1",
  "'=1+1",
  "=<f>1+1</f>",
  "]]><f>1+1</f>",
  "</t></si><c><f>1+1</f></c>",
  "-",
  "=",
  "_x003D_1+1",
];

/** Texts that must arrive as they are. */
const PLAIN: readonly string[] = [
  "R1b",
  'a "quoted" word',
  "<b>&amp;</b>",
  "constructor",
  "__proto__",
  "toString",
  "in³, °C, Ω, ½",
  "two\nlines",
  " spaces ",
  "مرحبا",
  "😀",
  "007",
  "1e5",
  "TRUE",
  "2026-05-04",
  "x".repeat(5000),
];

const KINDS: readonly ListColumn[] = [
  { head: "Text", kind: "text" },
  { head: "Number", kind: "number", decimals: 2 },
  { head: "Date", kind: "date" },
  { head: "Yes", kind: "yes-no" },
];

const everywhere = (text: string): readonly ListCell[] => KINDS.map(() => text);
const hostile: ListTable = { name: "Hostile", columns: KINDS, rows: PAYLOADS.map(everywhere) };
const plain: ListTable = { name: "Plain", columns: KINDS, rows: PLAIN.map(everywhere) };
const typed: ListTable = {
  name: "Typed",
  columns: KINDS,
  rows: [
    ["a", 29.8125, "2026-05-04", true],
    ["b", -1.5, "1900-02-28", false],
    [undefined, undefined, undefined, undefined],
    ["c", Number.NaN, "2026-02-30", undefined],
    ["d", 0, "4 May", true],
  ],
};

const textOf = (bytes: Uint8Array): string => new TextDecoder("utf-8", { ignoreBOM: true }).decode(bytes);

/** A reader of RFC 4180, written after its grammar. */
function readCsv(text: string, separator = ","): string[][] {
  const rows: string[][] = [];
  let [row, cell, quoted]: [string[], string, boolean] = [[], "", false];
  for (let i = 0; i < text.length; i++) {
    const letter = text[i] ?? "";
    if (quoted) {
      if (letter !== '"') cell += letter;
      else if (text[i + 1] === '"') {
        cell += '"';
        i++;
      } else quoted = false;
    } else if (letter === '"' && cell === "") quoted = true;
    else if (letter === separator) {
      row.push(cell);
      cell = "";
    } else if (letter === "\r" || letter === "\n") {
      if (letter === "\r" && text[i + 1] === "\n") i++;
      rows.push([...row, cell]);
      [row, cell] = [[], ""];
    } else cell += letter;
  }
  return rows;
}

/** Whether a spreadsheet may take a cell for a formula. */
const isDangerous = (cell: string): boolean =>
  /^[\t\r\n]/.test(cell) || STARTERS.includes([...cell.replace(/^[\s\p{Cf}\p{Cc}]+/u, "")][0] ?? "");

describe("lists as CSV", () => {
  it("is UTF-8 with a byte order mark, every line ended by CR LF, and reads back as it was", () => {
    const bytes = csvOf([{ ...plain, columns: KINDS.slice(0, 1), rows: PLAIN.map((text) => [text]) }]);
    expect([...bytes.slice(0, 3)]).toEqual([0xef, 0xbb, 0xbf]);
    const text = textOf(bytes).slice(1);
    expect(text.endsWith("\r\n")).toBe(true);
    expect(readCsv(text)).toEqual([["Text"], ...PLAIN.map((one) => [one])]);
  });

  it.each(PAYLOADS)("keeps %j from being a formula in every column, by commas and by semicolons", (payload) => {
    const text = textOf(csvOf([{ ...hostile, rows: [everywhere(payload)] }])).slice(1);
    const [, row = []] = readCsv(text);
    expect(row).toHaveLength(KINDS.length);
    for (const cell of row) {
      expect(isDangerous(cell)).toBe(false);
      // Nothing but apostrophes was put in.
      expect(cell.replaceAll("'", "")).toBe(payload.replaceAll("'", ""));
    }
    // As a reader takes it whose cells are parted otherwise: quotes count only where a cell of theirs begins.
    for (const separator of [";", "\t"])
      for (const cells of readCsv(text, separator)) for (const cell of cells) expect(isDangerous(cell)).toBe(false);
  });

  it("writes numbers with a point and their places, negative ones bare, dates as days, and yes and no", () => {
    expect(
      textOf(csvOf([typed]))
        .slice(1)
        .split("\r\n"),
    ).toEqual([
      "Text,Number,Date,Yes",
      "a,29.81,2026-05-04,yes",
      "b,-1.50,1900-02-28,no",
      ",,,",
      "c,,2026-02-30,",
      "d,0.00,4 May,yes",
      "",
    ]);
  });

  it("writes no exponents", () => {
    const columns: readonly ListColumn[] = [{ head: "n", kind: "number" }];
    const numbers = [1e-7, 123456.5, 1e21, 0.1, -40, 1e6];
    expect(textOf(csvOf([{ name: "n", columns, rows: numbers.map((n) => [n]) }])).slice(1)).toBe(
      "n\r\n0.0000001\r\n123456.5\r\n1000000000000000000000\r\n0.1\r\n-40\r\n1000000\r\n",
    );
  });

  it("gives each of several tables its name and an empty line between", () => {
    const one = { ...typed, rows: [] };
    expect(textOf(csvOf([one, { ...one, name: "=Other" }])).slice(1)).toBe(
      "Typed\r\nText,Number,Date,Yes\r\n\r\n'=Other\r\nText,Number,Date,Yes\r\n",
    );
  });
});

/** Files of a ZIP by its central directory (APPNOTE.TXT 4.3.12). */
function unzip(bytes: Uint8Array): ReadonlyMap<string, string> {
  const view = Buffer.from(bytes);
  const files = new Map<string, string>();
  let at = view.readUInt32LE(view.lastIndexOf(Buffer.from([0x50, 0x4b, 5, 6])) + 16);
  while (view.readUInt32LE(at) === 0x02014b50) {
    const [size, name, extra, note, header] = [
      view.readUInt32LE(at + 20),
      view.readUInt16LE(at + 28),
      view.readUInt16LE(at + 30),
      view.readUInt16LE(at + 32),
      view.readUInt32LE(at + 42),
    ];
    const from = header + 30 + view.readUInt16LE(header + 26) + view.readUInt16LE(header + 28);
    const data = view.subarray(from, from + size);
    const content = view.readUInt16LE(at + 10) === 8 ? inflateRawSync(data) : data;
    files.set(view.toString("utf8", at + 46, at + 46 + name), content.toString("utf8"));
    at += 46 + name + extra + note;
  }
  return files;
}

const READER = `
import json, sys, openpyxl, warnings
warnings.filterwarnings("error")
warnings.filterwarnings("ignore", message="Workbook contains no default style")
book = openpyxl.load_workbook(sys.argv[1])
def cell(c):
    value = c.value
    return {"type": c.data_type, "value": value.isoformat() if hasattr(value, "isoformat") else value, "format": c.number_format, "bold": bool(c.font.b)}
print(json.dumps([{"name": s.title, "freeze": s.freeze_panes, "width": s.column_dimensions["A"].width,
    "rows": [[cell(c) for c in row] for row in s.iter_rows()]} for s in book.worksheets]))
`;

interface ReadCell {
  readonly type: string;
  readonly value: unknown;
  readonly format: string;
  readonly bold: boolean;
}
type ReadSheet = {
  readonly name: string;
  readonly freeze: string;
  readonly width: number;
  readonly rows: ReadCell[][];
};

const folder = mkdtempSync(join(tmpdir(), "loadside-tables-"));
afterAll(() => rmSync(folder, { recursive: true }));

function openpyxl(bytes: Uint8Array): readonly ReadSheet[] {
  const file = join(folder, "book.xlsx");
  writeFileSync(file, bytes);
  const { status, stdout, stderr } = spawnSync(python ?? "", ["-c", READER, file], {
    encoding: "utf8",
    timeout: 60_000,
    maxBuffer: 1 << 26,
  });
  if (status !== 0) throw new Error(stderr);
  return JSON.parse(stdout) as ReadSheet[];
}

/** As the format says (ECMA-376, ST_Xstring) and a spreadsheet shows it; openpyxl takes away the escape of escapes only. */
const unescaped = (text: string): string =>
  text.replace(/_x([0-9A-Fa-f]{4})_/g, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)));

describe("lists as a workbook", () => {
  let bytes: Uint8Array;
  beforeAll(async () => {
    bytes = await xlsxOf([hostile, plain, typed]);
  });

  it("holds no formula, whatever its cells say", () => {
    const files = unzip(bytes);
    const sheets = [...files].filter(([name]) => name.startsWith("xl/worksheets/sheet"));
    expect(sheets).toHaveLength(3);
    for (const [, xml] of sheets) expect(xml).not.toMatch(/<f[\s/>]/);
    // Texts stand in a table of their own, where markup is only text.
    expect(files.get("xl/sharedStrings.xml")).toContain("&lt;f&gt;1+1&lt;/f&gt;");
    expect(files.get("xl/sharedStrings.xml")).not.toMatch(/<f[\s/>]/);
  });

  it("writes texts that look like an escape of the format, or like what every object has, so that they read back", () => {
    const strings = unzip(bytes).get("xl/sharedStrings.xml") ?? "";
    const read = [...strings.matchAll(/<t[^>]*>([^<]*)<\/t>/g)].map(([, text = ""]) => unescaped(text));
    for (const text of ["constructor", "__proto__", "toString", "_x003D_1+1"]) expect(read).toContain(text);
    for (const [name, xml] of unzip(bytes)) expect(xml, name).not.toMatch(/native code|object Object/);
  });

  it("is the same file for the same tables, whatever the clock says", async () => {
    vi.useFakeTimers({ toFake: ["Date"], now: new Date("2031-07-09T11:13:00") });
    try {
      expect(Buffer.from(await xlsxOf([hostile, plain, typed])).equals(Buffer.from(bytes))).toBe(true);
    } finally {
      vi.useRealTimers();
    }
  });

  it("gives worksheets names that a workbook takes, none twice", async () => {
    const table = { ...typed, rows: [] };
    const names = ["A/B: [c]*?", "A/B: [c]*?", "", "'", "x".repeat(40), "X".repeat(40)];
    const book = unzip(await xlsxOf(names.map((name) => ({ ...table, name })))).get("xl/workbook.xml") ?? "";
    const given = [...book.matchAll(/<sheet [^>]*name="([^"]*)"/g)].map(([, name = ""]) => name);
    expect(given).toHaveLength(6);
    expect(new Set(given.map((name) => name.toLowerCase())).size).toBe(6);
    for (const name of given) expect(name).toMatch(/^[^[\]/\\:*?']{1,31}$/);
  });

  it("says so when there is nothing to write", async () => {
    await expect(xlsxOf([])).rejects.toThrow("There is no list to write.");
  });

  describe.skipIf(python === undefined)("read by openpyxl", () => {
    let read: readonly ReadSheet[] | undefined;
    const book = (): readonly ReadSheet[] => {
      read ??= openpyxl(bytes);
      return read;
    };
    const rowsOf = (name: string): ReadCell[][] =>
      book()
        .find((sheet) => sheet.name === name)
        ?.rows.slice(1) ?? [];

    it(`has ${PAYLOADS.length} payloads as texts in each of ${KINDS.length} columns`, () => {
      const rows = rowsOf("Hostile");
      expect(rows).toHaveLength(PAYLOADS.length);
      rows.forEach((row, i) => {
        // A line end is a line feed in XML, a text made of white space keeps it.
        const wanted = (PAYLOADS[i] ?? "").replace(/\r\n?/g, "\n");
        for (const cell of row) {
          expect(cell.type, wanted).toBe("s");
          expect(unescaped(String(cell.value)), wanted).toBe(unescaped(wanted));
        }
      });
    });

    it("has plain texts as they are, but for days in a column of dates", () => {
      rowsOf("Plain").forEach((row, i) => {
        const wanted = PLAIN[i] ?? "";
        row.forEach((cell, column) => {
          const isDay = KINDS[column]?.kind === "date" && wanted === "2026-05-04";
          expect(cell.type, wanted).toBe(isDay ? "d" : "s");
          if (!isDay) expect(unescaped(String(cell.value))).toBe(wanted);
        });
      });
    });

    it("has typed cells with formats, a bold head that stays, and widths", () => {
      const sheet = book().find(({ name }) => name === "Typed");
      expect(sheet?.freeze).toBe("A2");
      expect(sheet?.rows[0]?.map(({ value, bold }) => [value, bold])).toEqual(KINDS.map(({ head }) => [head, true]));
      expect(sheet?.width).toBeGreaterThanOrEqual(8);
      const [first = [], second = [], third = [], fourth = [], fifth = []] = rowsOf("Typed");
      expect(first.map(({ type, value }) => [type, value])).toEqual([
        ["s", "a"],
        ["n", 29.8125],
        ["d", "2026-05-04T00:00:00"],
        ["b", true],
      ]);
      expect(first[1]?.format).toBe("0.00");
      expect(first[2]?.format).toBe("yyyy-mm-dd");
      expect(second.map(({ value }) => value)).toEqual(["b", -1.5, "1900-02-28", false]);
      expect(third.every(({ value }) => value === null)).toBe(true);
      expect(fourth.map(({ value }) => value)).toEqual(["c", null, "2026-02-30", null]);
      expect(fifth.map(({ value }) => value)).toEqual(["d", 0, "4 May", true]);
    });

    it("has every list of the laundry box, its box fill as numbers", async () => {
      const project = sampleProject("laundry-proposed.loadside");
      const tables = SHEETS.flatMap((sheet) => sheet.tables?.(inputOf(project, { state: "proposed" })) ?? []);
      const lists = openpyxl(await xlsxOf(tables));
      expect(lists.map(({ name }) => name)).toEqual(tables.map(({ name }) => name));
      const sums = lists.find(({ name }) => name === "Box fill sums")?.rows ?? [];
      const b1 = sums.find((row) => row[0]?.value === "B1" && row[2]?.value === "proposed") ?? [];
      // The worked reference job: 29.8125 of 30.3 in³.
      expect(b1.slice(3, 6).map(({ type, value }) => [type, value])).toEqual([
        ["n", 29.8125],
        ["n", 30.3],
        ["n", 0.4875],
      ]);
    });

    it("reads a workbook of many rows", async () => {
      const rows = Array.from({ length: 12_000 }, (_, i) => [`row ${i}`, i / 4, "2026-05-04", i % 2 === 0]);
      const [sheet] = openpyxl(await xlsxOf([{ ...typed, rows }]));
      expect(sheet?.rows).toHaveLength(12_001);
      expect(sheet?.rows[12_000]?.map(({ value }) => value)).toEqual([
        "row 11999",
        2999.75,
        "2026-05-04T00:00:00",
        false,
      ]);
    });
  });
});
