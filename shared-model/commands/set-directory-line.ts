import { findDeviceType } from "../catalog/device-types.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { idText, orNull, record, stateName, textUpTo } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, refusal } from "./define-command.ts";
import { callItem } from "./find-item-or-refuse.ts";
import { deviceOr } from "./find-or-refuse.ts";
import { draftInstallation } from "./move-ends.ts";

type Args = CommandArgs["set-directory-line"];

const wording = catalogue({
  neither: (device: Part) => `A directory lists breakers and fuses. ${device} is neither: add a label instead.`,
  set: (device: Part) => `Set directory line of ${device}`,
});

/** Writes down what the panel directory says about a breaker or fuse, right or wrong. */
export const setDirectoryLine = defineCommand<Args>({
  id: "set-directory-line",
  args: record<Args>({ state: stateName, device: idText, text: orNull(textUpTo(200)) }),
  label: (project, { state, device }) => wording.set(callItem(project, state, { kind: "device", id: device })),
  refuse(project, { state, device }) {
    const { found, no } = deviceOr(project, state, device);
    if (no !== undefined) return no;
    const family = findDeviceType(found.device.type)?.family;
    if (family === "breaker" || family === "fuse") return undefined;
    return refusal("not-a-breaker", wording.neither(found.device.name));
  },
  apply(draft, { state, device, text }, before) {
    const { directory } = draftInstallation(draft, state);
    if (text !== null && text.trim() !== "") directory[device] = text;
    else if (device in getInstallation(before, state).directory) delete directory[device];
  },
  mergeKey: ({ state, device }) => `${state} ${device}`,
});
