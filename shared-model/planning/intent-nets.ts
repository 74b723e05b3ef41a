import type { MakeUpIntent } from "../answers/make-up-intent.ts";
import { getDeviceType } from "../catalog/device-types.ts";
import type { Device } from "../model/device.ts";
import type { Box } from "../model/enclosure.ts";
import type { CableId, ConductorKey, DeviceId, Half } from "../model/ids.ts";
import type { Installation } from "../model/project.ts";
import { inOrder } from "../queries/in-order.ts";
import { nameOfHalf } from "../queries/outlets-of.ts";
import { pointKey } from "./box-nets.ts";
import { type GuardPorts, guardPorts, portOf, type SwitchPorts, switchPorts } from "./device-ports.ts";
import { type BoxSide, type CableHere, GroupBuilder } from "./group-builder.ts";
import { type HalfPorts, halfPorts } from "./half-ports.ts";
import { INTENT_WORDS } from "./intent-words.ts";
import type { MakeUpRefusal, Port } from "./joint-group.ts";

/** Thrown inside and caught at the door: an intent is refused at the first thing that cannot be. */
export class Refusing extends Error {
  constructor(readonly refusal: MakeUpRefusal) {
    super(refusal.message);
  }
}

export function no(code: string, message: string, path: string): never {
  throw new Refusing({ code, message, path });
}

/** What the uses of an intent share: each cable has one, each hot a side and a leg, each neutral the side of its hot. */
export class IntentNets {
  protected readonly box: Box;
  protected readonly intent: MakeUpIntent;
  protected readonly builder: GroupBuilder;
  protected readonly uses = new Map<CableId, string>();
  protected readonly guard: { readonly device: Device; readonly ports: GuardPorts } | undefined;
  protected readonly switchesFed = new Map<DeviceId, string>();
  protected readonly devicesDone = new Set<DeviceId>();
  /** By "device/half": what each half was given. */
  protected readonly halvesDone = new Map<string, UseOf & Pick<HalfPorts, "hot" | "neutral">>();
  protected readonly supply: CableHere;

  constructor(installation: Installation, box: Box, intent: MakeUpIntent) {
    this.box = box;
    this.intent = intent;
    this.builder = new GroupBuilder(installation, box, intent.supply.cable);
    this.guard = inOrder(box.devices).flatMap((device) => {
      const ports = guardPorts(device);
      return ports === undefined ? [] : [{ device, ports }];
    })[0];
    this.supply = this.cable(intent.supply.cable, "/supply/cable");
  }

  protected cable(id: CableId, path: string): CableHere {
    const here = this.builder.cables.get(id);
    if (this.builder.cables.size === 0) return no("cable-not-here", INTENT_WORDS.noCables(this.box.name), path);
    if (here === undefined) return no("cable-not-here", INTENT_WORDS.cableNotHere(id, this.box.name), path);
    const before = this.uses.get(id);
    if (before !== undefined) no("cable-used-twice", INTENT_WORDS.cableUsed(here.cable.name, before), path);
    this.uses.set(id, path);
    return here;
  }

  /** Hot conductors of the supply: where two hots come by a cable that was made with one, its white is the second. */
  protected get legs(): readonly ConductorKey[] {
    const { hots, neutrals } = this.supply;
    return this.intent.supply.as === "two-hots" && hots.length === 1 ? [...hots, ...neutrals.slice(0, 1)] : hots;
  }

  protected leg(asked: ConductorKey | undefined, path: string): ConductorKey {
    const { cable } = this.supply;
    const hots = this.legs;
    const leg = asked ?? this.intent.supply.leg ?? hots[0];
    if (leg !== undefined && hots.includes(leg)) return leg;
    return no("no-such-leg", INTENT_WORDS.noConductor(cable.name, leg ?? "", hots.join(", ")), path);
  }

