import { type MouseEvent, memo, useCallback, useRef, useState } from "react";
import type { AppliedAmendment, Finding, Subject } from "../../../shared-model/answers/finding.ts";
import { inSentence } from "../../../shared-model/lib/in-sentence.ts";
import { unitOfValue, valueWords } from "../../../shared-model/model/value-unit.ts";
import { figureWords } from "../../state/amending.ts";
import { openDialog } from "../../state/dialog-store.ts";
import { isWordOfTheDocument, SEVERITY_WORDS } from "../../state/finding-groups.ts";
import { hasRuleHelp } from "../../state/rule-help.ts";
import { SeveritySign } from "../severity-sign.tsx";
import { AcknowledgeRow } from "./acknowledge-row.tsx";
import { Backing } from "./backing.tsx";
import { FindingMenu } from "./finding-menu.tsx";
import { foldedWords } from "./finding-words.ts";
import { FixButtons } from "./fix-buttons.tsx";
import { SubjectButton } from "./subject-button.tsx";
import { wording } from "./words.ts";

interface Props {
  readonly finding: Finding;
  /** The heading above does not say how grave it is. */
  readonly withSeverity: boolean;
  /** No heading says how it stands between as found and proposed. */
  readonly withStanding?: boolean;
  /** It is about the other account of the wiring: to be read, not worked on. */
  readonly onlyRead?: boolean;
}

/** One finding: what it is about, what is wrong and what to do, how it is backed, and what can be done about it here. */
export const FindingRow = memo(function FindingRow({
  finding,
  withSeverity,
  withStanding = false,
  onlyRead = false,
}: Props) {
  const { message, subjects, state, severity, existing } = finding;
  const { menu, row, openMenu, closeMenu } = useRowMenu();
  return (
    <li className={`finding ${severity}`} data-finding={finding.key} onContextMenu={openMenu}>
      {menu && <FindingMenu finding={finding} at={menu} row={row} onlyRead={onlyRead} onClose={closeMenu} />}
      <p className="finding-who">
        {withSeverity && (
          <span className="finding-severity">
            <SeveritySign kind={severity} size={18} />
            {SEVERITY_WORDS[severity]}
          </span>
        )}
        {existing && <strong className="finding-existing">{wording.existing}</strong>}
        {distinct(subjects).map((subject) => (
          <SubjectButton key={`${subject.kind} ${subject.id}`} subject={subject} state={state} />
        ))}
      </p>
      <p className="finding-message">{message}</p>
      {finding.amendments?.map((amendment) => (
        <p key={amendment.value} className="finding-meta">
          <span>{amendedWords(amendment)}</span>
        </p>
      ))}
      <Backing finding={finding} standing={withStanding ? finding.standing : undefined} />
      <Folded finding={finding} />
      {!onlyRead && <FixButtons finding={finding} />}
      <div className="finding-actions">
        <Explain finding={finding} />
        {!onlyRead && !isWordOfTheDocument(finding) && <AcknowledgeRow finding={finding} />}
      </div>
    </li>
  );
});

/** Where the menu of a row is open; the focus goes back to where it was when it closes. */
function useRowMenu() {
  const [menu, setMenu] = useState<{ readonly x: number; readonly y: number }>();
  const from = useRef<Element>(null);
  const [row, setRow] = useState<HTMLElement | null>(null);
  const openMenu = (event: MouseEvent<HTMLElement>): void => {
    event.preventDefault();
    setRow(event.currentTarget);
    from.current = document.activeElement;
    setMenu({ x: event.clientX, y: event.clientY });
  };
  const closeMenu = useCallback((): void => {
    setMenu(undefined);
    if (from.current instanceof HTMLElement) from.current.focus({ preventScroll: true });
  }, []);
  return { menu, row, openMenu, closeMenu };
}

function Explain({ finding: { rule, message, subjects } }: { readonly finding: Finding }) {
  if (!hasRuleHelp(rule)) return null;
  const about = distinct(subjects).map(({ name }) => name);
  return (
    <button type="button" className="link" onClick={() => openDialog({ kind: "help", rule, message })}>
      {wording.explain}
      <span className="unseen">{wording.theFindingAbout(about.join(", "))}</span>
    </button>
  );
}

function Folded({ finding: { folded, foldedSubjects, state } }: { readonly finding: Finding }) {
  if (folded === 0) return null;
  return (
    <details className="finding-folded">
      <summary>{foldedWords(folded)}</summary>
      <p className="finding-who">
        {distinct(foldedSubjects).map((subject) => (
          <SubjectButton key={`${subject.kind} ${subject.id}`} subject={subject} state={state} />
        ))}
      </p>
    </details>
  );
}

const amendedWords = ({ value, is, was, reason, by }: AppliedAmendment): string => {
  const unit = unitOfValue(value);
  const before = was === undefined ? "" : wording.inPlaceOf(figureWords(was, unit));
  return wording.byLocalAmendmentIs(
    by === undefined ? "" : wording.ofWord(by),
    inSentence(valueWords(value)),
    figureWords(is, unit),
    before,
    reason,
  );
};

function distinct(subjects: readonly Subject[]): readonly Subject[] {
  return [...new Map(subjects.map((subject) => [`${subject.kind} ${subject.id}`, subject])).values()];
}
