import type { CapacityRow, Connector } from "../catalog/connectors.ts";
import type { EndFacts } from "../queries/end-facts.ts";
import { compareWireSize, type WireSize } from "../units/wire-size.ts";
import { listed } from "./rule-parts.ts";

export type Member = Pick<EndFacts, "awg" | "material" | "stranded" | "grounding">;

/** Whether a connector's table takes exactly these conductors: each size within its range, no other size, right material. */
export function takes(connector: Connector, members: readonly Member[]): boolean {
  if (connector.groundsOnly && members.some(({ grounding }) => !grounding)) return false;
  if (members.some(({ material }) => !connector.materials.includes(material))) return false;
  const { capacity } = connector;
  switch (capacity.kind) {
    case "table":
      return capacity.rows.some((row) => holds(row, countBySize(members)));
    case "ports":
      return (
        members.length <= capacity.ports &&
        members.every(
          ({ awg, stranded }) =>
            compareWireSize(awg, capacity.thinnest) >= 0 &&
            compareWireSize(awg, capacity.thickest) <= 0 &&
            !(capacity.solidOnly && stranded),
        )
      );
    case "al-cu": {
      const aluminium = members.filter(({ material }) => material !== "copper").length;
      return within(aluminium, capacity.aluminium) && within(members.length - aluminium, capacity.copper);
    }
  }
}

const within = (count: number, [least, most]: readonly [number, number]): boolean => count >= least && count <= most;

function holds(row: CapacityRow, counts: ReadonlyMap<WireSize, number>): boolean {
  const sizes = sizesOf(row);
  return sizes.length === counts.size && sizes.every((size) => within(counts.get(size) ?? 0, row[size] ?? [0, 0]));
}

function countBySize(members: readonly Member[]): ReadonlyMap<WireSize, number> {
  const counts = new Map<WireSize, number>();
  for (const { awg } of members) counts.set(awg, (counts.get(awg) ?? 0) + 1);
  return counts;
}

/** The conductors in words, thickest first: "6 × 12", "2 × 12 and 1 × 14 aluminium". */
export function describeMembers(members: readonly Member[]): string {
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
export function describeCapacity({ capacity, groundsOnly, materials }: Connector, members: readonly Member[]): string {
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
