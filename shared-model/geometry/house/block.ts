import type { EnclosureId } from "../../model/ids.ts";
import type { Point } from "../../model/project.ts";
import type { Rect } from "../box-drawing.ts";
import type { Sizes } from "../circuit/grow.ts";
import type { Places } from "../circuit/settle.ts";
import { onPitch } from "../circuit/tree.ts";
import { hull } from "../free-group-place.ts";

/** Boxes that keep their places to each other, and the rectangle around everything drawn of them. */
export interface Block {
  readonly places: Places;
  readonly area: Rect;
}

export const blockOf = (places: Places, sizeOf: Sizes): Block => ({
  places,
  area: hull([...places].map(([id, at]) => standing(sizeOf(id), at))),
});

/** What is drawn of a box, where it stands. */
export const standing = (rect: Rect, { x, y }: Point): Rect => ({ ...rect, x: rect.x + x, y: rect.y + y });

/** A block elsewhere, on the pitch of the drawing. */
export function moved({ places, area }: Block, dx: number, dy: number): Block {
  const [x, y] = [onPitch(dx), onPitch(dy)];
  return {
    places: new Map([...places].map(([id, at]) => [id, { x: at.x + x, y: at.y + y }])),
    area: { ...area, x: area.x + x, y: area.y + y },
  };
}

/** A block with its upper left corner at a point. */
export const movedTo = (block: Block, { x, y }: Point): Block => moved(block, x - block.area.x, y - block.area.y);

/** Several blocks as one. */
export function joined(blocks: readonly Block[]): Block {
  const places = new Map<EnclosureId, Point>();
  for (const block of blocks) for (const [id, at] of block.places) places.set(id, at);
  return { places, area: hull(blocks.map(({ area }) => area)) };
}

/** A block the other way round: what stood to the right of a box stands to its left. */
export function mirrored({ places, area }: Block, sizeOf: Sizes): Block {
  const turn = new Map(
    [...places].map(([id, { x, y }]) => {
      const rect = sizeOf(id);
      const left = 2 * area.x + area.width - (x + rect.x) - rect.width;
      return [id, { x: onPitch(left - rect.x), y }];
    }),
  );
  return blockOf(turn, sizeOf);
}
