import type { SheetInput, SheetKind } from "../../answers/sheet-input.ts";
import type { Mark, Page } from "../display-list.ts";
import { pt, rect, text } from "../marks.ts";
import { type Flow, openFlow } from "./flow.ts";
import { footOf } from "./foot.ts";
import { AMBER_HEIGHT, amberLine, commonCells, ruleDataWords, STRIP_HEIGHT, stripMarks } from "./head-strip.ts";
import { INK } from "./inks.ts";
import { measure } from "./measure.ts";
import { MARGIN, type Orientation, paperSize } from "./paper-sizes.ts";

export interface ListSheetOptions {
  readonly kind: SheetKind;
  /** Written large: "Box fill". */
  readonly title: string;
  /** In lists of pages, where it should be another than `title`: "Box fill B1". */
  readonly pageTitle?: string;
  readonly orientation?: Orientation;
  /** Both states are meant: "AS FOUND to PROPOSED". */
  readonly difference?: boolean;
  /** Under the name of the job. */
  readonly note?: string;
}

/** A list sheet being written. */
export interface ListSheet {
  readonly flow: Flow;
  /** All pages with their header strips, cautions and spots for numbers. Call it once, at the end. */
  pages(): readonly Page[];
}

/**
 * Opens a list sheet: every page has the strip with name, job, state, edition and day, the line about the rule data, the
 * cautions and its number; what is written into `flow` goes between. The first page is there even if nothing is written.
 *
 *     const sheet = openListSheet(input, { kind: "box-fill", title: "Box fill" });
 *     sheet.flow.heading("B1", "laundry");
 *     sheet.flow.table({ columns: [{ head: "item" }, { head: "in³", width: 20, align: "end", tabular: true }], rows });
 *     return sheet.pages();
 */
export function openListSheet(input: SheetInput, options: ListSheetOptions): ListSheet {
  const { kind, title, orientation = "portrait", difference = false, note } = options;
  const { width, height } = paperSize(input.paper, orientation);
  const inner = width - 2 * MARGIN;
  const foot = footOf(input, inner);
  const footY = height - MARGIN - foot.height;
  const top = MARGIN + STRIP_HEIGHT + AMBER_HEIGHT + 3;
  const { flow, pages } = openFlow(() => ({ x: MARGIN, y: top, width: inner, height: footY - 2 - top }));
  const rules = ruleDataWords(input);
  const head: readonly Mark[] = [
    ...titled(title, inner),
    ...stripMarks(MARGIN + titleWidth(title), MARGIN, inner - titleWidth(title), commonCells(input, difference, note)),
    ...amberLine(MARGIN, MARGIN + STRIP_HEIGHT, inner, rules.words, rules.isWarning),
  ];
  return {
    flow,
    pages: () =>
      pages().map((marks) => ({
        sheet: kind,
        title: options.pageTitle ?? title,
        width,
        height,
        margin: MARGIN,
        marks: [...head, ...marks, ...foot.marks(MARGIN, footY)],
        number: foot.number(MARGIN, footY),
      })),
  };
}

const TITLE = { size: pt(16), weight: 700 } as const;

const titleWidth = (title: string): number => measure(title, TITLE.size, TITLE.weight) + 7;

const titled = (title: string, inner: number): readonly Mark[] => [
  rect(
    { x: MARGIN, y: MARGIN, width: Math.min(inner, titleWidth(title)), height: STRIP_HEIGHT },
    { stroke: { ink: INK, width: 0.35 } },
  ),
  text(title, MARGIN + 3, MARGIN + STRIP_HEIGHT / 2 + 1.9, TITLE),
];
