import type { Load } from "../../model/load.ts";
import type { Installation } from "../../model/project.ts";
import { outletsOf } from "../../queries/outlets-of.ts";
import type { OutletNodes } from "../protection.ts";
import type { SectionModel } from "../section-model.ts";
import { loadsOn } from "./loads-on.ts";

/** Something plugged in, with the nodes of the conduction graph that it hangs between. */
export interface PluggedLoad extends OutletNodes {
  readonly load: Load;
}

/** What is plugged in anywhere in a section, in use or not. A load on an outlet that its device no longer has is nowhere. */
export function pluggedLoads(loads: Installation["loads"], { graph }: SectionModel): readonly PluggedLoad[] {
  const byDevice = loadsOn(loads);
  if (byDevice.size === 0) return [];
  return [...graph.devices.values()].flatMap(({ device }) =>
    (byDevice.get(device.id) ?? []).flatMap((load): PluggedLoad[] => {
      const outlet = outletsOf(device).find(({ key }) => key === load.plug);
      const hot = outlet && graph.nodeOfDevice(device.id, outlet.hot);
      const neutral = outlet && graph.nodeOfDevice(device.id, outlet.neutral);
      return hot === undefined || neutral === undefined ? [] : [{ load, hot, neutral }];
    }),
  );
}
