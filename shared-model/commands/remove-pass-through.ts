import { catalogue, type Part } from "../lib/catalogue.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { idText, record, stateName } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, refusal } from "./define-command.ts";
import { emptiedEntries } from "./entries.ts";
import { enclosureOr } from "./find-or-refuse.ts";
import { unnamed } from "./item-words.ts";
import { draftInstallation, written } from "./move-ends.ts";

type Args = CommandArgs["remove-pass-through"];

const wording = catalogue({
  none: (box: Part) => `Nothing of that kind runs through ${box}. Pick one that does.`,
  remove: (box: Part) => `Remove pass-through of ${box}`,
});

/** A cable no longer runs through a box; entries that only it used go with it. */
export const removePassThrough = defineCommand<Args>({
  id: "remove-pass-through",
  args: record<Args>({ state: stateName, enclosure: idText, id: idText }),
  label: (project, { state, enclosure }) =>
    wording.remove(getInstallation(project, state).enclosures[enclosure]?.name ?? unnamed.box),
  refuse(project, { state, enclosure, id }) {
    const { found, no } = enclosureOr(project, state, enclosure);
    if (no !== undefined) return no;
    if (id in found.enclosure.passThroughs) return undefined;
    return refusal("unknown-item", wording.none(found.enclosure.name));
  },
  apply(draft, { state, enclosure: box, id }, before) {
    const installation = getInstallation(before, state);
    const enclosure = written(installation.enclosures[box]);
    const pass = written(enclosure.passThroughs[id]);
    const target = written(draftInstallation(draft, state).enclosures[box]);
    delete target.passThroughs[id];
    const isGone = { cable: () => false, passThrough: (one: string) => one === id };
    for (const entry of emptiedEntries(installation, enclosure, [pass.entryIn, pass.entryOut], isGone))
      delete target.entries[entry];
  },
});
