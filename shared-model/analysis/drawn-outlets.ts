import type { NamedOutlet } from "../answers/energised.ts";
import type { Device } from "../model/device.ts";
import type { DeviceId, EnclosureId, OutletKey } from "../model/ids.ts";
import type { Installation } from "../model/project.ts";
import { inOrder } from "../queries/in-order.ts";
import { outletsOf, type PlacedOutlet } from "../queries/outlets-of.ts";
import type { Circuit } from "../solver/circuit/circuit.ts";
import { type LiveContact, liveAfter } from "../solver/circuit/live-after.ts";
import { Conditions } from "./conditions.ts";

/** Devices and outlets of an installation, in the order of the drawing, by id. */
export interface Drawn {
  readonly installation: Installation;
  readonly devices: ReadonlyMap<DeviceId, Device>;
  readonly outlets: ReadonlyMap<OutletKey, PlacedOutlet>;
  nameOf(device: DeviceId): string;
  named(outlet: OutletKey): NamedOutlet;
  /** Outlets that would be fed by way of one of some devices, or of some nodes, with these devices closed. */
  outletsOn(circuit: Circuit, devices: ReadonlySet<DeviceId>, nodes?: readonly number[]): readonly PlacedOutlet[];
}

const cache = new WeakMap<Installation, Drawn>();

/** Cached by the identity of the installation. */
export function drawnIn(installation: Installation): Drawn {
  let drawn = cache.get(installation);
  if (drawn === undefined) {
    drawn = build(installation);
    cache.set(installation, drawn);
  }
  return drawn;
}

function build(installation: Installation): Drawn {
  const devices = new Map<DeviceId, Device>();
  const outlets = new Map<OutletKey, PlacedOutlet>();
  const homes = new Map<OutletKey, { readonly id: EnclosureId; readonly note: string }>();
  for (const { id, name, note, devices: own } of inOrder(installation.enclosures))
    for (const device of inOrder<Device>(own)) {
      devices.set(device.id, device);
      for (const outlet of outletsOf(device)) {
        outlets.set(outlet.key, outlet);
        homes.set(outlet.key, { id, note: [name, note].filter(Boolean).join(" ") });
      }
    }
  return {
    installation,
    devices,
    outlets,
    nameOf: (device) => devices.get(device)?.name ?? device,
    named(key) {
      const home = homes.get(key);
      return {
        outlet: key,
        name: outlets.get(key)?.name ?? key,
        enclosure: home?.id ?? ("" as EnclosureId),
        note: home?.note ?? "",
      };
    },
    outletsOn(circuit, wanted, nodes = []) {
      const { setting } = circuit;
      const without = <T>(all: ReadonlySet<T>): ReadonlySet<T> =>
        new Set([...all].filter((one) => !wanted.has(one as DeviceId)));
      const closed = circuit.inSetting({ ...setting, tripped: without(setting.tripped), off: without(setting.off) });
      const pieces = new Conditions(closed, installation);
      const { a, b } = closed.network;
      const found = new Set(nodes.filter((node) => node >= 0).map((node) => pieces.islandOf(node)));
      closed.parts.forEach((part, branch) => {
        if (part.kind !== "contact" || !wanted.has(part.device)) return;
        // Only the ways of hot conductors: neutrals of all circuits meet at the bar, and some in a box.
        for (const node of [a[branch] as number, b[branch] as number])
          if ((pieces.ofNode(node).legs ?? []).length > 0) found.add(pieces.islandOf(node));
      });
      return [...outlets.values()].filter(({ device, hot, neutral }) =>
        [hot, neutral].some((contact) => {
          const node = closed.nodeOf({ kind: "device", device: device.id, node: contact });
          return node !== undefined && found.has(pieces.islandOf(node)) && (pieces.ofNode(node).legs ?? []).length > 0;
        }),
      );
    },
  };
}

/** Contacts that are live in a circuit as it stands. */
export const liveIn = (circuit: Circuit, outlets: readonly PlacedOutlet[]): readonly LiveContact[] =>
  liveAfter(
    { energised: circuit, devices: [], breakers: [], outcomes: [{ opened: [], circuit }], cutShort: false },
    outlets,
  );
