import type { Rect } from "../../shared-model/geometry/box-drawing.ts";

/** Which part of the sheet is shown: a point of the sheet at `at * zoom + offset` pixels from the corner of the view. */
export interface Viewport {
  readonly x: number;
  readonly y: number;
  readonly zoom: number;
}

interface Size {
  readonly width: number;
  readonly height: number;
}

/** Pixels around what is fitted: above lie the selected boxes' actions, below the title block. */
export const ROOM = { top: 44, right: 24, bottom: 52, left: 24 } as const;

/** Height of the title block at the foot of the sheet. */
export const TITLE = 36;
const RIM = 2;

/** At this zoom the codes of conductors, 11 drawing units, are letters of 9 pixels. */
export const READABLE = 9 / 11;
/** From here up a box may be made smaller to be seen whole: its letters are drawn larger in it where there is room. */
export const LEAST_WHOLE = 0.55;

/** The part of a view that nothing lies over, in pixels from its corner. */
export const clearPart = ({ width, height }: Size): Rect => ({
  x: ROOM.left,
  y: ROOM.top,
  width: Math.max(1, width - ROOM.left - ROOM.right),
  height: Math.max(1, height - ROOM.top - ROOM.bottom),
});

/** All of a view above the title block, but for a line at its rim. */
const uncovered = ({ width, height }: Size): Rect => ({
  x: RIM,
  y: RIM,
  width: Math.max(1, width - 2 * RIM),
  height: Math.max(1, height - TITLE - 2 * RIM),
});

/** Zoom at which an area just fits. */
export const fittingZoom = (area: Size, view: Size): number => {
  const room = clearPart(view);
  return Math.min(room.width / Math.max(1, area.width), room.height / Math.max(1, area.height));
};

/** An area in the middle of the view at a zoom; where it is too large, its beginning. */
export function place(area: Rect, view: Size, zoom: number): Viewport {
  const room = clearPart(view);
  return {
    x: room.x + Math.max(0, (room.width - area.width * zoom) / 2) - area.x * zoom,
    y: room.y + Math.max(0, (room.height - area.height * zoom) / 2) - area.y * zoom,
    zoom,
  };
}

/** Shows an area whole, never above a zoom. */
export const fitWhole = (area: Rect, view: Size, most: number): Viewport =>
  place(area, view, Math.min(most, fittingZoom(area, view)));

/** Shows one box: whole where its letters can be read then, else its beginning at a size at which they can. */
export function fitBox(area: Rect, view: Size, most: number): Viewport {
  const whole = fittingZoom(area, view);
  return place(area, view, whole < LEAST_WHOLE ? READABLE : Math.min(most, whole));
}

/**
 * The nearest view that shows an area whole: the smallest pan at this zoom where it fits, else the least zooming out.
 * @param area In pixels from the corner of the view, as it is seen now.
 * @param least Zoom below which nothing is shown whole.
 * @returns Undefined where it would have to be smaller than that.
 */
export function backInView(area: Rect, view: Size, now: Viewport, least: number): Viewport | undefined {
  const all = uncovered(view);
  const factor = Math.min(1, all.width / area.width, all.height / area.height);
  const zoom = now.zoom * factor;
  if (zoom < least) return undefined;
  // Shrunk about the corner of the view first, then panned: clear of everything where there is the room for that.
  const [width, height] = [area.width * factor, area.height * factor];
  const clear = clearPart(view);
  const across = width <= clear.width ? clear : all;
  const down = height <= clear.height ? clear : all;
  return {
    x: now.x * factor + shortfall(area.x * factor, area.x * factor + width, across.x, across.x + across.width),
    y: now.y * factor + shortfall(area.y * factor, area.y * factor + height, down.y, down.y + down.height),
    zoom,
  };
}

/** How much of some areas of the sheet a view shows: none of any, all of each, or something between. */
export function shownOf(areas: readonly Rect[], view: Size, { x, y, zoom }: Viewport): "none" | "some" | "all" {
  let [any, all] = [false, true];
  for (const area of areas) {
    const [left, top] = [area.x * zoom + x, area.y * zoom + y];
    const [right, bottom] = [left + area.width * zoom, top + area.height * zoom];
    if (right > 0 && bottom > 0 && left < view.width && top < view.height) any = true;
    if (left < 0 || top < 0 || right > view.width || bottom > view.height) all = false;
  }
  return areas.length > 0 && !any ? "none" : all ? "all" : "some";
}

/** The view that has a point of the sheet in its middle. */
export const around = ({ x, y, zoom }: Viewport, { width, height }: Size): Viewport => ({
  x: width / 2 - x * zoom,
  y: height / 2 - y * zoom,
  zoom,
});

/** How far a span must move to lie inside another; a span too long for it shows its beginning. */
export function shortfall(from: number, to: number, least: number, most: number): number {
  if (from < least || to - from > most - least + 1e-6) return least - from;
  return to > most ? most - to : 0;
}
