import type { Rect } from "../box-drawing.ts";

/**
 * What a printer leaves of a Letter sheet, 8-1/2 × 11 in, with margins of 3/8 in: common practice, since most printers
 * reach within 1/4 in. Tabloid, 11 × 17 in, is two of them side by side.
 */
const SHEETS = [
  { long: 10.25, short: 7.75 },
  { long: 16.25, short: 10.25 },
] as const;

/** Windows are wider than high: an upright sheet has to be worth turning it. */
const UPRIGHT = 0.8;

/** How large a drawing comes out on the sheets, level or upright, whichever is worth more: the mean of both, per unit. */
export const scaleOnPaper = ({ width, height }: Pick<Rect, "width" | "height">): number =>
  SHEETS.reduce(
    (sum, { long, short }) =>
      sum + Math.max(Math.min(long / width, short / height), UPRIGHT * Math.min(short / width, long / height)) / long,
    0,
  ) / SHEETS.length;
