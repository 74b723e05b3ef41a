import { connectors } from "../catalog/connectors.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { EndKey } from "../model/ids.ts";
import type { Installation } from "../model/project.ts";
import { takes } from "./connector-takes.ts";
import { getEndFacts } from "./end-facts.ts";

/**
 * Connector that a new splice starts with: the first twist-on of the stock, grounding ones left out, that takes these
 * ends; "unknown" when there is none. It is only a first choice, shown and changeable at once.
 */
export function usualConnector(installation: Installation, enclosure: Enclosure, ends: readonly EndKey[]): string {
  const members = ends.map((end) => getEndFacts(installation, enclosure, end));
  const usual = connectors.find(
    (connector) => !connector.groundsOnly && connector.capacity.kind === "table" && takes(connector, members),
  );
  return usual?.id ?? "unknown";
}
