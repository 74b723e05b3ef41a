import { type DeviceId, parseOutlet } from "../../model/ids.ts";
import type { Load } from "../../model/load.ts";
import type { Installation } from "../../model/project.ts";
import { inOrder } from "../../queries/in-order.ts";

const cache = new WeakMap<Installation["loads"], Map<DeviceId, Load[]>>();

/** What is plugged in, by device. Cached by the table of loads. */
export function loadsOn(loads: Installation["loads"]): ReadonlyMap<DeviceId, readonly Load[]> {
  let found = cache.get(loads);
  if (found === undefined) {
    found = new Map();
    for (const load of inOrder(loads)) {
      const { device } = parseOutlet(load.plug);
      const list = found.get(device);
      if (list === undefined) found.set(device, [load]);
      else list.push(load);
    }
    cache.set(loads, found);
  }
  return found;
}
