import type { ReactFlowInstance } from "@xyflow/react";
import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { Point } from "../../shared-model/model/project.ts";
import { documentStore } from "../state/document-store.ts";
import { besideOverview } from "./beside-overview.ts";
import type { View } from "./box-frame.ts";
import { NEAR_FROM } from "./detail.ts";
import { rememberedView } from "./remember-view.ts";
import type { BoxFlowNode } from "./to-flow.ts";
import { backInView, fitBox, fitWhole, LEAST_WHOLE, ROOM, shortfall, TITLE, type Viewport } from "./view-fit.ts";
import { areaOfBoxes, roomsOf, wholeOf } from "./whole-of.ts";

export const MIN_ZOOM = 0.004;
export const MAX_ZOOM = 4;

type Flow = ReactFlowInstance<BoxFlowNode>;

let flow: Flow | undefined;

/** What is to be shown as soon as there is a sheet to show it on. */
let waiting: (() => void) | undefined;

/** A window has one sheet; gestures ask it where the pointer is without subscribing to anything. */
export function attachSheet(instance: Flow | undefined): void {
  flow = instance;
  const show = waiting;
  waiting = undefined;
  if (instance !== undefined && show !== undefined) requestAnimationFrame(show);
}

/** A point of the window in drawing units of the sheet. */
export const toSheet = (client: { readonly clientX: number; readonly clientY: number }): Point =>
  flow?.screenToFlowPosition({ x: client.clientX, y: client.clientY }, { snapToGrid: false }) ?? { x: 0, y: 0 };

export const zoomNow = (): number => flow?.getZoom() ?? 1;

/** Costs a layout of the page: not for every step of a gesture. */
export function viewNow(): View {
  const host = hostArea();
  return { zoom: zoomNow(), width: host?.width ?? 0, height: host?.height ?? 0 };
}

const calm = (): boolean => matchMedia("(prefers-reduced-motion: reduce)").matches;

const LIVELY_MS = 180;
/** A glide is over by then. */
export const SETTLED_MS = LIVELY_MS + 80;
const duration = (): number => (calm() ? 0 : LIVELY_MS);

/** Shows all there is, never larger than life; a lone box at a size at which it can be read. */
export function fitAll(): void {
  const host = clearArea();
  glideTo(viewOfAll(host), duration(), host?.head);
}

/**
 * As `fitAll`, for a drawing that was just opened: at once, so that no other view of it is ever painted. One that was left
 * at another view is shown as it was left.
 */
export function fitFirst(): void {
  const show = (): void => {
    const host = hostArea();
    glideTo(rememberedView(documentStore.get(), host) ?? viewOfAll(host), 0);
  };
  if (flow === undefined) waiting = show;
  else show();
}

/** What is in view; undefined while there is no sheet. */
export const currentView = (): Viewport | undefined => flow?.getViewport();

/** The view that shows all there is; undefined where nothing is drawn, or there is no room to draw on. */
export function viewOfAll(host: Pick<DOMRect, "width" | "height"> | undefined): Viewport | undefined {
  const whole = wholeOf(documentStore.get());
  if (whole === undefined || host === undefined || host.width === 0 || host.height === 0) return undefined;
  const { zoom, ...at } = whole.boxes === 1 ? fitBox(whole.area, host, 1) : fitWhole(whole.area, host, 1);
  return zoom >= MIN_ZOOM ? { ...at, zoom } : fitWhole(whole.area, host, MIN_ZOOM);
}

/** As `viewOfAll`, from where the boxes stand and before any is drawn. */
export function viewOfRooms(host: Pick<DOMRect, "width" | "height"> | undefined): Viewport | undefined {
  const area = roomsOf(documentStore.get());
  if (area === undefined || host === undefined || host.width === 0 || host.height === 0) return undefined;
  return fitWhole(area, host, 1);
}

/** @param lower How much further down everything is than a view of its own would have it, in pixels. */
function glideTo(view: Viewport | undefined, lasting = duration(), lower = 0): void {
  if (view !== undefined) void flow?.setViewport({ ...view, y: view.y + lower }, { duration: lasting });
}

/** Shows some boxes whole. */
export function fitBoxes(ids: readonly string[]): void {
  const area = ids.length === 0 ? undefined : areaOfBoxes(documentStore.get(), ids as readonly EnclosureId[]);
  const host = clearArea();
  if (area === undefined || host === undefined) fitAll();
  else glideTo(fitWhole(area, host, 1.25), duration(), host.head);
}

/** Shows an area as a whole, however large it is. */
export function showWhole(area: Rect): void {
  const host = hostArea();
  if (host !== undefined) glideTo(fitWhole(area, host, 1.25));
}

/** Size that a running zoom glides to, so that quick presses add up. */
let goal: { readonly zoom: number; readonly until: number } | undefined;

