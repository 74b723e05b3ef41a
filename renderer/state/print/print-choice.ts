import type { LaidSheet, PaperJob, SheetOffer } from "../../../shared-model/answers/paper-messages.ts";
import type { PaperName, SheetKind } from "../../../shared-model/answers/sheet-input.ts";
import type { EnclosureId } from "../../../shared-model/model/ids.ts";
import type { StateName } from "../../../shared-model/model/project.ts";
import { wording } from "./words.ts";

/** Boxes of the sheets that are made box by box. */
export type BoxChoice = "all" | "selected" | EnclosureId;

/** What a person has chosen to print. */
export interface PrintChoice {
  /** Sheets that are ticked, whether they can be had now or not; the usual ones of the state as long as nobody has chosen. */
  readonly sheets: ReadonlySet<SheetKind> | "usual";
  readonly state: StateName;
  readonly paper: PaperName;
  /** "2026-05-04". */
  readonly date: string;
  readonly boxes: BoxChoice;
}

/** What a choice is about. */
export interface PrintScene {
  readonly offers: readonly SheetOffer[];
  readonly hasProposed: boolean;
  /** Boxes selected on the sheet. */
  readonly selected: readonly EnclosureId[];
  readonly fileName?: string;
}

/** Why a sheet cannot be had of this document; undefined where it can. */
export const whyNot = ({ shows }: SheetOffer, hasProposed: boolean): string | undefined =>
  (shows === "proposed" || shows === "difference") && !hasProposed ? wording.proposedIsNotStarted : undefined;

/**
 * What a person wants of a state as a rule. As found: what is there, how it is known, and what is wrong with it. Proposed:
 * what is needed at the box and to buy, and what stays behind there. All else is one press away.
 */
const USUAL: Readonly<Record<StateName, readonly SheetKind[]>> = {
  "as-found": ["drawing", "findings", "as-found"],
  proposed: ["drawing", "make-up", "scope", "steps", "test-record", "labels", "reset-slips", "materials"],
};

/** The state that sheets show which may show either. */
const shownBy = ({ state }: PrintChoice, { hasProposed }: PrintScene): StateName => (hasProposed ? state : "as-found");

/** What is ticked, whether it can be had or not. */
export const ticks = (choice: PrintChoice, scene: PrintScene): ReadonlySet<SheetKind> =>
  choice.sheets === "usual" ? new Set(USUAL[shownBy(choice, scene)]) : choice.sheets;

/** The sheets that are ticked and can be had, in the order of a job folder. */
export function tickedSheets(choice: PrintChoice, scene: PrintScene): readonly SheetOffer[] {
  const ticked = ticks(choice, scene);
  return scene.offers.filter((offer) => ticked.has(offer.kind) && whyNot(offer, scene.hasProposed) === undefined);
}

/** What the paper worker is asked to lay out. */
export function jobOf(choice: PrintChoice, scene: PrintScene): PaperJob {
  const { paper, date, boxes } = choice;
  return {
    sheets: tickedSheets(choice, scene).map(({ kind }) => kind),
    state: shownBy(choice, scene),
    paper,
    date,
    ...(boxes !== "all" && { boxes: boxes === "selected" ? scene.selected : [boxes] }),
    ...(scene.fileName !== undefined && { fileName: scene.fileName }),
  };
}

/** How many boxes are chosen; undefined for all. */
const countOf = ({ boxes }: PrintChoice, { selected }: PrintScene): number | undefined =>
  boxes === "all" ? undefined : boxes === "selected" ? selected.length : 1;

/** The ticked sheets that are of the chosen boxes alone; none where all boxes are chosen. */
export function sheetsOfBoxes(choice: PrintChoice, scene: PrintScene): readonly SheetOffer[] {
  const count = countOf(choice, scene);
  if (count === undefined) return [];
  return tickedSheets(choice, scene).filter(({ boxes }) => boxes === "several" || (boxes === "one" && count === 1));
}

/** One page as the list of pages shows it. */
export interface ListedPage {
  /** Place of its sheet among those that were laid out. */
  readonly sheet: number;
  readonly title: string;
  /** In its sheet, from 1. */
  readonly number: number;
  /** Among the pages of its sheet that have its title, from 1, and how many they are. */
  readonly part: number;
  readonly parts: number;
  readonly width: number;
  readonly height: number;
}

/** The pages of all sheets, one after the other as they are printed. */
export const listedPages = (sheets: readonly LaidSheet[]): readonly ListedPage[] =>
  sheets.flatMap(({ pages }, sheet) => {
    const parts = countBy(pages.map(({ title }) => title));
    const seen = new Map<string, number>();
    return pages.map(({ title, width, height }, i): ListedPage => {
      const part = (seen.get(title) ?? 0) + 1;
      seen.set(title, part);
      return { sheet, title, number: i + 1, part, parts: parts.get(title) ?? 1, width, height };
    });
  });

function countBy(titles: readonly string[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const title of titles) counts.set(title, (counts.get(title) ?? 0) + 1);
  return counts;
}

/**
 * The page to show after another layout: the same page of the same kind of sheet, or its last; else the first.
 * @returns From 0.
 */
export function pageAfter(
  before: { readonly kind: SheetKind; readonly number: number } | undefined,
  sheets: readonly LaidSheet[],
): number {
  let from = 0;
  for (const { kind, pages } of sheets) {
    if (kind === before?.kind && pages.length > 0) return from + Math.min(before.number, pages.length) - 1;
    from += pages.length;
  }
  return 0;
}

/** Name of a file without its ending. */
export const copyName = (title: string, what: string): string => `${title.trim() || wording.drawing} ${what}`.trim();

/** "1.2 MB", "38 kB": decimal, as systems show sizes of files. */
export function sizeWords(bytes: number): string {
  if (bytes < 1000) return `${bytes} B`;
  if (bytes < 999_500) return `${Math.round(bytes / 1000)} kB`;
  return `${(bytes / 1e6).toFixed(1)} MB`;
}
