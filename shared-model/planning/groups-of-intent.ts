import type { MakeUpIntent } from "../answers/make-up-intent.ts";
import { getDeviceType } from "../catalog/device-types.ts";
import type { Box } from "../model/enclosure.ts";
import { type DeviceId, type EndKey, parseOutlet } from "../model/ids.ts";
import type { Installation } from "../model/project.ts";
import { inOrder } from "../queries/in-order.ts";
import { nameOfHalf } from "../queries/outlets-of.ts";
import type { WireSize } from "../units/wire-size.ts";
import { groundPort, guardPorts, type SwitchPorts } from "./device-ports.ts";
import type { BoxSide, CableHere, GroupBuilder } from "./group-builder.ts";
import { halfPorts } from "./half-ports.ts";
import { IntentNets, nameIn, no, Refusing } from "./intent-nets.ts";
import { INTENT_WORDS } from "./intent-words.ts";
import { type GroupRole, type JointGroup, type Planned, planned } from "./joint-group.ts";

/** What an intent comes to: nets, ends that nothing needs, and whites that carry a hot and are to be marked so. */
export interface IntendedGroups {
  readonly groups: readonly JointGroup[];
  readonly spare: readonly EndKey[];
  readonly reidentified: readonly EndKey[];
  /** The ground-fault device that has the protected ones on its LOAD. */
  readonly guard?: DeviceId;
}

export interface LeastSizes {
  readonly circuit: WireSize | undefined;
  readonly ground: WireSize | undefined;
}

/**
 * The nets of a box from what it is to do. Each cable's hot and neutral go to the same side of the ground-fault device,
 * and the neutral of a switched cable to the side that feeds its switch: no white is ever left on the other side.
 * @param grounded Whether an equipment ground arrives in the box; where none does, none is passed on.
 */
export function groupsOfIntent(
  installation: Installation,
  box: Box,
  intent: MakeUpIntent,
  least: LeastSizes,
  grounded: boolean,
): Planned<IntendedGroups> {
  try {
    return planned(new Intending(installation, box, intent).groups(least, grounded));
  } catch (error) {
    if (error instanceof Refusing) return { ok: false, refusal: error.refusal };
    throw error;
  }
}

class Intending extends IntentNets {
  #returns = 0;

  groups({ circuit, ground }: LeastSizes, grounded: boolean): IntendedGroups {
    this.#feed();
    this.#guardOnSides();
    this.intent.downstream.forEach((use, index) => {
      this.#downstream(use, `/downstream/${index}`);
    });
    this.intent.switched.forEach((use, index) => {
      this.#switched(use, `/switched/${index}`);
    });
    this.intent.loops.forEach((use, index) => {
      this.#loop(use, `/loops/${index}`);
    });
    this.intent.travellers.forEach((use, index) => {
      this.#travellersOn(use, `/travellers/${index}`);
    });
    this.intent.devices.forEach((use, index) => {
      this.#device(use, `/devices/${index}`);
    });
    this.#everythingHasAUse();
    if (grounded) this.#grounds();
    const multiwire = this.supply.hots.length > 1 && this.intent.supply.as === "feed";
    const groups = this.builder.groups((role) => (role === "ground" ? ground : circuit), multiwire);
    return {
      groups,
      spare: this.builder.spare(),
      reidentified: [...this.builder.reidentified],
      ...(this.guard !== undefined && { guard: this.guard.device.id }),
    };
  }

