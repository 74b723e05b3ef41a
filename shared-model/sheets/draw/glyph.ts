import type { Mark } from "../display-list.ts";
import { group, path } from "../marks.ts";
import { INK } from "../page/inks.ts";
import { GLYPH_LINES } from "./glyph-lines.ts";

/** A device as the sheet from middle distance shows it, centred at a point; nothing where there is no such glyph. */
export function glyphMarks(id: string, x: number, y: number, size: number): readonly Mark[] {
  const lines = GLYPH_LINES[id];
  if (lines === undefined) return [];
  const scale = size / 24;
  return [
    group(
      lines.map(({ d, filled, width }) =>
        filled
          ? path(d, { fill: INK })
          : path(d, { stroke: { ink: INK, width: width ?? 1.6, cap: "round", join: "round" } }),
      ),
      { shift: { x: x - size / 2, y: y - size / 2 }, scale },
    ),
  ];
}
