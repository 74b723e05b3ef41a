import type { Colour } from "../../units/colour.ts";
import type { Mark } from "../display-list.ts";
import { strandMarks } from "../draw/strand.ts";
import { group, line, pt, rect, text } from "../marks.ts";
import type { Block } from "../page/block.ts";
import { checkBox } from "../page/flow-blocks.ts";
import { INK, PAPER } from "../page/inks.ts";
import { cutToFit, measure, wrap } from "../page/measure.ts";
import type { CardJoint } from "./card-lists.ts";
import { CARD } from "./card-words.ts";

const ENTRY = { size: pt(8.25), high: 3.75, box: 2.7 } as const;
const HEAD = { size: pt(10.5), high: 5.1 } as const;
const NOTE = { size: pt(8.25), high: 3.6 } as const;
export const TITLE_HEIGHT = 6.6;

/** Head of a list: its number in the order of the work, its name, and a piece of conductor. */
export function listTitle(number: number, words: string, sample: Colour, width: number): readonly Mark[] {
  const size = pt(9.75);
  return [
    rect({ x: 0, y: 0.9, width: 3.8, height: 4.5 }, { fill: INK }),
    text(String(number), 1.9, 4.2, { size, weight: 700, anchor: "middle", ink: PAPER }),
    text(cutToFit(words, width - 19, { size, weight: 700 }), 6.9, 4.3, { size, weight: 700 }),
    group(strandMarks("M0 0H44", sample), { shift: { x: width - 11.8, y: 3.1 }, scale: 0.265 }),
  ];
}

/** A joint with a square to tick for each end and one for the pull; rows stand in one column. */
export function jointBlock({ name, note, entries, tug }: CardJoint, width: number): Block {
  const nameWidth = Math.min(
    Math.max(9, ...entries.map((entry) => measure(entry.name, ENTRY.size, 600) + 2.2)),
    width / 2,
  );
  const rows = entries.map((entry) => wrap(entry.where, Math.max(10, width - 4.4 - nameWidth), { size: ENTRY.size }));
  const marks: Mark[] = [line(0, 0, width, 0, { ink: INK, width: 0.25 })];
  const title = cutToFit(name, width * 0.45, { size: HEAD.size, weight: 700 });
  const after = measure(title, HEAD.size, 700) + 1.8;
  const tugWidth = tug ? 11 : 0;
  marks.push(
    text(title, 0, 4.2, { size: HEAD.size, weight: 700 }),
    text(cutToFit(note, width - after - tugWidth, { size: ENTRY.size }), after, 4.2, { size: ENTRY.size }),
  );
  if (tug)
    marks.push(
      text(CARD.tug, width - ENTRY.box - 1.4, 4.2, { size: pt(7.5), anchor: "end" }),
      checkBox(width - ENTRY.box, 1.85, ENTRY.box),
    );
  let y = HEAD.high;
  for (const [i, entry] of entries.entries()) {
    const lines = rows[i] ?? [""];
    const base = y + 2.8;
    marks.push(
      checkBox(0, y + 0.6, ENTRY.box),
      text(cutToFit(entry.name, nameWidth - 0.8, { size: ENTRY.size, weight: 600 }), 4.4, base, {
        size: ENTRY.size,
        weight: 600,
      }),
      ...lines
        .filter((each) => each !== "")
        .map((each, n) => text(each, 4.4 + nameWidth, base + n * NOTE.high, { size: ENTRY.size })),
    );
    y += ENTRY.high + (lines.length - 1) * NOTE.high;
  }
  return { height: y + 0.9, marks };
}

/** A sentence below the joints of a list. */
export function noteBlock(words: string, width: number): Block {
  const lines = wrap(words, width, { size: NOTE.size });
  return {
    height: lines.length * NOTE.high + 1,
    marks: lines.map((each, i) => text(each, 0, 3.2 + i * NOTE.high, { size: NOTE.size })),
  };
}
