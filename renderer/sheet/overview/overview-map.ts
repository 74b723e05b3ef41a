import type { Rect } from "../../../shared-model/geometry/box-drawing.ts";
import type { Point } from "../../../shared-model/model/project.ts";
import { around, type Viewport } from "../view-fit.ts";

interface Size {
  readonly width: number;
  readonly height: number;
}

/** How the whole drawing stands in the overview: a point of the sheet at `at * zoom + offset` pixels from its corner. */
export interface OverviewMap extends Viewport, Size {}

/** Pixels around the drawing, for the signs at its corners. */
const RIM = 9;
/** Of a drawing that is a single row, or a single column. */
const LEAST: Size = { width: 110, height: 56 };
/** A box or two are not drawn as large as a window. */
const MOST_ZOOM = 0.12;
/** Of the frame of what is in view, however small that is, or however far outside. */
const LEAST_FRAME = 8;

/** The overview in the shape of the drawing, at most so large; undefined where there is nothing to show. */
export function overviewMap(area: Rect | undefined, most: Size): OverviewMap | undefined {
  if (area === undefined || most.width <= 2 * RIM || most.height <= 2 * RIM) return undefined;
  const zoom = Math.min(
    MOST_ZOOM,
    (most.width - 2 * RIM) / Math.max(1, area.width),
    (most.height - 2 * RIM) / Math.max(1, area.height),
  );
  const width = Math.round(Math.min(most.width, Math.max(LEAST.width, area.width * zoom + 2 * RIM)));
  const height = Math.round(Math.min(most.height, Math.max(LEAST.height, area.height * zoom + 2 * RIM)));
  const x = (width - area.width * zoom) / 2 - area.x * zoom;
  const y = (height - area.height * zoom) / 2 - area.y * zoom;
  return { x, y, zoom, width, height };
}

/** The frame of what a view of the sheet shows, in pixels from the corner of the overview, never outside of it. */
export function frameIn(map: OverviewMap, view: Viewport, host: Size): Rect {
  const scale = map.zoom / view.zoom;
  const across = span(map.x - view.x * scale, host.width * scale, map.width);
  const down = span(map.y - view.y * scale, host.height * scale, map.height);
  return { x: across.from, y: down.from, width: across.long, height: down.long };
}

function span(at: number, length: number, most: number): { readonly from: number; readonly long: number } {
  const least = Math.min(LEAST_FRAME, most);
  const from = Math.min(Math.max(0, at), most - least);
  const to = Math.max(Math.min(most, at + length), from + least);
  return { from, long: to - from };
}

/** The view, as large as it is now, that has a point of the overview in its middle. */
export const viewAround = (map: OverviewMap, { x, y }: Point, zoom: number, host: Size): Viewport =>
  around({ x: (x - map.x) / map.zoom, y: (y - map.y) / map.zoom, zoom }, host);

/** The view after a drag over the overview: a pixel there is many on the sheet. */
export const viewDragged = (map: OverviewMap, from: Viewport, by: Point): Viewport => ({
  x: from.x - (by.x / map.zoom) * from.zoom,
  y: from.y - (by.y / map.zoom) * from.zoom,
  zoom: from.zoom,
});
