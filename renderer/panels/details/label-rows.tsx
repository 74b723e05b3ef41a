import { useState } from "react";
import type { LabelId } from "../../../shared-model/model/ids.ts";
import type { Label } from "../../../shared-model/model/project.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { dispatch, documentStore, installationOf } from "../../state/document-store.ts";
import { mintId } from "../../state/mint-id.ts";
import { select } from "../../state/session-store.ts";
import { useStore } from "../../state/use-store.ts";
import { Refused } from "../refused.tsx";
import { Section } from "./section.tsx";
import { wording as said } from "./words.ts";

/** The labels fixed to a thing, and one more. */
export function LabelRows({ on }: { readonly on: Label["on"] }) {
  const { labels } = useStore(documentStore, installationOf);
  const [wording, setWording] = useState("");
  const [refusal, setRefusal] = useState<string>();
  const mine = inOrder<Label>(labels).filter((label) => isSamePlace(label.on, on));
  const add = (): void => {
    const { state } = documentStore.get();
    const done = dispatch({ command: "add-label", args: { state, id: mintId<LabelId>("l"), wording, on } });
    setRefusal(done.ok ? undefined : done.refusal.message);
    if (done.ok) setWording("");
  };
  return (
    <Section title={said.labels} note={mine.length}>
      <div className="part-body">
        {mine.map((label) => (
          <p key={label.id} className="row">
            <button type="button" className="link" onClick={() => select({ kind: "label", id: label.id })}>
              {label.wording}
            </button>
          </p>
        ))}
        <form
          className="add-line"
          onSubmit={(event) => {
            event.preventDefault();
            add();
          }}
        >
          <input
            className="field small"
            aria-label={said.wordsOfALabel}
            placeholder={said.wordsOfALabel}
            value={wording}
            onChange={({ target }) => setWording(target.value)}
          />
          <button type="submit" className="button small">
            {said.add}
            <span className="unseen">{said.theLabel}</span>
          </button>
        </form>
        <Refused message={refusal} />
      </div>
    </Section>
  );
}

const isSamePlace = (a: Label["on"], b: Label["on"]): boolean =>
  ("device" in a && "device" in b && a.device === b.device) ||
  ("enclosure" in a && "enclosure" in b && a.enclosure === b.enclosure) ||
  ("cable" in a && "cable" in b && a.cable === b.cable);
