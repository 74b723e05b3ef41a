import { type Connector, connectors } from "../../shared-model/catalog/connectors.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { EndKey } from "../../shared-model/model/ids.ts";
import type { Installation } from "../../shared-model/model/project.ts";
import { type EndFacts, getEndFacts } from "../../shared-model/queries/end-facts.ts";
import type { WireSize } from "../../shared-model/units/wire-size.ts";

/**
 * Connector that a new splice starts with: the first of the stock whose table names just these sizes. It is only a
 * first choice, shown and changeable at once; whether it holds is for the checks to say.
 */
export function usualConnector(installation: Installation, enclosure: Enclosure, ends: readonly EndKey[]): string {
  const facts = ends.map((end) => getEndFacts(installation, enclosure, end));
  return connectors.find((connector) => isUsual(connector, facts))?.id ?? "unknown";
}

function isUsual(connector: Connector, facts: readonly EndFacts[]): boolean {
  if (connector.groundsOnly === true || connector.capacity.kind !== "table") return false;
  if (facts.some(({ material }) => !connector.materials.includes(material))) return false;
  const counts = new Map<WireSize, number>();
  for (const { awg } of facts) counts.set(awg, (counts.get(awg) ?? 0) + 1);
  return connector.capacity.rows.some((row) => {
    const sizes = Object.entries(row) as [WireSize, readonly [number, number]][];
    return (
      sizes.length === counts.size &&
      sizes.every(([awg, [least, most]]) => {
        const count = counts.get(awg) ?? 0;
        return count >= least && count <= most;
      })
    );
  });
}
