import type { Draft } from "immer";
import { catalogue, type Part } from "../lib/catalogue.ts";
import { sameValue } from "../lib/same-value.ts";
import type { Installation } from "../model/project.ts";
import { idText, optional, record } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand } from "./define-command.ts";
import { installationOr } from "./find-or-refuse.ts";
import { asProposed } from "./flow/as-proposed.ts";
import { cannotReset, nameInEither, resetEnclosure } from "./flow/reset-enclosure.ts";
import { dropUnshared } from "./flow/shared-tables.ts";

type Args = CommandArgs["reset-proposed"];

const wording = catalogue({
  reset: (box: Part) => `Reset ${box} to as found`,
  resetAll: "Reset proposed to as found",
});

/** Makes proposed, or the content of one enclosure of it, equal to as found again. */
export const resetProposed = defineCommand<Args>({
  id: "reset-proposed",
  args: record<Args>({ enclosure: optional(idText) }),
  label: (project, { enclosure }) =>
    enclosure === undefined ? wording.resetAll : wording.reset(nameInEither(project, enclosure)),
  refuse(project, { enclosure }) {
    const { no } = installationOr(project, "proposed");
    if (no !== undefined || enclosure === undefined) return no;
    return cannotReset(project, enclosure);
  },
  apply(draft, { enclosure }, before) {
    if (enclosure !== undefined) return resetEnclosure(draft, enclosure, before);
    const fresh = asProposed(before.asFound);
    if (!sameValue(before.proposed, fresh)) draft.proposed = fresh as Draft<Installation>;
    if (before.heldBack !== undefined) delete draft.heldBack;
    dropUnshared(draft, before, [before.asFound]);
  },
});
