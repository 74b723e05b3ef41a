import type { RoomId } from "../model/ids.ts";
import type { Rect } from "./box-drawing.ts";
import { hull } from "./free-group-place.ts";

/** A box as it stands on the sheet, and the room it is in. */
export interface StandingIn {
  readonly room: RoomId | undefined;
  readonly rect: Rect;
}

/** Boxes of one room that stand together, without room around them. */
export interface RoomCluster {
  readonly room: RoomId;
  readonly rect: Rect;
}

/** Boxes further from each other than this, in drawing units, have areas of their own. */
const REACH = 1600;

/**
 * Boxes of a room gathered into as few areas as can be drawn without a box of another room, or of none, in them. The
 * same boxes always give the same areas, whatever the order of the records.
 */
export function clustersOf(boxes: readonly StandingIn[]): readonly RoomCluster[] {
  const byRoom = new Map<RoomId, Rect[]>();
  for (const { room, rect } of boxes) {
    if (room === undefined) continue;
    const group = byRoom.get(room);
    if (group === undefined) byRoom.set(room, [rect]);
    else group.push(rect);
  }
  const clusters: RoomCluster[] = [];
  for (const [room, rects] of [...byRoom].sort(([a], [b]) => (a < b ? -1 : 1))) {
    const others = [
      ...boxes.flatMap((box) => (box.room === room ? [] : [box.rect])),
      ...clusters.map((each) => each.rect),
    ];
    for (const rect of gathered(rects, others)) clusters.push({ room, rect });
  }
  return clusters;
}

/** Joins what stands together, rows first, until nothing more can be joined. */
function gathered(rects: readonly Rect[], others: readonly Rect[]): readonly Rect[] {
  let now = [...rects].sort((a, b) => a.y - b.y || a.x - b.x);
  for (;;) {
    const next: Rect[] = [];
    for (const rect of now) {
      const index = next.findLastIndex((each) => isNear(each, rect) && !others.some(within(hull([each, rect]))));
      const each = next[index];
      if (each === undefined) next.push(rect);
      else next[index] = hull([each, rect]);
    }
    if (next.length === now.length) return next;
    now = next;
  }
}

const isNear = (a: Rect, b: Rect): boolean =>
  gap(a.x, a.width, b.x, b.width) <= REACH && gap(a.y, a.height, b.y, b.height) <= REACH;

const gap = (from: number, long: number, other: number, otherLong: number): number =>
  Math.max(other - from - long, from - other - otherLong);

const within =
  (area: Rect) =>
  (rect: Rect): boolean =>
    gap(area.x, area.width, rect.x, rect.width) < 0 && gap(area.y, area.height, rect.y, rect.height) < 0;

/** Room that an area takes around its boxes. */
export interface Margin {
  readonly top: number;
  readonly side: number;
  readonly bottom: number;
  /** The least above that holds a name; where there is less, an area takes `foot` more below, for the name to stand there. */
  readonly named: number;
  readonly foot: number;
  /** What stays free between two areas. */
  readonly apart: number;
}

/** An area with its margin, no further on any side than half way to what stands beside it. */
export interface RoomArea extends RoomCluster {
  /** Where its name is written: over its boxes, under them, or nowhere for want of room. */
  readonly name: "top" | "bottom" | undefined;
  readonly top: number;
}

/**
 * Areas with as much room around their boxes as their neighbours leave them.
 * @param loose Boxes of no room: areas keep off them as off each other.
 * @param wideOf How wide an area is at least where there is room, so that its name can be read.
 */
export function areasOf(
  clusters: readonly RoomCluster[],
  loose: readonly Rect[],
  { top, side, bottom, named, foot, apart }: Margin,
  wideOf: (room: RoomId) => number = () => 0,
): readonly RoomArea[] {
  const room = (between: number): number => Math.max(0, between - apart);
  const standing = [...clusters.map(({ rect }) => rect), ...loose];
  const most = Math.max(side, ...clusters.map((each) => wideOf(each.room) - each.rect.width - side));
  return clusters.map((cluster) => {
    const { rect } = cluster;
    const wide = Math.max(side, wideOf(cluster.room) - rect.width - side);
    let [left, right, up, down] = [side, wide, top, bottom + foot];
    for (const other of standing) {
      if (other === rect) continue;
      const across = gap(rect.x, rect.width, other.x, other.width);
      const along = gap(rect.y, rect.height, other.y, other.height);
      if (across > side + wide + most || along > top + bottom + foot || (across < 0 && along < 0)) continue;
      // The side on which they are further apart is the one that parts them.
      if (along >= across) {
        const isAbove = other.y < rect.y;
        const share = top / (top + bottom);
        if (isAbove) up = Math.min(up, room(along) * share);
        else down = Math.min(down, room(along) * (1 - share));
      } else if (other.x < rect.x) left = Math.min(left, room(across) / 2);
      else right = Math.min(right, room(across) / 2);
    }
    if (up >= named) down = Math.min(down, bottom);
    const name = up >= named ? "top" : down >= bottom + foot ? "bottom" : undefined;
    return {
      room: cluster.room,
      name,
      top: up,
      rect: { x: rect.x - left, y: rect.y - up, width: rect.width + left + right, height: rect.height + up + down },
    };
  });
}

/** An upright stretch of a cable. */
export interface Upright {
  readonly x: number;
  /** Of a level leg, where it ends. */
  readonly until?: number;
  readonly from: number;
  readonly to: number;
}

/**
 * Where a name begins, in a band at the top of an area, so that no cable runs over it: as far to the left as there is
 * room; undefined where there is none.
 * @param half Half of the width of a cable.
 */
export function nameLeft(band: Rect, long: number, uprights: readonly Upright[], half: number): number | undefined {
  const crossing = uprights
    .filter(
      ({ x, until = x, from, to }) =>
        until + half > band.x && x - half < band.x + band.width && from < band.y + band.height && to > band.y,
    )
    .sort((a, b) => a.x - b.x);
  let left = band.x;
  for (const { x, until = x } of crossing) {
    if (x - half >= left + long) break;
    left = Math.max(left, until + half);
  }
  return left + long <= band.x + band.width ? left : undefined;
}
