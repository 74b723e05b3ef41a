import type { Enclosure } from "../model/enclosure.ts";
import {
  type DeviceId,
  type EndKey,
  type JumperId,
  jumperEnd,
  parseEnd,
  type SpliceId,
  type TerminalName,
} from "../model/ids.ts";
import type { At } from "../model/place.ts";
import { landingsOf } from "../queries/landings.ts";

/** Everything inside one enclosure that splices and jumpers make one: no path inside a device counts. */
export interface BoxNet {
  /** Ends of cables, sorted. */
  readonly ends: readonly EndKey[];
  readonly jumpers: readonly JumperId[];
  readonly splices: readonly SpliceId[];
  readonly terminals: readonly { readonly device: DeviceId; readonly terminal: TerminalName }[];
  readonly bond: boolean;
}

/** Key of the point that a place is; undefined for what is capped or loose. */
export function pointKey(at: At): string | undefined {
  switch (at.kind) {
    case "terminal":
      return `t ${at.device}.${at.terminal}`;
    case "splice":
      return `s ${at.splice}`;
    case "bond":
      return "b";
    case "capped":
    case "loose":
      return undefined;
  }
}

interface Growing {
  readonly ends: EndKey[];
  readonly jumpers: Set<JumperId>;
  readonly points: Set<string>;
}

/** Nets of an enclosure, by the key of each of their points. A capped end is in none. */
export function boxNets(enclosure: Enclosure): ReadonlyMap<string, BoxNet> {
  const parent = new Map<string, string>();
  const root = (point: string): string => {
    const up = parent.get(point) ?? point;
    return up === point ? point : root(up);
  };
  const note = (point: string): void => {
    if (!parent.has(point)) parent.set(point, point);
  };
  for (const { at } of Object.values(enclosure.places)) {
    const point = pointKey(at);
    if (point !== undefined) note(point);
  }
  for (const id of Object.keys(enclosure.jumpers) as JumperId[]) {
    const [a, b] = (["a", "b"] as const).map((side) => {
      const at = enclosure.places[jumperEnd(id, side)]?.at;
      return at === undefined ? undefined : pointKey(at);
    });
    if (a !== undefined && b !== undefined) parent.set(root(a), root(b));
  }
  const growing = new Map<string, Growing>();
  for (const point of parent.keys()) {
    const net = growing.get(root(point)) ?? { ends: [], jumpers: new Set(), points: new Set() };
    net.points.add(point);
    growing.set(root(point), net);
  }
  for (const end of (Object.keys(enclosure.places) as EndKey[]).sort()) {
    const at = enclosure.places[end]?.at;
    const point = at === undefined ? undefined : pointKey(at);
    const net = point === undefined ? undefined : growing.get(root(point));
    const parsed = parseEnd(end);
    if (net === undefined || parsed === undefined) continue;
    if (parsed.of === "cable") net.ends.push(end);
    else net.jumpers.add(parsed.jumper);
  }
  const nets = new Map<string, BoxNet>();
  for (const net of growing.values()) {
    const made = asNet(enclosure, net);
    for (const point of net.points) nets.set(point, made);
  }
  return nets;
}

function asNet(enclosure: Enclosure, { ends, jumpers, points }: Growing): BoxNet {
  const { byTerminal } = landingsOf(enclosure);
  const terminals = [...byTerminal.keys()].flatMap((key) => {
    if (!points.has(`t ${key}`)) return [];
    const dot = key.indexOf(".");
    return { device: key.slice(0, dot) as DeviceId, terminal: key.slice(dot + 1) as TerminalName };
  });
  const splices = (Object.keys(enclosure.splices) as SpliceId[]).filter((id) => points.has(`s ${id}`)).sort();
  return { ends, jumpers: [...jumpers].sort(), splices, terminals, bond: points.has("b") };
}
