import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
import { common } from "./legend-place.ts";

interface Size {
  readonly width: number;
  readonly height: number;
}

/** At the head beside the word of the state, at the head on the other side, over the title block on the left. */
export const BAR_SPOTS = ["head", "head-right", "foot"] as const;
export type BarSpot = (typeof BAR_SPOTS)[number];

/** Around a name that is not to be touched. */
const CLEAR = 2;

/**
 * Where the bar lies at a spot, in pixels from the corner of the view.
 * @param mark Width of the word of the state in that corner.
 * @param foot Height of what stands at the foot of the view.
 */
export function barArea(spot: BarSpot, { width, height }: Size, view: Size, mark: number, foot: number): Rect {
  const x = spot === "head" ? mark : spot === "head-right" ? view.width - width : 0;
  return { x, y: spot === "foot" ? view.height - foot - height : 0, width, height };
}

/**
 * The spot at which the bar covers least of what is read and pressed of the chosen boxes; the first of those alike, so
 * that it stays where people look for it unless something lies there.
 * @param taken Names, ends, splices and devices as they are seen now, in pixels from the corner of the view.
 */
export function barSpot(bar: Size, view: Size, mark: number, foot: number, taken: readonly Rect[]): BarSpot {
  const covered = BAR_SPOTS.map((spot) => {
    const { x, y, width, height } = barArea(spot, bar, view, mark, foot);
    const place = { x: x - CLEAR, y: y - CLEAR, width: width + 2 * CLEAR, height: height + 2 * CLEAR };
    // The word of the state stands in its corner whatever lies there.
    const onMark = spot === "head-right" && x < mark ? (mark - x) * height : 0;
    return { spot, area: taken.reduce((sum, each) => sum + common(place, each), onMark) };
  });
  return covered.reduce((best, next) => (next.area < best.area ? next : best)).spot;
}
