import type { Operable } from "../answers/energised.ts";
import { getDeviceType } from "../catalog/device-types.ts";
import { findLoadItem } from "../catalog/load-items.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import { inSentence } from "../lib/in-sentence.ts";
import type { Device } from "../model/device.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { DeviceId } from "../model/ids.ts";
import type { Load } from "../model/load.ts";
import type { Installation } from "../model/project.ts";
import { inOrder } from "../queries/in-order.ts";
import { nameOfTerminal } from "../queries/terminals-of.ts";
import type { Circuit } from "../solver/circuit/circuit.ts";
import { usesOf } from "../solver/circuit/device-uses.ts";
import { handlesOf } from "../solver/circuit/handles.ts";
import { loadsOn } from "../solver/circuit/loads-on.ts";
import { whyNoReset } from "../solver/circuit/reset.ts";
import { ownTestOf } from "../solver/circuit/test-currents.ts";
import type { BreakerState, SensorState } from "../solver/circuit/trip-states.ts";

const wording = catalogue({
  load: "load",
  pluggedIn: (what: Part, device: Part) => `${what}, plugged in at ${device}`,
});

/** What has been computed of the devices that open by themselves. */
interface Stand {
  readonly circuit: Circuit;
  /** What a person has set: a device that is open and not in it cannot be reset. */
  readonly set: ReadonlySet<DeviceId>;
  readonly sensors: ReadonlyMap<DeviceId, SensorState>;
  readonly breakers: ReadonlyMap<DeviceId, BreakerState>;
  /** What those that are fed on LOAD do about it. */
  readonly reversed: ReadonlyMap<DeviceId, string>;
}

const BREAKERS: ReadonlySet<string> = new Set(["breaker", "fuse", "disconnect"]);

/** Everything that a person operates, in the order of the drawing: breakers, switches, ground-fault devices, loads. */
export function operablesOf(installation: Installation, stand: Stand): readonly Operable[] {
  const plugged = loadsOn(installation.loads);
  const all = inOrder(installation.enclosures).flatMap((enclosure) =>
    inOrder<Device>(enclosure.devices).flatMap((device) => [
      ...ofDevice(enclosure, device, stand),
      ...(plugged.get(device.id) ?? []).map((load) => ofLoad(enclosure, device, load, stand)),
    ]),
  );
  const order = ["breaker", "ground-fault", "switch", "load"];
  return [...all].sort((p, q) => order.indexOf(p.kind) - order.indexOf(q.kind));
}

function ofDevice(enclosure: Enclosure, device: Device, stand: Stand): readonly Operable[] {
  const type = getDeviceType(device.type);
  const { circuit, set, sensors, breakers } = stand;
  const { setting } = circuit;
  const base = { device: device.id, name: device.name, enclosure: enclosure.id };
  const found: Operable[] = [];
  const sensor = sensors.get(device.id);
  const isOpen = setting.tripped.has(device.id);
  const hasTest = sensor !== undefined && ownTestOf(device) !== undefined;
  if (BREAKERS.has(type.family)) {
    const rating = device.breakerRatingA ?? type.defaults.breakerRatingA;
    const amps = breakers.get(device.id)?.amps;
    found.push({
      ...base,
      kind: "breaker",
      note: [shortly(type.title), rating === undefined ? "" : `${rating} A`].filter(Boolean).join(" "),
      stands: setting.off.has(device.id) ? "off" : isOpen ? "tripped" : "on",
      ...(amps !== undefined && { amps }),
      ...(hasTest && { test: true }),
    });
  } else if (sensor !== undefined) {
    found.push({
      ...base,
      kind: "ground-fault",
      note: shortly(type.title),
      stands: !isOpen ? "set" : set.has(device.id) ? "tripped" : "cannot-be-reset",
      residualMa: sensor.residualMa,
      powered: sensor.powered,
      why: sensor.why,
      ...whyStaysOpen(device.id, stand),
    });
  }
  const handles = handlesOf(device);
  for (const { handle, terminal } of handles) {
    const own = handles.length > 1 ? nameOfTerminal(device, terminal as never) : device.name;
    found.push({
      ...base,
      kind: "switch",
      handle,
      name: own,
      note: inSentence(type.title),
      position: setting.positions.get(handle) ?? 0,
      positions: type.positions,
    });
  }
  if (usesOf(device).uses.some(({ kind, always }) => kind === "load" && !always))
    found.push({
      ...base,
      kind: "load",
      item: device.id,
      note: inSentence(type.title),
      inUse: !setting.idle.has(device.id),
      plugged: false,
    });
  return found;
}

function whyStaysOpen(device: DeviceId, { circuit, set, reversed }: Stand): { readonly noReset?: string } {
  if (!circuit.setting.tripped.has(device)) return {};
  const sensor = circuit.sensors.find((one) => one.device === device);
  const noReset = set.has(device) ? sensor && whyNoReset(circuit, sensor) : reversed.get(device);
  return noReset === undefined ? {} : { noReset };
}

const ofLoad = (enclosure: Enclosure, device: Device, load: Load, { circuit }: Stand): Operable => ({
  kind: "load",
  item: load.id,
  device: device.id,
  name: load.name,
  note: wording.pluggedIn(inSentence(findLoadItem(load.item)?.title ?? wording.load), device.name),
  enclosure: enclosure.id,
  inUse: !circuit.setting.idle.has(load.id),
  plugged: true,
});

/** What it is without how large: "GFCI receptacle" of "GFCI receptacle, 15 A face". */
const shortly = (title: string): string => inSentence(title.split(",")[0] ?? title);
