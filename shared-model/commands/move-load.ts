import { idText, outletText, record, stateName } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand } from "./define-command.ts";
import { callItem, noSuchItem } from "./find-item-or-refuse.ts";
import { draftInstallation, forgetEvidence, written } from "./move-ends.ts";
import { noSocket, plugInto } from "./place-load.ts";

type Args = CommandArgs["move-load"];

/** Plugs a load into another outlet. */
export const moveLoad = defineCommand<Args>({
  id: "move-load",
  args: record<Args>({ state: stateName, id: idText, plug: outletText }),
  label: (project, { state, id, plug }) =>
    plugInto(project, state, callItem(project, state, { kind: "load", id }), plug),
  refuse: (project, { state, id, plug }) =>
    noSuchItem(project, state, { kind: "load", id }) ?? noSocket(project, state, plug),
  apply(draft, { state, id, plug }) {
    const load = written(draftInstallation(draft, state).loads[id]);
    if (load.plug === plug) return;
    load.plug = plug;
    forgetEvidence(load, "plug");
  },
});
