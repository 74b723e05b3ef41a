import { findDeviceType } from "../../catalog/device-types.ts";
import type { Installation } from "../../model/project.ts";
import type { SymbolSet } from "../../model/symbol-set.ts";
import { findSymbol, symbolOf } from "./find-symbol.ts";
import { type PlanSymbol, SYMBOL_KINDS, type SymbolKind } from "./plan-symbol.ts";

/** One line of a legend: a symbol that stands on the drawing, and how often. */
export interface LegendLine {
  readonly symbol: PlanSymbol;
  readonly count: number;
}

/**
 * What stands on the plan of an installation: of a panel the panel alone, of a box its devices, of a box without devices a
 * junction box.
 */
export function symbolsOn({ enclosures }: Installation): ReadonlyMap<SymbolKind, number> {
  const counts = new Map<SymbolKind, number>();
  const add = (kind: SymbolKind | undefined): void => {
    if (kind !== undefined) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  };
  for (const enclosure of Object.values(enclosures)) {
    const devices = Object.values(enclosure.devices);
    if (enclosure.kind === "panel") add("panel");
    else if (devices.length === 0) add("junction");
    else
      for (const { type } of devices) {
        const known = findDeviceType(type);
        add(known && symbolOf({ type, glyph: known.glyph }));
      }
  }
  return counts;
}

/** The legend of an installation in a set, in the order of the kinds: what is on the plan and nothing else. */
export function symbolLegend(installation: Installation, set: SymbolSet): readonly LegendLine[] {
  const counts = symbolsOn(installation);
  return SYMBOL_KINDS.flatMap((kind) => {
    const count = counts.get(kind);
    return count === undefined ? [] : [{ symbol: findSymbol(set, kind), count }];
  });
}
