import type { AttachmentId, EnclosureId } from "../../shared-model/model/ids.ts";
import type { RuleSearch } from "./rule-search.ts";
import { createStore, type Store } from "./store.ts";

/** The one dialog that is open. A question carries what to do with its answer. */
export type DialogState =
  | { readonly kind: "none" }
  | { readonly kind: "cautions" }
  | { readonly kind: "samples" }
  | { readonly kind: "keys" }
  | { readonly kind: "new-box" }
  | { readonly kind: "legend" }
  | { readonly kind: "amendments" }
  /** `card` is the box whose make-up card alone is ticked at first. */
  | { readonly kind: "print"; readonly card?: EnclosureId }
  /** `at` is the device or box whose lines come first into view. */
  | { readonly kind: "test-record"; readonly at?: string }
  | { readonly kind: "photo"; readonly id: AttachmentId }
  | { readonly kind: "rule-book"; readonly search?: RuleSearch }
  /** `message` is what the finding at hand says; `from` is the search that it was found by in the rule book. */
  | { readonly kind: "help"; readonly rule: string; readonly message?: string; readonly from?: RuleSearch }
  | {
      readonly kind: "question";
      readonly title: string;
      readonly lines: readonly string[];
      /** Words of the buttons, the first one is the one meant for Enter. Closing the dialog answers undefined. */
      readonly answers: readonly string[];
      readonly done: (answer: string | undefined) => void;
    };

const NONE: DialogState = { kind: "none" };

export const dialogStore: Store<DialogState> = createStore<DialogState>(NONE);

export function openDialog(dialog: DialogState): void {
  closeDialog();
  dialogStore.set(dialog);
}

export function closeDialog(answer?: string): void {
  const open = dialogStore.get();
  dialogStore.set(NONE);
  if (open.kind === "question") open.done(answer);
}

/** Asks the person; undefined when they close the question without an answer. */
export function ask<A extends string>(
  title: string,
  lines: readonly string[],
  answers: readonly A[],
): Promise<A | undefined> {
  return new Promise((resolve) => {
    const done = (answer: string | undefined): void => resolve(answers.find((one) => one === answer));
    openDialog({ kind: "question", title, lines, answers, done });
  });
}
