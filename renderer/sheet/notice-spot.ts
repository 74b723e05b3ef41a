import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
import { common } from "./legend-place.ts";

interface Size {
  readonly width: number;
  readonly height: number;
}

/** Something in the way of a notice, and how much it matters that it stays seen and pressed. */
export interface InTheWay {
  readonly area: Rect;
  readonly weight: number;
}

export const NOTICE_SIDES = ["center", "flex-start", "flex-end"] as const;

export interface NoticeSpot {
  readonly side: (typeof NOTICE_SIDES)[number];
  /** Pixels from the top of the part of the window that the sheet has. */
  readonly top: number;
}

/** Pixels between notice and edge: at the head inside the frame of the sheet, at the foot over it, at the sides as its style has it. */
export const NOTICE_EDGE = { head: 30, foot: 10, side: 32 } as const;
/** Pixels from one height to the next that is tried. */
export const NOTICE_STEP = 8;
/** What it costs to stand this far from the head, where people look for it: less than to cover anything. */
const COST_OF_A_PIXEL = 0.0005;
const COST_OF_A_SIDE = 0.02;
/** Around what is not to be touched. */
const CLEAR = 4;

/** Where a notice lies at a spot, in pixels from the corner of the view. */
export function noticeArea({ side, top }: NoticeSpot, { width, height }: Size, view: Size): Rect {
  const right = view.width - NOTICE_EDGE.side - width;
  const x = side === "flex-start" ? NOTICE_EDGE.side : side === "flex-end" ? right : (view.width - width) / 2;
  return { x, y: top, width, height };
}

/**
 * What a notice at a spot takes from sight and hands: of what is smaller than itself half of its weight once touched and
 * all of it when covered, of what is larger as much as it lies over it.
 */
export const costOf = (spot: NoticeSpot, notice: Size, view: Size, taken: readonly InTheWay[]): number => {
  const { x, y, width, height } = noticeArea(spot, notice, view);
  const place = { x: x - CLEAR, y: y - CLEAR, width: width + 2 * CLEAR, height: height + 2 * CLEAR };
  return taken.reduce((sum, { area, weight }) => {
    const shared = common(place, area);
    const size = area.width * area.height;
    const own = place.width * place.height;
    return shared === 0 ? sum : sum + weight * (size > own ? shared / own : 0.5 + shared / size / 2);
  }, 0);
};

/** The spot at which a notice takes least; of those alike the one nearest to the middle of the head. */
export function noticeSpot(notice: Size, view: Size, taken: readonly InTheWay[]): NoticeSpot {
  let best: NoticeSpot = { side: "center", top: NOTICE_EDGE.head };
  let least = Number.POSITIVE_INFINITY;
  for (let { head: top } = NOTICE_EDGE; top <= view.height - NOTICE_EDGE.foot - notice.height; top += NOTICE_STEP)
    for (const [at, side] of NOTICE_SIDES.entries()) {
      const spot = { side, top };
      const far = (top - NOTICE_EDGE.head) * COST_OF_A_PIXEL + (at === 0 ? 0 : COST_OF_A_SIDE);
      const cost = far + costOf(spot, notice, view, taken);
      if (cost < least) [best, least] = [spot, cost];
    }
  return best;
}
