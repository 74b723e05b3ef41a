import type { CapacityRow, Connector } from "../catalog/connectors.ts";
import { compareWireSize, type WireSize } from "../units/wire-size.ts";
import type { EndFacts } from "./end-facts.ts";

/** What a connector's table asks of a conductor in it. */
export type SpliceMember = Pick<EndFacts, "awg" | "material" | "stranded" | "grounding">;

/** Whether a connector's table takes exactly these conductors: each size within its range, no other size, right material. */
export function takes(connector: Connector, members: readonly SpliceMember[]): boolean {
  if (connector.groundsOnly && members.some(({ grounding }) => !grounding)) return false;
  if (members.some(({ material }) => !connector.materials.includes(material))) return false;
  const { capacity } = connector;
  switch (capacity.kind) {
    case "table":
      return holdsOne(capacity.rows, members);
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

function holdsOne(rows: readonly CapacityRow[], members: readonly SpliceMember[]): boolean {
  const counts = countBySize(members);
  return rows.some((row) => holds(row, counts));
}

function holds(row: CapacityRow, counts: ReadonlyMap<WireSize, number>): boolean {
  const sizes = Object.keys(row) as WireSize[];
  return sizes.length === counts.size && sizes.every((size) => within(counts.get(size) ?? 0, row[size] ?? [0, 0]));
}

function countBySize(members: readonly SpliceMember[]): ReadonlyMap<WireSize, number> {
  const counts = new Map<WireSize, number>();
  for (const { awg } of members) counts.set(awg, (counts.get(awg) ?? 0) + 1);
  return counts;
}
