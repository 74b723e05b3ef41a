import type { Device } from "../../model/device.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { DeviceId, EnclosureId } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";

type Enclosures = Installation["enclosures"];

const known = new WeakMap<Enclosures, ReadonlyMap<DeviceId, EnclosureId>>();

/** The enclosure of every device. Cached by the table of enclosures, which therefore must not change in place. */
export function devicePlaces({ enclosures }: Installation): ReadonlyMap<DeviceId, EnclosureId> {
  let places = known.get(enclosures);
  if (places === undefined) {
    const made = new Map<DeviceId, EnclosureId>();
    for (const { id, devices } of Object.values(enclosures))
      for (const device in devices) made.set(device as DeviceId, id);
    places = made;
    known.set(enclosures, places);
  }
  return places;
}

/** The enclosure that a device is in; undefined for one that is nowhere. */
export function homeOf(installation: Installation, id: DeviceId): Enclosure | undefined {
  const home = devicePlaces(installation).get(id);
  return home === undefined ? undefined : installation.enclosures[home];
}

export const deviceIn = (installation: Installation, id: DeviceId): Device | undefined =>
  homeOf(installation, id)?.devices[id];
