import type { Rect } from "../geometry/box-drawing.ts";
import type { Hatch, Stroke } from "./display-list.ts";
import { tidy } from "./marks.ts";

/** Path of all lines of a hatch that cross a box. */
function hatchPath({ x, y, width, height }: Rect, { gap, angle = 45 }: Hatch): string {
  const turn = (angle * Math.PI) / 180;
  const [ux, uy] = [Math.cos(turn), Math.sin(turn)];
  const [nx, ny] = [-uy, ux];
  const corners = [
    [x, y],
    [x + width, y],
    [x, y + height],
    [x + width, y + height],
  ] as const;
  const across = corners.map(([cx, cy]) => cx * nx + cy * ny);
  const along = corners.map(([cx, cy]) => cx * ux + cy * uy);
  const [from, to] = [Math.min(...along), Math.max(...along)];
  let d = "";
  for (let n = Math.ceil(Math.min(...across) / gap); n * gap <= Math.max(...across); n += 1) {
    const off = n * gap;
    d += `M${tidy(off * nx + from * ux)} ${tidy(off * ny + from * uy)}L${tidy(off * nx + to * ux)} ${tidy(off * ny + to * uy)}`;
  }
  return d;
}

/** A dash so short that only its round caps are seen; not naught, which some printers leave out. */
const SPECK = 0.01;

/** Rows for a hatch of dots, every other one shifted by half a gap: one line for a row, which its dashes make into dots. */
function rowsPath({ x, y, width, height }: Rect, { gap }: Hatch): string {
  const apart = gap / 2;
  let d = "";
  for (let row = Math.ceil(y / apart); row * apart <= y + height; row += 1) {
    const shift = row % 2 === 0 ? 0 : apart;
    // Dashes are counted from where a line begins: at a dot, on a grid that does not hang on the outline.
    const first = Math.ceil((x - shift) / gap) * gap + shift;
    if (first <= x + width) d += `M${tidy(first)} ${tidy(row * apart)}H${tidy(x + width + SPECK)}`;
  }
  return d;
}

/** What a hatch draws over a box, and with which stroke; whoever draws it clips it to the outline. */
export const hatchStrokes = (box: Rect, hatch: Hatch): { readonly d: string; readonly stroke: Stroke } => ({
  d: hatch.kind === "lines" ? hatchPath(box, hatch) : rowsPath(box, hatch),
  stroke: {
    ink: hatch.ink,
    width: hatch.width,
    ...(hatch.kind === "dots" && { cap: "round" as const, dash: [SPECK, hatch.gap - SPECK] }),
  },
});
