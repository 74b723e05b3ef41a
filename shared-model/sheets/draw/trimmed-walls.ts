import type { BoxDrawing, Rect } from "../../geometry/box-drawing.ts";
import { PITCH } from "../../geometry/metrics.ts";

/** Between what is in a box and its upper or lower wall, drawing units. */
const CLEAR = 2 * PITCH;

/**
 * The inside of a box without the empty rows above and below what is in it: paper is dear, and the room is kept on the
 * screen for what will come. Walls through which a cable comes stay where they are.
 */
export function trimmedInside(drawing: BoxDrawing): Rect {
  const { width, height, sheaths, rings, kind } = drawing;
  const ys = [
    ...drawing.conductors.flatMap(({ points, plates }) => [...points, ...plates.map(({ at }) => at)].map(({ y }) => y)),
    ...drawing.splices.flatMap(({ labelAt, rows }) => [labelAt.y - 12, ...rows.map(({ y }) => y + 11)]),
    ...drawing.devices.flatMap(({ labelAt, body }) => [labelAt.y - 12, body.y, body.y + body.height + 12]),
    ...drawing.caps.map(({ at }) => at.y),
    ...(drawing.bond === undefined
      ? []
      : [drawing.bond.at.y - 10, drawing.bond.at.y + 26, drawing.bond.labelAt.y + 15]),
    ...sheaths.flatMap(({ at, wall }) => (wall === "left" || wall === "right" ? [at.y - PITCH, at.y + PITCH] : [])),
  ];
  const isFree = (wall: "top" | "bottom"): boolean => kind === "box" && sheaths.every((sheath) => sheath.wall !== wall);
  if (ys.length === 0) return { x: 0, y: 0, width, height };
  const top = isFree("top") ? Math.max(0, Math.min(...ys) - CLEAR) : 0;
  const bottom = isFree("bottom") && rings.length === 0 ? Math.min(height, Math.max(...ys) + CLEAR) : height;
  return { x: 0, y: top, width, height: bottom - top };
}
