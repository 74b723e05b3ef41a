import { type ConductorKey, cableEnd, type EnclosureId, otherSide } from "../../model/ids.ts";
import { cablesInto } from "../../queries/cables-into.ts";
import type { House } from "./house.ts";

/** After all spaces. */
export const NO_SLOT = 1000;

/** The foremost space whose breaker feeds each of the boxes that a panel is joined to. */
export function slotsOf({ installation }: House, panel: EnclosureId): ReadonlyMap<EnclosureId, number> {
  const box = installation.enclosures[panel];
  const found = new Map<EnclosureId, number>();
  if (box === undefined) return found;
  for (const { cable, side } of cablesInto(installation.cables, panel)) {
    const far = cable.sides[otherSide(side)];
    if (!("enclosure" in far)) continue;
    for (const key of Object.keys(cable.conductors) as ConductorKey[]) {
      const at = box.places[cableEnd(cable.id, key, side)]?.at;
      const slot = at?.kind === "terminal" ? box.devices[at.device]?.slot : undefined;
      if (slot !== undefined) found.set(far.enclosure, Math.min(slot, found.get(far.enclosure) ?? slot));
    }
  }
  return found;
}
