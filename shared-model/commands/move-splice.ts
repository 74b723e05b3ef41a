import { findSplice } from "../queries/find-item.ts";
import { idText, orNull, record, sheetPoint } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, refusal } from "./define-command.ts";

type Args = CommandArgs["move-splice"];

/** Keeps a splice where a person dragged it, inside its box; null gives it back to the automatic layout. */
export const moveSplice = defineCommand<Args>({
  id: "move-splice",
  args: record<Args>({ splice: idText, to: orNull(sheetPoint) }),
  label(project, { splice, to }) {
    const found =
      findSplice(project.asFound, splice) ??
      (project.proposed === undefined ? undefined : findSplice(project.proposed, splice));
    const name = found?.splice.name ?? "a splice";
    return to === null ? `Let ${name} place itself` : `Move splice ${name}`;
  },
  refuse(project, { splice }) {
    const known =
      findSplice(project.asFound, splice) !== undefined ||
      (project.proposed !== undefined && findSplice(project.proposed, splice) !== undefined);
    if (known) return undefined;
    return refusal("unknown-splice", "That splice is no longer there. Pick one that is on the sheet and try again.");
  },
  apply(draft, { splice, to }, before) {
    const was = before.layout.splices[splice];
    if (to === null) {
      if (was !== undefined) delete draft.layout.splices[splice];
    } else if (was?.x !== to.x || was.y !== to.y) draft.layout.splices[splice] = { ...to };
  },
  mergeKey: ({ splice }) => `move-splice ${splice}`,
});
