import type { SheetInput } from "../../answers/sheet-input.ts";
import type { Mark } from "../display-list.ts";
import { line, pt, rect, text } from "../marks.ts";
import { EDITION_2026, notReviewed, reviewed } from "./caution-words.ts";
import { AMBER, INK, SECOND_INK } from "./inks.ts";
import { cutToFit, measure, printable, wrap } from "./measure.ts";
import { CAPTIONS, dayWords, PAGE, STATE_WORDS } from "./page-words.ts";

/** One cell of a strip or title block: a caption above a value, with a smaller line below. */
export interface StripCell {
  readonly caption: string;
  readonly value: string;
  readonly note?: string;
  /** Millimetres; absent: what is left over, one cell only. */
  readonly width?: number;
}

const FRAME = { ink: INK, width: 0.35 } as const;

export const STRIP_HEIGHT = 15;

/** A framed row of cells, each cut to its room. */
export function stripMarks(
  x: number,
  y: number,
  width: number,
  cells: readonly StripCell[],
  height = STRIP_HEIGHT,
): readonly Mark[] {
  const fixed = cells.reduce((sum, cell) => sum + (cell.width ?? 0), 0);
  let left = x;
  const marks: Mark[] = [rect({ x, y, width, height }, { stroke: FRAME })];
  for (const [i, cell] of cells.entries()) {
    const wide = cell.width ?? width - fixed;
    if (i > 0) marks.push(line(left, y, left, y + height, FRAME));
    marks.push(...cellOf(cell, left + 2.4, y, wide - 4));
    left += wide;
  }
  return marks;
}

function cellOf({ caption, value, note }: StripCell, x: number, y: number, room: number): readonly Mark[] {
  const small = pt(7.5);
  const large = measure(printable(value), VALUE, 700) <= room ? VALUE : LESS;
  const lines = note === undefined || note === "" ? twoLines(value, room, large) : [value];
  return [
    text(cutToFit(caption, room, { size: small }), x, y + 4.2, { size: small, ink: SECOND_INK }),
    ...lines.map((words, i) =>
      text(cutToFit(words, room, { size: large, weight: 700 }), x, y + 8.7 + i * 1.25 * large, {
        size: large,
        weight: 700,
      }),
    ),
    ...(note === undefined || note === ""
      ? []
      : [text(cutToFit(note, room, { size: small }), x, y + 12.6, { size: small, ink: SECOND_INK })]),
  ];
}

/** What does not fit one line goes over to a second before it is cut. */
function twoLines(value: string, room: number, size: number): readonly string[] {
  const [first = "", ...rest] = wrap(value, room, { size, weight: 700 });
  return rest.length === 0 ? [first] : [first, rest.join(" ")];
}

/** Height of a value, and what it shrinks to before it is cut. */
const VALUE = pt(10.5);
const LESS = pt(8.5);

/** Width of a cell that holds its words. */
export const cellWidth = ({ caption, value, note = "" }: Omit<StripCell, "width">): number =>
  Math.max(measure(caption, pt(7.5)), measure(value, pt(10.5), 700), measure(note, pt(7.5))) + 4.8;

/** Cells that every sheet has: job, state, edition, date. `difference` names both states. */
export function commonCells(input: SheetInput, difference = false, note?: string): readonly StripCell[] {
  const { project, state, rules, date } = input;
  const fitting = (cell: Omit<StripCell, "width">): StripCell => ({ ...cell, width: cellWidth(cell) });
  const stateWords = difference ? PAGE.asFoundToProposed : STATE_WORDS[state];
  return [
    {
      caption: CAPTIONS.job,
      value: project.title.trim() === "" ? PAGE.untitled : project.title,
      ...(note !== undefined && { note }),
    },
    fitting({ caption: CAPTIONS.state, value: stateWords }),
    fitting({ caption: CAPTIONS.edition, value: rules.edition, note: PAGE.localRules }),
    fitting({ caption: CAPTIONS.date, value: dayWords(date) }),
  ];
}

/** What the rule data rest on, as one line. */
export function ruleDataWords({ project, rules }: SheetInput): { readonly words: string; readonly isWarning: boolean } {
  const { edition, reviewedBy } = rules;
  const is2026 = project.edition === 2026 ? ` ${EDITION_2026}` : "";
  return reviewedBy === undefined
    ? { words: `${notReviewed(edition)}${is2026}`, isWarning: true }
    : { words: `${reviewed(edition, reviewedBy)}${is2026}`, isWarning: is2026 !== "" };
}

export const AMBER_HEIGHT = 4.6;

/** The amber line: words on a ground of marking pen, with a sign before them that needs no colour. */
export function amberLine(x: number, y: number, width: number, words: string, isWarning: boolean): readonly Mark[] {
  const size = pt(7.5);
  const middle = y + AMBER_HEIGHT / 2;
  const sign: readonly Mark[] = isWarning
    ? [
        {
          kind: "path",
          d: `M${x + 2.4} ${middle + 1.35}l1.6 -2.8l1.6 2.8Z`,
          stroke: { ink: INK, width: 0.3, join: "round" },
        },
        {
          kind: "path",
          d: `M${x + 4} ${middle - 0.5}v0.9M${x + 4} ${middle + 0.7}v0.3`,
          stroke: { ink: INK, width: 0.3 },
        },
      ]
    : [];
  return [
    rect({ x, y, width, height: AMBER_HEIGHT }, { stroke: FRAME, ...(isWarning && { fill: AMBER }) }),
    ...sign,
    text(cutToFit(words, width - 11, { size, weight: 600 }), x + (isWarning ? 7.6 : 2.4), middle + 0.9, {
      size,
      weight: 600,
    }),
  ];
}
