import { findConnector } from "../../catalog/connectors.ts";
import type { Box } from "../../model/enclosure.ts";
import type { EndKey, SpliceId } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import { getEndFacts } from "../../queries/end-facts.ts";
import { thickestOf, type WireSize } from "../../units/wire-size.ts";
import type { BoxContents } from "./box-contents.ts";

/** Crimped grounds stay bare. */
const BARE: ReadonlySet<string> = new Set(["crimp-ground"]);

/**
 * The insulated connectors in a box, each by the largest conductor under it. A connector of unknown kind counts, and so
 * does one on a single capped end: it takes the same room.
 */
export function connectorsIn(installation: Installation, box: Box): NonNullable<BoxContents["connectors"]> {
  const members = new Map<SpliceId, WireSize[]>();
  const found: { awg: WireSize; count: number }[] = [];
  for (const [end, { at }] of Object.entries(box.places)) {
    if (at.kind !== "splice" && at.kind !== "capped") continue;
    const { awg } = getEndFacts(installation, box, end as EndKey);
    if (at.kind === "capped") {
      found.push({ awg, count: 1 });
      continue;
    }
    const sizes = members.get(at.splice);
    if (sizes === undefined) members.set(at.splice, [awg]);
    else sizes.push(awg);
  }
  for (const [id, sizes] of members) {
    const awg = thickestOf(sizes);
    const connector = box.splices[id]?.connector;
    if (awg !== undefined && connector !== undefined && isInsulated(connector)) found.push({ awg, count: 1 });
  }
  return found;
}

const isInsulated = (connector: string): boolean =>
  connector === "unknown" || (findConnector(connector) !== undefined && !BARE.has(connector));
