import type { CopyKind } from "../../platform/file-host.ts";
import { pngOfPage } from "../../platform/page-picture.ts";
import { type PageToPrint, printPages } from "../../platform/print-pages.ts";
import { documentStore } from "../document-store.ts";
import { fileHost } from "../files.ts";
import { copyName, sizeWords } from "./print-choice.ts";
import { printStore, type ReadyCopy, type ShownLayout } from "./print-store.ts";
import { begun, follow, paper, showProgress } from "./printing.ts";
import { wording } from "./words.ts";

/** More pages at once keep the browser too long before its dialog comes. */
export const MOST_PRINTED = 200;

const nameOf = (what: string): string => copyName(documentStore.get().project.title, what);

/** "Make-up card" within a name of a file. */
const inName = (title: string): string => title.charAt(0).toLowerCase() + title.slice(1);

/** What a PDF or a workbook of everything is called. */
const nameOfAll = ({ sheets }: ShownLayout, several: string): string => {
  const [only, ...others] = sheets;
  return nameOf(only === undefined || others.length > 0 ? several : inName(only.title));
};

/** Saves all sheets in one PDF, or one of them by its place. */
export const savePdf = (sheet?: number): Promise<void> =>
  saveFile("pdf", sheet, (laid) => nameOfAll(laid, wording.jobFolder), { format: "pdf", ...at(sheet) });

/** Saves the lists of all sheets as one workbook, or those of one sheet. */
export const saveWorkbook = (sheet?: number): Promise<void> =>
  saveFile("xlsx", sheet, (laid) => nameOfAll(laid, wording.lists), { format: "xlsx", ...at(sheet) });

/** Saves the list of a sheet as text. */
export const saveTable = (sheet: number): Promise<void> => saveFile("csv", sheet, () => "", { format: "csv", sheet });

const at = (sheet: number | undefined) => (sheet === undefined ? {} : { sheet });

async function saveFile(
  kind: CopyKind,
  sheet: number | undefined,
  allName: (laid: ShownLayout) => string,
  file: Parameters<typeof paper.file>[1],
): Promise<void> {
  const { laid } = printStore.get();
  if (laid === undefined) return;
  const one = sheet === undefined ? undefined : laid.sheets[sheet];
  const name = one === undefined ? allName(laid) : nameOf(inName(one.title));
  const title = wording.writing(`${name}.${kind}`);
  const bytes = await follow("copy", title, paper.file(laid.layout, file, showProgress));
  if (bytes !== undefined) await save({ name, kind, bytes });
}

/** Saves the page that is shown as a drawing of lines, or of points at a scale of 1 to 4. */
export async function savePicture(kind: "svg" | "png", scale = 1): Promise<void> {
  const { laid, page } = printStore.get();
  const shown = laid?.pages[page];
  if (laid === undefined || shown === undefined) return;
  const number = shown.parts > 1 ? ` ${shown.part}` : "";
  const name = nameOf(`${inName(shown.title)}${number}`);
  const title = wording.writing(`${name}.${kind}`);
  const svg = await follow("copy", title, paper.page(laid.layout, page));
  if (svg === undefined) return;
  if (kind === "svg") return save({ name, kind, bytes: new TextEncoder().encode(svg) });
  const own = begun({ kind: "copy", title, stop: () => {} });
  try {
    const bytes = await pngOfPage(svg, shown, scale, own.isWanted);
    if (bytes === undefined || !own.isWanted()) return;
    own.end();
    await save({ name, kind, bytes });
  } catch (fault) {
    own.fail(wording.thePictureCouldNotBeDrawn(fault instanceof Error ? fault.message : String(fault)));
  }
}

/** Saves what is made, where the person says. */
async function save(copy: ReadyCopy): Promise<void> {
  const outcome = await fileHost.saveCopy(copy.name, copy.kind, copy.bytes);
  if (outcome === undefined) printStore.merge({ note: wording.nothingWasSaved, said: wording.nothingWasSaved });
  else if (outcome.kind === "press-again") printStore.merge({ ready: copy });
  else if (outcome.kind === "failed") printStore.merge({ problem: outcome.message, said: outcome.message });
  else {
    const said = outcome.note ?? wording.saved(outcome.name, sizeWords(copy.bytes.length));
    printStore.merge({ note: said, said, ready: undefined });
  }
}

/** Saves what was made and could not be saved without another press. */
export function saveReady(): Promise<void> | undefined {
  const { ready } = printStore.get();
  return ready && save(ready);
}

/** Hands all pages to the print dialog of the browser or of the desktop program. */
export async function printAll(): Promise<void> {
  const { laid } = printStore.get();
  if (laid === undefined) return;
  const of = laid.pages.length;
  if (of > MOST_PRINTED) {
    const problem = wording.printingTakesAtMost(MOST_PRINTED, of);
    return printStore.merge({ problem, said: problem });
  }
  const own = begun({ kind: "print", title: wording.preparingToPrint, stop: () => {} });
  const pages: PageToPrint[] = [];
  for (const [i, { width, height }] of laid.pages.entries()) {
    showProgress({ done: i, of });
    const outcome = await paper.page(laid.layout, i).outcome;
    if (!own.isWanted()) return;
    if (outcome.kind === "failed") return own.fail(outcome.message);
    if (outcome.kind === "stopped") return own.end();
    pages.push({ svg: outcome.value, paper: laid.paper, isLandscape: width > height });
  }
  try {
    await printPages(pages);
    own.end();
  } catch {
    own.fail(wording.theBrowserDidNotPrint);
  }
}
