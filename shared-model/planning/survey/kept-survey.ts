import type { EnclosureId } from "../../model/ids.ts";
import type { Project, Reading } from "../../model/project.ts";
import type { SurveyFacts, SurveyTest, SurveyTold } from "../../model/survey.ts";
import { inOrder } from "../../queries/in-order.ts";
import { isSurveyInstrument } from "./sort-readings.ts";
import type { GivenReading } from "./survey-box.ts";

/** The survey of a box as the document keeps it: what was said of it last, and its readings in their order. */
export function keptSurvey(
  { readings }: Pick<Project, "readings">,
  box: EnclosureId,
): { readonly facts: SurveyFacts; readonly readings: readonly GivenReading[] } {
  let facts: SurveyFacts = {};
  const given: GivenReading[] = [];
  for (const { id, instrument, value, survey, computed } of inOrder<Reading>(readings)) {
    if (survey?.box !== box || computed === true) continue;
    const { test, ...rest } = survey;
    if (test.kind === "facts") facts = test.facts;
    else if (!isTold(test) && isSurveyInstrument(instrument))
      given.push({ id, instrument, value, survey: { ...rest, test } });
  }
  return { facts, readings: given };
}

const TOLD: ReadonlySet<(SurveyTest | SurveyTold)["kind"]> = new Set(["facts", "breaker-off", "drop", "opened"]);
const isTold = (test: SurveyTest | SurveyTold): test is SurveyTold => TOLD.has(test.kind);
