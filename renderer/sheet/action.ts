import type { ItemRef, TypedCall } from "../../shared-model/commands/command-args.ts";
import { parseEnd } from "../../shared-model/model/ids.ts";
import { dispatch, documentStore } from "../state/document-store.ts";
import { keysNow } from "../state/keys/keys.ts";
import { isItem } from "../state/selection.ts";
import { notify, select, sessionStore } from "../state/session-store.ts";
import { say } from "./gesture-store.ts";
import { wording } from "./words.ts";

/** One line of a menu: something to do, a list to choose from, or a parting line. */
export type Action =
  | { readonly kind: "do"; readonly words: string; readonly keys?: string; readonly run: () => void }
  | { readonly kind: "list"; readonly words: string; readonly actions: readonly Action[] }
  | { readonly kind: "line" };

export const LINE: Action = { kind: "line" };

export const act = (words: string, run: () => void, keys?: string): Action => ({
  kind: "do",
  words,
  run,
  ...(keys !== undefined && { keys }),
});

/** A list of what there is; no line where there is nothing. */
export const list = (words: string, actions: readonly Action[]): readonly Action[] =>
  actions.length === 0 ? [] : [{ kind: "list", words, actions }];

/** Runs a command for a menu; a refusal is told in words. */
export function command(call: TypedCall): void {
  const done = dispatch(call);
  if (done.ok) return;
  say(done.refusal.message);
  notify("problem", wording.notPossible, [done.refusal.message]);
}

export const remove = (words: string, items: readonly ItemRef[]): Action =>
  act(words, () => removeItems(items), keysNow("remove-selected"));

function removeItems(items: readonly ItemRef[]): void {
  if (items.length === 0) return;
  command({ command: "remove-items", args: { state: documentStore.get().state, items } });
  select();
}

/** Removes what is selected; a conductor of a cable cannot go alone, its cable can. */
export function removeSelected(): void {
  const { selection } = sessionStore.get();
  const items = selection.flatMap((each): readonly ItemRef[] => {
    if (isItem(each)) return [each];
    const parsed = each.kind === "end" ? parseEnd(each.id) : undefined;
    return parsed?.of === "jumper" ? [{ kind: "jumper", id: parsed.jumper }] : [];
  });
  if (items.length === 0 && selection.length > 0)
    notify("note", wording.nothingToRemove, [wording.aConductorGoesWithItsCable]);
  removeItems(items);
}