export function zoomBy(factor: number): void {
  const from = goal !== undefined && performance.now() < goal.until ? goal.zoom : zoomNow();
  const zoom = Math.min(MAX_ZOOM, Math.max(MIN_ZOOM, from * factor));
  goal = { zoom, until: performance.now() + duration() };
  void flow?.zoomTo(zoom, { duration: duration() });
}

export const zoomToFull = (): void => void flow?.zoomTo(1, { duration: duration() });

/** Shows a point of the sheet in the middle, at a size. */
export const zoomAround = ({ x, y }: Point, zoom: number): void =>
  void flow?.setCenter(x, y, { zoom, duration: duration() });

/** The point of the sheet in the middle of the view. */
export function centreNow(): Point {
  const host = hostArea();
  if (host === undefined) return { x: 0, y: 0 };
  return toSheet({ clientX: host.left + host.width / 2, clientY: host.top + host.height / 2 });
}

/**
 * Brings the area of a box into view: not at all where it is already seen at a readable size.
 * @param fill Whether it is to fill the view even then.
 * @returns Whether all of it is seen then; else its beginning is.
 */
export function showArea(area: Rect, fill = false): boolean {
  if (flow === undefined) {
    // A sheet that comes only now begins with all there is, or as it was left; one of several boxes fills its view then.
    const now = documentStore.get();
    if (fill && wholeOf(now)?.boxes !== 1 && rememberedView(now, hostArea()) === undefined)
      waiting = () => showArea(area, fill);
    return false;
  }
  const host = clearArea();
  if (host === undefined) return false;
  const from = toSheet({ clientX: host.left, clientY: host.top + host.head });
  const to = toSheet({ clientX: host.left + host.width, clientY: host.top + host.head + host.height });
  const seen = area.x >= from.x && area.y >= from.y && area.x + area.width <= to.x && area.y + area.height <= to.y;
  if (seen && zoomNow() >= LEAST_WHOLE && !fill) return true;
  const view = fitBox(area, host, 1.25);
  glideTo(view, duration(), host.head);
  return area.width * view.zoom <= host.width && area.height * view.zoom <= host.height;
}

/** Shows a part of the sheet at once, as fingers move it. */
export const setView = (view: Viewport): void => void flow?.setViewport(view);

/** Moves all that is in view to the right by some pixels, at once. */
export const shiftView = (by: number): void => panBy(by, 0);

/** The corner of the view, in pixels of the window. */
export function viewCorner(): Point {
  const { left: x, top: y } = hostArea() ?? { left: 0, top: 0 };
  return { x, y };
}

/** Whether anything of an area of the sheet is in view. */
export function isAreaSeen({ x, y, width, height }: Rect): boolean {
  const host = hostArea();
  if (host === undefined) return true;
  const from = toSheet({ clientX: host.left, clientY: host.top });
  const to = toSheet({ clientX: host.right, clientY: host.bottom });
  return x < to.x && from.x < x + width && y < to.y && from.y < y + height;
}

type Edges = Pick<DOMRect, "left" | "top" | "right" | "bottom">;

/** Whether all of an area of the window is in view. */
export function isWhollySeen({ left, top, right, bottom }: Edges): boolean {
  const host = hostArea();
  return (
    host !== undefined &&
    left >= host.left - 1 &&
    top >= host.top - 1 &&
    right <= host.right + 1 &&
    bottom <= host.bottom - TITLE + 1
  );
}

/** Shows an area of the window whole again, by the smallest pan or the least zooming out. @returns Whether it can be. */
export function showWholeAgain({ left, top, right, bottom }: Edges, mayShrink: boolean): boolean {
  const host = hostArea();
  if (flow === undefined || host === undefined) return false;
  const now = flow.getViewport();
  const area = { x: left - host.left, y: top - host.top, width: right - left, height: bottom - top };
  const view = backInView(area, host, now, mayShrink ? Math.min(now.zoom, NEAR_FROM) : now.zoom);
  glideTo(view);
  return view !== undefined;
}

/** Space that the title block and the line of the hand take at the foot of the sheet. */
const FOOT = 60;
const EDGE = 24;
/** Of the ring around what has the focus. */
const RING = 6;

/** Pans just so far that an element of the drawing is in view, for people who walk it with keys; nothing lies over it. */
export function bringIntoView(element: Element): void {
  const host = hostArea();
  if (flow === undefined || host === undefined) return;
  const area = element.getBoundingClientRect();
  const { top, bottom } = clearOf(host);
  const x = shortfall(area.left, area.right, host.left + EDGE, host.right - EDGE);
  const y = shortfall(area.top, area.bottom, top, bottom);
  const more = besideOverview({
    left: area.left + x,
    right: area.right + x,
    top: area.top + y,
    bottom: area.bottom + y,
  });
  panBy(x + more.x, y + more.y);
}

