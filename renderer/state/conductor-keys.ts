import type { Cable } from "../../shared-model/model/cable.ts";
import type { ConductorKey } from "../../shared-model/model/ids.ts";

/** Keys of the conductors of a cable in drawing order: hots, neutral, ground. */
export function conductorKeys(cable: Cable): readonly ConductorKey[] {
  const orderOf = (key: ConductorKey): number => cable.conductors[key]?.order ?? 0;
  return (Object.keys(cable.conductors) as ConductorKey[]).sort((a, b) => orderOf(a) - orderOf(b));
}
