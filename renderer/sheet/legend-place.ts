import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
import { LEGEND_CORNERS, type LegendCorner } from "../state/preferences-store.ts";
import type { Viewport } from "./view-fit.ts";

interface Size {
  readonly width: number;
  readonly height: number;
}

/** Pixels between a legend and the edges of the view, at the head under the state and the actions of boxes. */
const EDGE = 6;
const HEAD = 46;

/** Where a legend stands in a corner of a view, in pixels from the view's corner; `foot` is what stands at its foot. */
export function legendArea(corner: LegendCorner, { width, height }: Size, view: Size, foot: number): Rect {
  const x = corner.endsWith("left") ? EDGE : view.width - width - EDGE;
  const y = corner.startsWith("top") ? HEAD : view.height - foot - height - EDGE;
  return { x, y, width, height };
}

/** A corner, and whether a legend in it covers nothing that is drawn. */
export interface Standing {
  readonly corner: LegendCorner;
  readonly free: boolean;
}

/**
 * The corner in which a legend covers least of what is drawn, the first of those that are alike.
 * @param areas What is drawn, in drawing units of the sheet.
 * @param among Corners that it may stand in.
 * @param standing What stands on the sheet there already, in pixels from the corner of the view.
 */
export function freestCorner(
  legend: Size,
  view: Size,
  foot: number,
  areas: readonly Rect[],
  { x, y, zoom }: Viewport,
  among: readonly LegendCorner[] = LEGEND_CORNERS,
  standing: readonly Rect[] = [],
): Standing {
  const drawn = areas.map((area) => ({
    x: area.x * zoom + x,
    y: area.y * zoom + y,
    width: area.width * zoom,
    height: area.height * zoom,
  }));
  const covered = among.map((corner) => {
    const place = legendArea(corner, legend, view, foot);
    const seen = [...drawn, ...standing];
    return { corner, area: seen.reduce((sum, area) => sum + common(place, area), 0) };
  });
  const { corner, area } = covered.reduce((best, next) => (next.area < best.area ? next : best));
  return { corner, free: area === 0 };
}

/** Area that two have in common. */
export function common(a: Rect, b: Rect): number {
  const width = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
  const height = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
  return Math.max(0, width) * Math.max(0, height);
}

/** The corner that is nearest to a point of the view. */
export const nearestCorner = (at: { readonly x: number; readonly y: number }, view: Size): LegendCorner =>
  `${at.y < view.height / 2 ? "top" : "bottom"}-${at.x < view.width / 2 ? "left" : "right"}`;

/** The next corner, clockwise. */
export const cornerAfter = (corner: LegendCorner): LegendCorner =>
  LEGEND_CORNERS[(LEGEND_CORNERS.indexOf(corner) + 1) % LEGEND_CORNERS.length] ?? corner;
