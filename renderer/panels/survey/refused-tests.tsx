import type { SurveyRefusedTest } from "../../../shared-model/answers/survey.ts";
import { Section } from "../details/section.tsx";
import { wording } from "./words.ts";

const BECAUSE: Readonly<Record<SurveyRefusedTest["because"], string>> = {
  short: wording.wouldShort,
  "double-voltage": wording.wouldDoubleTheVoltage,
  "back-feed": wording.wouldFeedBack,
  "needs-reference": wording.needsAReference,
};

/** Tests that are not proposed, and what they would do. */
export function RefusedTests({ refused }: { readonly refused: readonly SurveyRefusedTest[] }) {
  if (refused.length === 0) return null;
  return (
    <Section title={wording.notTheseTests} note={refused.length}>
      <ul className="survey-sentences">
        {refused.map(({ key, words, reason, because }) => (
          <li key={key}>
            <strong>
              {BECAUSE[because]}: {words}
            </strong>
            <br />
            {reason}
          </li>
        ))}
      </ul>
    </Section>
  );
}
