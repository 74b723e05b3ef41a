import type { Cable } from "../model/cable.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { EntryId } from "../model/ids.ts";
import type { Installation } from "../model/project.ts";
import { cablesInto } from "./cables-into.ts";

/** Cables that come in by an entry, each once, those that pass through unbroken too: their sheath enters all the same. */
export function cablesAtEntry({ cables }: Installation, enclosure: Enclosure, entry: EntryId): readonly Cable[] {
  const found = cablesInto(cables, enclosure.id).flatMap((one) => (one.entry === entry ? [one.cable] : []));
  for (const pass of Object.values(enclosure.passThroughs)) {
    const cable = cables[pass.cable];
    if (cable !== undefined && (pass.entryIn === entry || pass.entryOut === entry)) found.push(cable);
  }
  return [...new Set(found)];
}
