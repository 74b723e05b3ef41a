import type { Enclosure } from "../model/enclosure.ts";
import type { DeviceId, EndKey, SpliceId, TerminalName } from "../model/ids.ts";

/** A conductor end in a hole of a terminal. */
export interface Landing {
  readonly end: EndKey;
  readonly hole: number;
}

/** Who is where inside one enclosure. */
export interface Landings {
  readonly bySplice: ReadonlyMap<SpliceId, readonly EndKey[]>;
  readonly byTerminal: ReadonlyMap<string, readonly Landing[]>;
  readonly bonded: readonly EndKey[];
}

const cache = new WeakMap<Enclosure["places"], Landings>();

/** Key of a terminal inside its enclosure. */
export const terminalKey = (device: DeviceId, terminal: TerminalName): string => `${device}.${terminal}`;

/** Members of every splice and terminal of an enclosure, sorted by end key. Cached by the place table. */
export function landingsOf(enclosure: Enclosure): Landings {
  let landings = cache.get(enclosure.places);
  if (landings === undefined) {
    landings = build(enclosure);
    cache.set(enclosure.places, landings);
  }
  return landings;
}

export const membersOf = (enclosure: Enclosure, splice: SpliceId): readonly EndKey[] =>
  landingsOf(enclosure).bySplice.get(splice) ?? [];

export const landedAt = (enclosure: Enclosure, device: DeviceId, terminal: TerminalName): readonly Landing[] =>
  landingsOf(enclosure).byTerminal.get(terminalKey(device, terminal)) ?? [];

function build(enclosure: Enclosure): Landings {
  const bySplice = new Map<SpliceId, EndKey[]>();
  const byTerminal = new Map<string, Landing[]>();
  const bonded: EndKey[] = [];
  for (const end of (Object.keys(enclosure.places) as EndKey[]).sort()) {
    const at = enclosure.places[end]?.at;
    if (at === undefined) continue;
    if (at.kind === "splice") push(bySplice, at.splice, end);
    else if (at.kind === "terminal") push(byTerminal, terminalKey(at.device, at.terminal), { end, hole: at.hole });
    else if (at.kind === "bond") bonded.push(end);
  }
  return { bySplice, byTerminal, bonded };
}

function push<K, V>(map: Map<K, V[]>, key: K, value: V): void {
  const list = map.get(key);
  if (list === undefined) map.set(key, [value]);
  else list.push(value);
}
