import type { PlanSymbol } from "../../../shared-model/geometry/symbols/plan-symbol.ts";
import { SYMBOL_SIZE, SYMBOL_STROKE } from "../../../shared-model/geometry/symbols/plan-symbol.ts";
import { symbolLines } from "../../../shared-model/geometry/symbols/symbol-lines.ts";

/**
 * A symbol as a printer of one ink sets it: a dot is black when its middle lies within half a line of a stroke or in a
 * filled area. Dots in rows from the top, `side` a row.
 */
export function scan(symbol: PlanSymbol, side: number): Uint8Array {
  const dots = new Uint8Array(side * side);
  const unit = SYMBOL_SIZE / side;
  const blacken = (
    box: readonly [number, number, number, number],
    isBlack: (x: number, y: number) => boolean,
  ): void => {
    const [left, top, right, bottom] = box.map((at) => Math.max(0, Math.min(side - 1, Math.floor(at / unit))));
    for (let row = top ?? 0; row <= (bottom ?? 0); row++)
      for (let column = left ?? 0; column <= (right ?? 0); column++)
        if (isBlack((column + 0.5) * unit, (row + 0.5) * unit)) dots[row * side + column] = 1;
  };
  for (const { points, filled } of symbolLines(symbol)) {
    for (let i = 0; i + 3 < points.length; i += 2) {
      const [ax = 0, ay = 0, bx = 0, by = 0] = points.slice(i, i + 4);
      const box = [Math.min(ax, bx) - 1, Math.min(ay, by) - 1, Math.max(ax, bx) + 1, Math.max(ay, by) + 1] as const;
      blacken(box, (x, y) => isOn(ax, ay, bx, by, x, y));
    }
    if (filled) blacken([0, 0, SYMBOL_SIZE, SYMBOL_SIZE], (x, y) => isInside(points, x, y));
  }
  return dots;
}

function isOn(ax: number, ay: number, bx: number, by: number, x: number, y: number): boolean {
  const long = (bx - ax) ** 2 + (by - ay) ** 2;
  const share = long === 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / long));
  return Math.hypot(x - ax - share * (bx - ax), y - ay - share * (by - ay)) <= SYMBOL_STROKE / 2;
}

/** By the count of edges to the right. */
function isInside(points: readonly number[], x: number, y: number): boolean {
  let inside = false;
  const count = points.length / 2;
  for (let i = 0; i < count; i++) {
    const [ax = 0, ay = 0] = points.slice(2 * i, 2 * i + 2);
    const j = (i + 1) % count;
    const [bx = 0, by = 0] = points.slice(2 * j, 2 * j + 2);
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
  }
  return inside;
}

/** Share of the dots that are not the same. */
export function distance(a: Uint8Array, b: Uint8Array): number {
  let differing = 0;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) differing += 1;
  return differing / a.length;
}

/** Dots of white that nothing black parts from each other, in pieces: letters and rings that run shut lose some. */
export function whitePieces(dots: Uint8Array, side: number): number {
  const seen = new Uint8Array(dots.length);
  let pieces = 0;
  for (let start = 0; start < dots.length; start++) {
    if (dots[start] === 1 || seen[start] === 1) continue;
    pieces += 1;
    const stack = [start];
    seen[start] = 1;
    for (let at = stack.pop(); at !== undefined; at = stack.pop()) {
      const column = at % side;
      const beside = [at - side, at + side, ...(column > 0 ? [at - 1] : []), ...(column < side - 1 ? [at + 1] : [])];
      for (const next of beside) {
        if (next < 0 || next >= dots.length || dots[next] === 1 || seen[next] === 1) continue;
        seen[next] = 1;
        stack.push(next);
      }
    }
  }
  return pieces;
}
