import type { Device } from "../../model/device.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { DeviceId } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import { copyOf } from "../plain-data.ts";

/** A copy of as found that shares nothing with it. Nothing in it replaces anything yet. */
export function asProposed(asFound: Installation): Installation {
  const enclosures = Object.values(asFound.enclosures).map((one) => [one.id, enclosureAsProposed(one)] as const);
  return { ...copyOf({ ...asFound, enclosures: {} }), enclosures: Object.fromEntries(enclosures) };
}

export function enclosureAsProposed(enclosure: Enclosure): Enclosure {
  const devices: Record<DeviceId, Device> = {};
  for (const device of Object.values(enclosure.devices)) devices[device.id] = deviceAsProposed(device);
  return { ...copyOf({ ...enclosure, devices: {} }), devices };
}

export function deviceAsProposed(device: Device): Device {
  const { replaces: _of, ...rest } = copyOf(device);
  return rest;
}
