import type { SurveyAnswer } from "../../../shared-model/answers/survey.ts";
import { inTrap } from "../../state/survey/outcomes.ts";
import { wording } from "./words.ts";

/** Two wirings that read alike, of which one is shorted by the test that suits the other. */
export function Trap({ answer }: { readonly answer: SurveyAnswer }) {
  const cables = inTrap(answer);
  if (cables.length === 0) return null;
  return (
    <div className="survey-alarm" role="note">
      <h3>{wording.trap(cables.map(({ name }) => name).join(", "))}</h3>
      <p>{wording.theseReadAlike}</p>
      <p>
        <strong>{wording.closeNoSwitchAcrossThem}</strong>
      </p>
    </div>
  );
}
