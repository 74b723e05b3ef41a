import type { BoxConditions, Condition } from "../answers/energised.ts";
import type { Cable } from "../model/cable.ts";
import type { Device } from "../model/device.ts";
import type { Enclosure } from "../model/enclosure.ts";
import {
  type CableId,
  type ConductorKey,
  cableEnd,
  type DeviceId,
  type EnclosureId,
  type EndKey,
  type SpliceId,
} from "../model/ids.ts";
import type { Installation } from "../model/project.ts";
import { outletsOf } from "../queries/outlets-of.ts";
import { terminalsOf } from "../queries/terminals-of.ts";
import type { Circuit } from "../solver/circuit/circuit.ts";
import { type EnclosureNets, enclosureNets } from "../solver/circuit/enclosure-nets.ts";
import { ConditionPool, type Conditions, firstNodeOf } from "./conditions.ts";

/** Conditions of everything that is drawn, by enclosure and by cable. */
export interface Lit {
  readonly boxes: Readonly<Record<EnclosureId, BoxConditions>>;
  readonly cables: Readonly<Record<CableId, Readonly<Record<ConductorKey, Condition>>>>;
}

/**
 * Tells how everything that is drawn stands, and keeps what it told: an enclosure or a cable in which nothing stands
 * otherwise than before is the same object again. To solve a house again costs little beside telling all of it.
 */
export class LitBoxes {
  private boxes = new Map<EnclosureId, ToldBox>();
  private cables = new Map<CableId, ToldCable>();
  /** For the conditions that are told: their identity tells what stands otherwise. */
  readonly pool = new ConditionPool();

  tell(conditions: Conditions, circuit: Circuit, { enclosures, cables }: Installation): Lit {
    const boxes = new Map<EnclosureId, ToldBox>();
    for (const enclosure of Object.values(enclosures))
      boxes.set(enclosure.id, tellBox(conditions, circuit, enclosure, this.boxes.get(enclosure.id)));
    const lines = new Map<CableId, ToldCable>();
    for (const cable of Object.values(cables)) lines.set(cable.id, tellCable(cable, boxes, this.cables.get(cable.id)));
    this.boxes = boxes;
    this.cables = lines;
    return { boxes: tableOf(boxes, ({ box }) => box), cables: tableOf(lines, ({ own }) => own) };
  }
}

function tableOf<K extends string, T, V>(told: ReadonlyMap<K, T>, of: (one: T) => V): Record<K, V> {
  const table = {} as Record<K, V>;
  for (const [key, one] of told) table[key] = of(one);
  return table;
}

/** What was told of an enclosure, and the condition of each of its spots. */
interface ToldBox {
  readonly enclosure: Enclosure;
  readonly at: readonly (Condition | undefined)[];
  readonly box: BoxConditions;
}

function tellBox(conditions: Conditions, circuit: Circuit, enclosure: Enclosure, before: ToldBox | undefined): ToldBox {
  const spots = spotsOf(enclosure);
  const first = firstNodeOf(circuit, enclosure);
  const at = (net: number): Condition | undefined =>
    net === NOWHERE || first === undefined ? undefined : conditions.ofNode(first + net);
  if (before?.enclosure === enclosure && spots.nets.every((net, spot) => at(net) === before.at[spot])) return before;
  const now = Array.from(spots.nets, at);
  return { enclosure, at: now, box: boxOf(spots, now) };
}

/** A spot without metal. */
const NOWHERE = -1;

/** Everything in an enclosure that has a condition, with its net: ends, splices, then places of devices, then the bond. */
interface Spots {
  readonly ends: readonly EndKey[];
  readonly splices: readonly SpliceId[];
  readonly devices: readonly { readonly id: DeviceId; readonly nodes: readonly string[] }[];
  readonly nets: Int32Array;
}

const known = new WeakMap<Enclosure, Spots>();

/** Cached by the identity of the enclosure. */
function spotsOf(enclosure: Enclosure): Spots {
  let spots = known.get(enclosure);
  if (spots === undefined) {
    spots = findSpots(enclosure, enclosureNets(enclosure));
    known.set(enclosure, spots);
  }
  return spots;
}

function findSpots(enclosure: Enclosure, nets: EnclosureNets): Spots {
  const ends = Object.keys(enclosure.places) as EndKey[];
  const splices = Object.keys(enclosure.splices) as SpliceId[];
  const devices = Object.values(enclosure.devices).map((device) => ({ id: device.id, nodes: [...nodesOf(device)] }));
  return {
    ends,
    splices,
    devices,
    nets: Int32Array.from(
      [
        ...ends.map(nets.netOfEnd),
        ...splices.map(nets.netOfSplice),
        ...devices.flatMap(({ id, nodes }) => nodes.map((node) => nets.netOfNode(id, node))),
        nets.netOfPoint[0],
      ],
      (net) => net ?? NOWHERE,
    ),
  };
}

/** Terminals and contacts of outlets. */
function nodesOf(device: Device): ReadonlySet<string> {
  const contacts = outletsOf(device).flatMap(({ hot, neutral, ground }) => [hot, neutral, ...(ground ? [ground] : [])]);
  return new Set([...terminalsOf(device).map(({ name }) => name), ...contacts]);
}

function boxOf({ ends, splices, devices }: Spots, at: readonly (Condition | undefined)[]): BoxConditions {
  let next = 0;
  const table = <K extends string>(keys: readonly K[]): Record<K, Condition> => {
    const found = {} as Record<K, Condition>;
    for (const key of keys) {
      const condition = at[next++];
      if (condition !== undefined) found[key] = condition;
    }
    return found;
  };
  const box = {
    ends: table(ends),
    splices: table(splices),
    devices: Object.fromEntries(devices.map(({ id, nodes }) => [id, table(nodes)])),
  };
  const bond = at[next];
  return bond === undefined ? box : { ...box, bond };
}

interface ToldCable {
  readonly cable: Cable;
  /** The enclosure that it was told by. */
  readonly by: BoxConditions | undefined;
  readonly own: Lit["cables"][CableId];
}

/** An open conductor is one metal all along: the end that is in an enclosure tells of it. */
function tellCable(cable: Cable, boxes: ReadonlyMap<EnclosureId, ToldBox>, before: ToldCable | undefined): ToldCable {
  const { id, conductors, sides } = cable;
  const [side, where] = "enclosure" in sides.a ? (["a", sides.a] as const) : (["b", sides.b] as const);
  const by = "enclosure" in where ? boxes.get(where.enclosure)?.box : undefined;
  if (before !== undefined && before.cable === cable && before.by === by) return before;
  const own: Record<ConductorKey, Condition> = {};
  for (const key of Object.keys(conductors) as ConductorKey[]) {
    const condition = by?.ends[cableEnd(id, key, side)];
    if (condition !== undefined) own[key] = condition;
  }
  return { cable, by, own: before !== undefined && isSame(own, before.own) ? before.own : own };
}

function isSame(one: ToldCable["own"], other: ToldCable["own"]): boolean {
  const keys = Object.keys(one) as ConductorKey[];
  return keys.length === Object.keys(other).length && keys.every((key) => one[key] === other[key]);
}
