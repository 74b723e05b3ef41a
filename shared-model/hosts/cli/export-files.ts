import { access, unlink } from "node:fs/promises";
import { extname } from "node:path";
import type { LostText } from "../../answers/paper-messages.ts";
import type { Page } from "../../sheets/display-list.ts";
import { lostLetters } from "../../sheets/job/lost-letters.ts";
import { numberFolder, numberPages } from "../../sheets/page/number-pages.ts";
import { svgOf } from "../../sheets/svg-writer.ts";
import type { ListTable } from "../../sheets/tables/table.ts";
import { replaceFile } from "../atomic-file.ts";
import { complain } from "./console.ts";
import { type ExportAsk, JOB_FOLDER, type PreparedExport } from "./export-ask.ts";
import { readFace } from "./face.ts";
import { isFolder } from "./is-folder.ts";
import { NoRenderer, pngsOf } from "./png.ts";
import { isSameFile } from "./put-drawing.ts";

/** What came of it: what went wrong, as one line, or what a person should know of what is written. */
export type Written = { readonly trouble: string } | { readonly notes: readonly string[] };

export async function writeExport(
  file: string,
  out: string,
  prepared: PreparedExport,
  ask: ExportAsk,
): Promise<Written> {
  const lost: string[] = [];
  const trouble = (await whyNot(file, [out])) ?? (await written(file, out, prepared, ask, lost));
  return trouble === undefined ? { notes: [...prepared.notes, ...lost] } : { trouble };
}

/** @param lost Gets a line where letters are lost. @returns What went wrong; undefined when all is written. */
async function written(
  file: string,
  out: string,
  { title, sheets }: PreparedExport,
  ask: ExportAsk,
  lost: string[],
): Promise<string | undefined> {
  if (ask.format === "csv" || ask.format === "xlsx") {
    const tables = sheets.flatMap(({ definition, input }) => definition.tables?.(input) ?? []);
    return put(out, await tableFile(tables, ask.format));
  }
  const progress = openProgress();
  const each = sheets.map(({ definition, input }) => {
    progress.tell(definition.title);
    return definition.make(input);
  });
  const [first] = sheets;
  if (first !== undefined) lost.push(...lostNotes(lostLetters(first.input.project, each.flat(), ask.fileName)));
  const pages = ask.sheet === JOB_FOLDER ? numberFolder(each) : numberPages(each.flat());
  try {
    switch (ask.format) {
      case "pdf":
        return put(out, await pdfFile(pages, title, ask, progress.tell));
      case "svg":
        return putAll(
          file,
          out,
          pages.map((page) => new TextEncoder().encode(svgOf(page))),
        );
      case "png":
        return putAll(file, out, await pngFiles(pages, ask.scale));
    }
  } catch (error) {
    if (error instanceof NoRenderer)
      return `${out}: The package that makes pictures is not there. Run npm ci, or ask for .svg or .pdf.`;
    throw error;
  } finally {
    progress.end();
  }
}

/** Texts that are told one by one; of more their number is enough to look for them. */
const MOST_LOST = 5;

/** One line for all texts whose letters the face of the sheets does not have. */
function lostNotes(all: readonly LostText[]): readonly string[] {
  if (all.length === 0) return [];
  const told = all
    .slice(0, MOST_LOST)
    .map(({ text, where, page }) => `${JSON.stringify(text)} (${where}, page ${page})`);
  const left = all.length - told.length;
  const more = left === 0 ? "" : `; ${left} more`;
  return [`Letters that the sheets have no type for are printed as "?": ${told.join("; ")}${more}.`];
}

async function tableFile(tables: readonly ListTable[], format: "csv" | "xlsx"): Promise<Uint8Array> {
  const { csvOf, xlsxOf } = await import("../tables.ts");
  return format === "csv" ? csvOf(tables) : xlsxOf(tables);
}

async function pdfFile(
  pages: readonly Page[],
  title: string,
  { date }: ExportAsk,
  tell: (words: string) => void,
): Promise<Uint8Array> {
  const { pdfOf } = await import("../paper.ts");
  return pdfOf(pages, { title, date, face: readFace(), onPage: (done, of) => tell(`page ${done} of ${of}`) });
}

const pngFiles = (pages: readonly Page[], scale: number): Promise<readonly Uint8Array[]> =>
  pngsOf(
    pages.map((page) => ({ svg: svgOf(page), width: page.width })),
    readFace(),
    scale,
  );

/**
 * One page keeps the name; of several each gets its number before the ending. All of them or none: looked over first, and
 * what is new is taken away again where a later one fails.
 */
async function putAll(file: string, out: string, pages: readonly Uint8Array[]): Promise<string | undefined> {
  const ending = extname(out);
  const stem = out.slice(0, out.length - ending.length);
  const named = pages.map((bytes, i) => ({ name: pages.length === 1 ? out : `${stem}-${i + 1}${ending}`, bytes }));
  const bad = await whyNot(
    file,
    named.map(({ name }) => name),
  );
  if (bad !== undefined) return bad;
  const fresh: string[] = [];
  for (const { name, bytes } of named) {
    const isNew = await access(name).then(
      () => false,
      () => true,
    );
    const trouble = await put(name, bytes);
    if (trouble !== undefined) {
      await Promise.all(fresh.map((one) => unlink(one).catch(() => undefined)));
      return trouble;
    }
    if (isNew) fresh.push(name);
  }
  return undefined;
}

/** Names that nothing may be written under: the drawing that was read, and folders. */
async function whyNot(file: string, names: readonly string[]): Promise<string | undefined> {
  for (const name of names) {
    if (await isSameFile(file, name)) return `${name}: It is what was read, and stays as it is. Choose another name.`;
    if (await isFolder(name)) return `${name}: This is a folder. Name a file in it.`;
  }
  return undefined;
}

async function put(out: string, bytes: Uint8Array): Promise<string | undefined> {
  const result = await replaceFile(out, bytes);
  if (!result.saved) return result.message;
  if (result.note !== undefined) complain(result.note);
  return undefined;
}

/** One line that is written over, on a terminal; nothing where there is none. */
function openProgress(): { readonly tell: (words: string) => void; readonly end: () => void } {
  const { stderr } = process;
  if (stderr.isTTY !== true) return { tell: () => undefined, end: () => undefined };
  return {
    tell: (words) => stderr.write(`\r\u001b[K${words}`),
    end: () => stderr.write("\r\u001b[K"),
  };
}
