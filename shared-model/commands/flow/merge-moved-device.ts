import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { DeviceId, EnclosureId } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import { findDevice } from "../../queries/find-item.ts";
import { deviceAsProposed } from "./as-proposed.ts";
import type { Three } from "./merge.ts";
import { mergeDevice } from "./merge-enclosure.ts";
import { Writing } from "./writing.ts";

const wording = catalogue({
  noBox: (box: Part, device: Part) => `Proposed has no ${box} that ${device} could go to.`,
});

/** A device that as found and proposed do not have at the same place, or not any more. */
export interface Move {
  readonly was: Device;
  readonly is: Device;
  readonly from: EnclosureId;
  readonly to: Enclosure;
}

/**
 * Edited devices that are not merged where they stand, because as found has them in another enclosure than before or
 * proposed has them in another than as found. They are the one thing that changes its enclosure and stays the same thing.
 */
export function movedDevices(
  { was, is, theirs }: { readonly [K in keyof Three]: Installation },
  enclosures: ReadonlySet<EnclosureId>,
): ReadonlyMap<DeviceId, Move> {
  const moved = new Map<DeviceId, Move>();
  for (const id of enclosures) {
    const to = is.enclosures[id];
    const before = was.enclosures[id]?.devices;
    if (to === undefined || to.devices === before) continue;
    for (const device of Object.values(to.devices)) {
      const old = before?.[device.id];
      if (old === device) continue;
      if (old !== undefined) {
        const stands = device.id in (theirs.enclosures[id]?.devices ?? {});
        if (!stands) moved.set(device.id, { was: old, is: device, from: id, to });
        continue;
      }
      for (const from of enclosures) {
        const left = was.enclosures[from]?.devices[device.id];
        if (left !== undefined) moved.set(device.id, { was: left, is: device, from, to });
      }
    }
  }
  return moved;
}

/**
 * Which enclosure a device is in is one field of it. Where proposed has the device elsewhere already it stays there, and
 * where proposed has taken it out it stays out; its other facts follow wherever it is.
 *
 * @returns Why it cannot follow.
 */
export function mergeMoved(
  writing: Writing<Installation>,
  theirs: Installation,
  { was, is, from, to }: Move,
): string | undefined {
  const home = findDevice(theirs, was.id);
  if (home === undefined) return undefined;
  const path = ["enclosures", home.enclosure.id, "devices", was.id];
  const three = { was, is, theirs: home.device };
  if (home.enclosure.id !== from) {
    mergeDevice(writing, path, three, true);
    return undefined;
  }
  if (!(to.id in writing.value.enclosures)) return wording.noBox(to.name, is.name);
  const merged = new Writing<{ readonly device: Device }>({ device: home.device });
  mergeDevice(merged, ["device"], three);
  writing.set(path, undefined);
  const { replaces } = home.device;
  const device = deviceAsProposed(merged.value.device);
  writing.set(["enclosures", to.id, "devices", was.id], replaces === undefined ? device : { ...device, replaces });
  return undefined;
}
