import type { DeviceUse, LoopUse, MakeUpIntent, SupplyUse } from "../answers/make-up-intent.ts";
import { getDeviceType } from "../catalog/device-types.ts";
import type { Device } from "../model/device.ts";
import type { Box, Enclosure } from "../model/enclosure.ts";
import { type CableId, type ConductorKey, cableEnd, type DeviceId, type EndKey, outletKey } from "../model/ids.ts";
import type { CableIn } from "../queries/cables-into.ts";
import { inOrder } from "../queries/in-order.ts";
import type { Beyond } from "./beyond-cable.ts";
import { type BoxNet, boxNets, pointKey } from "./box-nets.ts";
import { guardPorts, portOf, type SwitchPorts, switchPorts } from "./device-ports.ts";
import { type HalfPorts, halfPorts } from "./half-ports.ts";
import { hotKeysOf, type Port, USUAL_STYLE } from "./joint-group.ts";

/** A cable of a box with what it leads to. */
export interface Here extends CableIn {
  readonly beyond: Beyond;
}

interface Known {
  readonly box: Box;
  readonly here: readonly Here[];
  readonly supply: Here | undefined;
  readonly guard: Device | undefined;
  readonly protects: ReadonlyMap<CableId, boolean>;
}

/** A device that uses current, or one half of it, and what it is on now. */
interface Part {
  readonly device: Device;
  readonly part: DeviceUse;
  /** It is on nothing yet. */
  readonly isAnywhere: boolean;
}

/** What a box does now, by what is joined in it; where nothing is joined yet, by what its cables lead to. */
export const usualIntent = (known: Known): MakeUpIntent => new Reading(known).intent();

class Reading {
  readonly #known: Known;
  readonly #nets: ReadonlyMap<string, BoxNet>;
  readonly #switches: readonly { readonly device: Device; readonly ports: SwitchPorts }[];
  readonly #others: readonly Here[];
  /** By cable: the switch here that switches it. */
  readonly #switchOf = new Map<CableId, DeviceId>();
  readonly #taken = new Set<DeviceId>();

