import { nameOfEnd } from "../queries/end-facts.ts";
import { endText, idText, record, stateName } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand } from "./define-command.ts";
import { endWords } from "./end-words.ts";
import { endOr } from "./find-or-refuse.ts";
import { unnamed } from "./item-words.ts";
import { moveEnds } from "./move-ends.ts";

type Args = CommandArgs["lift-end"];

/** Takes an end off whatever it is on and leaves it bare and unattached. */
export const liftEnd = defineCommand<Args>({
  id: "lift-end",
  args: record<Args>({ state: stateName, enclosure: idText, end: endText }),
  label(project, { state, enclosure, end }) {
    const { found } = endOr(project, state, enclosure, end);
    return endWords.lift(found === undefined ? unnamed.end : nameOfEnd(found.installation, found.enclosure, end));
  },
  refuse: (project, { state, enclosure, end }) => endOr(project, state, enclosure, end).no,
  apply(draft, { state, enclosure, end }, before) {
    moveEnds(draft, state, enclosure, new Map([[end, { kind: "loose" }]]), before);
  },
});
