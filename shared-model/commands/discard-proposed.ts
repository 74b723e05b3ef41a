import { catalogue } from "../lib/catalogue.ts";
import { record } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand } from "./define-command.ts";
import { installationOr } from "./find-or-refuse.ts";
import { dropUnshared } from "./flow/shared-tables.ts";
import { written } from "./move-ends.ts";
import { clearField } from "./take-away.ts";

type Args = CommandArgs["discard-proposed"];

const wording = catalogue({
  discard: "Discard proposed",
});

/**
 * Takes the second account of the wiring away, with what was kept for it: word given for its findings, edits that were
 * held back from it, and where things stood that only it had. Readings stay: they are a record of their time.
 */
export const discardProposed = defineCommand<Args>({
  id: "discard-proposed",
  args: record<Args>({}),
  label: () => wording.discard,
  refuse: (project) => installationOr(project, "proposed").no,
  apply(draft, _args, before) {
    delete draft.proposed;
    if (before.heldBack !== undefined) delete draft.heldBack;
    if (before.acknowledgements.some(({ state }) => state === "proposed"))
      draft.acknowledgements = draft.acknowledgements.filter(({ state }) => state !== "proposed");
    for (const enclosure of Object.values(before.asFound.enclosures))
      for (const { id, replaces } of Object.values(enclosure.devices))
        if (replaces !== undefined)
          clearField(written(written(draft.asFound.enclosures[enclosure.id]).devices[id]), "replaces");
    dropUnshared(draft, before, [before.asFound]);
  },
});
