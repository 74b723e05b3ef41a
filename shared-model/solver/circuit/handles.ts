import type { PathWhen } from "../../catalog/device-type.ts";
import { findDeviceType } from "../../catalog/device-types.ts";
import type { Device } from "../../model/device.ts";
import { handleOf } from "../enclosure-graph.ts";

/** A handle that a person operates. A yoke with two switches has two. */
export interface DeviceHandle {
  /** As `OperatingSetting.positions` and `Joint.handle` have it. */
  readonly handle: string;
  /** The terminal that it switches. */
  readonly terminal: string;
}

const BY_HAND: ReadonlySet<PathWhen> = new Set(["on", "off", "up", "down", "straight", "crossed"]);

/** Handles of switches; breakers and disconnects have none here, they are on or off. */
export function handlesOf(device: Device): readonly DeviceHandle[] {
  const type = findDeviceType(device.type);
  if (type === undefined || type.family === "disconnect") return [];
  const handles = new Map<string, DeviceHandle>();
  for (const { b, when } of type.paths) {
    if (!BY_HAND.has(when)) continue;
    const handle = handleOf(device, type, b);
    if (!handles.has(handle)) handles.set(handle, { handle, terminal: b });
  }
  return [...handles.values()];
}
