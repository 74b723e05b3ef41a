import type { Project } from "../model/project.ts";
import type { SurveyAsk, SurveyReply } from "./protocol.ts";
import { circuitSurvey, surveyAnswer } from "./survey-answer.ts";

/** What the readings of a document tell of the cables of a box, or of the circuits of the house. */
export function answerSurvey(project: Project, ask: SurveyAsk): SurveyReply {
  if (ask.kind === "map") return { kind: "map", ...circuitSurvey(project) };
  const told = surveyAnswer(project, ask.box);
  if (told.ok) return { kind: "box", answer: told.value };
  return { kind: "cannot", why: told.problems.map(({ message }) => message).join(" ") };
}
