import { idText, record } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, refusal } from "./define-command.ts";

type Args = CommandArgs["settle-held-back"];

/** A person has looked at an as-found edit that was not carried over, and says that proposed is as it should be. */
export const settleHeldBack = defineCommand<Args>({
  id: "settle-held-back",
  args: record<Args>({ id: idText }),
  label: ({ heldBack = [] }, { id }) => `Settle “${heldBack.find((one) => one.id === id)?.title ?? "an edit"}”`,
  refuse({ heldBack = [] }, { id }) {
    if (heldBack.some((one) => one.id === id)) return undefined;
    return refusal("unknown-item", "That edit is no longer held back. There is nothing left to settle.");
  },
  apply(draft, { id }, { heldBack = [] }) {
    const left = heldBack.filter((one) => one.id !== id);
    if (left.length === 0) delete draft.heldBack;
    else draft.heldBack = (draft.heldBack ?? []).filter((one) => one.id !== id);
  },
});
