import { catalogue, type Part } from "../lib/catalogue.ts";
import { findSplice } from "../queries/find-item.ts";
import { idText, orNull, record, sheetPoint } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, refusal } from "./define-command.ts";
import { gone, unnamed } from "./item-words.ts";

type Args = CommandArgs["move-splice"];

const wording = catalogue({
  move: (splice: Part) => `Move splice ${splice}`,
  placeItself: (splice: Part) => `Let ${splice} place itself`,
});

/** Keeps a splice where a person dragged it, inside its box; null gives it back to the automatic layout. */
export const moveSplice = defineCommand<Args>({
  id: "move-splice",
  args: record<Args>({ splice: idText, to: orNull(sheetPoint) }),
  label(project, { splice, to }) {
    const found =
      findSplice(project.asFound, splice) ??
      (project.proposed === undefined ? undefined : findSplice(project.proposed, splice));
    const name = found?.splice.name ?? unnamed.splice;
    return to === null ? wording.placeItself(name) : wording.move(name);
  },
  refuse(project, { splice }) {
    const known =
      findSplice(project.asFound, splice) !== undefined ||
      (project.proposed !== undefined && findSplice(project.proposed, splice) !== undefined);
    if (known) return undefined;
    return refusal("unknown-splice", gone.splice);
  },
  apply(draft, { splice, to }, before) {
    const was = before.layout.splices[splice];
    if (to === null) {
      if (was !== undefined) delete draft.layout.splices[splice];
    } else if (was?.x !== to.x || was.y !== to.y) draft.layout.splices[splice] = { ...to };
  },
  mergeKey: ({ splice }) => splice,
});
