import type { Draft } from "immer";
import { catalogue } from "../lib/catalogue.ts";
import type { Installation } from "../model/project.ts";
import { record } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, refusal } from "./define-command.ts";
import { asProposed } from "./flow/as-proposed.ts";

type Args = CommandArgs["start-proposed"];

const wording = catalogue({
  already: "Proposed was started before. Reset it to make it equal to as found again.",
  start: "Start proposed",
});

/** Makes the second account of the wiring, equal to as found. From then on, as-found edits are carried on into it. */
export const startProposed = defineCommand<Args>({
  id: "start-proposed",
  args: record<Args>({}),
  label: () => wording.start,
  refuse(project) {
    if (project.proposed === undefined) return undefined;
    return refusal("already-started", wording.already);
  },
  apply(draft, _args, before) {
    draft.proposed = asProposed(before.asFound) as Draft<Installation>;
  },
});
