import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Label } from "../model/project.ts";
import { nextOrder } from "../queries/in-order.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { either, idText, optional, record, stateName, textUpTo } from "./args-shape.ts";
import type { CommandArgs, ItemRef } from "./command-args.ts";
import { defineCommand, refusal } from "./define-command.ts";
import { callItem, noSuchItem } from "./find-item-or-refuse.ts";
import { idsInUse } from "./fresh-ids.ts";
import { draftInstallation } from "./move-ends.ts";

type Args = CommandArgs["add-label"];

const says = catalogue({
  add: (item: Part) => `Add label on ${item}`,
  noWords: "Write what the label says.",
});

/** Fixes a label to a device, enclosure or cable. */
export const addLabel = defineCommand<Args>({
  id: "add-label",
  args: record<Args>({
    state: stateName,
    id: idText,
    wording: textUpTo(200),
    on: either(record({ device: idText }), record({ enclosure: idText }), record({ cable: idText })),
    requiredBy: optional(textUpTo(80)),
  }),
  label: (project, { state, on }) => says.add(callItem(project, state, itemUnder(on))),
  refuse(project, { state, id, wording, on }) {
    const no = noSuchItem(project, state, itemUnder(on));
    if (no !== undefined) return no;
    if (wording.trim() === "") return refusal("label-without-words", says.noWords);
    return idsInUse(project, id);
  },
  apply(draft, { state, id, wording, on, requiredBy }, before) {
    const order = nextOrder(getInstallation(before, state).labels);
    draftInstallation(draft, state).labels[id] = {
      id,
      wording,
      on: { ...on },
      order,
      ...(requiredBy !== undefined && { requiredBy }),
    };
  },
});

function itemUnder(on: Label["on"]): ItemRef {
  if ("device" in on) return { kind: "device", id: on.device };
  return "enclosure" in on ? { kind: "enclosure", id: on.enclosure } : { kind: "cable", id: on.cable };
}
