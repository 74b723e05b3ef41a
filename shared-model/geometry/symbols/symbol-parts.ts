import type { SymbolKind, SymbolPart } from "./plan-symbol.ts";

/** Parts of each kind. */
export type Drawn = Readonly<Record<SymbolKind, readonly SymbolPart[]>>;

export const line = (...line: readonly number[]): SymbolPart => ({ line });
export const solid = (...line: readonly number[]): SymbolPart => ({ line, closed: true, filled: true });
export const ring = (x: number, y: number, radius: number): SymbolPart => ({ ring: [x, y, radius] });
export const disc = (x: number, y: number, radius: number): SymbolPart => ({ ring: [x, y, radius], filled: true });
export const arc = (x: number, y: number, radius: number, from: number, to: number): SymbolPart => ({
  arc: [x, y, radius, from, to],
});
export const word = (text: string, x: number, y: number, high: number): SymbolPart => ({
  word: text,
  at: [x, y],
  high,
});
