import { nameOfEnd } from "../queries/end-facts.ts";
import { endText, flag, idText, record, stateName } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, refusal } from "./define-command.ts";
import { endWords } from "./end-words.ts";
import { endOr } from "./find-or-refuse.ts";
import { unnamed } from "./item-words.ts";
import { draftInstallation, forgetEvidence, written } from "./move-ends.ts";

type Args = CommandArgs["mark-spare"];

/** Says that a capped end is left so on purpose, or takes that back. */
export const markSpare = defineCommand<Args>({
  id: "mark-spare",
  args: record<Args>({ state: stateName, enclosure: idText, end: endText, spare: flag }),
  label(project, { state, enclosure, end, spare }) {
    const { found } = endOr(project, state, enclosure, end);
    const name = found === undefined ? unnamed.end : nameOfEnd(found.installation, found.enclosure, end);
    return spare ? endWords.spare(name) : endWords.notSpare(name);
  },
  refuse(project, { state, enclosure, end, spare }) {
    const { found, no } = endOr(project, state, enclosure, end);
    if (no !== undefined) return no;
    if (!spare || found.place.at.kind === "capped") return undefined;
    const name = nameOfEnd(found.installation, found.enclosure, end);
    return refusal("not-capped", endWords.notCapped(name));
  },
  apply(draft, { state, enclosure, end, spare }) {
    const place = written(written(draftInstallation(draft, state).enclosures[enclosure]).places[end]);
    if (spare) place.spare = true;
    else {
      delete place.spare;
      forgetEvidence(place, "spare");
    }
  },
});
