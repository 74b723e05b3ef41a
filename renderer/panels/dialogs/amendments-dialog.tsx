import { useRef, useState } from "react";
import type { BookRule } from "../../../shared-model/answers/rule-book.ts";
import type { Amendment } from "../../../shared-model/model/project.ts";
import { changeWords, keyOfAmendment, takeBack } from "../../state/amending.ts";
import { closeDialog } from "../../state/dialog-store.ts";
import { documentStore } from "../../state/document-store.ts";
import { editionWords } from "../../state/edition-words.ts";
import { useStore } from "../../state/use-store.ts";
import { Modal } from "../../ui/modal.tsx";
import { Refused } from "../refused.tsx";
import { AmendmentForm } from "./amendment-form.tsx";
import { useRuleBook } from "./use-rule-book.ts";
import "./amendments.css";
import { wording } from "./words.ts";

/** What the authority has changed about the rules for this drawing: listed, added, edited, taken back. */
export default function AmendmentsDialog() {
  const edition = useStore(documentStore, ({ project }) => project.edition);
  const amendments = useStore(documentStore, ({ project }) => project.amendments);
  const readOnly = useStore(documentStore, (state) => state.readOnly);
  const book = useRuleBook(edition);
  const [edited, setEdited] = useState<Amendment>();
  const [said, setSaid] = useState<string>();
  const list = useRef<HTMLElement>(null);
  const back = (amendment: Amendment): void => {
    const done = takeBack(amendment);
    setSaid(done.ok ? undefined : done.refusal.message);
    if (!done.ok) return;
    if (edited !== undefined && keyOfAmendment(edited) === keyOfAmendment(amendment)) setEdited(undefined);
    // Its row goes, and the focus with it.
    list.current?.focus();
  };
  return (
    <Modal title={wording.localAmendments} onClose={closeDialog} wide>
      <p>{wording.checkedByEditionWhereTheAuthority(editionWords(edition))}</p>
      <section ref={list} tabIndex={-1} className="amendments" aria-label={wording.amendmentsInForce}>
        {amendments.length === 0 && <p className="dim">{wording.noneEveryRuleRunsAsThe}</p>}
        {amendments.length > 0 && (
          <ul>
            {amendments.map((amendment) => (
              <Row
                key={keyOfAmendment(amendment)}
                amendment={amendment}
                book={book}
                readOnly={readOnly}
                onEdit={() => setEdited(amendment)}
                onTakeBack={() => back(amendment)}
              />
            ))}
          </ul>
        )}
      </section>
      <Refused message={said} />
      {!readOnly && book === undefined && <p className="dim">{wording.fetchingTheRulesOfThisEdition}</p>}
      {!readOnly && book !== undefined && (
        <AmendmentForm
          key={edited === undefined ? "new" : keyOfAmendment(edited)}
          book={book}
          edited={edited}
          onDone={() => {
            setEdited(undefined);
            list.current?.focus();
          }}
        />
      )}
    </Modal>
  );
}

interface RowProps {
  readonly amendment: Amendment;
  readonly book: readonly BookRule[] | undefined;
  readonly readOnly: boolean;
  readonly onEdit: () => void;
  readonly onTakeBack: () => void;
}

function Row({ amendment, book, readOnly, onEdit, onTakeBack }: RowProps) {
  const { rule: id, change, reason, by } = amendment;
  const rule = book?.find((one) => one.id === id);
  const name = rule?.summary ?? id;
  const isHeld = change.kind === "off" || rule?.values.some((value) => value.name === change.name) === true;
  return (
    <li className="amendment">
      <p className="amendment-rule">{name}</p>
      <p>
        <strong>{changeWords(change, rule)}</strong>
      </p>
      <p>{reason.trim() === "" ? wording.noReasonIsGiven : reason}</p>
      <p className="dim">{by === undefined ? wording.whoRequiresItIsNotRecorded : wording.requiredBy2(by)}</p>
      {book !== undefined && (rule === undefined || !isHeld) && (
        <p className="refused">{wording.itChangesNothingByThisEdition}</p>
      )}
      {!readOnly && (
        <p className="amendment-buttons">
          {rule !== undefined && isHeld && (
            <button type="button" className="button small" onClick={onEdit}>
              {wording.edit}
              <span className="unseen">{wording.theAmendmentOf(name)}</span>
            </button>
          )}
          <button type="button" className="button small" onClick={onTakeBack}>
            {wording.takeBack}
            <span className="unseen">{wording.theAmendmentOf(name)}</span>
          </button>
        </p>
      )}
    </li>
  );
}
