import type { At } from "../model/place.ts";
import { nameOfEnd } from "../queries/end-facts.ts";
import { endText, idText, record, stateName } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand } from "./define-command.ts";
import { endWords } from "./end-words.ts";
import { cannotLand, endOr, nameOfPlace } from "./find-or-refuse.ts";
import { moveEnds } from "./move-ends.ts";

type Args = CommandArgs["join-splice"];

const inSplice = ({ splice }: Args): At => ({ kind: "splice", splice });

/** Puts one more end into a splice. Whether its connector takes it is for the rules to say. */
export const joinSplice = defineCommand<Args>({
  id: "join-splice",
  args: record<Args>({ state: stateName, enclosure: idText, end: endText, splice: idText }),
  label(project, args) {
    const { found } = endOr(project, args.state, args.enclosure, args.end);
    if (found === undefined) return endWords.joinOne;
    const name = nameOfEnd(found.installation, found.enclosure, args.end);
    return endWords.join(name, nameOfPlace(found.enclosure, inSplice(args)));
  },
  refuse(project, args) {
    const { found, no } = endOr(project, args.state, args.enclosure, args.end);
    return no ?? cannotLand(found, args.end, inSplice(args));
  },
  apply(draft, args, before) {
    moveEnds(draft, args.state, args.enclosure, new Map([[args.end, inSplice(args)]]), before);
  },
});
