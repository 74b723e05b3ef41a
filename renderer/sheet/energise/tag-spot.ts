import type { ConductorDrawing, Plate } from "../../../shared-model/geometry/box-drawing.ts";
import { textWidth } from "../../../shared-model/geometry/text-width.ts";
import type { Point } from "../../../shared-model/model/project.ts";
import { TAG } from "./condition-tag.tsx";

/** From a bend, a plate or an end. */
const CLEAR = 6;

/** Where the tag of a conductor stands: in the last straight leg with room for it beside code plates, else in the longest. */
export function tagSpot({
  points,
  plates,
  fanPoints,
}: Pick<ConductorDrawing, "points" | "plates" | "fanPoints">): Point | undefined {
  let longest: { readonly at: Point; readonly length: number } | undefined;
  for (let i = points.length - 1; i > Math.max(0, fanPoints - 1); i--) {
    const [a, b] = [points[i - 1], points[i]];
    if (a === undefined || b === undefined) continue;
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    if (length === 0) continue;
    const along = (share: number): Point => ({ x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share });
    if (longest === undefined || length > longest.length) longest = { at: along(0.5), length };
    const need = TAG / 2 + CLEAR;
    for (let from = length - need - CLEAR * 2; from >= need; from -= CLEAR) {
      const at = along(from / length);
      if (plates.every((plate) => isClear(plate, at))) return at;
    }
  }
  return longest?.at;
}

function isClear({ at, text, vertical }: Plate, { x, y }: Point): boolean {
  const long = textWidth(text, 11, 640) / 2 + 3;
  const [width, height] = vertical ? [7, long] : [long, 7];
  return Math.abs(at.x - x) >= width + TAG / 2 + 2 || Math.abs(at.y - y) >= height + TAG / 2 + 1;
}
