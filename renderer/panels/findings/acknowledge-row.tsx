import { useEffect, useId, useRef, useState } from "react";
import type { Finding } from "../../../shared-model/answers/finding.ts";
import { type Acknowledged, acknowledgementOf } from "../../../shared-model/queries/acknowledgement-of.ts";
import { acknowledge, dayOf, withdrawAcknowledgement } from "../../state/acknowledging.ts";
import { documentStore } from "../../state/document-store.ts";
import { preferencesStore } from "../../state/preferences-store.ts";
import { notify } from "../../state/session-store.ts";
import { useStore } from "../../state/use-store.ts";
import { Refused } from "../refused.tsx";
import { nextFocusAfter } from "./next-focus.ts";
import { wording } from "./words.ts";

/** A person's word on a finding: given with name and reason, shown with its day, taken back. */
export function AcknowledgeRow({ finding }: { readonly finding: Finding }) {
  const acknowledged = useStore(documentStore, ({ project }) => acknowledgementOf(project, finding), sameWord);
  const readOnly = useStore(documentStore, (state) => state.readOnly);
  return (
    <>
      {!readOnly && acknowledged?.covers !== true && <AcknowledgeForm finding={finding} />}
      {acknowledged && <Word finding={finding} word={acknowledged} readOnly={readOnly} />}
    </>
  );
}

const sameWord = (a: Acknowledged | undefined, b: Acknowledged | undefined): boolean =>
  a?.acknowledgement === b?.acknowledgement && a?.covers === b?.covers;

interface WordProps {
  readonly finding: Finding;
  readonly word: Acknowledged;
  readonly readOnly: boolean;
}

function Word({ finding, word: { acknowledgement, covers }, readOnly }: WordProps) {
  const { by, at, reason } = acknowledgement;
  const withdraw = (): void => {
    const done = withdrawAcknowledgement(finding);
    if (!done.ok) notify("problem", wording.notDone, [done.refusal.message]);
  };
  return (
    <div className="finding-word">
      <p>
        <strong>{covers ? wording.acknowledged : wording.acknowledgedWhenItSaidSomethingElse}</strong>: {reason}
      </p>
      <p className="finding-meta">
        <span>
          {by}, {dayOf(at)}
        </span>
        {!readOnly && (
          <button type="button" className="link" onClick={withdraw}>
            {wording.withdraw}
            <span className="unseen">
              {wording.theAcknowledgementOf}
              {finding.subjects[0]?.name}
            </span>
          </button>
        )}
      </p>
    </div>
  );
}

function AcknowledgeForm({ finding }: { readonly finding: Finding }) {
  // "closed" tells a form that was just closed, to which the focus belongs, from one that was never opened.
  const [form, setForm] = useState<"none" | "open" | "closed">("none");
  const button = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (form === "closed") button.current?.focus();
  }, [form]);
  if (form === "open") return <OpenForm finding={finding} onClose={() => setForm("closed")} />;
  return (
    <button ref={button} type="button" className="link" onClick={() => setForm("open")}>
      {wording.acknowledge}
      <span className="unseen"> {finding.subjects[0]?.name}</span>
    </button>
  );
}

function OpenForm({ finding, onClose }: { readonly finding: Finding; readonly onClose: () => void }) {
  const id = useId();
  const [by, setBy] = useState(preferencesStore.get().name);
  const [reason, setReason] = useState("");
  const [refusal, setRefusal] = useState<string>();
  const fields = useRef<HTMLFormElement>(null);
  useEffect(() => {
    const empty = fields.current?.querySelector<HTMLInputElement>(":is(input, textarea):placeholder-shown");
    empty?.focus();
  }, []);
  const submit = (form: HTMLElement): void => {
    const focusNext = nextFocusAfter(form);
    const done = acknowledge(finding, by, reason);
    setRefusal(done.ok ? undefined : done.refusal.message);
    if (done.ok) focusNext();
  };
  return (
    <form
      ref={fields}
      className="acknowledge"
      aria-label={wording.acknowledge2(finding.subjects[0]?.name ?? wording.theFinding)}
      onSubmit={(event) => {
        event.preventDefault();
        submit(event.currentTarget);
      }}
      onKeyDown={(event) => {
        if (event.key !== "Escape") return;
        event.stopPropagation();
        onClose();
      }}
    >
      <label htmlFor={`${id}by`}>{wording.yourName}</label>
      <input
        id={`${id}by`}
        className="field small"
        required
        placeholder=" "
        autoComplete="off"
        value={by}
        onChange={({ target }) => setBy(target.value)}
      />
      <label htmlFor={`${id}why`}>{wording.reason}</label>
      <textarea
        id={`${id}why`}
        className="field small"
        required
        placeholder=" "
        rows={2}
        value={reason}
        onChange={({ target }) => setReason(target.value)}
      />
      <div className="acknowledge-buttons">
        <button type="submit" className="button small">
          {wording.acknowledge}
        </button>
        <button type="button" className="button small" onClick={onClose}>
          {wording.cancel}
        </button>
        {finding.severity === "danger" && <span className="dim">{wording.aDangerStaysInItsPlace}</span>}
      </div>
      <Refused message={refusal} />
    </form>
  );
}
