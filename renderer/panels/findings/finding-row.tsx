import { memo } from "react";
import type {
  AppliedAmendment,
  Finding,
  SectionConfidence,
  Standing,
  Subject,
} from "../../../shared-model/answers/finding.ts";
import { unitOfValue, valueWords } from "../../../shared-model/model/value-unit.ts";
import { figureWords } from "../../state/amending.ts";
import { openDialog } from "../../state/dialog-store.ts";
import { isWordOfTheDocument, SEVERITY_WORDS, STANDING_WORDS } from "../../state/finding-groups.ts";
import { hasRuleHelp } from "../../state/rule-help.ts";
import { SeveritySign } from "../severity-sign.tsx";
import { AcknowledgeRow } from "./acknowledge-row.tsx";
import { FixButtons } from "./fix-buttons.tsx";
import { SubjectButton } from "./subject-button.tsx";

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
  return (
    <li className={`finding ${severity}`} data-finding={finding.key}>
      <p className="finding-who">
        {withSeverity && (
          <span className="finding-severity">
            <SeveritySign kind={severity} size={18} />
            {SEVERITY_WORDS[severity]}
          </span>
        )}
        {existing && <strong className="finding-existing">existing</strong>}
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

interface BackingProps {
  readonly finding: Finding;
  readonly standing: Standing | undefined;
}

function Backing({ finding: { section, basis, status, textOf }, standing }: BackingProps) {
  return (
    <p className="finding-meta">
      {standing && <span>{STANDING_WORDS[standing]}</span>}
      {section && <span>{sectionWords(section.section, section.confidence)}</span>}
      {textOf !== undefined && <span>by the {textOf} text, not verified</span>}
      {basis && <span>rests on what was {basis}</span>}
      {status === "draft" && <span>draft rule</span>}
    </p>
  );
}

function Explain({ finding: { rule, message, subjects } }: { readonly finding: Finding }) {
  if (!hasRuleHelp(rule)) return null;
  const about = distinct(subjects).map(({ name }) => name);
  return (
    <button type="button" className="link" onClick={() => openDialog({ kind: "help", rule, message })}>
      Explain<span className="unseen"> the finding about {about.join(", ")}</span>
    </button>
  );
}

function Folded({ finding: { folded, foldedSubjects, state } }: { readonly finding: Finding }) {
  if (folded === 0) return null;
  return (
    <details className="finding-folded">
      <summary>
        {folded} {folded === 1 ? "consequence" : "consequences"} of it
      </summary>
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
  const before = was === undefined ? "" : ` in place of ${figureWords(was, unit)}`;
  return `By local amendment${by === undefined ? "" : ` of ${by}`}, ${valueWords(value).toLowerCase()} is ${figureWords(is, unit)}${before}: ${reason}`;
};

const CONFIDENCE: Readonly<Record<SectionConfidence, string>> = {
  sourced: "",
  "from-memory": ", number not checked against the text",
  unconfirmed: ", to be confirmed",
  doubtful: ", doubtful",
  "own-rule": "",
};

const sectionWords = (section: string, confidence: SectionConfidence): string =>
  confidence === "own-rule" ? "our own rule" : `${section}${CONFIDENCE[confidence]}`;

function distinct(subjects: readonly Subject[]): readonly Subject[] {
  return [...new Map(subjects.map((subject) => [`${subject.kind} ${subject.id}`, subject])).values()];
}
