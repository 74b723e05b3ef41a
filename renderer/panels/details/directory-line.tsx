import { useId, useState } from "react";
import type { Device } from "../../../shared-model/model/device.ts";
import { dispatch, documentStore, installationOf, refusalOf } from "../../state/document-store.ts";
import { useStore } from "../../state/use-store.ts";
import { CommitField } from "../../ui/commit-field.tsx";
import { Refused } from "../refused.tsx";
import { Section } from "./section.tsx";
import { wording } from "./words.ts";

/** What the panel directory says about a breaker or fuse; nothing for other devices. */
export function DirectoryLine({ device }: { readonly device: Device }) {
  const id = useId();
  const line = useStore(documentStore, (document) => installationOf(document).directory[device.id] ?? "");
  const state = useStore(documentStore, (document) => document.state);
  const [refusal, setRefusal] = useState<string>();
  const args = { state, device: device.id };
  if (refusalOf({ command: "set-directory-line", args: { ...args, text: "?" } })?.code === "not-a-breaker") return null;
  const write = (text: string): void => {
    const done = dispatch({ command: "set-directory-line", args: { ...args, text: text === "" ? null : text } });
    setRefusal(done.ok ? undefined : done.refusal.message);
  };
  return (
    <Section title={wording.panelDirectory}>
      <div className="part-body pick">
        <label htmlFor={id}>{wording.itSays}</label>
        <CommitField id={id} value={line} invalid={refusal !== undefined} onCommit={write} />
        <Refused message={refusal} />
      </div>
    </Section>
  );
}
