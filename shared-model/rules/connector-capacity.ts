import type { CapacityRow, Connector } from "../catalog/connectors.ts";
import type { SpliceMember } from "../queries/connector-takes.ts";
import { compareWireSize, type WireSize } from "../units/wire-size.ts";
import { listed } from "./rule-parts.ts";

/** The conductors in words, thickest first: "6 × 12", "2 × 12 and 1 × 14 aluminium". */
export function describeMembers(members: readonly SpliceMember[]): string {
  const counts = new Map<string, { readonly awg: WireSize; readonly words: string; count: number }>();
  for (const { awg, material, stranded } of members) {
    const words = `${awg}${material === "copper" ? "" : ` ${material.replaceAll("-", " ")}`}${stranded ? " stranded" : ""}`;
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
  const only = members.some(({ material }) => !materials.includes(material)) ? ` ${listed(materials)} only` : "";
  const grounds = groundsOnly ? ", grounds only" : "";
  switch (capacity.kind) {
    case "table": {
      const sizes = new Set(members.map(({ awg }) => awg));
      const own = capacity.rows.filter(
        (row) => sizesOf(row).length === sizes.size && sizesOf(row).every((s) => sizes.has(s)),
      );
      return `${(own.length > 0 ? own : capacity.rows).map(describeRow).join(", or ")}${only}${grounds}`;
    }
    case "ports":
      return `up to ${capacity.ports}, one a port, ${capacity.thinnest} to ${capacity.thickest}${capacity.solidOnly ? " solid" : ""}${only}`;
    case "al-cu":
      return `${range(capacity.aluminium)} aluminium with ${range(capacity.copper)} copper`;
  }
}

const sizesOf = (row: CapacityRow): WireSize[] => Object.keys(row) as WireSize[];

const describeRow = (row: CapacityRow): string =>
  sizesOf(row)
    .sort((a, b) => compareWireSize(b, a))
    .map((size) => `${range(row[size] ?? [0, 0])} × ${size}`)
    .join(" with ");

const range = ([least, most]: readonly [number, number]): string =>
  least === most ? `${least}` : `${least} to ${most}`;
