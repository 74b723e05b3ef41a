import { catalogue, type Part } from "../lib/catalogue.ts";
import { sameValue } from "../lib/same-value.ts";
import type { OutletWish } from "../model/project.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { oneOf, optional, orNull, outletText, record, stateName, textUpTo } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand } from "./define-command.ts";
import { outletOr } from "./find-or-refuse.ts";
import { draftInstallation } from "./move-ends.ts";
import { nameOfOutlet } from "./place-load.ts";

type Args = CommandArgs["set-outlet-wish"];

const wording = catalogue({
  clear: (outlet: Part) => `Clear wish for ${outlet}`,
  "decided-not": (outlet: Part) => `Decide against protection for ${outlet}`,
  protect: (outlet: Part) => `Wish protection for ${outlet}`,
});

/** Records a wish that an outlet be protected, or a decision against it; null takes it back. */
export const setOutletWish = defineCommand<Args>({
  id: "set-outlet-wish",
  args: record<Args>({
    state: stateName,
    outlet: outletText,
    wish: orNull(
      record<OutletWish>({
        wish: oneOf(["protect", "decided-not"]),
        by: optional(textUpTo(100)),
        reason: optional(textUpTo(500)),
      }),
    ),
  }),
  label(project, { state, outlet, wish }) {
    const name = nameOfOutlet(project, state, outlet);
    if (wish === null) return wording.clear(name);
    return wording[wish.wish](name);
  },
  refuse: (project, { state, outlet }) => outletOr(project, state, outlet).no,
  apply(draft, { state, outlet, wish }, before) {
    const { outlets } = draftInstallation(draft, state).intent;
    const was = getInstallation(before, state).intent.outlets[outlet];
    if (wish === null) {
      if (was !== undefined) delete outlets[outlet];
    } else if (!sameValue(was, wish)) outlets[outlet] = { ...wish };
  },
});
