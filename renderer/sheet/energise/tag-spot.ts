import type { ConductorDrawing, Plate } from "../../../shared-model/geometry/box-drawing.ts";
import { textWidth } from "../../../shared-model/geometry/text-width.ts";
import type { Point } from "../../../shared-model/model/project.ts";
import { TAG } from "./condition-tag.tsx";

type Conductor = Pick<ConductorDrawing, "points" | "plates" | "fanPoints">;

/** From the ends of a leg, at its beginning and at its end; every so far along it is tried. In drawing units. */
interface Room {
  readonly start: number;
  readonly end: number;
  readonly step: number;
}
const AMPLE: Room = { start: TAG / 2 + 6, end: TAG / 2 + 18, step: 6 };
/** Close to a bend or a splice, and just clear of the screw at which a short one ends. */
const SCARCE: Room = { start: TAG / 2 + 1, end: TAG / 2 + 8, step: 1 };

/**
 * Where the tag of a conductor stands: in the last straight leg with room for it beside code plates, ample or scarce, else
 * in the fan out of the sheath, else in the longest.
 */
export const tagSpot = (conductor: Conductor): Point | undefined =>
  spotWith(conductor, AMPLE).clear ??
  spotWith(conductor, SCARCE).clear ??
  spotWith({ ...conductor, fanPoints: 0 }, SCARCE).clear ??
  spotWith(conductor, AMPLE).longest;

function spotWith(
  { points, plates, fanPoints }: Conductor,
  room: Room,
): { readonly clear?: Point; readonly longest?: Point } {
  let longest: { readonly at: Point; readonly length: number } | undefined;
  for (let i = points.length - 1; i > Math.max(0, fanPoints - 1); i--) {
    const [a, b] = [points[i - 1], points[i]];
    if (a === undefined || b === undefined) continue;
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    if (length === 0) continue;
    const along = (share: number): Point => ({ x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share });
    if (longest === undefined || length > longest.length) longest = { at: along(0.5), length };
    for (let from = length - room.end; from >= room.start; from -= room.step) {
      const at = along(from / length);
      if (plates.every((plate) => isClear(plate, at))) return { clear: at };
    }
  }
  return longest === undefined ? {} : { longest: longest.at };
}

function isClear({ at, text, vertical }: Plate, { x, y }: Point): boolean {
  const long = textWidth(text, 11, 640) / 2 + 3;
  const [width, height] = vertical ? [7, long] : [long, 7];
  return Math.abs(at.x - x) >= width + TAG / 2 + 2 || Math.abs(at.y - y) >= height + TAG / 2 + 1;
}
