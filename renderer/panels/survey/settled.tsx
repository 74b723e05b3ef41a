import { useState } from "react";
import type { SurveyAnswer } from "../../../shared-model/answers/survey.ts";
import { documentStore } from "../../state/document-store.ts";
import { takeOver, wasTakenOver } from "../../state/survey/take-over.ts";
import { useStore } from "../../state/use-store.ts";
import { Section } from "../details/section.tsx";
import { Refused } from "../refused.tsx";
import { wording } from "./words.ts";

/** What is settled: the tags of the cables, what is still not proved, and the way into as found. */
export function Settled({ answer }: { readonly answer: SurveyAnswer }) {
  const { takeOver: offer, notProved, cables, settled } = answer;
  const [refusal, setRefusal] = useState<string>();
  const isLastStep = useStore(documentStore, (document) => offer !== undefined && wasTakenOver(offer, document));
  const readOnly = useStore(documentStore, (document) => document.readOnly);
  if (offer === undefined) return null;
  const take = (): void => {
    const done = takeOver(offer);
    setRefusal(done.ok ? undefined : done.refusal.message);
  };
  return (
    <Section title={settled ? wording.settled : wording.settledSoFar}>
      <div className="part-body">
        <ul className="survey-settled">
          {cables
            .filter(({ role }) => role !== undefined)
            .map(({ id, tag }) => (
              <li key={id} className="survey-plate">
                {tag}
              </li>
            ))}
        </ul>
        {notProved.length > 0 && (
          <>
            <h4>{wording.whatIsNotProved}</h4>
            <ul>
              {notProved.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          </>
        )}
        {!readOnly && (
          <>
            <details>
              <summary>{wording.whatIsTakenOver}</summary>
              <ul>
                {offer.words.map((line) => (
                  <li key={line}>{line}</li>
                ))}
              </ul>
            </details>
            <button type="button" className={settled ? "button main" : "button"} onClick={take}>
              {settled ? wording.takeOverIntoAsFound : wording.takeOverWhatIsSettled}
            </button>
          </>
        )}
        <p role="status">{isLastStep && wording.takenOver}</p>
        <Refused message={refusal} />
      </div>
    </Section>
  );
}