/** As `bringIntoView`, at once, for an area of the sheet. */
export function bringAreaIntoView({ x, y, width, height }: Rect): void {
  const host = hostArea();
  if (flow === undefined || host === undefined) return;
  const at = flow.flowToScreenPosition({ x, y });
  const zoom = zoomNow();
  const { top, bottom } = clearOf(host);
  // A list of places lies over the left of the sheet, or in a narrow window over its foot.
  const list = document.querySelector(".pick-beside")?.getBoundingClientRect();
  const left = list !== undefined && list.right < host.right - 160 ? Math.max(host.left, list.right) : host.left;
  panBy(
    shortfall(at.x, at.x + width * zoom, left + EDGE, host.right - EDGE),
    shortfall(at.y, at.y + height * zoom, top, bottom),
  );
}

/** What lies over the sheet, at its head and at its foot. */
const BAR_AT_HEAD = '.sheet-bar:not([data-spot="foot"])';
const OVER_HEAD = `${BAR_AT_HEAD}, .notice`;
const OVER_FOOT = '.sheet-title-block, .sheet-hint, .scope-legend, .sheet-bar[data-spot="foot"]';

/** Of the height of the sheet, what nothing lies over; where that leaves too little, all of it. */
function clearOf(host: Edges): { readonly top: number; readonly bottom: number } {
  const area = { top: host.top + EDGE, bottom: host.bottom - FOOT };
  for (const over of document.querySelectorAll(OVER_HEAD))
    area.top = Math.max(area.top, over.getBoundingClientRect().bottom + RING);
  for (const over of document.querySelectorAll(OVER_FOOT))
    area.bottom = Math.min(area.bottom, over.getBoundingClientRect().top - RING);
  return area.bottom - area.top > 120 ? area : { top: host.top + EDGE, bottom: host.bottom - FOOT };
}

/**
 * Pans just so far that all of an area of the window is seen, nothing where it is; an area larger than the view shows
 * its beginning. The size of the drawing stays.
 */
export function reveal({ left, top, right, bottom }: Edges): void {
  const host = hostArea();
  if (host === undefined) return;
  const seen = { left: host.left, top: host.top, right: host.right, bottom: host.bottom - TITLE };
  if (left >= seen.left && top >= seen.top && right <= seen.right && bottom <= seen.bottom) return;
  const x = left >= seen.left && right <= seen.right ? 0 : shortfall(left, right, seen.left + EDGE, seen.right - EDGE);
  const y = top >= seen.top && bottom <= seen.bottom ? 0 : shortfall(top, bottom, seen.top + EDGE, seen.bottom - EDGE);
  panBy(x, y, duration());
}

/** What stands at the foot of the sheet all the time. */
const STANDING = ".sheet-title-block, .scope-legend, .sheet-legend, .sheet-next";

type Clear = Pick<DOMRect, "left" | "top" | "width" | "height"> & { readonly head: number };

/**
 * The same above what stands at its foot, further rows of the title block in a narrow window or what explains the lines,
 * and below a bar of actions at its head that is higher than every view leaves room for. `head` of its height is not in it.
 */
function clearArea(): Clear | undefined {
  const host = hostArea();
  if (host === undefined) return undefined;
  const tops = [...document.querySelectorAll(STANDING)].map((each) => each.getBoundingClientRect().top);
  const foot = Math.max(0, host.bottom - Math.min(...tops, host.bottom) - TITLE);
  const bar = document.querySelector(BAR_AT_HEAD)?.getBoundingClientRect().bottom ?? host.top;
  const head = Math.max(0, bar - host.top + RING - ROOM.top);
  return { left: host.left, top: host.top, width: host.width, height: Math.max(0, host.height - foot - head), head };
}

/** The part of the window that the sheet has, and how high what stands at its foot is. */
export function sheetArea():
  | (Pick<DOMRect, "left" | "top" | "width" | "height"> & { readonly foot: number })
  | undefined {
  const host = hostArea();
  const clear = clearArea();
  return (
    host &&
    clear && {
      left: host.left,
      top: host.top,
      width: host.width,
      height: host.height,
      foot: host.height - clear.height - clear.head + TITLE,
    }
  );
}

const hostArea = (): DOMRect | undefined => document.querySelector(".sheet-flow")?.getBoundingClientRect();

function panBy(x: number, y: number, lasting = 0): void {
  if (flow === undefined || (x === 0 && y === 0)) return;
  const viewport = flow.getViewport();
  void flow.setViewport({ ...viewport, x: viewport.x + x, y: viewport.y + y }, { duration: lasting });
}

const SHORE = 32;
const SPEED = 10;

/** Pans while something is dragged along the edge of the sheet. @returns Whether it did. */
export function panAtEdge({ clientX, clientY }: { readonly clientX: number; readonly clientY: number }): boolean {
  const host = hostArea();
  if (host === undefined) return false;
  const step = (at: number, from: number, to: number): number =>
    at < from + SHORE ? SPEED : at > to - SHORE ? -SPEED : 0;
  const x = step(clientX, host.left, host.right);
  const y = step(clientY, host.top, host.bottom);
  panBy(x, y);
  return x !== 0 || y !== 0;
}
