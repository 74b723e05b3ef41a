import { catalogue, type Part } from "../lib/catalogue.ts";
import { inSentence } from "../lib/in-sentence.ts";
import { valueWords } from "../model/value-unit.ts";
import { optional, record, textUpTo } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, refusal } from "./define-command.ts";
import { changesThat } from "./set-amendment.ts";

type Args = CommandArgs["remove-amendment"];

const wording = catalogue({
  none: "There is no such local amendment. There is nothing to take back.",
  on: (rule: Part) => `Switch ${rule} on again`,
  takeBack: (value: Part, rule: Part) => `Take back the amendment of ${value} of ${rule}`,
});

/** Judges by the edition itself again. */
export const removeAmendment = defineCommand<Args>({
  id: "remove-amendment",
  args: record<Args>({ rule: textUpTo(2_000), value: optional(textUpTo(2_000)) }),
  label: (_project, { rule, value }) =>
    value === undefined ? wording.on(rule) : wording.takeBack(inSentence(valueWords(value)), rule),
  refuse({ amendments }, { rule, value }) {
    if (amendments.some((one) => changesThat(one, rule, value))) return undefined;
    return refusal("unknown-item", wording.none);
  },
  apply(draft, { rule, value }, before) {
    draft.amendments = before.amendments.filter((one) => !changesThat(one, rule, value));
  },
});
