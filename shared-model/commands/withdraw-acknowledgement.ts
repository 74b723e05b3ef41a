import { catalogue } from "../lib/catalogue.ts";
import { record, stateName, textUpTo } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, refusal } from "./define-command.ts";

type Args = CommandArgs["withdraw-acknowledgement"];

const wording = catalogue({
  none: "That finding is not acknowledged. There is nothing to withdraw.",
  withdraw: "Withdraw an acknowledgement",
});

/** Takes back the word given for a finding. */
export const withdrawAcknowledgement = defineCommand<Args>({
  id: "withdraw-acknowledgement",
  args: record<Args>({ finding: textUpTo(8_000), state: stateName }),
  label: () => wording.withdraw,
  refuse({ acknowledgements }, { finding, state }) {
    if (acknowledgements.some((one) => one.finding === finding && one.state === state)) return undefined;
    return refusal("unknown-item", wording.none);
  },
  apply(draft, { finding, state }) {
    draft.acknowledgements = draft.acknowledgements.filter((one) => one.finding !== finding || one.state !== state);
  },
});
