import type { Device } from "../../model/device.ts";
import type { DeviceId } from "../../model/ids.ts";
import type { Load } from "../../model/load.ts";
import type { Installation } from "../../model/project.ts";
import { outletsOf, type PlacedOutlet } from "../../queries/outlets-of.ts";

/** What is drawn, by id or by name. An id goes before names; several items may have one name. */
export class Named {
  private readonly deviceById = new Map<string, Device>();
  private readonly devicesByName = new Map<string, Device[]>();
  private readonly outletByKey = new Map<string, PlacedOutlet>();
  private readonly outletsByName = new Map<string, PlacedOutlet[]>();
  private readonly loadById = new Map<string, Load>();
  private readonly loadsByName = new Map<string, Load[]>();

  constructor({ enclosures, loads }: Installation) {
    for (const { devices } of Object.values(enclosures)) {
      for (const device of Object.values(devices)) {
        this.deviceById.set(device.id, device);
        push(this.devicesByName, device.name, device);
        for (const outlet of outletsOf(device)) {
          this.outletByKey.set(outlet.key, outlet);
          push(this.outletsByName, outlet.name, outlet);
        }
      }
    }
    for (const load of Object.values(loads)) {
      this.loadById.set(load.id, load);
      push(this.loadsByName, load.name, load);
    }
  }

  has(text: string): boolean {
    return this.devices(text).length > 0;
  }

  devices(text: string): readonly Device[] {
    return found(this.deviceById, this.devicesByName, text);
  }

  outlets(text: string): readonly PlacedOutlet[] {
    return found(this.outletByKey, this.outletsByName, text);
  }

  loads(text: string): readonly Load[] {
    return found(this.loadById, this.loadsByName, text);
  }

  byId(id: DeviceId): Device {
    const device = this.deviceById.get(id);
    if (device === undefined) throw new Error(`No device ${id}.`);
    return device;
  }

  nameOf(id: DeviceId): string {
    return this.byId(id).name;
  }
}

function found<T>(byId: ReadonlyMap<string, T>, byName: ReadonlyMap<string, readonly T[]>, text: string): readonly T[] {
  const one = byId.get(text);
  return one === undefined ? (byName.get(text) ?? []) : [one];
}

function push<T>(map: Map<string, T[]>, key: string, value: T): void {
  const list = map.get(key);
  if (list === undefined) map.set(key, [value]);
  else list.push(value);
}
