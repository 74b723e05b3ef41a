import type { DeviceNode, PathWhen } from "../catalog/device-type.ts";
import { getDeviceType } from "../catalog/device-types.ts";
import type { Device } from "../model/device.ts";
import type { Half, TerminalName } from "../model/ids.ts";
import { parseOutlet } from "../model/ids.ts";
import { outletsOf } from "../queries/outlets-of.ts";
import { terminalsOf } from "../queries/terminals-of.ts";
import type { Port } from "./joint-group.ts";

/** What one half of a device hangs on: of a split duplex its face, of a fan-light its fan or its light. */
export interface HalfPorts {
  readonly half: Half;
  readonly hot: Port;
  readonly neutral: Port;
}

/** The halves of a device that has two, each with its terminals; undefined for one that is a whole. */
export function halfPorts(device: Device): readonly HalfPorts[] | undefined {
  const outlets = outletsOf(device);
  if (outlets.length < 2) return undefined;
  return outlets.flatMap(({ key, hot, neutral }): readonly HalfPorts[] => {
    const { half } = parseOutlet(key);
    const at = (terminals: readonly TerminalName[]): Port => ({ kind: "terminal", device: device.id, terminals });
    const [hots, neutrals] = [terminalsOn(device, hot), terminalsOn(device, neutral)];
    return half === undefined || hots.length === 0 || neutrals.length === 0
      ? []
      : [{ half, hot: at(hots), neutral: at(neutrals) }];
  });
}

/** Terminals that are one point with a node inside the device, its break-off tabs as they are. */
function terminalsOn(device: Device, node: DeviceNode): readonly TerminalName[] {
  const isWhole = (when: PathWhen): boolean =>
    when === "always" ||
    (when === "hot-tab" && device.hotTab !== "removed") ||
    (when === "neutral-tab" && device.neutralTab !== "removed");
  const found = new Set<DeviceNode>([node]);
  for (const at of found)
    for (const { a, b, when } of getDeviceType(device.type).paths) {
      if (!isWhole(when)) continue;
      if (a === at) found.add(b);
      if (b === at) found.add(a);
    }
  return terminalsOf(device).flatMap(({ name }) => (found.has(name) ? name : []));
}
