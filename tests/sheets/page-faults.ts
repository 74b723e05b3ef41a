import type { Page } from "../../shared-model/sheets/display-list.ts";
import { boundsOfMarks } from "../../shared-model/sheets/mark-bounds.ts";
import { overlap, type PlacedText, textsOf } from "../../shared-model/sheets/text-boxes.ts";

/** A heavy line on the margin reaches half its width beyond. */
const SLACK = 0.5;
/** Letters of two lines may touch by this much, mm: boxes reach to the tails of letters, which few have. */
const TOUCH = 0.25;

/** What a reader would see as wrong on a page: ink outside the margins, and text on text. */
export function pageFaults(page: Page): readonly string[] {
  const { margin, width, height, title } = page;
  const faults: string[] = [];
  const all = boundsOfMarks(page.marks);
  if (
    all !== undefined &&
    (all.x < margin - SLACK ||
      all.y < margin - SLACK ||
      all.x + all.width > width - margin + SLACK ||
      all.y + all.height > height - margin + SLACK)
  )
    faults.push(`${title}: outside the margins: ${JSON.stringify(all)}`);
  return [...faults, ...textOnText(textsOf(page.marks)).map((pair) => `${title}: ${pair}`)];
}

export function textOnText(texts: readonly PlacedText[]): readonly string[] {
  const sorted = texts.filter(({ over }) => !over).sort((a, b) => a.box.y - b.box.y);
  const found: string[] = [];
  for (const [i, a] of sorted.entries()) {
    for (const b of sorted.slice(i + 1)) {
      if (b.box.y > a.box.y + a.box.height) break;
      if (overlap(a.box, b.box, TOUCH)) found.push(`"${a.text}" lies on "${b.text}"`);
    }
  }
  return found;
}
