import type { DeviceType } from "../../catalog/device-type.ts";
import type { Point } from "../../model/project.ts";
import type { SymbolSet } from "../../model/symbol-set.ts";
import { INTERNATIONAL_NAMES, INTERNATIONAL_SYMBOLS } from "./international-symbols.ts";
import { type PlanSymbol, SYMBOL_KINDS, SYMBOL_SIZE, type SymbolKind } from "./plan-symbol.ts";
import type { Drawn } from "./symbol-parts.ts";
import { US_NAMES, US_SYMBOLS } from "./us-symbols.ts";

const MIDDLE = SYMBOL_SIZE / 2;
/** Cables meet a symbol in the middle of its sides. */
const PORTS: readonly Point[] = [
  { x: 0, y: MIDDLE },
  { x: SYMBOL_SIZE, y: MIDDLE },
  { x: MIDDLE, y: 0 },
  { x: MIDDLE, y: SYMBOL_SIZE },
];

const setOf = (names: Readonly<Record<SymbolKind, string>>, drawn: Drawn): ReadonlyMap<SymbolKind, PlanSymbol> =>
  new Map(SYMBOL_KINDS.map((id) => [id, { id, name: names[id], parts: drawn[id], ports: PORTS }]));

const SETS: Readonly<Record<SymbolSet, ReadonlyMap<SymbolKind, PlanSymbol>>> = {
  us: setOf(US_NAMES, US_SYMBOLS),
  international: setOf(INTERNATIONAL_NAMES, INTERNATIONAL_SYMBOLS),
};

export function findSymbol(set: SymbolSet, kind: SymbolKind): PlanSymbol {
  const symbol = SETS[set].get(kind);
  if (symbol === undefined) throw new Error(`The ${set} set has no symbol for ${kind}.`);
  return symbol;
}

/** Types that say more than their glyph does. */
const OF_TYPE: Readonly<Record<string, SymbolKind>> = {
  "afci-receptacle-15": "afci-receptacle",
  "switch-double-pole": "switch-double-pole",
  "switch-two": "switch-two",
  "switch-receptacle": "receptacle-switch",
  "disconnect-fused": "disconnect",
  "breaker-gfci-1": "breaker-gfci",
  "breaker-gfci-2": "breaker-gfci",
  "breaker-afci-1": "breaker-afci",
  "breaker-dual-1": "breaker-dual",
  "breaker-dual-2": "breaker-dual",
  "neutral-bar": "neutral-bar",
  "ground-bar": "ground-bar",
  "main-lugs": "lugs",
};

const KINDS: ReadonlySet<string> = new Set(SYMBOL_KINDS);
const isKind = (text: string): text is SymbolKind => KINDS.has(text);

/** The symbol that stands for a device on a plan; undefined for a type that has none yet. */
export function symbolOf({
  type,
  glyph,
}: {
  readonly type: string;
  readonly glyph: DeviceType["glyph"];
}): SymbolKind | undefined {
  return OF_TYPE[type] ?? (isKind(glyph) ? glyph : undefined);
}
