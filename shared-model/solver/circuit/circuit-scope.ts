import type { Cable } from "../../model/cable.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { CableId, EnclosureId } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import { feederCables, type Walked, walkSection } from "../section-walk.ts";

/** Enclosures and cables of a circuit, each sorted by id. */
export interface CircuitScope {
  readonly enclosures: readonly Enclosure[];
  readonly cables: readonly Cable[];
}

/**
 * What a section needs to be energised: its own boxes and cables, the panels that these enter, and whatever brings those
 * panels their supply. Other cables of the panels are left out, and with them what they carry.
 */
export function scopeOfSection(installation: Installation, { boxes, cables }: Walked): CircuitScope {
  const found = new Map<EnclosureId, Enclosure>();
  const carried = new Map<CableId, Cable>();
  const addCable = (cable: Cable): void => {
    if (carried.has(cable.id)) return;
    carried.set(cable.id, cable);
    for (const side of [cable.sides.a, cable.sides.b]) {
      const enclosure = "enclosure" in side ? installation.enclosures[side.enclosure] : undefined;
      if (enclosure !== undefined) addEnclosure(enclosure);
    }
  };
  const addEnclosure = (enclosure: Enclosure): void => {
    if (found.has(enclosure.id)) return;
    found.set(enclosure.id, enclosure);
    if (enclosure.kind !== "panel" || enclosure.supply !== "feeder") return;
    for (const cable of feederCables(installation, enclosure)) {
      addCable(cable);
      for (const side of [cable.sides.a, cable.sides.b]) {
        const box = "enclosure" in side ? installation.enclosures[side.enclosure] : undefined;
        if (box?.kind !== "box") continue;
        const beyond = walkSection(installation, box);
        for (const other of beyond.boxes) addEnclosure(other);
        for (const other of beyond.cables) addCable(other);
      }
    }
  };
  for (const box of boxes) found.set(box.id, box);
  for (const cable of cables) addCable(cable);
  return { enclosures: [...found.values()].sort(byId), cables: [...carried.values()].sort(byId) };
}

/** Everything that is drawn. */
export const wholeScope = ({ enclosures, cables }: Installation): CircuitScope => ({
  enclosures: Object.values(enclosures).sort(byId),
  cables: Object.values(cables).sort(byId),
});

const byId = (p: { readonly id: string }, q: { readonly id: string }): number =>
  p.id < q.id ? -1 : p.id > q.id ? 1 : 0;
