import { expect, test } from "vitest";
import { deviceTypes } from "../../../shared-model/catalog/device-types.ts";
import { enclosureItems } from "../../../shared-model/catalog/enclosure-items.ts";
import { findSymbol, symbolOf } from "../../../shared-model/geometry/symbols/find-symbol.ts";
import { wordStrokes } from "../../../shared-model/geometry/symbols/letter-strokes.ts";
import {
  PORT_GRID,
  SET_WORDS,
  SYMBOL_BASIS,
  SYMBOL_KINDS,
  SYMBOL_SIZE,
  SYMBOL_STROKE,
} from "../../../shared-model/geometry/symbols/plan-symbol.ts";
import { symbolLines, symbolPaths } from "../../../shared-model/geometry/symbols/symbol-lines.ts";
import { SYMBOL_SETS } from "../../../shared-model/model/symbol-set.ts";
import { distance, scan, whitePieces } from "./scan.ts";

/** 6 mm at 300 dots an inch, a common printer: 6 / 25.4 * 300. */
const DOTS = 71;
/** The same at three times the dots: what a printer without limits would set. */
const FINE = DOTS * 3;

const all = SYMBOL_SETS.flatMap((set) => SYMBOL_KINDS.map((kind) => ({ set, symbol: findSymbol(set, kind) })));

test("every device of the catalogue, the panel and the bare box have a symbol in both sets", () => {
  for (const { id, glyph } of deviceTypes) expect(symbolOf({ type: id, glyph }), id).toBeDefined();
  const used = new Set(deviceTypes.map(({ id, glyph }) => symbolOf({ type: id, glyph })));
  // None is kept that nothing asks for.
  for (const kind of SYMBOL_KINDS) if (kind !== "panel" && kind !== "junction") expect(used, kind).toContain(kind);
  expect(enclosureItems.some(({ glyph }) => glyph === "panel")).toBe(true);
  expect(all.length).toBe(2 * SYMBOL_KINDS.length);
});

test("a type that the catalogue does not know has no symbol, and is not drawn as something else", () => {
  expect(symbolOf({ type: "unheard-of", glyph: "unheard-of" })).toBeUndefined();
});

test("each symbol has an id, a name of its own in its set, lines inside its square, and ports on the grid", () => {
  for (const set of SYMBOL_SETS) {
    const names = SYMBOL_KINDS.map((kind) => findSymbol(set, kind).name);
    expect(new Set(names).size).toBe(names.length);
  }
  for (const { set, symbol } of all) {
    const coordinates = symbolLines(symbol).flatMap(({ points }) => points);
    expect(coordinates.length, `${set} ${symbol.id}`).toBeGreaterThan(3);
    for (const at of coordinates) {
      expect(at, `${set} ${symbol.id}`).toBeGreaterThanOrEqual(0);
      expect(at, `${set} ${symbol.id}`).toBeLessThanOrEqual(SYMBOL_SIZE);
    }
    expect(symbol.ports.length).toBeGreaterThan(0);
    for (const { x, y } of symbol.ports) expect([x % PORT_GRID, y % PORT_GRID]).toEqual([0, 0]);
    const { strokes, areas } = symbolPaths(symbol);
    expect(`${strokes}${areas}`).toMatch(/^M[\d.ML Z]+$/);
  }
});

test("both sets say what they are drawn after, from where, and that nobody has verified them", () => {
  for (const set of SYMBOL_SETS) {
    expect(SET_WORDS[set].after).toContain(SYMBOL_BASIS);
    expect(SET_WORDS[set].after).toContain("from memory");
  }
});

test("in one ink, 6 mm wide, no two symbols of a set are within 2 % of each other's dots", () => {
  for (const set of SYMBOL_SETS) {
    const scans = SYMBOL_KINDS.map((kind) => ({ kind, dots: scan(findSymbol(set, kind), DOTS) }));
    for (const [i, a] of scans.entries())
      for (const b of scans.slice(i + 1))
        expect(distance(a.dots, b.dots), `${set}: ${a.kind} and ${b.kind}`).toBeGreaterThan(0.02);
  }
});

test("in one ink, 6 mm wide, no ring and no letter runs shut and no gap is lost", () => {
  for (const { set, symbol } of all) {
    const coarse = scan(symbol, DOTS);
    expect(whitePieces(coarse, DOTS), `${set} ${symbol.id}`).toBe(whitePieces(scan(symbol, FINE), FINE));
    const black = coarse.reduce((sum, dot) => sum + dot, 0) / coarse.length;
    expect(black, `${set} ${symbol.id}`).toBeGreaterThan(0.04);
    expect(black, `${set} ${symbol.id}`).toBeLessThan(0.5);
  }
});

test("lines are thick enough and letters high enough to be read at 6 mm", () => {
  const millimetre = SYMBOL_SIZE / 6;
  // ISO 3098-1: lettering of technical drawings from 1.8 mm up is nominal; letters of symbols may be smaller. From memory.
  expect(SYMBOL_STROKE / millimetre).toBeGreaterThanOrEqual(0.25);
  for (const { set, symbol } of all)
    for (const part of symbol.parts)
      if ("word" in part) expect(part.high / millimetre, `${set} ${symbol.id}`).toBeGreaterThanOrEqual(1.5);
});

test("a letter without strokes is an error that names it", () => {
  expect(() => wordStrokes("Z", 0, 0, 6)).toThrow("No strokes for the letter Z.");
});