  constructor(known: Known) {
    this.#known = known;
    this.#nets = boxNets(known.box);
    this.#others = known.here.filter(({ cable }) => cable.id !== known.supply?.cable.id);
    this.#switches = inOrder(known.box.devices).flatMap((device) => {
      const ports = switchPorts(device);
      return ports === undefined || getDeviceType(device.type).outlets.length > 0 ? [] : { device, ports };
    });
    for (const { cable, side } of this.#others) {
      const by = this.#outOf(this.#netOfEnd(hotEnd(cable, side)));
      if (by !== undefined) this.#take(cable.id, by);
    }
  }

  intent(): MakeUpIntent {
    const { box, guard, supply } = this.#known;
    const eaters = inOrder(box.devices).filter((device) => isUser(device) || halfPorts(device) !== undefined);
    const parts = eaters.flatMap((device) => this.#partsOf(device));
    for (const { part } of parts) if (part.switch !== undefined) this.#taken.add(part.switch);
    this.#giveIdleSwitches(eaters.some(isUser));
    const loops = this.#others.filter(
      ({ cable, beyond }) => !this.#switchOf.has(cable.id) && eaters.length > 0 && isSwitchAlone(beyond.boxes),
    );
    const threeWay = this.#switches.find(({ ports }) => ports.travellers.length > 0);
    const travellers = this.#others.filter(
      ({ cable, beyond }) =>
        threeWay !== undefined &&
        !this.#switchOf.has(cable.id) &&
        hotKeysOf(cable).length > 1 &&
        beyond.boxes.some(hasTravellers),
    );
    const isOther = new Set([...loops, ...travellers].map(({ cable }) => cable.id));
    const legOf = (net: BoxNet | undefined): { readonly leg?: ConductorKey } => this.#legOf(net);
    const made = loops.map((loop) => this.#loop(loop, parts));
    const fed = new Set(
      made.flatMap(({ feedsDevices, feedsHalves = [] }) => [...feedsDevices, ...feedsHalves] as readonly string[]),
    );
    const idle = this.#switches.find(({ device, ports }) => ports.kind === "plain" && !this.#taken.has(device.id));
    return {
      supply: this.#supplyUse(eaters, supply),
      downstream: this.#others
        .filter(({ cable }) => !this.#switchOf.has(cable.id) && !isOther.has(cable.id))
        .map(({ cable, side }) => ({
          cable: cable.id,
          protect: this.#protect(cable.id),
          ...legOf(this.#netOfEnd(hotEnd(cable, side))),
        })),
      switched: [...this.#switchOf].map(([cable, by]) => ({ cable, switch: by, protect: this.#protect(cable) })),
      loops: made,
      travellers: travellers.flatMap(({ cable }) =>
        threeWay === undefined ? [] : { cable: cable.id, switch: threeWay.device.id, protect: this.#protect(cable.id) },
      ),
      devices: parts
        .filter(({ part }) => !fed.has(outletKey(part.device, part.half)))
        .map(({ part, isAnywhere, device }) =>
          // A light that is on nothing yet hangs on the switch that nothing else does.
          isAnywhere && idle !== undefined && guard?.id !== device.id ? { ...part, switch: idle.device.id } : part,
        ),
      replace: [],
      style: USUAL_STYLE,
    };
  }

  #take(cable: CableId, by: DeviceId): void {
    this.#switchOf.set(cable, by);
    this.#taken.add(by);
  }

  /** A switch that nothing is on yet is for the cable that leads to lights alone, a double-pole one for the only cable. */
  #giveIdleSwitches(hasOwnUser: boolean): void {
    for (const { device, ports } of this.#switches) {
      if (this.#taken.has(device.id)) continue;
      const free = this.#others.filter(({ cable }) => !this.#switchOf.has(cable.id));
      const [only] = free;
      const found =
        ports.kind === "double-pole"
          ? free.length === 1
            ? only
            : undefined
          : ports.kind === "plain"
            ? free.find(({ beyond }) => !hasOwnUser && leadsToLights(beyond.boxes))
            : undefined;
      if (found !== undefined) this.#take(found.cable.id, device.id);
    }
  }

  /** A device that uses current, half by half where it has halves, with what each is on now. */
  #partsOf(device: Device): readonly Part[] {
    const halves: readonly (HalfPorts | undefined)[] = halfPorts(device) ?? [undefined];
    return halves.map((one) => {
      const net = this.#netOfPort(one?.hot ?? portOf(device, "hot"));
      const by = this.#outOf(net);
      return {
        device,
        part: {
          device: device.id,
          protect: false,
          ...(one !== undefined && { half: one.half }),
          ...(by !== undefined ? { switch: by } : this.#legOf(net)),
        },
        isAnywhere: net === undefined && isUser(device),
      };
    });
  }

  /** What hangs on the return of a loop; where nothing does yet, everything here that uses current. */
  #loop({ cable, side }: Here, parts: readonly Part[]): LoopUse {
    const back = hotKeysOf(cable).at(-1);
    const net = this.#netOfEnd(back === undefined ? undefined : cableEnd(cable.id, back as ConductorKey, side));
    const on = parts.filter(({ device, part }) => {
      const own = halfPorts(device)?.find(({ half }) => half === part.half)?.hot ?? portOf(device, "hot");
      return net !== undefined && this.#netOfPort(own) === net;
    });
    const fed = on.length > 0 ? on : parts.filter(({ part, isAnywhere }) => isAnywhere && part.switch === undefined);
    const halves = fed.flatMap(({ part }) => (part.half === undefined ? [] : outletKey(part.device, part.half)));
    return {
      cable: cable.id,
      protect: this.#protect(cable.id),
      feedsDevices: fed.flatMap(({ part }) => (part.half === undefined ? part.device : [])),
      feedsCables: this.#others.flatMap((other) =>
        net !== undefined && other.cable.id !== cable.id && this.#netOfEnd(hotEnd(other.cable, other.side)) === net
          ? other.cable.id
          : [],
      ),
      ...(halves.length > 0 && { feedsHalves: halves }),
    };
  }

  #supplyUse(eaters: readonly Device[], supply: Here | undefined): SupplyUse {
    const cable = supply?.cable.id ?? ("" as CableId);
    const [only] = this.#switches;
    const hots = supply === undefined ? 0 : hotKeysOf(supply.cable).length;
    if (only?.ports.kind === "double-pole" && hots === 1) return { cable, as: "two-hots" };
    if (this.#others.length > 0 || only === undefined || eaters.length > 0)
      return { cable, as: "feed", ...this.#legOf(this.#netOfPort(this.#guardLine())) };
    return { cable, as: only.ports.kind === "plain" ? "switch-loop" : "travellers", switch: only.device.id };
  }

  #guardLine(): Port | undefined {
    const { guard } = this.#known;
    return guard && guardPorts(guard)?.lineHot;
  }

  #protect = (cable: CableId): boolean => this.#known.guard !== undefined && this.#known.protects.get(cable) === true;

  /** Leg of a multiwire supply that a net is on, where it is another than the first. */
  #legOf(net: BoxNet | undefined): { readonly leg?: ConductorKey } {
    const { supply } = this.#known;
    const keys = supply === undefined ? [] : (hotKeysOf(supply.cable) as readonly ConductorKey[]);
    const leg = keys
      .slice(1)
      .find((key) => supply !== undefined && net?.ends.includes(cableEnd(supply.cable.id, key, supply.side)));
    return leg === undefined ? {} : { leg };
  }

  /** The switch here whose output is in a net. */
  #outOf(net: BoxNet | undefined): DeviceId | undefined {
    return net?.terminals.find(({ device, terminal }) => {
      const ports = this.#switches.find((one) => one.device.id === device)?.ports;
      const outs = [...(ports?.out ?? []), ...(ports?.poles ?? []).map(([, out]) => out)];
      return outs.some((port) => port.kind === "terminal" && port.terminals.includes(terminal));
    })?.device;
  }

  #netOfEnd(end: EndKey | undefined): BoxNet | undefined {
    const at = end === undefined ? undefined : this.#known.box.places[end]?.at;
    const key = at === undefined ? undefined : pointKey(at);
    return key === undefined ? undefined : this.#nets.get(key);
  }

  #netOfPort(port: Port | undefined): BoxNet | undefined {
    if (port?.kind !== "terminal") return undefined;
    return port.terminals.flatMap((name) => this.#nets.get(`t ${port.device}.${name}`) ?? [])[0];
  }
}

