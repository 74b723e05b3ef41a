import type { CapacityRow, Connector } from "../catalog/connectors.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { SpliceMember } from "../queries/connector-takes.ts";
import { compareWireSize, type WireSize } from "../units/wire-size.ts";
import { listed } from "./rule-parts.ts";

const wording = catalogue({
  aluminiumWithCopper: (aluminium: Part, copper: Part) => `${aluminium} aluminium with ${copper} copper`,
  range: (least: Part, most: Part) => `${least} to ${most}`,
  aluminium: "aluminium",
  copper: "copper",
  copperCladAluminium: "copper clad aluminium",
  groundsOnly: (capacity: Part) => `${capacity}, grounds only`,
  only: (capacity: Part, materials: Part) => `${capacity} ${materials} only`,
  or: ", or ",
  ports: (ports: Part, thinnest: Part, thickest: Part) => `up to ${ports}, one a port, ${thinnest} to ${thickest}`,
  solidPorts: (ports: Part, thinnest: Part, thickest: Part) =>
    `up to ${ports}, one a port, ${thinnest} to ${thickest} solid`,
  stranded: "stranded",
  with: " with ",
});

const MATERIALS: Readonly<Record<SpliceMember["material"], string>> = {
  copper: wording.copper,
  aluminium: wording.aluminium,
  "copper-clad-aluminium": wording.copperCladAluminium,
};

/** The conductors in words, thickest first: "6 × 12", "2 × 12 and 1 × 14 aluminium". */
export function describeMembers(members: readonly SpliceMember[]): string {
  const counts = new Map<string, { readonly awg: WireSize; readonly words: string; count: number }>();
  for (const { awg, material, stranded } of members) {
    const words = [
      awg,
      ...(material === "copper" ? [] : [MATERIALS[material]]),
      ...(stranded ? [wording.stranded] : []),
    ].join(" ");
    const entry = counts.get(words) ?? { awg, words, count: 0 };
    entry.count += 1;
    counts.set(words, entry);
  }
  const groups = [...counts.values()].sort((a, b) => compareWireSize(b.awg, a.awg) || (a.words < b.words ? -1 : 1));
  return listed(groups.map(({ count, words }) => `${count} × ${words}`));
}

/**
 * A connector's table in words, as far as it bears on these conductors: its rows for their sizes, or all of them when none
 * is. "2 to 5 × 12", "3 to 6 × 14, or 2 to 5 × 12 copper".
 */
export function describeCapacity(
  { capacity, groundsOnly, materials }: Connector,
  members: readonly SpliceMember[],
): string {
  const isOther = members.some(({ material }) => !materials.includes(material));
  const withOnly = (words: string): string =>
    isOther ? wording.only(words, listed(materials.map((material) => MATERIALS[material]))) : words;
  switch (capacity.kind) {
    case "table": {
      const sizes = new Set(members.map(({ awg }) => awg));
      const own = capacity.rows.filter(
        (row) => sizesOf(row).length === sizes.size && sizesOf(row).every((s) => sizes.has(s)),
      );
      const words = withOnly((own.length > 0 ? own : capacity.rows).map(describeRow).join(wording.or));
      return groundsOnly ? wording.groundsOnly(words) : words;
    }
    case "ports":
      return withOnly(
        (capacity.solidOnly ? wording.solidPorts : wording.ports)(capacity.ports, capacity.thinnest, capacity.thickest),
      );
    case "al-cu":
      return wording.aluminiumWithCopper(range(capacity.aluminium), range(capacity.copper));
  }
}

const sizesOf = (row: CapacityRow): WireSize[] => Object.keys(row) as WireSize[];

const describeRow = (row: CapacityRow): string =>
  sizesOf(row)
    .sort((a, b) => compareWireSize(b, a))
    .map((size) => `${range(row[size] ?? [0, 0])} × ${size}`)
    .join(wording.with);

const range = ([least, most]: readonly [number, number]): string =>
  least === most ? `${least}` : wording.range(least, most);
