import { nameOfEnd } from "../queries/end-facts.ts";
import { endText, idText, record, stateName } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, refusal } from "./define-command.ts";
import { endWords } from "./end-words.ts";
import { endOr, nameOfPlace } from "./find-or-refuse.ts";
import { moveEnds } from "./move-ends.ts";

type Args = CommandArgs["leave-splice"];

/** Takes an end out of its splice and caps it; a splice left with no member goes. */
export const leaveSplice = defineCommand<Args>({
  id: "leave-splice",
  args: record<Args>({ state: stateName, enclosure: idText, end: endText }),
  label(project, { state, enclosure, end }) {
    const { found } = endOr(project, state, enclosure, end);
    if (found === undefined) return endWords.leaveOne;
    const name = nameOfEnd(found.installation, found.enclosure, end);
    return endWords.leave(name, nameOfPlace(found.enclosure, found.place.at));
  },
  refuse(project, { state, enclosure, end }) {
    const { found, no } = endOr(project, state, enclosure, end);
    if (no !== undefined) return no;
    if (found.place.at.kind === "splice") return undefined;
    const name = nameOfEnd(found.installation, found.enclosure, end);
    return refusal("not-in-splice", endWords.notInSplice(name));
  },
  apply(draft, { state, enclosure, end }, before) {
    moveEnds(draft, state, enclosure, new Map([[end, { kind: "capped" }]]), before);
  },
});
