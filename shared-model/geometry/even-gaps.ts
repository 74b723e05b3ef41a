import type { Rect } from "./box-drawing.ts";

/** One of some gaps that are as wide as each other, drawn between the boxes beside it. */
export interface Gap {
  readonly axis: "x" | "y";
  /** Where it begins and ends on its axis. */
  readonly from: number;
  readonly to: number;
  /** Where it is drawn on the other axis. */
  readonly at: number;
}

/** Where a box would have to begin on an axis to leave even gaps, and the gaps that would be even then. */
export interface EvenPlace {
  readonly start: number;
  readonly gaps: readonly Gap[];
}

const startOf = (rect: Rect, axis: "x" | "y"): number => rect[axis];
const longOf = (rect: Rect, axis: "x" | "y"): number => (axis === "x" ? rect.width : rect.height);
const endOf = (rect: Rect, axis: "x" | "y"): number => startOf(rect, axis) + longOf(rect, axis);

/**
 * Places along an axis where a box stands in even steps with its neighbours: between two of them, or before or after two
 * of them by the gap that they have. Neighbours are boxes beside which it stands, next to each other.
 */
export function evenPlaces(moving: Rect, staying: readonly Rect[], axis: "x" | "y"): readonly EvenPlace[] {
  const other = axis === "x" ? "y" : "x";
  const row = staying
    .filter((rect) => startOf(rect, other) < endOf(moving, other) && startOf(moving, other) < endOf(rect, other))
    .sort((a, b) => startOf(a, axis) - startOf(b, axis));
  const long = longOf(moving, axis);
  const middle = startOf(moving, other) + longOf(moving, other) / 2;
  const gap = (from: number, to: number): Gap => ({ axis, from, to, at: middle });
  return row.flatMap((b, i): readonly EvenPlace[] => {
    const a = row[i - 1];
    if (a === undefined) return [];
    const [from, to] = [endOf(a, axis), startOf(b, axis)];
    const between = to - from;
    if (between <= 0) return [];
    const own = (between - long) / 2;
    const [before, after] = [startOf(a, axis), endOf(b, axis)];
    return [
      ...(own > 0 ? [{ start: from + own, gaps: [gap(from, from + own), gap(to - own, to)] }] : []),
      { start: after + between, gaps: [gap(from, to), gap(after, after + between)] },
      { start: before - between - long, gaps: [gap(before - between, before), gap(from, to)] },
    ];
  });
}
