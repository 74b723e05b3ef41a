import type { CircuitMap, CircuitOrder, SurveyAnswer } from "../answers/survey.ts";
import { catalogue } from "../lib/catalogue.ts";
import { failed, problem, type Result } from "../lib/result.ts";
import type { EnclosureId } from "../model/ids.ts";
import type { Project } from "../model/project.ts";
import { keptSurvey } from "../planning/survey/kept-survey.ts";
import { keptBreakersOff, mapCircuits } from "../planning/survey/map-circuits.ts";
import { keptOrder, orderAlong } from "../planning/survey/order-along.ts";
import { type GivenReading, surveyBox } from "../planning/survey/survey-box.ts";

const wording = catalogue({
  noSuchBox: "There is no such box as found. Pick a box of the wiring as found.",
});

/**
 * What the survey of a box tells, from the wiring as found and the readings that the document keeps. Fails where there is
 * no such box as found, or it cannot be taken apart (no cable, too many, too much listed).
 * @param more Readings that are not in the document, after those that are.
 */
export function surveyAnswer(
  project: Project,
  box: EnclosureId,
  more: readonly GivenReading[] = [],
): Result<SurveyAnswer> {
  const found = project.asFound.enclosures[box];
  if (found === undefined || found.kind !== "box") return failed(problem("no-such-box", "", wording.noSuchBox));
  const { facts, readings } = keptSurvey(project, box);
  return surveyBox(project.asFound, project.supply, found, facts, [...readings, ...more]);
}

/** Which outlet hangs on which breaker, and in which order, by what the document keeps of switching and opening. */
export const circuitSurvey = (project: Project): { readonly map: CircuitMap; readonly order: CircuitOrder } => ({
  map: mapCircuits(project, keptBreakersOff(project)),
  order: orderAlong(project, keptOrder(project)),
});
