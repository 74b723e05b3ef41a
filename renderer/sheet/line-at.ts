import type { BoxDrawing, ConductorDrawing, Plate, Rect } from "../../shared-model/geometry/box-drawing.ts";
import { textWidth } from "../../shared-model/geometry/text-width.ts";
import type { EndKey } from "../../shared-model/model/ids.ts";
import type { Point } from "../../shared-model/model/project.ts";

/** Drawing units to either side of a conductor within which a press is one on it; of several the nearest counts. */
export const LINE_REACH = 12;

/** A conductor of a box that a point lies on, and the end of it in this box that is nearer along the conductor. */
export interface LineHit {
  readonly conductor: ConductorDrawing;
  /** Undefined for one that runs through the box unbroken. */
  readonly end: EndKey | undefined;
}

/** Tells the conductors of a box apart, the same from one drawing of it to the next. */
export const lineKey = ({ ends, passThrough, conductor }: ConductorDrawing): string =>
  ends[0] ?? `${passThrough ?? ""} ${conductor ?? ""}`;

/** The area of a code plate. */
export function plateArea({ at, text, vertical }: Plate): Rect {
  const long = textWidth(text, 11, 640) + 6;
  const [width, height] = vertical ? [14, long] : [long, 14];
  return { x: at.x - width / 2, y: at.y - height / 2, width, height };
}

/** The conductor at a point of a box: the one whose code plate covers it, else the nearest within reach. */
export function lineAt({ conductors }: Pick<BoxDrawing, "conductors">, point: Point): LineHit | undefined {
  let best: { readonly conductor: ConductorDrawing; readonly share: number } | undefined;
  let least = LINE_REACH;
  for (const conductor of conductors) {
    const { distance, share } = nearestOn(conductor.points, point);
    const away = conductor.plates.some((plate) => covers(plateArea(plate), point)) ? 0 : distance;
    // Of two that cross, the later is drawn over the other.
    if (away <= least) [best, least] = [{ conductor, share }, away];
  }
  if (best === undefined) return undefined;
  const { ends } = best.conductor;
  return { conductor: best.conductor, end: best.share < 0.5 ? ends[0] : ends[ends.length - 1] };
}

const covers = ({ x, y, width, height }: Rect, point: Point): boolean =>
  point.x >= x && point.x <= x + width && point.y >= y && point.y <= y + height;

/** How far a point lies from a polyline, and at which share of its length. */
function nearestOn(points: readonly Point[], { x, y }: Point): { readonly distance: number; readonly share: number } {
  let distance = Number.POSITIVE_INFINITY;
  let at = 0;
  let length = 0;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1], points[i]];
    if (a === undefined || b === undefined) continue;
    const long = Math.hypot(b.x - a.x, b.y - a.y);
    const along = long === 0 ? 0 : ((x - a.x) * (b.x - a.x) + (y - a.y) * (b.y - a.y)) / (long * long);
    const t = Math.min(1, Math.max(0, along));
    const away = Math.hypot(a.x + (b.x - a.x) * t - x, a.y + (b.y - a.y) * t - y);
    if (away < distance) [distance, at] = [away, length + long * t];
    length += long;
  }
  return { distance, share: length === 0 ? 0 : at / length };
}
