import type { SurveyContradiction } from "../../../shared-model/answers/survey.ts";
import { wording } from "./words.ts";

/** Readings that fit nothing: said plainly, with the two least bad and what to look for. */
export function Contradicted({
  contradiction: { words, doubt, leastBad, lookFor },
}: {
  readonly contradiction: SurveyContradiction;
}) {
  return (
    <div className="survey-alarm" role="alert">
      <h3>{words}</h3>
      {doubt.length > 0 && <h4>{wording.doubtFirst}</h4>}
      <ul>
        {doubt.map((set) => (
          <li key={set.join()}>{set.length === 1 ? set[0] : wording.everyOneOrDoubt(set.join("; "))}</li>
        ))}
      </ul>
      {leastBad.length > 0 && <h4>{wording.leastBad}</h4>}
      <ul>
        {leastBad.map((one) => (
          <li key={one.words}>
            {one.words}
            <ul>
              {one.against.map((line) => (
                <li key={line}>{wording.against(line)}</li>
              ))}
            </ul>
          </li>
        ))}
      </ul>
      {lookFor.length > 0 && <h4>{wording.repeatAndLookFor}</h4>}
      <ul>
        {lookFor.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </div>
  );
}
