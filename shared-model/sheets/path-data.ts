import type { Rect } from "../geometry/box-drawing.ts";

const COUNTS: Readonly<Record<string, number>> = { M: 2, L: 2, H: 1, V: 1, C: 6, S: 4, Q: 4, T: 2, A: 7, Z: 0 };

/** One step of a path: its letter as written, with as many numbers as it takes. */
export interface PathStep {
  readonly letter: string;
  readonly numbers: readonly number[];
}

/** Reads path data. Throws on anything that is no path: what is written into a file must be known to be one. */
export function readPath(d: string): readonly PathStep[] {
  const tokens = d.match(/[a-zA-Z]|-?(?:\d+\.?\d*|\.\d+)(?:e-?\d+)?|[^\s,]/g) ?? [];
  const steps: PathStep[] = [];
  for (let i = 0; i < tokens.length; ) {
    const letter = tokens[i] ?? "";
    const count = COUNTS[letter.toUpperCase()];
    if (count === undefined) throw new Error(`Not a path: ${d.slice(0, 80)}`);
    i += 1;
    let first = true;
    do {
      const numbers = tokens.slice(i, i + count).map(Number);
      if (numbers.length < count || numbers.some((number) => !Number.isFinite(number)))
        throw new Error(`Not a path: ${d.slice(0, 80)}`);
      // Further pairs after a moveto are lines.
      const again = letter === "M" ? "L" : letter === "m" ? "l" : letter;
      steps.push({ letter: first ? letter : again, numbers });
      first = false;
      i += count;
    } while (count > 0 && i < tokens.length && !/^[a-zA-Z]$/.test(tokens[i] ?? ""));
  }
  return steps;
}

/** A box that holds the whole path: control points count as points, an arc by its radii. */
export function pathBounds(d: string): Rect {
  let [x, y, startX, startY] = [0, 0, 0, 0];
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  const take = (px: number, py: number, grow = 0): void => {
    left = Math.min(left, px - grow);
    top = Math.min(top, py - grow);
    right = Math.max(right, px + grow);
    bottom = Math.max(bottom, py + grow);
  };
  for (const { letter, numbers } of readPath(d)) {
    const isRelative = letter !== letter.toUpperCase();
    const [dx, dy] = isRelative ? [x, y] : [0, 0];
    const at = (i: number): number => numbers[i] ?? 0;
    switch (letter.toUpperCase()) {
      case "Z":
        [x, y] = [startX, startY];
        continue;
      case "H":
        x = dx + at(0);
        break;
      case "V":
        y = dy + at(0);
        break;
      case "A": {
        const [toX, toY] = [dx + at(5), dy + at(6)];
        arcBounds({ x, y }, { x: toX, y: toY }, at(0), at(3) === 1, at(4) === 1, take);
        [x, y] = [toX, toY];
        break;
      }
      default:
        for (let i = 0; i + 1 < numbers.length - 2; i += 2) take(dx + at(i), dy + at(i + 1));
        [x, y] = [dx + at(numbers.length - 2), dy + at(numbers.length - 1)];
        if (letter.toUpperCase() === "M") [startX, startY] = [x, y];
    }
    take(x, y);
  }
  if (left > right) return { x: 0, y: 0, width: 0, height: 0 };
  return { x: left, y: top, width: right - left, height: bottom - top };
}

/** Where a circular arc reaches: its ends, and those of the four outermost points of its circle that lie on it. */
function arcBounds(
  from: { readonly x: number; readonly y: number },
  to: { readonly x: number; readonly y: number },
  radius: number,
  isLarge: boolean,
  isClockwise: boolean,
  take: (x: number, y: number) => void,
): void {
  const [mx, my] = [(from.x + to.x) / 2, (from.y + to.y) / 2];
  const half = Math.hypot(to.x - from.x, to.y - from.y) / 2;
  if (half === 0) return;
  const r = Math.max(radius, half);
  const rise = Math.sqrt(Math.max(0, r * r - half * half));
  const side = isLarge === isClockwise ? -1 : 1;
  const cx = mx + (side * rise * -(to.y - from.y)) / (2 * half);
  const cy = my + (side * rise * (to.x - from.x)) / (2 * half);
  const start = Math.atan2(from.y - cy, from.x - cx);
  const end = Math.atan2(to.y - cy, to.x - cx);
  const turn = (angle: number): number => ((angle % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
  const sweep = isClockwise ? turn(end - start) : turn(start - end);
  for (let quarter = 0; quarter < 4; quarter += 1) {
    const angle = (quarter * Math.PI) / 2;
    const on = isClockwise ? turn(angle - start) : turn(start - angle);
    if (on <= sweep) take(cx + r * Math.cos(angle), cy + r * Math.sin(angle));
  }
}
