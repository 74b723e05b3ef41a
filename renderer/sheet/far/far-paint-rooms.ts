import type { RoomSign } from "../room-signs.ts";
import type { Ground } from "./far-paint.ts";

const WEIGHT = 520;
/** Letterspaced capitals, of the size of the letters. */
const TRACK = 0.09;
/** In pixels: smaller letters are not read. */
const LEAST = 8;

/** Paints the areas of rooms and their names. */
export function paintRooms({ context, x, y, zoom, dots, ink }: Ground, rooms: readonly RoomSign[]): void {
  context.setTransform(1, 0, 0, 1, 0, 0);
  const line = Math.max(1, Math.round(dots));
  for (const { rect } of rooms) {
    const left = Math.round((rect.x * zoom + x) * dots);
    const top = Math.round((rect.y * zoom + y) * dots);
    const wide = Math.round(rect.width * zoom * dots);
    const high = Math.round(rect.height * zoom * dots);
    context.fillStyle = ink.roomEdge;
    context.fillRect(left, top, wide, high);
    context.fillStyle = ink.room;
    context.clearRect(left + line, top + line, wide - 2 * line, high - 2 * line);
    context.fillRect(left + line, top + line, wide - 2 * line, high - 2 * line);
  }
  context.fillStyle = ink.faint;
  context.textAlign = "left";
  for (const { name, x: from, line: base, size } of rooms) {
    if (name === "" || size * zoom < LEAST) continue;
    context.font = `${WEIGHT} ${size * zoom * dots}px ${ink.face}`;
    context.letterSpacing = `${TRACK * size * zoom * dots}px`;
    context.fillText(name, (from * zoom + x) * dots, Math.round((base * zoom + y) * dots));
  }
  context.letterSpacing = "0px";
}
