import type { Draft } from "immer";
import { findDeviceType } from "../catalog/device-types.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Device } from "../model/device.ts";
import type { Enclosure } from "../model/enclosure.ts";
import { nextOrder } from "../queries/in-order.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { catalogText, idText, nameText, record, stateName } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, type Refusal, refusal } from "./define-command.ts";
import { enclosureOr } from "./find-or-refuse.ts";
import { idsInUse } from "./fresh-ids.ts";
import { notInStock, unnamed } from "./item-words.ts";
import { deviceOfType } from "./make-device.ts";
import { draftInstallation, written } from "./move-ends.ts";

type Args = CommandArgs["place-device"];

const wording = catalogue({
  box: (device: Part, panel: Part) => `${device} belongs in a box, and ${panel} is a panel. Pick a box for it.`,
  panel: (device: Part, box: Part) => `${device} belongs in a panel, and ${box} is a box. Pick a panel for it.`,
  place: (device: Part, box: Part) => `Place ${device} in ${box}`,
});

/** Places a device of the stock in a box, or a breaker in a panel, to the right of the others. */
export const placeDevice = defineCommand<Args>({
  id: "place-device",
  args: record<Args>({ state: stateName, enclosure: idText, id: idText, type: catalogText, name: nameText }),
  label: (project, { state, enclosure, name }) =>
    wording.place(name, getInstallation(project, state).enclosures[enclosure]?.name ?? unnamed.box),
  refuse(project, { state, enclosure, id, type }) {
    const { found, no } = enclosureOr(project, state, enclosure);
    if (no !== undefined) return no;
    if (findDeviceType(type) === undefined) return refusal("unknown-catalog-item", notInStock.device(type));
    return wrongEnclosure(found.enclosure, type) ?? idsInUse(project, id);
  },
  apply(draft, { state, enclosure, id, type, name }, before) {
    const { devices } = written(getInstallation(before, state).enclosures[enclosure]);
    const device = deviceOfType(id, type, name, nextOrder(devices));
    written(draftInstallation(draft, state).enclosures[enclosure]).devices[id] = device as Draft<Device>;
  },
});

/** A breaker sits in a panel, a receptacle in a box. */
export function wrongEnclosure(enclosure: Enclosure, type: string): Refusal | undefined {
  const deviceType = findDeviceType(type);
  if (deviceType === undefined || deviceType.where === enclosure.kind) return undefined;
  return refusal("device-in-wrong-enclosure", wording[deviceType.where](deviceType.title, enclosure.name));
}
