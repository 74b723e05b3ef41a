import type { SurveyAsk, SurveyReply } from "../../../shared-model/analysis/protocol.ts";

/** Asks the worker; undefined when nobody can answer now. */
type AskSurvey = (wanted: SurveyAsk) => Promise<SurveyReply | undefined>;

let ask: AskSurvey | undefined;

/** Says who is to be asked; the state folder does not know the worker. */
export function surveyBy(asked: AskSurvey): void {
  ask = asked;
}

/** What the readings so far tell of the cables of a box, or of the circuits of the house. */
export const askSurvey: AskSurvey = async (wanted) => ask?.(wanted);
