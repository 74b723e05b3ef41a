import type { Enclosure } from "../model/enclosure.ts";
import type { CableId, DeviceId, EnclosureId, JumperId, LabelId, LoadId, RoomId, SpliceId } from "../model/ids.ts";
import { parseOutlet } from "../model/ids.ts";
import type { Installation, Label } from "../model/project.ts";
import type { ItemRef } from "./command-args.ts";
import { cablesAt } from "./entries.ts";

/** Everything that a removal takes out of one state, dependants included; rooms belong to both states. */
export interface Gone {
  readonly enclosures: Set<EnclosureId>;
  readonly cables: Set<CableId>;
  readonly devices: Set<DeviceId>;
  readonly splices: Set<SpliceId>;
  readonly jumpers: Set<JumperId>;
  readonly loads: Set<LoadId>;
  readonly labels: Set<LabelId>;
  readonly rooms: Set<RoomId>;
}

/** What goes with some items: a box with what is in it and its cables, a device with its loads, anything with its labels. */
export function whatGoes(installation: Installation, items: readonly ItemRef[]): Gone {
  const gone: Gone = {
    enclosures: new Set(),
    cables: new Set(),
    devices: new Set(),
    splices: new Set(),
    jumpers: new Set(),
    loads: new Set(),
    labels: new Set(),
    rooms: new Set(),
  };
  for (const item of items) note(gone, installation, item);
  for (const load of Object.values(installation.loads))
    if (gone.devices.has(parseOutlet(load.plug).device)) gone.loads.add(load.id);
  for (const label of Object.values(installation.labels)) if (isOnGone(gone, label)) gone.labels.add(label.id);
  return gone;
}

function note(gone: Gone, installation: Installation, item: ItemRef): void {
  switch (item.kind) {
    case "enclosure": {
      const enclosure = installation.enclosures[item.id];
      if (enclosure !== undefined) noteEnclosure(gone, installation, enclosure);
      return;
    }
    case "cable":
      gone.cables.add(item.id);
      return;
    case "device":
      gone.devices.add(item.id);
      return;
    case "splice":
      gone.splices.add(item.id);
      return;
    case "jumper":
      gone.jumpers.add(item.id);
      return;
    case "load":
      gone.loads.add(item.id);
      return;
    case "label":
      gone.labels.add(item.id);
      return;
    case "room":
      gone.rooms.add(item.id);
  }
}

function noteEnclosure(gone: Gone, installation: Installation, enclosure: Enclosure): void {
  gone.enclosures.add(enclosure.id);
  for (const id of Object.keys(enclosure.devices)) gone.devices.add(id as DeviceId);
  for (const id of Object.keys(enclosure.splices)) gone.splices.add(id as SpliceId);
  for (const id of cablesAt(installation, enclosure)) gone.cables.add(id as CableId);
}

function isOnGone(gone: Gone, { on }: Label): boolean {
  if ("device" in on) return gone.devices.has(on.device);
  if ("enclosure" in on) return gone.enclosures.has(on.enclosure);
  return gone.cables.has(on.cable);
}
