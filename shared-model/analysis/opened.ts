import type { Cable } from "../model/cable.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { CableId, EnclosureId } from "../model/ids.ts";
import type { Installation } from "../model/project.ts";
import { cablesInto } from "../queries/cables-into.ts";
import { changedBetweenStates } from "../queries/changed-between-states.ts";

/**
 * Which of some enclosures the work opens: those that it makes, changes or takes away, and those that a changed cable
 * ends in or runs through. Looks at nothing but these and their cables.
 */
export function openedOf(
  asFound: Installation,
  proposed: Installation,
  ids: Iterable<EnclosureId>,
): ReadonlySet<EnclosureId> {
  const asked = new Set(ids);
  const cables = new Set([...cablesAt(asFound, asked), ...cablesAt(proposed, asked)]);
  const changes = changedBetweenStates(part(asFound, asked, cables), part(proposed, asked, cables));
  return new Set([...changes.enclosures.keys()].filter((id) => asked.has(id)));
}

function* cablesAt({ enclosures, cables }: Installation, ids: ReadonlySet<EnclosureId>): Generator<CableId, void> {
  for (const id of ids) {
    for (const { cable } of cablesInto(cables, id)) yield cable.id;
    for (const pass of Object.values(enclosures[id]?.passThroughs ?? {})) yield pass.cable;
  }
}

function part(installation: Installation, ids: ReadonlySet<EnclosureId>, cableIds: ReadonlySet<CableId>): Installation {
  const enclosures: Record<EnclosureId, Enclosure> = {};
  for (const id of ids) {
    const enclosure = installation.enclosures[id];
    if (enclosure !== undefined) enclosures[id] = enclosure;
  }
  const cables: Record<CableId, Cable> = {};
  for (const id of cableIds) {
    const cable = installation.cables[id];
    if (cable !== undefined) cables[id] = cable;
  }
  return { ...installation, enclosures, cables };
}
