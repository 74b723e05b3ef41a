import { useEffect, useRef } from "react";
import type { SurveyAnswer, SurveyProposal } from "../../../shared-model/answers/survey.ts";
import { surveyStore } from "../../state/survey/survey-store.ts";
import { chooseTest, shownTest } from "../../state/survey/surveying.ts";
import { useStore } from "../../state/use-store.ts";
import { Section } from "../details/section.tsx";
import { EXPOSURE_WORDS, tellsWords } from "./answer-words.ts";
import { OutcomeForm } from "./outcome-form.tsx";
import { TestSteps } from "./test-steps.tsx";
import { wording } from "./words.ts";

/** The test that tells most for what it costs: how it is done, and what came of it. */
export function NextTest({ answer }: { readonly answer: SurveyAnswer }) {
  const chosen = useStore(surveyStore, (state) => state.chosen);
  const test = shownTest({ answer, chosen });
  const stale = useStore(surveyStore, (state) => state.stale);
  const ticked = useStore(surveyStore, ({ ticks }) => ticks.length);
  const root = useRef<HTMLDivElement>(null);
  useFocusOnNext(root, test?.key);
  if (answer.settled || answer.contradiction !== undefined) return null;
  if (test === undefined)
    return (
      <Section title={wording.whatToDoNext}>
        <p className="empty">{wording.noTestTellsMore}</p>
      </Section>
    );
  const holdsLeft = test.steps.filter(({ hold }) => hold !== undefined).length - ticked;
  return (
    <div ref={root} className="survey-next" aria-busy={stale}>
      <Section title={wording.whatToDoNext} note={tellsWords(test, answer)}>
        <div className="part-body">
          <p className="survey-instruction" tabIndex={-1}>
            {test.words}
          </p>
          <p className="survey-cost dim">{costWords(test)}</p>
          <details className="survey-why">
            <summary>{wording.whyThisTest}</summary>
            <p>{test.why}</p>
          </details>
        </div>
        <TestSteps
          steps={test.steps}
          cautions={answer.cautions.filter(({ id }) => id !== OPEN_BOX_LIVE || test.exposure === "open-box-live")}
        />
        <OutcomeForm key={test.key} answer={answer} wanted={test.wanted} holdsLeft={holdsLeft} switchesOn />
        <OtherTests answer={answer} shown={test.key} />
      </Section>
    </div>
  );
}

/** The caution that is about readings in an open box with the power on. */
const OPEN_BOX_LIVE = "WRK5";

const costWords = ({ minutes, powerCycles, exposure }: SurveyProposal): string =>
  [wording.minutes(Math.ceil(minutes)), powerCycles > 0 && wording.powerOffAndOn(powerCycles), EXPOSURE_WORDS[exposure]]
    .filter(Boolean)
    .join(" · ");

/** Once something is written down another test is shown: whoever wrote it goes on there. */
function useFocusOnNext(root: React.RefObject<HTMLDivElement | null>, key: string | undefined): void {
  const before = useRef(key);
  useEffect(() => {
    if (before.current === key) return;
    const isFirst = before.current === undefined;
    before.current = key;
    if (!isFirst && document.activeElement === document.body)
      root.current?.querySelector<HTMLElement>(".survey-instruction")?.focus();
  }, [root, key]);
}

interface OthersProps {
  readonly answer: SurveyAnswer;
  readonly shown: string;
}

function OtherTests({ answer, shown }: OthersProps) {
  const others = [answer.next, ...answer.others].filter((one) => one !== undefined).filter(({ key }) => key !== shown);
  if (others.length === 0) return null;
  return (
    <details className="survey-fold">
      <summary>{wording.otherTests(others.length)}</summary>
      <ul className="survey-others">
        {others.map((test) => (
          <li key={test.key}>
            <button type="button" className="link" onClick={() => chooseTest(test.key)}>
              {test.words}
            </button>
            <small className="dim">{`${tellsWords(test, answer)}, ${EXPOSURE_WORDS[test.exposure]}`}</small>
          </li>
        ))}
      </ul>
    </details>
  );
}
