import type { Device } from "../model/device.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { EndKey } from "../model/ids.ts";
import type { Place } from "../model/place.ts";
import type { Installation } from "../model/project.ts";

/** The wiring with a device taken out of its enclosure and every conductor that was on it capped by itself. */
export function withoutDevice(installation: Installation, enclosure: Enclosure, device: Device): Installation {
  const { [device.id]: _gone, ...devices } = enclosure.devices;
  const places: Record<EndKey, Place> = {};
  for (const [end, place] of Object.entries(enclosure.places) as [EndKey, Place][]) {
    const isOn = place.at.kind === "terminal" && place.at.device === device.id;
    places[end] = isOn ? { ...place, at: { kind: "capped" } } : place;
  }
  const left: Enclosure = { ...enclosure, devices, places };
  return { ...installation, enclosures: { ...installation.enclosures, [enclosure.id]: left } };
}
