import type { EnclosureId } from "../../../shared-model/model/ids.ts";
import type { Point } from "../../../shared-model/model/project.ts";
import type { FarItem } from "./far-scene.ts";

/** Side of what takes a press, in pixels, however small the box is drawn. */
const LEAST = 24;

/** The painted box at a point of the sheet, else the nearest so close that it is meant. @param zoom Pixels of a drawing unit. */
export function boxUnder(items: readonly FarItem[], { x, y }: Point, zoom: number): EnclosureId | undefined {
  let best: EnclosureId | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const { id, rect } of items) {
    const slackX = Math.max(0, (LEAST / zoom - rect.width) / 2);
    const slackY = Math.max(0, (LEAST / zoom - rect.height) / 2);
    const outX = Math.max(rect.x - x, x - rect.x - rect.width, 0);
    const outY = Math.max(rect.y - y, y - rect.y - rect.height, 0);
    if (outX > slackX || outY > slackY) continue;
    const away = Math.hypot(outX, outY);
    // The later of two that lie over each other is painted over the other.
    if (away <= least) [best, least] = [id, away];
  }
  return best;
}
