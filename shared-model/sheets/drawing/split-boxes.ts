import type { Standing } from "./house-scene.ts";

/**
 * Boxes in groups that each fit a page: a group that does not is cut across its longer side at the widest gap near its
 * middle, until all fit or nothing is left to cut. In the order of reading.
 */
export function splitBoxes(
  boxes: readonly Standing[],
  fits: (boxes: readonly Standing[]) => boolean,
): readonly (readonly Standing[])[] {
  if (boxes.length < 2 || fits(boxes)) return [boxes];
  const cut = bestCut(boxes, "x", "width");
  const other = bestCut(boxes, "y", "height");
  const better = spread(boxes, "x", "width") >= spread(boxes, "y", "height") ? [cut, other] : [other, cut];
  const [first, second] = better.find((each) => each !== undefined) ?? halves(boxes);
  return [...splitBoxes(first, fits), ...splitBoxes(second, fits)];
}

type Halves = readonly [readonly Standing[], readonly Standing[]];
type Along = "x" | "y";
type Long = "width" | "height";

const spread = (boxes: readonly Standing[], along: Along, long: Long): number =>
  Math.max(...boxes.map(({ rect }) => rect[along] + rect[long])) - Math.min(...boxes.map(({ rect }) => rect[along]));

const halves = (boxes: readonly Standing[]): Halves => {
  const middle = Math.ceil(boxes.length / 2);
  return [boxes.slice(0, middle), boxes.slice(middle)];
};

/** Where no box stands across the cut: the gap that is widest for how far it lies from the middle. */
function bestCut(boxes: readonly Standing[], along: Along, long: Long): Halves | undefined {
  const sorted = [...boxes].sort((a, b) => a.rect[along] - b.rect[along]);
  const from = sorted[0]?.rect[along] ?? 0;
  const whole = spread(boxes, along, long);
  let reach = Number.NEGATIVE_INFINITY;
  let best: { readonly at: number; readonly worth: number } | undefined;
  for (const [i, { rect }] of sorted.entries()) {
    if (i > 0) {
      const gap = rect[along] - reach;
      const middle = ((rect[along] + reach) / 2 - from) / whole;
      const worth = gap * (1 - Math.abs(middle - 0.5) * 1.6);
      if (gap > 0 && (best === undefined || worth > best.worth)) best = { at: i, worth };
    }
    reach = Math.max(reach, rect[along] + rect[long]);
  }
  return best && [sorted.slice(0, best.at), sorted.slice(best.at)];
}
