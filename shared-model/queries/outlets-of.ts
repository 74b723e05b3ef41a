import type { DeviceNode } from "../catalog/device-type.ts";
import { getDeviceType } from "../catalog/device-types.ts";
import { catalogue } from "../lib/catalogue.ts";
import type { Device } from "../model/device.ts";
import type { Enclosure } from "../model/enclosure.ts";
import { type Half, type OutletKey, outletKey, parseOutlet } from "../model/ids.ts";
import type { Project } from "../model/project.ts";
import type { RoomKind } from "../model/room.ts";

/** An outlet of a placed device: what is plugged in or hard-wired there draws current between `hot` and `neutral`. */
export interface PlacedOutlet {
  readonly key: OutletKey;
  readonly name: string;
  readonly device: Device;
  readonly hot: DeviceNode;
  readonly neutral: DeviceNode;
  readonly ground?: DeviceNode;
  /** A receptacle that a person plugs into, as against a luminaire or appliance. */
  readonly receptacle: boolean;
}

/** In names only: keys and what is stored have "upper" and "lower". */
export const HALF_WORDS: Readonly<Record<Half, string>> = catalogue({
  upper: "upper",
  lower: "lower",
});

/** "R5/upper", or "R5" for the whole of it. */
export const nameOfHalf = ({ name }: Pick<Device, "name">, half: Half | undefined): string =>
  half === undefined ? name : `${name}/${HALF_WORDS[half]}`;

const cache = new WeakMap<Device, readonly PlacedOutlet[]>();

/** Outlets of a device: a duplex is one until a tab is off, then its halves are two ("R5/upper", "R5/lower"). */
export function outletsOf(device: Device): readonly PlacedOutlet[] {
  let outlets = cache.get(device);
  if (outlets === undefined) {
    outlets = build(device);
    cache.set(device, outlets);
  }
  return outlets;
}

function build(device: Device): readonly PlacedOutlet[] {
  const type = getDeviceType(device.type);
  const receptacle =
    type.family === "receptacle" ||
    type.family === "ground-fault-receptacle" ||
    (type.family === "combination" && type.outlets.length > 0);
  const tabsIntact = device.hotTab !== "removed" && device.neutralTab !== "removed";
  const split = !receptacle || !tabsIntact;
  const shown = type.outlets.length > 1 && !split ? type.outlets.slice(0, 1) : type.outlets;
  return shown.map((outlet) => {
    const half = shown.length > 1 ? outlet.half : undefined;
    const { hot, neutral, ground } = outlet;
    return {
      key: outletKey(device.id, half),
      name: nameOfHalf(device, half),
      device,
      hot,
      neutral,
      ...(ground !== undefined && { ground }),
      receptacle,
    };
  });
}

/** The device and outlet that a key names inside one enclosure. */
export function findOutlet(enclosure: Enclosure, key: OutletKey): PlacedOutlet | undefined {
  const device = enclosure.devices[parseOutlet(key).device];
  return device === undefined ? undefined : outletsOf(device).find((outlet) => outlet.key === key);
}

/** Kinds of place that a device stands in: those of its box's room and its own zones. */
export function roomKindsOf(project: Project, enclosure: Enclosure, device: Device): ReadonlySet<RoomKind> {
  const room = enclosure.roomId === undefined ? undefined : project.rooms[enclosure.roomId];
  return new Set([...(room?.kinds ?? []), ...(device.zones ?? [])]);
}
