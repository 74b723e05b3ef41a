import type { Rect } from "../../../shared-model/geometry/box-drawing.ts";

const ROW = 600;
/** More room than this is not told: no name stands out so far, from however far it is seen. */
export const MOST_ROOM = 4000;

/**
 * How far from each box the next one stands beside it, on the nearer side, in their order; `MOST_ROOM` at most. Boxes that
 * lie over each other leave nothing.
 */
export function sideRooms(rects: readonly Rect[]): readonly number[] {
  const rooms: number[] = new Array(rects.length).fill(MOST_ROOM);
  const rows = new Map<number, number[]>();
  rects.forEach(({ y, height }, i) => {
    for (let row = Math.floor(y / ROW); row <= Math.floor((y + height) / ROW); row++) {
      const list = rows.get(row);
      if (list === undefined) rows.set(row, [i]);
      else list.push(i);
    }
  });
  for (const row of rows.values()) {
    row.sort((a, b) => (rects[a]?.x ?? 0) - (rects[b]?.x ?? 0));
    for (let at = 0; at < row.length; at++) {
      const left = rects[row[at] ?? 0];
      if (left === undefined) continue;
      for (let next = at + 1; next < row.length; next++) {
        const right = rects[row[next] ?? 0];
        const room = (right?.x ?? Number.POSITIVE_INFINITY) - left.x - left.width;
        if (right === undefined || room >= MOST_ROOM) break;
        if (right.y >= left.y + left.height || left.y >= right.y + right.height) continue;
        for (const i of [row[at] ?? 0, row[next] ?? 0]) rooms[i] = Math.min(rooms[i] ?? 0, Math.max(0, room));
      }
    }
  }
  return rooms;
}
