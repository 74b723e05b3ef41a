import { catalogue, type Part } from "../lib/catalogue.ts";
import { idText, record } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, refusal } from "./define-command.ts";
import { unnamed } from "./item-words.ts";

type Args = CommandArgs["settle-held-back"];

const wording = catalogue({
  gone: "That edit is no longer held back. There is nothing left to settle.",
  settle: (step: Part) => `Settle “${step}”`,
});

/** A person has looked at an as-found edit that was not carried over, and says that proposed is as it should be. */
export const settleHeldBack = defineCommand<Args>({
  id: "settle-held-back",
  args: record<Args>({ id: idText }),
  label: ({ heldBack = [] }, { id }) => wording.settle(heldBack.find((one) => one.id === id)?.title ?? unnamed.edit),
  refuse({ heldBack = [] }, { id }) {
    if (heldBack.some((one) => one.id === id)) return undefined;
    return refusal("unknown-item", wording.gone);
  },
  apply(draft, { id }, { heldBack = [] }) {
    const left = heldBack.filter((one) => one.id !== id);
    if (left.length === 0) delete draft.heldBack;
    else draft.heldBack = (draft.heldBack ?? []).filter((one) => one.id !== id);
  },
});
