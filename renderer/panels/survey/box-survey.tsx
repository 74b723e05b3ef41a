import type { SurveyAnswer } from "../../../shared-model/answers/survey.ts";
import { type SurveyState, surveyStore } from "../../state/survey/survey-store.ts";
import { useStore } from "../../state/use-store.ts";
import { nameOf } from "./answer-words.ts";
import { CableParts } from "./cable-parts.tsx";
import { Contradicted } from "./contradicted.tsx";
import { Facts } from "./facts.tsx";
import { FreeReading } from "./free-reading.tsx";
import { NextTest } from "./next-test.tsx";
import { ReadingRows } from "./reading-rows.tsx";
import { RefusedTests } from "./refused-tests.tsx";
import { Sentences } from "./sentences.tsx";
import { Settled } from "./settled.tsx";
import { Trap } from "./trap.tsx";
import { wording } from "./words.ts";

const answerOf = ({ answer }: SurveyState): SurveyAnswer | undefined => answer;

/** The cables of one box: what is left, what to do next, and everything that was read. */
export function BoxSurvey() {
  const answer = useStore(surveyStore, answerOf);
  const cannot = useStore(surveyStore, (state) => state.cannot);
  if (cannot !== undefined)
    return (
      <p className="survey-state" role="alert">
        {cannot}
      </p>
    );
  if (answer === undefined)
    return (
      <p className="empty" role="status">
        {wording.workingItOut}
      </p>
    );
  const fits = answer.contradiction === undefined;
  return (
    <>
      <p className="unseen" role="status">
        {spoken(answer)}
      </p>
      {fits && <p className="survey-state">{stateWords(answer)}</p>}
      {fits && !answer.settled && (
        <p className="survey-drawn dim">{`${DRAWN[answer.itemsFrom]} ${wording.drawnIsNoReading}`}</p>
      )}
      {answer.known.map(({ cable, words }) => (
        <p key={cable} className="survey-drawn">{`${nameOf(answer, cable)}: ${words}.`}</p>
      ))}
      {answer.contradiction !== undefined && <Contradicted contradiction={answer.contradiction} />}
      <Trap answer={answer} />
      {fits && answer.settled && <Settled answer={answer} />}
      <NextTest answer={answer} />
      {fits && <CableParts answer={answer} />}
      {fits && !answer.settled && <Settled answer={answer} />}
      <RefusedTests refused={answer.refused} />
      <ReadingRows answer={answer} />
      <FreeReading answer={answer} />
      <Facts answer={answer} />
      <Sentences title={wording.cautions} lines={answer.cautions.map(({ words }) => words)} />
    </>
  );
}

/** Whether what is drawn is used. */
const DRAWN: Readonly<Record<SurveyAnswer["itemsFrom"], string>> = {
  drawing: wording.drawnToGiveTheList,
  person: wording.drawnNotUsed,
  nowhere: wording.drawnNothing,
};

/** What a person hears once an answer has come: where it stands, and the next test. */
function spoken({ contradiction, settled, next }: SurveyAnswer): string {
  if (contradiction !== undefined) return contradiction.words;
  if (settled) return wording.everyCableHasOneRoleLeft;
  return next === undefined ? wording.noTestTellsMore : wording.nextTest(next.words);
}

function stateWords({ settled, left, atStart, cables }: SurveyAnswer): string {
  if (settled) return wording.everyCableHasOneRoleLeft;
  const tags = cables.filter(({ role }) => role !== undefined).map(({ tag }) => tag);
  const state = wording.ofPossibleAreLeft(left, atStart);
  return tags.length === 0 ? state : `${state} ${wording.settledTags(tags.join(", "))}`;
}
