import type { SurveyAnswer, SurveyedCable, SurveyRole } from "../../../shared-model/answers/survey.ts";
import { goTo } from "../../state/session-store.ts";
import { Section } from "../details/section.tsx";
import { percentWords, ROLE_LETTERS } from "./answer-words.ts";
import { wording } from "./words.ts";

/** More roles than this are looked through only when they are asked for. */
const MOST = 4;

/** What each cable still may be, and what was ruled out, with the reading that did it. */
export function CableParts({ answer }: { readonly answer: SurveyAnswer }) {
  return (
    <Section title={wording.cables} note={answer.cables.length}>
      {answer.cables.map((cable) => (
        <CablePart key={cable.id} cable={cable} answer={answer} />
      ))}
    </Section>
  );
}

function CablePart({ cable, answer }: { readonly cable: SurveyedCable; readonly answer: SurveyAnswer }) {
  const first = cable.may.slice(0, MOST);
  const rest = cable.may.slice(MOST);
  const out = answer.rejected.filter((one) => one.cable === cable.id);
  const mismatch = answer.mismatches.filter((one) => one.cable === cable.id);
  return (
    <div className="survey-cable">
      <h4>
        <button
          type="button"
          className="link"
          aria-label={wording.showOnTheSheet(cable.name)}
          onClick={() => goTo({ kind: "cable", id: cable.id }, "survey")}
        >
          {cable.name}
        </button>
        {cable.role !== undefined && <span className="survey-plate">{cable.tag}</span>}
      </h4>
      {cable.role !== undefined && <Proved role={cable.role} evidence={cable.evidence} />}
      {cable.role === undefined && <Roles roles={first} name={cable.name} />}
      {cable.role === undefined && rest.length > 0 && (
        <details className="survey-fold">
          <summary>{wording.lessLikely(rest.length)}</summary>
          <Roles roles={rest} name={cable.name} />
        </details>
      )}
      {mismatch.map(({ words }) => (
        <p key={words} className="survey-mismatch">
          <strong>{wording.otherThanDrawn}</strong> {words}
        </p>
      ))}
      {out.length > 0 && (
        <details className="survey-fold">
          <summary>{wording.ruledOut(out.length)}</summary>
          <ul className="survey-sentences">
            {out.map(({ role, reason }) => (
              <li key={role.key}>{reason}</li>
            ))}
          </ul>
        </details>
      )}
    </div>
  );
}

/** The role that is left, with the readings that left it. */
function Proved({ role, evidence }: { readonly role: SurveyRole; readonly evidence: readonly string[] }) {
  return (
    <>
      <p className="survey-role">
        <RoleTag role={role} />
        <strong>{role.words}</strong>
        <span className="dim">{wording.theOnlyOneLeft}</span>
      </p>
      {evidence.length > 0 && (
        <ul className="survey-sentences">
          {evidence.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
    </>
  );
}

interface RolesProps {
  readonly roles: SurveyedCable["may"];
  readonly name: string;
}

/** Possible roles with their share: in words, as a figure and as a bar. */
const Roles = ({ roles, name }: RolesProps) => (
  <ul className="survey-roles" aria-label={wording.mayBe(name)}>
    {roles.map(({ role, weight }) => (
      <li key={role.key} className="survey-role">
        <RoleTag role={role} />
        <span>{role.words}</span>
        <span className="survey-bar" aria-hidden="true">
          <span style={{ width: `${Math.max(2, Math.round(weight * 100))}%` }} />
        </span>
        <span className="fig survey-percent">{percentWords(weight)}</span>
      </li>
    ))}
  </ul>
);

const RoleTag = ({ role }: { readonly role: SurveyRole }) => (
  <span className={`survey-tag survey-tag-${role.kind}`} aria-hidden="true">
    {ROLE_LETTERS[role.kind]}
  </span>
);
