import type { BoxRoles } from "../../shared-model/answers/circuit.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { Installation } from "../../shared-model/model/project.ts";

/** By the cable table: whether an enclosure is a panel never changes. */
const kept = new WeakMap<Installation["cables"], ReadonlySet<EnclosureId>>();

/** Whether cables lead from an enclosure to a panel that is drawn, through as many boxes as it takes. */
export function isSupplyDrawn(installation: Installation, id: EnclosureId): boolean {
  let fed = kept.get(installation.cables);
  if (fed === undefined) {
    fed = joinedToPanels(installation);
    kept.set(installation.cables, fed);
  }
  return fed.has(id);
}

function joinedToPanels({ cables, enclosures }: Installation): ReadonlySet<EnclosureId> {
  const beside = new Map<EnclosureId, EnclosureId[]>();
  const join = (one: EnclosureId, other: EnclosureId): void => {
    const others = beside.get(one);
    if (others === undefined) beside.set(one, [other]);
    else others.push(other);
  };
  for (const { sides } of Object.values(cables)) {
    if (!("enclosure" in sides.a) || !("enclosure" in sides.b)) continue;
    join(sides.a.enclosure, sides.b.enclosure);
    join(sides.b.enclosure, sides.a.enclosure);
  }
  const fed = new Set([...beside.keys()].filter((id) => enclosures[id]?.kind === "panel"));
  for (const id of fed) for (const next of beside.get(id) ?? []) fed.add(next);
  return fed;
}

/** Roles without "floating": where no supply is drawn everything floats, which says nothing of a joint. */
export function rolesWithoutFloating(roles: BoxRoles): BoxRoles {
  const splices = Object.fromEntries(Object.entries(roles.splices).filter(([, role]) => role !== "floating"));
  return { ...roles, splices };
}
