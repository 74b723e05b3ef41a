import type { Draft } from "immer";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Device } from "../model/device.ts";
import type { DeviceId, EnclosureId } from "../model/ids.ts";
import type { Project, StateName } from "../model/project.ts";
import { findDevice } from "../queries/find-item.ts";
import { inOrder, nextOrder } from "../queries/in-order.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { idText, optional, record, stateName } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, refusal } from "./define-command.ts";
import { deviceOr } from "./find-or-refuse.ts";
import { gone } from "./item-words.ts";
import { draftInstallation, forgetEvidence, written } from "./move-ends.ts";
import { wrongEnclosure } from "./place-device.ts";

type Args = CommandArgs["move-device"];

const wording = catalogue({
  landed: (device: Part, box: Part) => `Conductors are landed on ${device}. Lift them first, then move it to ${box}.`,
  move: (device: Part, box: Part) => `Move ${device} to ${box}`,
  moveIn: (device: Part, box: Part) => `Move ${device} in ${box}`,
  moveOne: "Move a device",
  noDevice: (box: Part) => `${box} has no such device to put it in front of. Pick another, or none.`,
});

/** To another place among the devices of its enclosure, or, with nothing landed on it, to another enclosure. */
export const moveDevice = defineCommand<Args>({
  id: "move-device",
  args: record<Args>({ state: stateName, id: idText, enclosure: idText, before: optional(idText) }),
  label(project, { state, id, enclosure }) {
    const installation = getInstallation(project, state);
    const found = findDevice(installation, id);
    const to = installation.enclosures[enclosure];
    if (found === undefined || to === undefined) return wording.moveOne;
    return found.enclosure === to
      ? wording.moveIn(found.device.name, to.name)
      : wording.move(found.device.name, to.name);
  },
  refuse(project, { state, id, enclosure, before }) {
    const { found, no } = deviceOr(project, state, id);
    if (no !== undefined) return no;
    const to = found.installation.enclosures[enclosure];
    if (to === undefined) return refusal("unknown-item", gone.enclosure);
    if (before !== undefined && (before === id || !(before in to.devices)))
      return refusal("unknown-device", wording.noDevice(to.name));
    if (to.id === found.enclosure.id) return undefined;
    const landed = Object.values(found.enclosure.places).some(({ at }) => at.kind === "terminal" && at.device === id);
    if (landed) return refusal("ends-landed", wording.landed(found.device.name, to.name));
    return wrongEnclosure(to, found.device.type);
  },
  apply(draft, { state, id, enclosure, before: next }, before) {
    const { enclosure: from, device } = written(findDevice(getInstallation(before, state), id));
    if (from.id !== enclosure) moveOver(draft, state, from.id, enclosure, device, before);
    const others = inOrder(written(getInstallation(before, state).enclosures[enclosure]).devices).filter(
      (one) => one.id !== id,
    );
    const at = next === undefined ? others.length : others.findIndex((one) => one.id === next);
    const order = others.map((one) => one.id).toSpliced(at, 0, id);
    renumber(draft, state, enclosure, order);
  },
});

/** Its handle tie stays behind: a tie joins neighbours of one panel. */
function moveOver(
  draft: Draft<Project>,
  state: StateName,
  from: EnclosureId,
  to: EnclosureId,
  device: Device,
  before: Project,
): void {
  const target = draftInstallation(draft, state);
  const { tiedTo: _tie, ...rest } = device;
  const moved = { ...rest, order: nextOrder(written(target.enclosures[to]).devices) } as Draft<Device>;
  if (moved.evidence !== undefined) moved.evidence = { ...moved.evidence };
  forgetEvidence(moved, "tiedTo");
  const left = written(target.enclosures[from]);
  delete left.devices[device.id];
  for (const one of Object.values(written(getInstallation(before, state).enclosures[from]).devices)) {
    if (one.tiedTo !== device.id || one.id === device.id) continue;
    const tied = written(left.devices[one.id]);
    delete tied.tiedTo;
    forgetEvidence(tied, "tiedTo");
  }
  written(target.enclosures[to]).devices[device.id] = moved;
}

function renumber(draft: Draft<Project>, state: StateName, enclosure: EnclosureId, ids: readonly DeviceId[]): void {
  const { devices } = written(draftInstallation(draft, state).enclosures[enclosure]);
  ids.forEach((id, order) => {
    const device = written(devices[id]);
    if (device.order !== order) device.order = order;
  });
}
