import type { DeviceId } from "../model/ids.ts";
import type { Installation } from "../model/project.ts";
import { inOrder } from "./in-order.ts";

interface Replacements {
  /** By the device of as found that is gone. */
  readonly byOld: ReadonlyMap<DeviceId, DeviceId>;
  /** By the device of proposed that came for it. */
  readonly byNew: ReadonlyMap<DeviceId, DeviceId>;
}

type Enclosures = Installation["enclosures"];

const cache = new WeakMap<Enclosures, WeakMap<Enclosures, Replacements>>();

/**
 * Devices of as found that proposed has another device for: old to new. A device that proposed still has is not
 * replaced, whoever says so; where two claim one place, the first in order has it. Cached by both tables of enclosures.
 */
export const replacedBy = (proposed: Installation, asFound: Installation): ReadonlyMap<DeviceId, DeviceId> =>
  replacements(proposed, asFound).byOld;

/** The same looked up from the other side: new to old. */
export const replacementFor = (proposed: Installation, asFound: Installation): ReadonlyMap<DeviceId, DeviceId> =>
  replacements(proposed, asFound).byNew;

function replacements({ enclosures }: Installation, { enclosures: before }: Installation): Replacements {
  const known = cache.get(enclosures)?.get(before);
  if (known !== undefined) return known;
  const found = read(enclosures, before);
  const byBefore = cache.get(enclosures) ?? new WeakMap<Enclosures, Replacements>();
  cache.set(enclosures, byBefore.set(before, found));
  return found;
}

function read(enclosures: Enclosures, before: Enclosures): Replacements {
  const byOld = new Map<DeviceId, DeviceId>();
  const byNew = new Map<DeviceId, DeviceId>();
  const claims = claimsIn(enclosures);
  if (claims.length === 0) return { byOld, byNew };
  // What is in an enclosure that is the same in both is not gone.
  const was = new Set<string>();
  for (const one of Object.values(before)) if (enclosures[one.id] !== one) for (const id in one.devices) was.add(id);
  const is = new Set<string>();
  for (const one of Object.values(enclosures)) if (before[one.id] !== one) for (const id in one.devices) is.add(id);
  for (const { id, replaces } of claims) {
    if (!was.has(replaces) || is.has(replaces) || byOld.has(replaces)) continue;
    byOld.set(replaces, id);
    byNew.set(id, replaces);
  }
  return { byOld, byNew };
}

interface Claim {
  readonly id: DeviceId;
  readonly replaces: DeviceId;
}

/** Devices that say whose place they take, in order of enclosures and within them. */
function claimsIn(enclosures: Enclosures): readonly Claim[] {
  const claiming = Object.values(enclosures).filter(({ devices }) => {
    for (const id in devices) if (devices[id as DeviceId]?.replaces !== undefined) return true;
    return false;
  });
  return inOrder(Object.fromEntries(claiming.map((one) => [one.id, one]))).flatMap(({ devices }) =>
    inOrder(devices).flatMap(({ id, replaces }) => (replaces === undefined ? [] : [{ id, replaces }])),
  );
}