  /** Where the intent names none, what hangs on the supply of the devices; where it is on another leg, a net of that leg. */
  protected hot(side: BoxSide, leg: ConductorKey | undefined, path: string): string {
    const { as } = this.intent.supply;
    if (as !== "feed" && as !== "two-hots") {
      if (side === "D") this.noGuard(path);
      return as === "switch-loop"
        ? "HL"
        : no("no-hot-here", INTENT_WORDS.noHotHere(this.box.name, this.supply.cable.name), path);
    }
    const own = this.leg(undefined, "/supply/leg");
    const wanted = this.leg(leg, path);
    if (wanted === own) return `H${side}`;
    if (side === "D") no("other-leg", INTENT_WORDS.otherLeg, path);
    return `H_${wanted}`;
  }

  protected side(protect: boolean, path: string): BoxSide {
    if (protect && this.guard === undefined) this.noGuard(path);
    return protect ? "D" : "L";
  }

  protected noGuard(path: string): never {
    return no("no-ground-fault-device", INTENT_WORDS.noGuard(this.box.name), path);
  }

  protected switch(id: DeviceId | undefined, path: string): SwitchPorts {
    const device = id === undefined ? undefined : this.box.devices[id];
    if (id === undefined || device === undefined)
      return no("no-such-switch", INTENT_WORDS.noSwitch(this.box.name, id ?? ""), path);
    this.devicesDone.add(id);
    return (
      switchPorts(device) ??
      no(
        "not-a-switch",
        switchesApart(device) ? INTENT_WORDS.switchesApart(device.name) : INTENT_WORDS.notASwitch(device.name),
        path,
      )
    );
  }

  /** The name of the net that a switch gives out, with its feed joined to a side the first time it is named. */
  protected switchedBy(id: DeviceId, side: BoxSide, leg: ConductorKey | undefined, path: string): string {
    const ports = this.switch(id, `${path}/switch`);
    const net = `SW_${nameIn(this.box, id)}`;
    const before = this.switchesFed.get(id);
    if (before === "travellers") {
      if (ports.kind !== "3-way") no("not-a-switch", INTENT_WORDS.passesOn(nameIn(this.box, id)), `${path}/switch`);
      this.builder.port(net, "hot", ports.feed);
      this.switchesFed.set(id, net);
      return net;
    }
    if (before === net) return net;
    if (before !== undefined) no("switch-used-twice", INTENT_WORDS.switchUsed(nameIn(this.box, id)), `${path}/switch`);
    if (ports.kind === "double-pole") no("two-poles", INTENT_WORDS.twoPoles(nameIn(this.box, id)), `${path}/switch`);
    if (ports.kind !== "plain")
      no("travellers-missing", INTENT_WORDS.oneOfSeveral(nameIn(this.box, id)), `${path}/switch`);
    const isTurned = ports.alike && this.isOnFeed(ports, id);
    const out = ports.out[0];
    const feed = ports.feed;
    this.builder.port(this.hot(side, leg, path), "hot", isTurned ? out : feed);
    this.builder.port(net, "hot", isTurned ? feed : out);
    if (ports.neutral !== undefined) this.builder.port(`N${side}`, "neutral", ports.neutral);
    this.switchesFed.set(id, net);
    return net;
  }

  /** The screws of a plain switch are alike: what it switches stays on the one it is on. */
  protected isOnFeed({ feed }: SwitchPorts, id: DeviceId): boolean {
    const switched = new Set(this.intent.switched.filter((use) => use.switch === id).map(({ cable }) => cable));
    return [...switched].some((cable) => {
      const here = this.builder.cables.get(cable);
      return (here?.hots ?? []).some((key) => {
        const at = here === undefined ? undefined : this.box.places[here.end(key)]?.at;
        return (
          at !== undefined &&
          feed?.kind === "terminal" &&
          feed.terminals.some((name) => pointKey(at) === `t ${feed.device}.${name}`)
        );
      });
    });
  }

  protected neutralOf(here: CableHere, side: BoxSide, path: string): void {
    const [neutral] = here.neutrals;
    if (neutral === undefined) no("no-neutral", INTENT_WORDS.noReturn(here.cable.name), `${path}/cable`);
    this.builder.conductor(`N${side}`, "neutral", here, neutral);
  }

