import type { DeviceId, OutletKey } from "../model/ids.ts";
import { type ConductionGraph, HOT, NEUTRAL } from "./conduction-graph.ts";
import { deviceOfHandle } from "./joinings-by-setting.ts";
import type { OutletNodes } from "./protection.ts";
import type { SwitchInNeutral } from "./section.ts";
import { MOST_SWITCHES, settingsOf } from "./settings.ts";
import type { SourceReach } from "./source-reach.ts";

/**
 * Switches with a position in which an outlet has its hot and no neutral, while their other position gives it. One that
 * opens the hot at the same time, as a two-pole switch does, is none.
 */
export function switchesInNeutral(
  graph: ConductionGraph,
  reach: SourceReach,
  outlets: readonly { readonly key: OutletKey; readonly nodes: OutletNodes }[],
): readonly SwitchInNeutral[] {
  const found = new Map<DeviceId, Set<OutletKey>>();
  for (const { key, nodes } of outlets) {
    const inNeutral = reach.handlesAt(nodes.neutral);
    if (inNeutral.length === 0 || (reach.some(nodes.neutral) & NEUTRAL) === 0) continue;
    const handles = [...new Set([...inNeutral, ...reach.handlesAt(nodes.hot)])].sort();
    if (handles.length > MOST_SWITCHES || reach.isBounded(nodes.neutral) || reach.isBounded(nodes.hot)) continue;
    for (const setting of settingsOf(handles)) {
      const opened = (reach.bitsAt(nodes.neutral, setting) & NEUTRAL) === 0;
      if (!opened || (reach.bitsAt(nodes.hot, setting) & HOT) === 0) continue;
      for (const handle of inNeutral) {
        const closed = reach.bitsAt(nodes.neutral, setting.flipped(handle));
        const device = deviceOfHandle(graph, handle);
        if (device === undefined || (closed & NEUTRAL) === 0 || (closed & HOT) !== 0) continue;
        const keys = found.get(device.id) ?? new Set();
        found.set(device.id, keys.add(key));
      }
    }
  }
  return [...found]
    .sort(([one], [other]) => (one < other ? -1 : 1))
    .map(([device, keys]) => ({ device, outlets: [...keys].sort() }));
}
