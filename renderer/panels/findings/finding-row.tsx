import { memo } from "react";
import type { Finding, SectionConfidence, Subject } from "../../../shared-model/answers/finding.ts";
import { openDialog } from "../../state/dialog-store.ts";
import { hasRuleHelp } from "../../state/rule-help.ts";
import { SubjectButton } from "./subject-button.tsx";

/** One finding: what it is about, what is wrong and what to do, how it is backed. */
export const FindingRow = memo(function FindingRow({ finding }: { readonly finding: Finding }) {
  const { rule, message, subjects, section, basis, status, existing, foldedSubjects, folded } = finding;
  return (
    <li className="finding">
      <p className="finding-who">
        {distinct(subjects).map((subject) => (
          <SubjectButton key={`${subject.kind} ${subject.id}`} subject={subject} />
        ))}
      </p>
      <p className="finding-message">{message}</p>
      <p className="finding-meta">
        {section && <span>{sectionWords(section.section, section.confidence)}</span>}
        {basis && <span>rests on what was {basis}</span>}
        {status === "draft" && <span>draft rule</span>}
        {existing && <span>was there before</span>}
        {hasRuleHelp(rule) && (
          <button type="button" className="link" onClick={() => openDialog({ kind: "help", rule })}>
            Explain<span className="unseen"> {rule}</span>
          </button>
        )}
      </p>
      {folded > 0 && (
        <details className="finding-folded">
          <summary>
            {folded} {folded === 1 ? "consequence" : "consequences"} of it
          </summary>
          <p className="finding-who">
            {distinct(foldedSubjects).map((subject) => (
              <SubjectButton key={`${subject.kind} ${subject.id}`} subject={subject} />
            ))}
          </p>
        </details>
      )}
    </li>
  );
});

const CONFIDENCE: Readonly<Record<SectionConfidence, string>> = {
  sourced: "",
  "from-memory": ", from memory",
  unconfirmed: ", to be confirmed",
  doubtful: ", doubtful",
  "own-rule": "",
};

const sectionWords = (section: string, confidence: SectionConfidence): string =>
  confidence === "own-rule" ? "our own rule" : `${section}${CONFIDENCE[confidence]}`;

function distinct(subjects: readonly Subject[]): readonly Subject[] {
  return [...new Map(subjects.map((subject) => [`${subject.kind} ${subject.id}`, subject])).values()];
}
