import type { Point } from "../../model/project.ts";
import type { Rect } from "../box-drawing.ts";
import type { FlagSpot, ScopeSign } from "./scope-drawing.ts";
import { around, type Leg, legArea, overlaps } from "./taken-areas.ts";

/** Size of a flag with its halo of paper. */
export const FLAG = { width: 20, height: 18 } as const;
/** Between a flag and the end of its leg. */
const MARGIN = 12;
const SHARES = [0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9] as const;

/** A line that is to have a flag. */
export interface Flagged {
  readonly sign: ScopeSign;
  readonly legs: readonly Leg[];
}

/**
 * Where the flags of lines go: on a leg of their own line, over nothing that is read, at best where no other line comes
 * near. A line that has no such place goes without: how it is drawn says the same.
 * @param taken Areas where no flag may lie.
 * @param lines Every line of the box.
 */
export function flagSpots(
  wanted: readonly Flagged[],
  taken: readonly Rect[],
  lines: readonly Leg[],
): readonly FlagSpot[] {
  const given: Rect[] = [...taken];
  const stretches = lines.map((leg) => ({ leg, area: legArea(leg, 1) }));
  return wanted.flatMap(({ sign, legs }) => {
    const at = bestSpot(legs, given, stretches);
    if (at === undefined) return [];
    given.push(around(at, FLAG.width + 4, FLAG.height + 4));
    return [{ sign, at }];
  });
}

function bestSpot(
  legs: readonly Leg[],
  taken: readonly Rect[],
  lines: readonly { readonly leg: Leg; readonly area: Rect }[],
): Point | undefined {
  let best: { readonly at: Point; readonly cost: number } | undefined;
  for (const leg of legs) {
    const { from, to } = leg;
    const length = Math.abs(to.x - from.x) + Math.abs(to.y - from.y);
    const upright = from.x === to.x;
    if (length < FLAG.width + MARGIN) continue;
    for (const share of SHARES) {
      const along = Math.max(MARGIN, Math.min(length - MARGIN, share * length)) / length;
      const at = { x: from.x + (to.x - from.x) * along, y: from.y + (to.y - from.y) * along };
      const area = around(at, FLAG.width, FLAG.height);
      if (taken.some((rect) => overlaps(rect, area))) continue;
      const near = lines.filter((line) => line.leg !== leg && overlaps(line.area, area)).length;
      const cost = 10 * near + Math.abs(share - 0.5) + (upright ? 0.6 : 0) - Math.min(length, 200) / 400;
      if (best === undefined || cost < best.cost) best = { at, cost };
    }
  }
  return best?.at;
}
