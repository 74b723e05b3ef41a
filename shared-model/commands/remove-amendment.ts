import { valueWords } from "../model/value-unit.ts";
import { optional, record, textUpTo } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, refusal } from "./define-command.ts";
import { changesThat } from "./set-amendment.ts";

type Args = CommandArgs["remove-amendment"];

/** Judges by the edition itself again. */
export const removeAmendment = defineCommand<Args>({
  id: "remove-amendment",
  args: record<Args>({ rule: textUpTo(2_000), value: optional(textUpTo(2_000)) }),
  label: (_project, { rule, value }) =>
    value === undefined
      ? `Switch ${rule} on again`
      : `Take back the amendment of ${valueWords(value).toLowerCase()} of ${rule}`,
  refuse({ amendments }, { rule, value }) {
    if (amendments.some((one) => changesThat(one, rule, value))) return undefined;
    return refusal("unknown-item", "There is no such local amendment. There is nothing to take back.");
  },
  apply(draft, { rule, value }, before) {
    draft.amendments = before.amendments.filter((one) => !changesThat(one, rule, value));
  },
});
