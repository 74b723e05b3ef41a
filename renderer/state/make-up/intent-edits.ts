import type { MakeUpIntent } from "../../../shared-model/answers/make-up-intent.ts";
import {
  type CableId,
  type ConductorKey,
  type DeviceId,
  type Half,
  outletKey,
} from "../../../shared-model/model/ids.ts";

/** What a cable of the box is for; `loop` is the cable to the switch elsewhere that feeds it. */
export type CableUse =
  | { readonly as: "supply" | "downstream" | "loop" | "none" }
  | { readonly as: "switched" | "travellers"; readonly by: DeviceId }
  | { readonly as: "by-loop"; readonly loop: CableId };

/** What gives a device of the box its hot: always on, a switch here, or a switch elsewhere by its loop. */
export type DeviceFeed =
  | { readonly by: "always" }
  | { readonly by: "switch"; readonly id: DeviceId }
  | { readonly by: "loop"; readonly id: CableId };

/** What a cable is for as an intent says. */
export function usageOf(intent: MakeUpIntent, cable: CableId): CableUse {
  const is = (one: { readonly cable: CableId }): boolean => one.cable === cable;
  if (is(intent.supply)) return { as: "supply" };
  if (intent.downstream.some(is)) return { as: "downstream" };
  if (intent.loops.some(is)) return { as: "loop" };
  const switched = intent.switched.find(is);
  if (switched !== undefined) return { as: "switched", by: switched.switch };
  const travellers = intent.travellers.find(is);
  if (travellers !== undefined) return { as: "travellers", by: travellers.switch };
  const loop = intent.loops.find(({ feedsCables }) => feedsCables.includes(cable));
  return loop === undefined ? { as: "none" } : { as: "by-loop", loop: loop.cable };
}

/** Whether what a cable leads to goes behind the ground-fault device; undefined for a cable without a side of its own. */
export function protectOf(intent: MakeUpIntent, cable: CableId): boolean | undefined {
  return [...intent.downstream, ...intent.switched, ...intent.loops, ...intent.travellers].find(
    (one) => one.cable === cable,
  )?.protect;
}

export const legOf = (intent: MakeUpIntent, cable: CableId): ConductorKey | undefined =>
  [...intent.downstream, ...intent.switched, ...intent.loops, ...intent.travellers].find((one) => one.cable === cable)
    ?.leg;

/** Gives a cable another use; its side stays as it was. A cable that becomes the supply leaves its place to none. */
export function withUse(intent: MakeUpIntent, cable: CableId, use: CableUse): MakeUpIntent {
  const protect = protectOf(intent, cable) ?? false;
  const bare = withoutUse(intent, cable);
  switch (use.as) {
    case "supply":
      return { ...bare, supply: { cable, as: "feed" } };
    case "downstream":
      return { ...bare, downstream: [...bare.downstream, { cable, protect }] };
    case "switched":
      return { ...bare, switched: [...bare.switched, { cable, switch: use.by, protect }] };
    case "travellers":
      return { ...bare, travellers: [...bare.travellers, { cable, switch: use.by, protect }] };
    case "loop":
      return { ...bare, loops: [...bare.loops, { cable, protect, feedsDevices: [], feedsCables: [] }] };
    case "by-loop":
      return {
        ...bare,
        loops: bare.loops.map((one) =>
          one.cable === use.loop ? { ...one, feedsCables: [...one.feedsCables, cable] } : one,
        ),
      };
    case "none":
      return bare;
  }
}

/** Another cable feeds the box; the one that did is fed on from here. */
export function withSupply(intent: MakeUpIntent, cable: CableId): MakeUpIntent {
  const former = intent.supply.cable;
  if (former === cable) return intent;
  const next = withUse(intent, cable, { as: "supply" });
  return former === "" ? next : { ...next, downstream: [...next.downstream, { cable: former, protect: false }] };
}

function withoutUse(intent: MakeUpIntent, cable: CableId): MakeUpIntent {
  const others = <T extends { readonly cable: CableId }>(list: readonly T[]): readonly T[] =>
    list.filter((one) => one.cable !== cable);
  return {
    ...intent,
    downstream: others(intent.downstream),
    switched: others(intent.switched),
    travellers: others(intent.travellers),
    loops: others(intent.loops).map((one) => ({
      ...one,
      feedsCables: one.feedsCables.filter((fed) => fed !== cable),
    })),
  };
}

type Sided = Partial<Pick<MakeUpIntent["downstream"][number], "protect" | "leg">>;

/** Changes the side or the leg of a cable, whatever it is for. */
export function withSide(intent: MakeUpIntent, cable: CableId, part: Sided): MakeUpIntent {
  const change = <T extends { readonly cable: CableId }>(list: readonly T[]): readonly T[] =>
    list.map((one) => (one.cable === cable ? { ...one, ...part } : one));
  return {
    ...intent,
    downstream: change(intent.downstream),
    switched: change(intent.switched),
    loops: change(intent.loops),
    travellers: change(intent.travellers),
  };
}

/** A device of the box, or one half of it. */
export interface Fed {
  readonly device: DeviceId;
  readonly half?: Half;
}

const isUseOf =
  ({ device, half }: Fed) =>
  (one: Fed): boolean =>
    one.device === device && (one.half === half || one.half === undefined);

export function feedOf(intent: MakeUpIntent, fed: Fed): DeviceFeed {
  const loop = intent.loops.find(
    ({ feedsDevices, feedsHalves = [] }) =>
      feedsDevices.includes(fed.device) || feedsHalves.includes(outletKey(fed.device, fed.half)),
  );
  if (loop !== undefined) return { by: "loop", id: loop.cable };
  const by = intent.devices.find(isUseOf(fed))?.switch;
  return by === undefined ? { by: "always" } : { by: "switch", id: by };
}

export const deviceProtected = (intent: MakeUpIntent, fed: Fed): boolean =>
  intent.devices.find(isUseOf(fed))?.protect ?? false;

/** Feeds a device or half of it otherwise, or puts it on another side of the ground-fault device. */
export function withDevice(intent: MakeUpIntent, fed: Fed, feed: DeviceFeed, protect: boolean): MakeUpIntent {
  const key = outletKey(fed.device, fed.half);
  const loops = intent.loops.map((one) => {
    const takes = feed.by === "loop" && feed.id === one.cable;
    const devices = one.feedsDevices.filter((id) => id !== fed.device);
    const halves = (one.feedsHalves ?? []).filter((id) => id !== key);
    return {
      ...one,
      feedsDevices: takes && fed.half === undefined ? [...devices, fed.device] : devices,
      feedsHalves: takes && fed.half !== undefined ? [...halves, key] : halves,
    };
  });
  const others = intent.devices.filter((one) => one.device !== fed.device || one.half !== fed.half);
  if (feed.by === "loop") return { ...intent, loops, devices: others };
  const leg = intent.devices.find(isUseOf(fed))?.leg;
  const own = {
    ...fed,
    protect,
    ...(feed.by === "switch" && { switch: feed.id }),
    ...(feed.by === "always" && leg !== undefined && { leg }),
  };
  return { ...intent, loops, devices: [...others, own] };
}

/** Another device in the place of one, or the one that is there. */
export function withReplacing(intent: MakeUpIntent, device: DeviceId, type: string | undefined): MakeUpIntent {
  const others = intent.replace.filter((one) => one.device !== device);
  return { ...intent, replace: type === undefined ? others : [...others, { device, type }] };
}
