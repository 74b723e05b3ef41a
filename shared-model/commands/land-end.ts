import { nameOfEnd } from "../queries/end-facts.ts";
import { placeAt } from "./args-of-model.ts";
import { endText, idText, record, stateName } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand } from "./define-command.ts";
import { endWords } from "./end-words.ts";
import { cannotLand, endOr, nameOfPlace } from "./find-or-refuse.ts";
import { moveEnds } from "./move-ends.ts";

type Args = CommandArgs["land-end"];

/** Puts an end anywhere in its enclosure. A second end in one hole is allowed: as found, it may be so, and a rule says it. */
export const landEnd = defineCommand<Args>({
  id: "land-end",
  args: record<Args>({ state: stateName, enclosure: idText, end: endText, at: placeAt }),
  label(project, { state, enclosure, end, at }) {
    const { found } = endOr(project, state, enclosure, end);
    if (found === undefined) return endWords.landOne;
    const name = nameOfEnd(found.installation, found.enclosure, end);
    if (at.kind === "capped") return endWords.cap(name);
    if (at.kind === "loose") return endWords.lift(name);
    return endWords.land(name, nameOfPlace(found.enclosure, at));
  },
  refuse(project, { state, enclosure, end, at }) {
    const { found, no } = endOr(project, state, enclosure, end);
    return no ?? cannotLand(found, end, at);
  },
  apply(draft, { state, enclosure, end, at }, before) {
    moveEnds(draft, state, enclosure, new Map([[end, at]]), before);
  },
});