  /** Travellers pair to pair; each stays on the screw that it is on. */
  protected pair(here: CableHere, ports: SwitchPorts, which: number, path: string): void {
    const pair = ports.travellers[which];
    const [one, two] = here.hots;
    if (pair === undefined || one === undefined || two === undefined)
      no("no-travellers", INTENT_WORDS.noTravellers(here.cable.name), path);
    const isOn = (key: ConductorKey, port: Port): boolean => {
      const at = this.box.places[here.end(key)]?.at;
      return at !== undefined && port.kind === "terminal" && pointKey(at) === `t ${port.device}.${port.terminals[0]}`;
    };
    const turned = isOn(one, pair[1]) || isOn(two, pair[0]);
    [one, two].forEach((key, index) => {
      const net = `T${2 * which + index + 1}`;
      this.builder.conductor(net, "hot", here, key);
      this.builder.port(net, "hot", pair[turned ? 1 - index : index]);
    });
  }

  /** A device that uses current: its hot in a net, its neutral on a side. */
  protected use(id: DeviceId, net: string, side: BoxSide, path: string, half?: Half): void {
    const device = this.box.devices[id];
    if (device === undefined) no("no-such-device", INTENT_WORDS.noDevice(this.box.name, id), path);
    const halves = halfPorts(device);
    if (halves !== undefined) {
      this.#feedHalves(device, halves, half, { net, side, path });
      return;
    }
    if (half !== undefined) no("no-such-half", INTENT_WORDS.isWhole(device.name), path);
    if (this.devicesDone.has(id)) no("device-used-twice", INTENT_WORDS.deviceUsed(device.name), path);
    this.devicesDone.add(id);
    const guard = guardPorts(device);
    const hot = guard?.lineHot ?? portOf(device, "hot");
    const neutral = guard?.lineNeutral ?? portOf(device, "neutral");
    if (hot === undefined || neutral === undefined) no("make-up-by-hand", INTENT_WORDS.byHand(device.name), path);
    this.builder.port(net, "hot", hot);
    this.builder.port(`N${side}`, "neutral", neutral);
  }

  /** One half, or all of them alike. What the halves share, a neutral or a hot, must be the same for both. */
  #feedHalves(device: Device, halves: readonly HalfPorts[], half: Half | undefined, to: UseOf): void {
    const { net, side, path } = to;
    for (const one of halves) {
      if (half !== undefined && one.half !== half) continue;
      const key = `${device.id}/${one.half}`;
      if (this.halvesDone.has(key)) no("device-used-twice", INTENT_WORDS.halfUsed(nameOfHalf(device, one.half)), path);
      this.halvesDone.set(key, { ...to, hot: one.hot, neutral: one.neutral });
      const others = halves.flatMap((other) => this.halvesDone.get(`${device.id}/${other.half}`) ?? []);
      const before = others.filter((other) => other.hot !== one.hot);
      const sharesHot = before.find(({ hot }) => isSamePort(hot, one.hot));
      const sharesNeutral = before.find(({ neutral }) => isSamePort(neutral, one.neutral));
      if (sharesHot !== undefined && sharesHot.net !== net)
        no("halves-share", INTENT_WORDS.halvesShareHot(device.name), path);
      if (sharesNeutral !== undefined && sharesNeutral.side !== side)
        no("halves-share", INTENT_WORDS.halvesShareNeutral(device.name), path);
      if (sharesHot === undefined) this.builder.port(net, "hot", one.hot);
      if (sharesNeutral === undefined) this.builder.port(`N${side}`, "neutral", one.neutral);
    }
    if (halves.every((one) => this.halvesDone.has(`${device.id}/${one.half}`))) this.devicesDone.add(device.id);
  }
}

interface UseOf {
  readonly net: string;
  readonly side: BoxSide;
  readonly path: string;
}

const isSamePort = (one: Port, other: Port): boolean =>
  one.kind === "terminal" && other.kind === "terminal" && one.terminals.join() === other.terminals.join();

const switchesApart = ({ type, hotTab }: Device): boolean =>
  hotTab === "removed" && getDeviceType(type).positions.length > 0;

export const nameIn = ({ devices }: Box, id: DeviceId | undefined): string =>
  id === undefined ? "" : (devices[id]?.name ?? id);
