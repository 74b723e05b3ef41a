import type { Device } from "../model/device.ts";
import type { Enclosure, Jumper, Splice } from "../model/enclosure.ts";
import type { DeviceId, EnclosureId, JumperId, SpliceId } from "../model/ids.ts";
import type { Installation } from "../model/project.ts";

type Found<T> = { readonly enclosure: Enclosure } & T;

/** The enclosure of a device, splice or jumper is not stored: a scan over the enclosures costs less than keeping an index true. */
export function findDevice(installation: Installation, id: DeviceId): Found<{ readonly device: Device }> | undefined {
  for (const enclosure of Object.values(installation.enclosures)) {
    const device = enclosure.devices[id];
    if (device !== undefined) return { enclosure, device };
  }
  return undefined;
}

export function findSplice(installation: Installation, id: SpliceId): Found<{ readonly splice: Splice }> | undefined {
  for (const enclosure of Object.values(installation.enclosures)) {
    const splice = enclosure.splices[id];
    if (splice !== undefined) return { enclosure, splice };
  }
  return undefined;
}

export function findJumper(installation: Installation, id: JumperId): Found<{ readonly jumper: Jumper }> | undefined {
  for (const enclosure of Object.values(installation.enclosures)) {
    const jumper = enclosure.jumpers[id];
    if (jumper !== undefined) return { enclosure, jumper };
  }
  return undefined;
}

export function getEnclosure(installation: Installation, id: EnclosureId): Enclosure {
  const enclosure = installation.enclosures[id];
  if (enclosure === undefined) throw new Error(`No enclosure ${id}.`);
  return enclosure;
}
