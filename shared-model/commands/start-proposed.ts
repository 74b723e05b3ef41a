import type { Draft } from "immer";
import type { Installation } from "../model/project.ts";
import { record } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, refusal } from "./define-command.ts";
import { asProposed } from "./flow/as-proposed.ts";

type Args = CommandArgs["start-proposed"];

/** Makes the second account of the wiring, equal to as found. From then on, as-found edits are carried on into it. */
export const startProposed = defineCommand<Args>({
  id: "start-proposed",
  args: record<Args>({}),
  label: () => "Start proposed",
  refuse(project) {
    if (project.proposed === undefined) return undefined;
    return refusal("already-started", "Proposed was started before. Reset it to make it equal to as found again.");
  },
  apply(draft, _args, before) {
    draft.proposed = asProposed(before.asFound) as Draft<Installation>;
  },
});
