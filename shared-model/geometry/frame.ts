import type { EnclosureId } from "../model/ids.ts";
import type { StandingBox } from "./arrange.ts";
import type { Rect } from "./box-drawing.ts";

/** What a frame drawn around boxes means: boxes that it touches, or only those that are wholly in it. */
export type FrameReach = "touched" | "within";

/** Whether the boxes in the frame join what is selected, or leave it. */
export type FrameWay = "add" | "take-out";

/** The rectangle between two corners, whichever way it was drawn. */
export const frameBetween = (a: { readonly x: number; readonly y: number }, b: typeof a): Rect => ({
  x: Math.min(a.x, b.x),
  y: Math.min(a.y, b.y),
  width: Math.abs(b.x - a.x),
  height: Math.abs(b.y - a.y),
});

/** Boxes in a frame, in the order in which they were given. */
export function boxesInFrame(frame: Rect, boxes: readonly StandingBox[], reach: FrameReach): readonly EnclosureId[] {
  const right = frame.x + frame.width;
  const bottom = frame.y + frame.height;
  return boxes.flatMap(({ id, rect: { x, y, width, height } }) => {
    const isIn =
      reach === "within"
        ? x >= frame.x && y >= frame.y && x + width <= right && y + height <= bottom
        : x < right && frame.x < x + width && y < bottom && frame.y < y + height;
    return isIn ? [id] : [];
  });
}

/** What is selected after a frame: those that were first, in their order, then those that joined. */
export function afterFrame(
  before: readonly EnclosureId[],
  framed: readonly EnclosureId[],
  way: FrameWay,
): readonly EnclosureId[] {
  if (way === "add") return [...new Set([...before, ...framed])];
  const leaving = new Set(framed);
  return before.filter((id) => !leaving.has(id));
}
