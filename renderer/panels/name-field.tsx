import { useId, useState } from "react";
import type { ItemRef } from "../../shared-model/commands/command-args.ts";
import { dispatch, documentStore } from "../state/document-store.ts";
import { wording } from "./words.ts";

/** A name that is changed where it stands: Enter or leaving the field renames, Escape keeps the old name. */
export function NameField({
  item,
  name,
  large = false,
}: {
  readonly item: ItemRef;
  readonly name: string;
  readonly large?: boolean;
}) {
  const [typed, setTyped] = useState<string>();
  const [refusal, setRefusal] = useState<string>();
  const said = useId();
  const rename = (): void => {
    const wanted = typed?.trim();
    if (wanted === undefined || wanted === name) {
      setTyped(undefined);
      return;
    }
    const { state } = documentStore.get();
    const done = dispatch({ command: "rename-item", args: { state, item, name: wanted } });
    setRefusal(done.ok ? undefined : done.refusal.message);
    if (done.ok) setTyped(undefined);
  };
  return (
    <span className="name">
      <input
        className={large ? "name-field large" : "name-field"}
        aria-label={wording.nameWord}
        aria-invalid={refusal !== undefined}
        aria-describedby={refusal === undefined ? undefined : said}
        data-committed={typed === undefined}
        spellCheck={false}
        value={typed ?? name}
        onChange={({ target }) => setTyped(target.value)}
        onBlur={rename}
        onKeyDown={(event) => {
          if (event.key === "Enter") rename();
          if (event.key !== "Escape") return;
          setTyped(undefined);
          setRefusal(undefined);
          event.stopPropagation();
        }}
      />
      {refusal !== undefined && (
        <span id={said} role="alert" className="refused">
          {refusal}
        </span>
      )}
    </span>
  );
}
