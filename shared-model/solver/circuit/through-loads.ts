import type { DeviceId } from "../../model/ids.ts";
import { GROUND, HOT, NEUTRAL } from "../conduction-graph.ts";
import type { Section, Spot } from "../section.ts";
import { modelOf } from "../sections.ts";
import { pluggedLoads } from "./plugged-loads.ts";

/** What brings a live conductor to a place that no metal joins to a source. */
export interface ThroughLoads {
  /** Names of what hangs between it and a live conductor, wired in or plugged in as drawn; sorted. */
  readonly names: readonly string[];
  /** Outlets there have hots of different legs: what is used at them stands in series between two legs. */
  readonly legsMeet: boolean;
}

interface Use {
  readonly name: string | undefined;
  readonly to: number;
}

/** For a spot that no setting joins to a source; over all settings of the switches. */
export function throughLoads(section: Section, spot: Spot): ThroughLoads {
  const model = modelOf(section);
  const reach = model.sourceReach();
  const { graph } = model;
  const netOf = (node: number): number => reach.net[node] as number;
  const across = new Map<number, Use[]>();
  const link = (a: number, b: number, name: string | undefined): void => {
    for (const [from, to] of [
      [a, b],
      [b, a],
    ] as const) {
      const list = across.get(netOf(from));
      if (list === undefined) across.set(netOf(from), [{ name, to }]);
      else list.push({ name, to });
    }
  };
  const nameOf = (id: DeviceId): string => graph.devices.get(id)?.device.name ?? id;
  for (const { kind, a, b, device } of graph.edges) {
    if (kind === "switch") link(a, b, undefined);
    else if (kind === "load" && device !== undefined) link(a, b, nameOf(device.id));
  }
  for (const { load, hot, neutral } of pluggedLoads(section.installation.loads, model)) link(hot, neutral, load.name);

  const names = new Set<string>();
  const island = new Set<number>();
  const todo = [model.nodeOf(spot)];
  for (let node = todo.pop(); node !== undefined; node = todo.pop()) {
    if (island.has(netOf(node))) continue;
    island.add(netOf(node));
    for (const { name, to } of across.get(netOf(node)) ?? []) {
      const bits = reach.some(to) & (HOT | NEUTRAL | GROUND);
      if (bits === 0) todo.push(to);
      else if ((bits & HOT) !== 0 && name !== undefined) names.add(name);
    }
  }
  let legs = 0;
  for (const { nodes } of model.placed()) if (island.has(netOf(nodes.neutral))) legs |= reach.some(nodes.hot) & HOT;
  return { names: [...names].sort(), legsMeet: (legs & (legs - 1)) !== 0 };
}
