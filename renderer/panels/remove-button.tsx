import { useState } from "react";
import type { ItemRef } from "../../shared-model/commands/command-args.ts";
import { dispatch, documentStore } from "../state/document-store.ts";
import { select } from "../state/session-store.ts";
import { Refused } from "./refused.tsx";
import { wording } from "./words.ts";

/** Removes items with what depends on them. Undo brings all of it back, so it does not ask. */
export function RemoveButton({ items, what }: { readonly items: readonly ItemRef[]; readonly what: string }) {
  const [refusal, setRefusal] = useState<string>();
  const remove = (): void => {
    const { state } = documentStore.get();
    const done = dispatch({ command: "remove-items", args: { state, items } });
    setRefusal(done.ok ? undefined : done.refusal.message);
    if (done.ok) select();
  };
  return (
    <>
      <button type="button" className="button small" onClick={remove}>
        {wording.remove}
        <span className="unseen"> {what}</span>
      </button>
      <Refused message={refusal} />
    </>
  );
}