function hotEnd(cable: Here["cable"], side: Here["side"]): EndKey | undefined {
  const [key] = hotKeysOf(cable);
  return key === undefined ? undefined : cableEnd(cable.id, key as ConductorKey, side);
}

const USERS: ReadonlySet<string> = new Set(["luminaire", "fan", "alarm", "appliance"]);
const isUser = ({ type }: Device): boolean => USERS.has(getDeviceType(type).family);

const devicesOf = (boxes: readonly Enclosure[]): readonly Device[] => boxes.flatMap(({ devices }) => inOrder(devices));

const LIGHTS: ReadonlySet<string> = new Set(["luminaire", "fan"]);

const leadsToLights = (boxes: readonly Enclosure[]): boolean => {
  const devices = devicesOf(boxes);
  return devices.length > 0 && devices.every(({ type }) => LIGHTS.has(getDeviceType(type).family));
};

const isSwitchAlone = (boxes: readonly Enclosure[]): boolean => {
  const devices = devicesOf(boxes);
  return boxes.length === 1 && devices.length === 1 && devices.every((one) => switchPorts(one)?.kind === "plain");
};

const hasTravellers = ({ devices }: Enclosure): boolean =>
  inOrder(devices).some((device) => (switchPorts(device)?.travellers.length ?? 0) > 0);
