import type { Page } from "../display-list.ts";
import { text } from "../marks.ts";
import { THIRD_INK } from "./inks.ts";
import { inFolder, pageWords } from "./page-words.ts";

/** Writes "page 2 of 3" onto the pages of one sheet. */
export const numberPages = (pages: readonly Page[]): readonly Page[] =>
  pages.map((page, i) => withWords(page, pageWords(i + 1, pages.length)));

/** Writes both numbers onto the pages of several sheets in one file: in its sheet, and running through all. */
export function numberFolder(sheets: readonly (readonly Page[])[]): readonly Page[] {
  const total = sheets.reduce((sum, pages) => sum + pages.length, 0);
  let running = 0;
  return sheets.flatMap((pages) =>
    pages.map((page, i) => {
      running += 1;
      return withWords(page, `${pageWords(i + 1, pages.length)}, ${inFolder(running, total)}`);
    }),
  );
}

function withWords(page: Page, words: string): Page {
  const { number } = page;
  if (number === undefined) return page;
  const { x, y, anchor, size } = number;
  return { ...page, marks: [...page.marks, text(words, x, y, { size, anchor, ink: THIRD_INK, weight: 600 })] };
}
