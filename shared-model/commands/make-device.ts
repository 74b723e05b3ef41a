import { getDeviceType } from "../catalog/device-types.ts";
import type { Device } from "../model/device.ts";
import type { EvidenceMark } from "../model/evidence.ts";
import type { DeviceId } from "../model/ids.ts";
import { copyOf } from "./plain-data.ts";

/** What the catalogue says is what such a thing usually is, so every default is marked as assumed. */
export const assumed = (fields: readonly string[]): Readonly<Record<string, EvidenceMark>> =>
  Object.fromEntries(fields.map((field) => [field, "assumed"]));

/** A device as the catalogue has it. */
export function deviceOfType(id: DeviceId, type: string, name: string, order: number): Device {
  const { defaults } = getDeviceType(type);
  const fields = Object.keys(defaults);
  return { ...copyOf(defaults), id, type, name, order, ...(fields.length > 0 && { evidence: assumed(fields) }) };
}
