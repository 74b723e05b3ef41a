import type { ReactFlowInstance } from "@xyflow/react";
import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
import type { Point } from "../../shared-model/model/project.ts";
import type { View } from "./box-frame.ts";
import type { BoxFlowNode } from "./to-flow.ts";

export const MIN_ZOOM = 0.02;
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

/** Space around what is fitted; below lies the title block. */
const ROOM = { top: "44px", right: "24px", bottom: "52px", left: "24px" } as const;

const LIVELY_MS = 180;
const duration = (): number => (calm() ? 0 : LIVELY_MS);

/** Shows all there is, never larger than life. */
export function fitAll(): void {
  if (flow === undefined) waiting = fitAll;
  else void flow.fitView({ padding: ROOM, maxZoom: 1, duration: duration() });
}

/** Shows some boxes whole. */
export function fitBoxes(ids: readonly string[]): void {
  if (ids.length === 0) fitAll();
  else void flow?.fitView({ nodes: ids.map((id) => ({ id })), padding: ROOM, maxZoom: 1.25, duration: duration() });
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

/** Brings an area into view: not at all where it is already seen at a readable size. */
export function showArea(area: Rect): void {
  if (flow === undefined) return;
  const host = hostArea();
  if (host === undefined) return;
  const from = toSheet({ clientX: host.left, clientY: host.top });
  const to = toSheet({ clientX: host.right, clientY: host.bottom });
  const seen = area.x >= from.x && area.y >= from.y && area.x + area.width <= to.x && area.y + area.height <= to.y;
  if (seen && zoomNow() >= 0.5) return;
  void flow.fitBounds({ ...area }, { padding: 0.03, duration: duration() });
}

/** Space that the title block and the line of the hand take at the foot of the sheet. */
const FOOT = 60;
const EDGE = 24;

/** Pans just so far that an element of the drawing is in view, for people who walk it with keys. */
export function bringIntoView(element: Element): void {
  const host = hostArea();
  if (flow === undefined || host === undefined) return;
  const area = element.getBoundingClientRect();
  const x = shortfall(area.left, area.right, host.left + EDGE, host.right - EDGE);
  const y = shortfall(area.top, area.bottom, host.top + EDGE, host.bottom - FOOT);
  panBy(x, y);
}

/** How far a span must move to lie inside another; a span too long for it shows its beginning. */
function shortfall(from: number, to: number, least: number, most: number): number {
  if (from < least || to - from > most - least) return least - from;
  return to > most ? most - to : 0;
}

const hostArea = (): DOMRect | undefined => document.querySelector(".sheet-flow")?.getBoundingClientRect();

function panBy(x: number, y: number): void {
  if (flow === undefined || (x === 0 && y === 0)) return;
  const viewport = flow.getViewport();
  void flow.setViewport({ ...viewport, x: viewport.x + x, y: viewport.y + y });
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
