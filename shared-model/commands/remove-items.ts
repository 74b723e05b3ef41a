import { catalogue, type Part } from "../lib/catalogue.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { itemRef } from "./args-of-model.ts";
import { listOf, record, stateName } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand } from "./define-command.ts";
import { callItem, noSuchItem } from "./find-item-or-refuse.ts";
import { takeAway } from "./take-away.ts";
import { whatGoes } from "./what-goes.ts";

type Args = CommandArgs["remove-items"];

const wording = catalogue({
  remove: (item: Part) => `Remove ${item}`,
  several: (count: Part) => `Remove ${count} items`,
});

/**
 * Removes items of one state with what depends on them: a box with its cables and their other ends, a device with its
 * loads, labels and decisions. Ends that lose a device or splice are capped. A room goes from both states.
 */
export const removeItems = defineCommand<Args>({
  id: "remove-items",
  args: record<Args>({ state: stateName, items: listOf(itemRef, 1) }),
  label(project, { state, items }) {
    const [first] = items;
    if (first === undefined || items.length > 1) return wording.several(items.length);
    return wording.remove(callItem(project, state, first));
  },
  refuse(project, { state, items }) {
    for (const item of items) {
      const no = noSuchItem(project, state, item);
      if (no !== undefined) return no;
    }
    return undefined;
  },
  apply(draft, { state, items }, before) {
    takeAway(draft, state, whatGoes(getInstallation(before, state), items), before);
  },
});
