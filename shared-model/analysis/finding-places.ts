import type { Subject } from "../answers/finding.ts";
import type { Enclosure } from "../model/enclosure.ts";
import {
  type CableId,
  type EnclosureId,
  type EndKey,
  type LoadId,
  type OutletKey,
  parseEnd,
  parseOutlet,
} from "../model/ids.ts";
import type { Installation } from "../model/project.ts";

/**
 * Finds the enclosures that subjects lie in: of a device, terminal, outlet, splice, jumper or entry the one that holds
 * it, of a cable those that it ends in, of an end the one it lies in, of a load that of its outlet. A room and the
 * document lie in none, and so does what is gone.
 * @param near Enclosures that nearly all subjects lie in; the whole is looked through only for what is in none of them.
 */
export function findPlaces(
  installation: Installation,
  near: readonly EnclosureId[],
): (subjects: readonly Subject[]) => ReadonlySet<EnclosureId> {
  const { enclosures, cables, loads } = installation;
  let holders: Map<string, EnclosureId> | undefined;

  function holderOf(item: string): readonly EnclosureId[] {
    holders ??= indexOf(near.flatMap((id) => enclosures[id] ?? []));
    const known = holders.get(item);
    if (known !== undefined) return [known];
    const far = Object.values(enclosures).find((enclosure) => tablesOf(enclosure).some((table) => item in table));
    return far === undefined ? [] : [far.id];
  }

  function placesOf({ kind, id }: Subject): readonly EnclosureId[] {
    switch (kind) {
      case "enclosure":
        return [id as EnclosureId];
      case "device":
      case "splice":
      case "jumper":
      case "entry":
        return holderOf(id);
      case "terminal":
        return holderOf(id.slice(0, id.indexOf(".")));
      case "outlet":
        return holderOf(parseOutlet(id as OutletKey).device);
      case "load": {
        const load = loads[id as LoadId];
        return load === undefined ? [] : holderOf(parseOutlet(load.plug).device);
      }
      case "cable":
        return endsOf(id as CableId);
      case "end": {
        const end = parseEnd(id as EndKey);
        if (end === undefined) return [];
        return end.of === "jumper" ? holderOf(end.jumper) : endsOf(end.cable, end.side);
      }
      case "room":
      case "project":
        return [];
    }
  }

  function endsOf(cable: CableId, only?: "a" | "b"): readonly EnclosureId[] {
    const sides = cables[cable]?.sides;
    if (sides === undefined) return [];
    return (only === undefined ? [sides.a, sides.b] : [sides[only]]).flatMap((side) =>
      "enclosure" in side ? [side.enclosure] : [],
    );
  }

  return (subjects) => new Set(subjects.flatMap(placesOf));
}

const tablesOf = ({ devices, splices, jumpers, entries }: Enclosure): readonly object[] => [
  devices,
  splices,
  jumpers,
  entries,
];

function indexOf(enclosures: readonly Enclosure[]): Map<string, EnclosureId> {
  const holders = new Map<string, EnclosureId>();
  for (const enclosure of enclosures)
    for (const table of tablesOf(enclosure)) for (const item in table) holders.set(item, enclosure.id);
  return holders;
}
