import { FAR_NAME_WEIGHT, type FarBox, farBox } from "../../../shared-model/geometry/far-box.ts";
import { WALL } from "../../../shared-model/geometry/metrics.ts";
import type { SymbolSet } from "../../../shared-model/model/symbol-set.ts";

import type { FarInk } from "./far-ink.ts";
import type { FarItem } from "./far-scene.ts";
import type { Stamp, Stamps } from "./far-stamps.ts";

/** What is painted on: `zoom` pixels of the page a drawing unit, offsets in pixels of the page. */
export interface Ground {
  readonly context: CanvasRenderingContext2D;
  readonly x: number;
  readonly y: number;
  readonly zoom: number;
  /** Pixels of the page that the canvas covers. */
  readonly width: number;
  readonly height: number;
  /** Pixels of the screen in a pixel of the page. */
  readonly dots: number;
  readonly ink: FarInk;
  readonly stamps: Stamps;
}

/** In pixels. */
const WALL_LINE = 1.6;
const SIGN = 17;
/** On each side of the middle between the names of two boxes. */
const NAME_GAP = 2;
/** A finding that must not be overlooked has a sign of this size in the smallest box. */
const LEAST_SIGN = 7;

/** A box in pixels of the screen, all whole numbers, so that its lines are crisp. */
interface Placed {
  readonly item: FarItem;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly inside: FarBox;
}

/** Paints the boxes in view: walls, names, symbols, how full they are, and the worst finding of each. */
export function paintBoxes(ground: Ground, items: readonly FarItem[], set: SymbolSet): void {
  const { context, dots, ink } = ground;
  const placed = placeAll(ground, items);
  context.setTransform(1, 0, 0, 1, 0, 0);
  const line = Math.max(1, Math.round(WALL_LINE * dots));
  context.fillStyle = ink.ink;
  for (const { left, top, right, bottom } of placed) context.fillRect(left, top, right - left, bottom - top);
  context.fillStyle = ink.paper;
  for (const { left, top, right, bottom } of placed)
    context.fillRect(left + line, top + line, right - left - 2 * line, bottom - top - 2 * line);
  paintChanges(ground, placed, line);
  paintBars(ground, placed);
  paintSymbols(ground, placed, set);
  paintNames(ground, placed);
  paintSigns(ground, placed);
}

function placeAll({ x, y, zoom, width, height, dots }: Ground, items: readonly FarItem[]): readonly Placed[] {
  const placed: Placed[] = [];
  const wall = WALL * zoom;
  for (const item of items) {
    const { rect } = item;
    const left = rect.x * zoom + x;
    const top = rect.y * zoom + y;
    const [wide, high] = [rect.width * zoom, rect.height * zoom];
    if (left > width + SIGN || top > height + SIGN || left + wide < -SIGN || top + high < -SIGN) continue;
    placed.push({
      item,
      left: Math.round(left * dots),
      top: Math.round(top * dots),
      right: Math.round((left + wide) * dots),
      bottom: Math.round((top + high) * dots),
      inside: farBox({
        width: wide - 2 * wall,
        height: high - 2 * wall,
        name: item.name,
        symbols: item.symbols.length,
        ratio: item.ratio,
        marked: item.sign !== undefined,
        // Half of it, for the name of the next box too.
        aside: Math.max(0, (item.aside * zoom) / 2 - NAME_GAP),
      }),
    });
  }
  return placed;
}

/** A box that the work opens has a dashed line around it, a new one a heavy one. */
function paintChanges({ context, dots, ink }: Ground, placed: readonly Placed[], line: number): void {
  for (const { item, left, top, right, bottom } of placed) {
    if (item.change === undefined) continue;
    const fresh = item.change === "new";
    const away = Math.round(3 * dots) + line;
    context.strokeStyle = fresh ? ink.ink : ink.quiet;
    context.lineWidth = Math.round((fresh ? 2.4 : 1.5) * dots);
    context.setLineDash(fresh ? [] : [7 * dots, 4 * dots]);
    context.strokeRect(left - away, top - away, right - left + 2 * away, bottom - top + 2 * away);
  }
  context.setLineDash([]);
}

function paintBars({ context, zoom, dots, ink }: Ground, placed: readonly Placed[]): void {
  const wall = WALL * zoom * dots;
  for (const { item, left, top, inside } of placed) {
    const { bar } = inside;
    if (bar === undefined || item.ratio === undefined) continue;
    const x = Math.round(left + wall + bar.x * dots);
    const y = Math.round(top + wall + bar.y * dots);
    const [wide, high] = [Math.round(bar.width * dots), Math.round(bar.height * dots)];
    context.fillStyle = ink.track;
    context.fillRect(x, y, wide, high);
    context.fillStyle = item.ratio > 1 ? ink.over : ink.full;
    context.fillRect(x, y, Math.round(wide * Math.min(1, item.ratio)), high);
    if (item.ratio <= 1) continue;
    // Too full without colour: gaps in the last third of the bar.
    context.fillStyle = ink.paper;
    for (let gap = Math.round(wide * 0.66); gap < wide; gap += Math.round(4 * dots))
      context.fillRect(x + gap, y, Math.max(1, Math.round(1.2 * dots)), high);
  }
}

function paintSymbols({ context, zoom, dots, stamps }: Ground, placed: readonly Placed[], set: SymbolSet): void {
  const wall = WALL * zoom * dots;
  for (const { item, left, top, inside } of placed) {
    const { symbols } = inside;
    if (symbols === undefined) continue;
    for (let i = 0; i < symbols.count; i++) {
      const kind = item.symbols[i];
      if (kind === undefined) continue;
      const stamp = stamps.symbol(set, kind, symbols.size);
      put(context, stamp, left + wall + (symbols.x + i * symbols.size) * dots, top + wall + symbols.y * dots);
    }
  }
}

/** Puts a stamp about a point, on whole pixels of the screen. */
const put = (context: CanvasRenderingContext2D, { picture, side }: Stamp, x: number, y: number): void =>
  context.drawImage(picture, Math.round(x - side / 2), Math.round(y - side / 2));

function paintNames({ context, zoom, dots, ink }: Ground, placed: readonly Placed[]): void {
  const wall = WALL * zoom * dots;
  context.lineJoin = "round";
  context.strokeStyle = ink.paper;
  context.fillStyle = ink.ink;
  let font = "";
  for (const { item, left, top, inside } of placed) {
    const { name } = inside;
    if (name === undefined) continue;
    const wanted = `${FAR_NAME_WEIGHT} ${name.size * dots}px ${ink.face}`;
    if (wanted !== font) {
      context.font = wanted;
      font = wanted;
    }
    context.textAlign = name.centred ? "center" : "left";
    const [x, y] = [left + wall + name.x * dots, Math.round(top + wall + name.y * dots)];
    if (name.centred) {
      context.lineWidth = 3 * dots;
      context.strokeText(item.name, x, y);
    }
    context.fillText(item.name, x, y);
  }
}

function paintSigns({ context, dots, stamps }: Ground, placed: readonly Placed[]): void {
  for (const { item, top, right, bottom } of placed) {
    if (item.sign === undefined) continue;
    const grave = item.sign === "danger" || item.sign === "violation";
    const size = Math.max(Math.min(SIGN, ((bottom - top) / dots) * 0.5), grave ? LEAST_SIGN : 0);
    if (size >= 4) put(context, stamps.sign(item.sign, size), right, top);
  }
}
