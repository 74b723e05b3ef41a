import type { DeviceNode } from "../catalog/device-type.ts";
import type { Device } from "../model/device.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { OutletKey } from "../model/ids.ts";
import { deviceOfHandle } from "./joinings-by-setting.ts";
import type { Section } from "./section.ts";
import { keptWithWiring, modelOf } from "./sections.ts";
import { MOST_SWITCHES, settingsOf } from "./settings.ts";

/** What moving one handle changes. */
export interface SwitchEffect {
  readonly device: Device;
  readonly enclosure: Enclosure;
  readonly handle: string;
  /** Terminal that tells the switches of one yoke apart; absent where it has one handle. */
  readonly at?: DeviceNode;
  /** Outlets at which some move of it changes what reaches them, sorted. */
  readonly outlets: readonly OutletKey[];
  /** False where more switches bear on an outlet with it than are tried. */
  readonly certain: boolean;
}

/** Every handle in the boxes of a section, sorted. Kept as long as the wiring is the same. */
export const switchEffects: (section: Section) => readonly SwitchEffect[] = keptWithWiring(findEffects);

function findEffects(section: Section): readonly SwitchEffect[] {
  const model = modelOf(section);
  const { graph } = model;
  const reach = model.sourceReach();
  const handles = new Set<string>();
  for (const { kind, handle, enclosure } of graph.edges)
    if (kind === "switch" && handle !== undefined && enclosure?.kind === "box") handles.add(handle);
  const moved = new Map<string, Set<OutletKey>>();
  const uncertain = new Set<string>();
  for (const { outlet, nodes } of handles.size === 0 ? [] : model.placed()) {
    const bearing = [...new Set([...reach.handlesAt(nodes.hot), ...reach.handlesAt(nodes.neutral)])].sort();
    if (bearing.length === 0) continue;
    if (bearing.length > MOST_SWITCHES || reach.isBounded(nodes.hot) || reach.isBounded(nodes.neutral)) {
      for (const handle of bearing) uncertain.add(handle);
      continue;
    }
    for (const handle of bearing) {
      for (const setting of settingsOf(bearing)) {
        const other = setting.flipped(handle);
        if (setting.column > other.column) continue;
        if (
          reach.bitsAt(nodes.hot, setting) === reach.bitsAt(nodes.hot, other) &&
          reach.bitsAt(nodes.neutral, setting) === reach.bitsAt(nodes.neutral, other)
        )
          continue;
        const keys = moved.get(handle) ?? new Set();
        moved.set(handle, keys.add(outlet.key));
        break;
      }
    }
  }
  const own = new Set(section.enclosures);
  return [...handles].sort().flatMap((handle) => {
    const device = deviceOfHandle(graph, handle);
    const enclosure = device === undefined ? undefined : graph.devices.get(device.id)?.enclosure;
    if (device === undefined || enclosure === undefined || !own.has(enclosure)) return [];
    const at = handle.slice(device.id.length + 1);
    return {
      device,
      enclosure,
      handle,
      ...(at !== "" && { at }),
      outlets: [...(moved.get(handle) ?? [])].sort(),
      certain: !uncertain.has(handle),
    };
  });
}
