import { findDeviceType } from "../catalog/device-types.ts";
import type { Cable } from "../model/cable.ts";
import { type ConductorKey, cableEnd, type EnclosureId, type Side } from "../model/ids.ts";
import type { Installation } from "../model/project.ts";

type Names = ReadonlyMap<EnclosureId, readonly string[]>;

const NONE: readonly string[] = [];
const cache = new WeakMap<
  Installation["enclosures"],
  { readonly cables: Installation["cables"]; readonly names: Names }
>();

/**
 * What people call the circuits that come to a box: names of the breakers and fuses on which a cable of its group of
 * boxes is landed in a panel, sorted. A group is what cables join without passing through a panel. It goes by what is
 * landed, not by what is live: none for a panel, and where no cable of the group is landed on a breaker. Cached by the
 * tables of boxes and cables.
 */
export function circuitNames({ enclosures, cables }: Installation, id: EnclosureId): readonly string[] {
  let kept = cache.get(enclosures);
  if (kept?.cables !== cables) {
    kept = { cables, names: namesIn(enclosures, cables) };
    cache.set(enclosures, kept);
  }
  return kept.names.get(id) ?? NONE;
}

function namesIn(enclosures: Installation["enclosures"], cables: Installation["cables"]): Names {
  const heads = new Map<EnclosureId, EnclosureId>();
  const headOf = (id: EnclosureId): EnclosureId => {
    let head = id;
    for (let up = heads.get(head); up !== undefined; up = heads.get(head)) head = up;
    return head;
  };
  const isBox = (id: EnclosureId): boolean => enclosures[id] !== undefined && enclosures[id].kind !== "panel";
  const found: (readonly [EnclosureId, readonly string[]])[] = [];
  for (const cable of Object.values(cables)) {
    const { a, b } = cable.sides;
    if (!("enclosure" in a) || !("enclosure" in b)) continue;
    const [near, far] = [a.enclosure, b.enclosure];
    if (isBox(near) && isBox(far)) {
      const [from, to] = [headOf(near), headOf(far)];
      if (from !== to) heads.set(from, to);
    } else if (isBox(far)) found.push([far, breakersAt(enclosures, cable, "a")]);
    else if (isBox(near)) found.push([near, breakersAt(enclosures, cable, "b")]);
  }
  const byHead = new Map<EnclosureId, Set<string>>();
  for (const [box, names] of found) {
    const head = headOf(box);
    const all = byHead.get(head) ?? new Set();
    for (const name of names) all.add(name);
    byHead.set(head, all);
  }
  const sorted = new Map([...byHead].map(([head, names]) => [head, [...names].sort()]));
  const ids = Object.keys(enclosures) as EnclosureId[];
  return new Map(ids.flatMap((id) => (isBox(id) ? [[id, sorted.get(headOf(id)) ?? NONE] as const] : [])));
}

/** Names of the breakers and fuses of a panel on which a cable is landed at one of its sides. */
function breakersAt(enclosures: Installation["enclosures"], cable: Cable, side: Side): readonly string[] {
  const where = cable.sides[side];
  const panel = "enclosure" in where ? enclosures[where.enclosure] : undefined;
  if (panel === undefined) return NONE;
  return (Object.keys(cable.conductors) as ConductorKey[]).flatMap((key) => {
    const at = panel.places[cableEnd(cable.id, key, side)]?.at;
    const device = at?.kind === "terminal" ? panel.devices[at.device] : undefined;
    const family = device && findDeviceType(device.type)?.family;
    return device !== undefined && (family === "breaker" || family === "fuse") ? [device.name] : [];
  });
}
