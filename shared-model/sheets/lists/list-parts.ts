import type { SheetInput } from "../../answers/sheet-input.ts";
import { CAUTIONS, type CautionId } from "../../catalog/cautions.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { EnclosureId } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import { inOrder } from "../../queries/in-order.ts";
import { getInstallation } from "../../queries/installation-of.ts";
import type { Mark } from "../display-list.ts";
import { group, line, rect, text } from "../marks.ts";
import type { Block } from "../page/block.ts";
import type { Flow } from "../page/flow.ts";
import { TYPE } from "../page/flow-blocks.ts";
import { HAIR, INK, SECOND_INK } from "../page/inks.ts";
import { cutToFit, measure } from "../page/measure.ts";
import { RISE } from "../page/text-lines.ts";
import { LIST } from "./list-words.ts";
import type { Sign } from "./signs.ts";

export const shownState = ({ project, state }: SheetInput): Installation => getInstallation(project, state);

/** Boxes and panels of an installation that a sheet is to show, in the order of the drawing. */
export const shownEnclosures = ({ box }: SheetInput, { enclosures }: Installation): readonly Enclosure[] =>
  inOrder(enclosures).filter(({ id }) => box === undefined || id === box);

export const isShown = ({ box }: SheetInput, id: EnclosureId | undefined): boolean => box === undefined || id === box;

/** Whether there is nothing at all to tell of. */
export const isBlank = ({ project }: SheetInput): boolean =>
  Object.keys(project.asFound.enclosures).length === 0 && Object.keys(project.proposed?.enclosures ?? {}).length === 0;

/** Why a sheet has nothing to say: that nothing is drawn goes before words of its own. */
export const nothingWords = (input: SheetInput, words: string): string => (isBlank(input) ? LIST.nothingDrawn : words);

/** Says why a page is empty. */
export const sayNothing = (flow: Flow, words: string): void => flow.paragraph(words, { size: TYPE.lead });

/** Cautions in small letters, together on one page. */
export function writeCautions(flow: Flow, ids: readonly CautionId[]): void {
  const [only] = ids;
  flow.keepTogether((kept) => {
    kept.space(3);
    // One alone needs no heading, and no page of its own for it.
    if (only !== undefined && ids.length === 1) {
      kept.paragraph(LIST.onlyCaution(CAUTIONS[only]), { size: TYPE.small });
      return;
    }
    kept.paragraph(LIST.cautionTitle, { size: TYPE.small, weight: 700, withNext: true });
    ids.forEach((id, i) => {
      kept.paragraph(CAUTIONS[id], { size: TYPE.small, withNext: i < ids.length - 1 });
    });
  });
}

/** Shares of the width that a name may take in a heading, and how many times what is left its note. */
const [NAME_SHARE, NOTE_LINES] = [0.6, 3] as const;

/** A heading out of words that people wrote: however long they are, it stays one. */
export function headed(flow: Flow, words: string, note = ""): void {
  const room = flow.width * NAME_SHARE;
  flow.heading(
    cutToFit(words, room, { size: TYPE.head, weight: 700 }),
    cutToFit(note, NOTE_LINES * (flow.width - room - 5) * 0.8, { size: TYPE.body }),
  );
}

/** "laundry, basement": what a person wrote at a box, and the room that it is in. */
export function placeOf({ project }: SheetInput, { note, roomId }: Enclosure): string {
  const room = roomId === undefined ? undefined : project.rooms[roomId]?.name;
  const said = [note, room].filter((words): words is string => words !== undefined && words !== "");
  // "laundry, Laundry" would say it twice, and so would "hall, Hall, first floor".
  return said
    .filter((words, i) => !said.some((one, k) => k !== i && saysAll(one, words) && (k < i || !saysAll(words, one))))
    .join(", ");
}

/** Whether one text says all that another does, capitals aside. */
const saysAll = (one: string, other: string): boolean => one.toLowerCase().includes(other.toLowerCase());

/** Signs with their words in a row, each with its own room; begins a further row where one is full. */
export function legendBlock(
  width: number,
  entries: readonly (readonly [signs: readonly Sign[], words: string])[],
): Block {
  const size = TYPE.small;
  const [gap, between, row] = [1.8, 6, 5];
  const marks: Mark[] = [];
  let [x, y] = [0, row / 2];
  for (const [signs, words] of entries) {
    const wide = signs.reduce((sum, sign) => sum + sign.width + gap, 0) + measure(words, size);
    if (x > 0 && x + wide > width) [x, y] = [0, y + row];
    for (const sign of signs) {
      marks.push(group(sign.marks, { shift: { x: x + sign.width / 2, y } }));
      x += sign.width + gap;
    }
    marks.push(text(words, x, y + 0.334 * size, { size }));
    x += measure(words, size) + between;
  }
  return { height: y + row / 2, above: 2, marks };
}

export interface Figure {
  readonly value: string;
  readonly caption: string;
}

const FIGURE = { height: 14, size: 6.4 } as const;

/** A framed row of large figures with a word below each. */
export function figuresBlock(width: number, figures: readonly Figure[]): Block {
  const each = width / Math.max(1, figures.length);
  const marks: Mark[] = [
    rect({ x: 0, y: 0, width, height: FIGURE.height }, { stroke: { ink: INK, width: 0.35 } }),
    ...figures.flatMap(({ value, caption }, i) => [
      ...(i === 0 ? [] : [line(i * each, 0, i * each, FIGURE.height, { ink: HAIR, width: 0.2 })]),
      text(cutToFit(value, each - 4, { size: FIGURE.size, weight: 700 }), i * each + 2.4, 6.8, {
        size: FIGURE.size,
        weight: 700,
        tabular: true,
      }),
      text(cutToFit(caption, each - 4, { size: TYPE.small }), i * each + 2.4, 8.6 + RISE * TYPE.small, {
        size: TYPE.small,
        ink: SECOND_INK,
      }),
    ]),
  ];
  return { height: FIGURE.height, above: 2, marks };
}
