import type { Point } from "../../../shared-model/model/project.ts";
import type { BoxItem } from "../box-items.ts";

/** Pixels around a conductor end in which a finger still takes it: half of the 44 that a finger is given elsewhere. */
export const FINGER = 22;

/**
 * What a finger means: ends of conductors are drawn nearer together than fingers are wide, so of those around it the
 * nearest; where it lies on something small itself, that.
 * @param at In drawing units of the box. @param pixel Drawing units of a pixel.
 */
export function nearGrip(
  hit: BoxItem | undefined,
  items: readonly BoxItem[],
  at: Point,
  pixel: number,
): BoxItem | undefined {
  if (hit !== undefined && hit.subject.kind !== "cable") return hit;
  let best = hit;
  let least = FINGER * pixel;
  for (const item of items) {
    if (item.subject.kind !== "end") continue;
    const away = Math.hypot(item.at.x - at.x, item.at.y - at.y);
    if (away < least) [best, least] = [item, away];
  }
  return best;
}
