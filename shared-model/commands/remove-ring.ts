import { catalogue, type Part } from "../lib/catalogue.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { idText, record, stateName } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, refusal } from "./define-command.ts";
import { enclosureOr } from "./find-or-refuse.ts";
import { unnamed } from "./item-words.ts";
import { draftInstallation } from "./move-ends.ts";

type Args = CommandArgs["remove-ring"];

const wording = catalogue({
  none: (box: Part) => `${box} has no such ring. Pick one that is on it.`,
  remove: (box: Part) => `Remove ring of ${box}`,
});

/** Takes a ring, cover or extension off a box. */
export const removeRing = defineCommand<Args>({
  id: "remove-ring",
  args: record<Args>({ state: stateName, enclosure: idText, id: idText }),
  label: (project, { state, enclosure }) =>
    wording.remove(getInstallation(project, state).enclosures[enclosure]?.name ?? unnamed.box),
  refuse(project, { state, enclosure, id }) {
    const { found, no } = enclosureOr(project, state, enclosure);
    if (no !== undefined) return no;
    if (found.enclosure.kind === "box" && id in found.enclosure.rings) return undefined;
    return refusal("unknown-item", wording.none(found.enclosure.name));
  },
  apply(draft, { state, enclosure, id }) {
    const box = draftInstallation(draft, state).enclosures[enclosure];
    if (box?.kind === "box") delete box.rings[id];
  },
});
