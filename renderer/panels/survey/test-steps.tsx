import { useId, useState } from "react";
import type { HoldPoint } from "../../../shared-model/answers/scope.ts";
import type { SurveyCaution, SurveyStep } from "../../../shared-model/answers/survey.ts";
import { preferencesStore } from "../../state/preferences-store.ts";
import { surveyStore } from "../../state/survey/survey-store.ts";
import { numberOf, tickNext, untick, whyNotTick } from "../../state/survey/surveying.ts";
import { testedByStore } from "../../state/test-record.ts";
import { useStore } from "../../state/use-store.ts";
import { whenWords } from "../../state/when-words.ts";
import { ARRANGEMENT_WORDS } from "./answer-words.ts";
import { wording } from "./words.ts";

interface Props {
  readonly steps: readonly SurveyStep[];
  readonly cautions: readonly SurveyCaution[];
}

/** How a test is done, in order. Hold points are ticked one at a time, each by somebody with a name. */
export function TestSteps({ steps, cautions }: Props) {
  const [said, setSaid] = useState<string>();
  const ticks = useStore(surveyStore, (state) => state.ticks);
  const holds = steps.filter(({ hold }) => hold !== undefined);
  return (
    <>
      {cautions.length > 0 && (
        <div className="survey-cautions" role="note">
          {cautions.map(({ id, words }) => (
            <p key={id}>{words}</p>
          ))}
        </div>
      )}
      <WhoDoesIt />
      <ol className="survey-steps">
        {steps.map((step, at) => {
          const place = holds.indexOf(step);
          return (
            <li
              key={`${step.arrangement} ${step.words}`}
              className={step.hold !== undefined ? "survey-step survey-hold" : "survey-step"}
            >
              <ArrangementTag step={step} before={steps[at - 1]} />
              {step.hold !== undefined ? (
                <HoldPointRow
                  id={step.hold}
                  words={step.words}
                  place={place}
                  ticked={ticks[place]}
                  next={ticks.length}
                  onSaid={setSaid}
                />
              ) : (
                <span>{step.words}</span>
              )}
            </li>
          );
        })}
      </ol>
      <p className="survey-said" role="status">
        {said !== undefined && <span className="refused">{said}</span>}
      </p>
    </>
  );
}

/** The arrangement where it changes. */
function ArrangementTag({ step, before }: { readonly step: SurveyStep; readonly before: SurveyStep | undefined }) {
  if (before?.arrangement === step.arrangement) return <span className="survey-arrangement" aria-hidden="true" />;
  return (
    <span className="survey-arrangement">
      <abbr title={ARRANGEMENT_WORDS[step.arrangement]}>{step.arrangement}</abbr>
      <span className="unseen">{ARRANGEMENT_WORDS[step.arrangement]}</span>
    </span>
  );
}

interface HoldProps {
  readonly id: HoldPoint;
  readonly words: string;
  readonly place: number;
  readonly ticked: { readonly by: string; readonly at: number } | undefined;
  readonly next: number;
  readonly onSaid: (why: string | undefined) => void;
}

function HoldPointRow({ id, words, place, ticked, next, onSaid }: HoldProps) {
  const turn = (): void => {
    if (ticked !== undefined) {
      onSaid(place === next - 1 ? undefined : wording.takeTheLastTickBackFirst);
      if (place === next - 1) untick();
      return;
    }
    if (place > next) {
      onSaid(wording.oneHoldPointAtATime);
      return;
    }
    onSaid(whyNotTick());
    tickNext();
  };
  return (
    <label className="survey-tick">
      <input type="checkbox" checked={ticked !== undefined} onChange={turn} />
      <span>
        <strong>{wording.holdPoint(numberOf(id))}</strong> {words}
        <small className="dim survey-ticked">
          {ticked === undefined ? wording.notTickedYet : wording.tickedBy(ticked.by, whenWords(ticked.at))}
        </small>
      </span>
    </label>
  );
}

/** Whose name stands by the ticks and readings from here on. */
function WhoDoesIt() {
  const id = useId();
  const by = useStore(testedByStore, (state) => state.by);
  return (
    <div className="survey-who">
      <label htmlFor={id}>{wording.doneBy}</label>
      <input
        id={id}
        className="field small"
        autoComplete="off"
        maxLength={100}
        value={by}
        onChange={({ target }) => testedByStore.merge({ by: target.value })}
        onBlur={() => by.trim() !== "" && preferencesStore.merge({ name: by.trim() })}
      />
    </div>
  );
}
