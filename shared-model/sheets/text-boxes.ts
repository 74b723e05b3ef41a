import type { Rect } from "../geometry/box-drawing.ts";
import type { Mark } from "./display-list.ts";

/** A line of text with what it covers on the paper. */
export interface PlacedText {
  readonly text: string;
  /** With the letters that are question marks in `text`. */
  readonly written: string;
  readonly box: Rect;
  /** Height of its em there. */
  readonly size: number;
  /** It may lie over others. */
  readonly over: boolean;
}

/** All texts of marks, in the coordinates in which the marks stand. */
export function textsOf(marks: readonly Mark[], scale = 1, x = 0, y = 0): readonly PlacedText[] {
  return marks.flatMap((mark): readonly PlacedText[] => {
    if (mark.kind === "group") {
      const own = mark.scale ?? 1;
      const shift = mark.shift ?? { x: 0, y: 0 };
      const inside = textsOf(mark.marks, scale * own, x + shift.x * scale, y + shift.y * scale);
      const { clip } = mark;
      if (clip === undefined) return inside;
      const seen = {
        x: x + (shift.x + clip.x * own) * scale,
        y: y + (shift.y + clip.y * own) * scale,
        width: clip.width * own * scale,
        height: clip.height * own * scale,
      };
      return inside.filter(({ box }) => overlap(box, seen));
    }
    if (mark.kind !== "text" || mark.text.trim() === "") return [];
    const { box, size, over = false } = mark;
    return [
      {
        text: mark.text,
        written: mark.written ?? mark.text,
        size: size * scale,
        over,
        box: { x: x + box.x * scale, y: y + box.y * scale, width: box.width * scale, height: box.height * scale },
      },
    ];
  });
}

/** Whether two boxes share more than their edges. @param slack What they may share, in either direction. */
export const overlap = (a: Rect, b: Rect, slack = 0): boolean =>
  Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x) > slack &&
  Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y) > slack;