  #feed(): void {
    const { as, switch: id } = this.intent.supply;
    const here = this.supply;
    const builder = this.builder;
    const [neutral] = here.neutrals;
    if (as === "two-hots") {
      if (this.legs.length < 2) no("one-hot", INTENT_WORDS.oneHot(here.cable.name), "/supply/cable");
      const own = this.leg(undefined, "/supply/leg");
      for (const key of this.legs) builder.conductor(key === own ? "HL" : `H_${key}`, "hot", here, key);
      return;
    }
    if (as === "feed") {
      if (neutral === undefined)
        no("no-neutral", INTENT_WORDS.noNeutral(here.cable.name, this.box.name), "/supply/cable");
      if (here.hots.length === 0) no("no-hot", INTENT_WORDS.noHot(here.cable.name, this.box.name), "/supply/cable");
      const own = this.leg(undefined, "/supply/leg");
      for (const key of here.hots) builder.conductor(key === own ? "HL" : `H_${key}`, "hot", here, key);
      builder.conductor("NL", "neutral", here, neutral);
      return;
    }
    const ports = this.switch(id, "/supply/switch");
    if (as === "travellers") {
      this.pair(here, ports, 0, "/supply/cable");
      builder.conductor("NL", "neutral", here, neutral);
      this.switchesFed.set(id as DeviceId, "travellers");
      return;
    }
    // A loop of two: its white brings the feed, its black takes the return, as is common practice. With three there is a neutral.
    const isOld = here.hots.length === 1;
    builder.conductor("HL", "hot", here, isOld ? neutral : here.hots[0]);
    builder.port("HL", "hot", ports.feed);
    builder.conductor("SW", "hot", here, isOld ? here.hots[0] : here.hots[1]);
    builder.port("SW", "hot", ports.out[0]);
    if (!isOld) builder.conductor("NL", "neutral", here, neutral);
    if (ports.neutral !== undefined) {
      if (isOld) no("no-neutral", INTENT_WORDS.needsNeutral(nameIn(this.box, id)), "/supply/switch");
      builder.port("NL", "neutral", ports.neutral);
    }
    this.switchesFed.set(id as DeviceId, "loop");
  }

  #guardOnSides(): void {
    if (this.guard === undefined) return;
    const { device, ports } = this.guard;
    if (this.intent.supply.as !== "feed")
      no("gfci-not-fed", INTENT_WORDS.gfciNotFed(device.name, this.supply.cable.name), "/supply");
    this.builder.port("HL", "hot", ports.lineHot);
    this.builder.port("NL", "neutral", ports.lineNeutral);
    const behind = [
      this.intent.downstream,
      this.intent.switched,
      this.intent.loops,
      this.intent.travellers,
      this.intent.devices,
    ];
    this.devicesDone.add(device.id);
    if (!behind.flat().some(({ protect }) => protect)) return;
    this.builder.port("HD", "hot", ports.loadHot);
    this.builder.port("ND", "neutral", ports.loadNeutral);
  }

  #downstream({ cable: id, protect, leg }: MakeUpIntent["downstream"][number], path: string): void {
    const here = this.cable(id, `${path}/cable`);
    const side = this.side(protect, `${path}/protect`);
    const both = this.supply.hots.length > 1 && here.hots.length > 1 && leg === undefined;
    if (both && side === "D") no("both-legs", INTENT_WORDS.bothLegs(here.cable.name), `${path}/protect`);
    if (both) {
      for (const key of here.hots) {
        const same = this.supply.hots.includes(key) ? key : undefined;
        if (same === undefined)
          no("no-such-leg", INTENT_WORDS.noLeg(here.cable.name, key, this.supply.cable.name), `${path}/leg`);
        this.builder.conductor(this.hot("L", same, `${path}/leg`), "hot", here, key);
      }
    } else this.builder.conductor(this.hot(side, leg, `${path}/leg`), "hot", here, here.hots[0]);
    this.neutralOf(here, side, path);
  }

  #switched({ cable, switch: id, protect, conductor, leg }: MakeUpIntent["switched"][number], path: string): void {
    const two = conductor !== undefined && this.uses.get(cable)?.startsWith("/switched/");
    const here = two ? (this.builder.cables.get(cable) as CableHere) : this.cable(cable, `${path}/cable`);
    const side = this.side(protect, `${path}/protect`);
    const { poles } = this.switch(id, `${path}/switch`);
    if (poles !== undefined) {
      this.#twoPoles(here, poles, id, side, path);
      return;
    }
    const key = conductor ?? here.hots[0];
    if (key === undefined || !here.hots.includes(key))
      no(
        "no-such-conductor",
        INTENT_WORDS.noConductor(here.cable.name, key ?? "", here.hots.join(", ")),
        `${path}/conductor`,
      );
    this.builder.conductor(this.switchedBy(id, side, leg, path), "hot", here, key);
    if (!two) this.neutralOf(here, side, path);
  }

  /** Both hots of a cable, each over one pole; of a cable made with one hot the white is the other. */
  #twoPoles(
    here: CableHere,
    poles: NonNullable<SwitchPorts["poles"]>,
    id: DeviceId,
    side: BoxSide,
    path: string,
  ): void {
    const name = nameIn(this.box, id);
    const outs = here.hots.length > 1 ? here.hots : [...here.hots, ...here.neutrals.slice(0, 1)];
    if (side === "D") no("both-legs", INTENT_WORDS.twoHots(here.cable.name, name), `${path}/protect`);
    if (this.legs.length < 2 || outs.length < 2)
      no(
        "one-hot",
        INTENT_WORDS.oneHotForTwo(name, this.legs.length < 2 ? this.supply.cable.name : here.cable.name),
        `${path}/switch`,
      );
    if (this.switchesFed.has(id)) no("switch-used-twice", INTENT_WORDS.switchedOnce(name), `${path}/switch`);
    this.switchesFed.set(id, `SW_${name}_1`);
    poles.forEach(([feed, out], pole) => {
      this.builder.port(this.hot("L", this.legs[pole], `${path}/leg`), "hot", feed);
      this.builder.port(`SW_${name}_${pole + 1}`, "hot", out);
      this.builder.conductor(`SW_${name}_${pole + 1}`, "hot", here, outs[pole]);
    });
    if (here.hots.length > 1 && here.neutrals.length > 0 && this.intent.supply.as === "feed")
      this.neutralOf(here, "L", path);
  }

  #loop(
    { cable, protect, feedsHalves = [], feedsDevices, feedsCables, leg }: MakeUpIntent["loops"][number],
    path: string,
  ): void {
    const here = this.cable(cable, `${path}/cable`);
    const side = this.side(protect, `${path}/protect`);
    this.#returns += 1;
    const net = this.#returns === 1 ? "SW" : `SW${this.#returns}`;
    const isOld = here.hots.length === 1;
    this.builder.conductor(this.hot(side, leg, path), "hot", here, isOld ? here.neutrals[0] : here.hots[0]);
    this.builder.conductor(net, "hot", here, isOld ? here.hots[0] : here.hots[1]);
    if (!isOld) this.neutralOf(here, side, path);
    feedsCables.forEach((id, index) => {
      const fed = this.cable(id, `${path}/feeds/cables/${index}`);
      this.builder.conductor(net, "hot", fed, fed.hots[0]);
      this.neutralOf(fed, side, `${path}/feeds/cables/${index}`);
    });
    feedsDevices.forEach((id, index) => {
      this.use(id, net, side, `${path}/feeds/devices/${index}`);
    });
    feedsHalves.forEach((key, index) => {
      const { device, half } = parseOutlet(key);
      this.use(device, net, side, `${path}/feeds/devices/${feedsDevices.length + index}`, half);
    });
  }

  #travellersOn({ cable, switch: id, protect, leg }: MakeUpIntent["travellers"][number], path: string): void {
    const here = this.cable(cable, `${path}/cable`);
    const side = this.side(protect, `${path}/protect`);
    const ports = this.switch(id, `${path}/switch`);
    const before = this.switchesFed.get(id);
    if (ports.kind === "3-way" && before === undefined) this.builder.port(this.hot(side, leg, path), "hot", ports.feed);
    else if (!(ports.kind === "4-way" && before === "travellers"))
      no("travellers-misplaced", INTENT_WORDS.misplaced(nameIn(this.box, id), here.cable.name), `${path}/switch`);
    this.pair(here, ports, ports.kind === "4-way" ? 1 : 0, `${path}/cable`);
    this.switchesFed.set(id, "passed-on");
    this.neutralOf(here, side, path);
  }

  #device({ device: id, half, protect, switch: by, leg }: MakeUpIntent["devices"][number], path: string): void {
    if (id === this.guard?.device.id)
      no("guards-itself", INTENT_WORDS.guardsItself(this.guard.device.name), `${path}/device`);
    const side = this.side(protect, `${path}/protect`);
    const net = by === undefined ? this.hot(side, leg, path) : this.switchedBy(by, side, leg, path);
    this.use(id, net, side, `${path}/device`, half);
  }

  #everythingHasAUse(): void {
    for (const { cable } of this.builder.cables.values())
      if (!this.uses.has(cable.id)) no("cable-without-use", INTENT_WORDS.cableUnused(cable.name, this.box.name), "");
    for (const device of inOrder(this.box.devices)) {
      if (this.devicesDone.has(device.id)) continue;
      const { family } = getDeviceType(device.type);
      if (family === "receptacle" || guardPorts(device) !== undefined) {
        const left = halfPorts(device)?.filter(({ half }) => !this.halvesDone.has(`${device.id}/${half}`));
        for (const { half } of left ?? [{ half: undefined }])
          this.#device({ device: device.id, protect: false, ...(half !== undefined && { half }) }, "/devices");
        continue;
      }
      const open = halfPorts(device)?.find(({ half }) => !this.halvesDone.has(`${device.id}/${half}`));
      if (open !== undefined && this.halvesDone.size > 0)
        no("device-without-use", INTENT_WORDS.halfUnused(nameOfHalf(device, open.half), this.box.name), "");
      no("device-without-use", INTENT_WORDS.deviceUnused(device.name, this.box.name), "");
    }
  }

  #grounds(): void {
    const add = (what: Parameters<GroupBuilder["add"]>[2]): void =>
      this.builder.add("E", "ground" satisfies GroupRole, what);
    for (const here of this.builder.cables.values())
      for (const key of here.grounds) add({ end: here.end(key), colour: "bare" });
    for (const device of inOrder(this.box.devices)) {
      const port = groundPort(device);
      if (port !== undefined) add({ port });
    }
    const isBonded = Object.values(this.box.places).some(({ at }) => at.kind === "bond");
    if (this.box.material === "metal" || isBonded) add({ port: { kind: "bond" } });
  }
}
