import { catalogue, type Part } from "../lib/catalogue.ts";
import { findDevice, findJumper, findSplice } from "../queries/find-item.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { itemRef } from "./args-of-model.ts";
import { nameText, record, stateName } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, refusal } from "./define-command.ts";
import { callItem, noSuchItem } from "./find-item-or-refuse.ts";
import { draftInstallation, written } from "./move-ends.ts";

type Args = CommandArgs["rename-item"];

const wording = catalogue({
  label: "A label has no name. Change its wording in Details instead.",
  rename: (item: Part, name: Part) => `Rename ${item} to ${name}`,
});

/** Gives an item another name. Names may repeat: as found, two things can be called the same. */
export const renameItem = defineCommand<Args>({
  id: "rename-item",
  args: record<Args>({ state: stateName, item: itemRef, name: nameText }),
  label: (project, { state, item, name }) => wording.rename(callItem(project, state, item), name),
  refuse(project, { state, item }) {
    if (item.kind === "label") return refusal("label-has-wording", wording.label);
    return noSuchItem(project, state, item);
  },
  apply(draft, { state, item, name }, before) {
    if (item.kind === "room") {
      written(draft.rooms[item.id]).name = name;
      return;
    }
    const installation = getInstallation(before, state);
    const target = draftInstallation(draft, state);
    switch (item.kind) {
      case "enclosure":
        written(target.enclosures[item.id]).name = name;
        return;
      case "cable":
        written(target.cables[item.id]).name = name;
        return;
      case "load":
        written(target.loads[item.id]).name = name;
        return;
      case "device": {
        const { enclosure } = written(findDevice(installation, item.id));
        written(written(target.enclosures[enclosure.id]).devices[item.id]).name = name;
        return;
      }
      case "splice": {
        const { enclosure } = written(findSplice(installation, item.id));
        written(written(target.enclosures[enclosure.id]).splices[item.id]).name = name;
        return;
      }
      case "jumper": {
        const { enclosure } = written(findJumper(installation, item.id));
        written(written(target.enclosures[enclosure.id]).jumpers[item.id]).name = name;
      }
    }
  },
});
