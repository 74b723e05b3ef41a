import type { Finding } from "../../../shared-model/answers/finding.ts";
import type { ScopeFindings } from "../../../shared-model/answers/scope.ts";
import { SubjectButton } from "../findings/subject-button.tsx";
import { SeveritySign } from "../severity-sign.tsx";
import { Fold } from "./fold.tsx";
import { wording } from "./words.ts";

const GROUPS: readonly { readonly of: keyof ScopeFindings; readonly title: string; readonly open: boolean }[] = [
  { of: "introduced", title: wording.introduced, open: true },
  { of: "repaired", title: wording.repaired, open: true },
  { of: "inheritedTouched", title: wording.inheritedTouched, open: true },
  { of: "inherited", title: wording.inherited, open: false },
];
/** Of more, a person asks for them. */
const FEW = 40;

/** How the findings of both states stand: what the work repairs, what it leaves, what it brings. */
export function ScopeFindingsPart({ findings }: { readonly findings: ScopeFindings }) {
  return (
    <section aria-label={wording.findings} className="scope-findings">
      {GROUPS.map(({ of, title, open }) => {
        const found = findings[of];
        if (found.length === 0)
          return (
            <p key={of} className="scope-none">
              <span>{title}</span> <small>{wording.noFindings}</small>
            </p>
          );
        return (
          <Fold key={of} title={title} note={found.length} open={open && found.length <= FEW}>
            {() => (
              <ul className="scope-rows">
                {found.map((finding) => (
                  <FindingLine key={finding.key} finding={finding} />
                ))}
              </ul>
            )}
          </Fold>
        );
      })}
    </section>
  );
}

/** A finding in short; its things are pressed to go there. */
function FindingLine({ finding: { severity, subjects, state, message } }: { readonly finding: Finding }) {
  const distinct = [...new Map(subjects.map((subject) => [`${subject.kind} ${subject.id}`, subject])).values()];
  return (
    <li className="scope-finding">
      <SeveritySign kind={severity} size={18} />
      <p>
        {distinct.map((subject) => (
          <span key={`${subject.kind} ${subject.id}`}>
            <SubjectButton subject={subject} state={state} />{" "}
          </span>
        ))}
        {message}
      </p>
    </li>
  );
}
