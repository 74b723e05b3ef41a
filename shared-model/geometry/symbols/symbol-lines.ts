import { wordStrokes } from "./letter-strokes.ts";
import type { PlanSymbol, SymbolPart } from "./plan-symbol.ts";

/** One stroke or filled area of a symbol: x, y of each point, in its square. */
export interface SymbolLine {
  readonly points: readonly number[];
  readonly filled: boolean;
}

/** Degrees from one point of a curve to the next: at 30 mm still round. */
const TURN = 10;

const known = new WeakMap<PlanSymbol, readonly SymbolLine[]>();

/** A symbol as straight lines: what screen, pictures and paper draw and tests measure. */
export function symbolLines(symbol: PlanSymbol): readonly SymbolLine[] {
  const before = known.get(symbol);
  if (before !== undefined) return before;
  const lines = symbol.parts.flatMap(linesOf);
  known.set(symbol, lines);
  return lines;
}

function linesOf(part: SymbolPart): readonly SymbolLine[] {
  if ("line" in part) return [{ points: part.line, filled: part.filled === true }];
  if ("ring" in part) return [{ points: curve(...part.ring, 0, 360), filled: part.filled === true }];
  if ("arc" in part) return [{ points: curve(...part.arc), filled: false }];
  return wordStrokes(part.word, ...part.at, part.high).map((points) => ({ points, filled: false }));
}

function curve(x: number, y: number, radius: number, from: number, to: number): readonly number[] {
  const count = Math.max(1, Math.ceil((to - from) / TURN));
  return Array.from({ length: count + 1 }, (_, i) => {
    const angle = ((from + ((to - from) * i) / count) * Math.PI) / 180;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  }).flat();
}

const round = (value: number): number => Math.round(value * 100) / 100;

/** SVG path of all its strokes, and of its filled areas. */
export function symbolPaths(symbol: PlanSymbol): { readonly strokes: string; readonly areas: string } {
  let strokes = "";
  let areas = "";
  for (const { points, filled } of symbolLines(symbol)) {
    let path = "";
    for (let i = 0; i < points.length; i += 2)
      path += `${i === 0 ? "M" : "L"}${round(points[i] ?? 0)} ${round(points[i + 1] ?? 0)}`;
    if (filled) areas += `${path}Z`;
    else strokes += path;
  }
  return { strokes, areas };
}
