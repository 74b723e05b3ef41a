import type { Draft } from "immer";
import { findConnector } from "../catalog/connectors.ts";
import type { EnclosureId, EndKey, SpliceId } from "../model/ids.ts";
import type { Installation } from "../model/project.ts";
import { takes } from "../queries/connector-takes.ts";
import { getEndFacts } from "../queries/end-facts.ts";
import { usualConnector } from "../queries/usual-connector.ts";

/**
 * Gives splices that conductors have joined the next twist-on that takes them all, where the one they have was only
 * assumed. A connector that a person picked, saw or measured stays, and the rules say that it is too small. Where no
 * twist-on takes them another sort of connector would be needed, or a second splice: that is for a person to choose.
 */
export function growConnectors(
  installation: Draft<Installation>,
  enclosure: EnclosureId,
  splices: Iterable<SpliceId>,
): void {
  const box = installation.enclosures[enclosure];
  if (box === undefined) return;
  for (const id of splices) {
    const splice = box.splices[id];
    if (splice?.evidence?.connector !== "assumed") continue;
    const members = (Object.keys(box.places) as EndKey[]).filter((end) => {
      const at = box.places[end]?.at;
      return at?.kind === "splice" && at.splice === id;
    });
    const connector = findConnector(splice.connector);
    const facts = members.map((end) => getEndFacts(installation as Installation, box, end));
    if (connector === undefined || takes(connector, facts)) continue;
    const next = usualConnector(installation as Installation, box, members);
    if (next !== "unknown") splice.connector = next;
  }
}
