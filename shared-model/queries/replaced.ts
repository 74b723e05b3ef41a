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
  const was = new Set<string>();
  for (const enclosure of Object.values(before)) for (const id in enclosure.devices) was.add(id);
  const is = new Set<string>();
  for (const enclosure of Object.values(enclosures)) for (const id in enclosure.devices) is.add(id);
  const byOld = new Map<DeviceId, DeviceId>();
  const byNew = new Map<DeviceId, DeviceId>();
  for (const enclosure of inOrder(enclosures)) {
    for (const { id, replaces } of inOrder(enclosure.devices)) {
      if (replaces === undefined || !was.has(replaces) || is.has(replaces) || byOld.has(replaces)) continue;
      byOld.set(replaces, id);
      byNew.set(id, replaces);
    }
  }
  return { byOld, byNew };
}
