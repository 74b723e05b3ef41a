import type { StateName } from "../../model/project.ts";

export const STATE_WORDS: Readonly<Record<StateName, string>> = { "as-found": "AS FOUND", proposed: "PROPOSED" };

export const AS_FOUND_TO_PROPOSED = "AS FOUND to PROPOSED";

export const CAPTIONS = {
  job: "job",
  state: "state",
  edition: "edition",
  date: "printed",
  drawing: "drawing",
  from: "made by Loadside from",
} as const;

export const LOCAL_RULES = "local rules govern";

/** Beside the bar of 100 mm. */
export const SCALE_WORDS =
  "This bar is 100 mm where the printer kept the size. Boxes are not drawn to the scale of the building.";

export const UNTITLED = "untitled";

export const pageWords = (page: number, pages: number): string => `page ${page} of ${pages}`;

export const inFolder = (page: number, pages: number): string => `folder ${page} of ${pages}`;

export const printedFrom = (file: string | undefined): string =>
  file === undefined ? "Made by Loadside." : `Made by Loadside from ${file}.`;

const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/** "2026-05-04" as "4 May 2026", which nobody takes for the fifth of April. Anything else as it is. */
export function dayWords(date: string): string {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})/.exec(date) ?? [];
  const name = MONTHS[Number(month) - 1];
  return name === undefined ? date : `${Number(day)} ${name} ${year}`;
}
