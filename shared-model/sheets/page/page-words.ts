import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { StateName } from "../../model/project.ts";

export const STATE_WORDS: Readonly<Record<StateName, string>> = catalogue({
  "as-found": "AS FOUND",
  proposed: "PROPOSED",
});

export const PAGE = catalogue({
  asFoundToProposed: "AS FOUND to PROPOSED",
  /** Over the rows of a table that goes on from the page before. */
  continued: (heading: Part) => `${heading}, continued`,
  localRules: "local rules govern",
  /** Beside the bar of 100 mm. */
  scale: "This bar is 100 mm where the printer kept the size. Boxes are not drawn to the scale of the building.",
  scaleEnd: "100 mm",
  untitled: "untitled",
});

export const CAPTIONS = catalogue({
  job: "job",
  state: "state",
  edition: "edition",
  date: "printed",
  drawing: "drawing",
});

const wording = catalogue({
  day: (day: Part, month: Part, year: Part) => `${day} ${month} ${year}`,
  folder: (page: Part, pages: Part) => `folder ${page} of ${pages}`,
  made: "Made by Loadside.",
  madeFrom: (file: Part) => `Made by Loadside from ${file}.`,
  page: (page: Part, pages: Part) => `page ${page} of ${pages}`,
});

export const pageWords = wording.page;

export const inFolder = wording.folder;

export const printedFrom = (file: string | undefined): string =>
  file === undefined ? wording.made : wording.madeFrom(file);

const MONTHS = catalogue({
  "01": "Jan",
  "02": "Feb",
  "03": "Mar",
  "04": "Apr",
  "05": "May",
  "06": "Jun",
  "07": "Jul",
  "08": "Aug",
  "09": "Sep",
  "10": "Oct",
  "11": "Nov",
  "12": "Dec",
});

/** "2026-05-04" as "4 May 2026", which nobody takes for the fifth of April. Anything else as it is. */
export function dayWords(date: string): string {
  const [, year = "", month = "", day] = /^(\d{4})-(\d{2})-(\d{2})/.exec(date) ?? [];
  const name = (MONTHS as Readonly<Record<string, string>>)[month];
  return name === undefined ? date : wording.day(Number(day), name, year);
}
