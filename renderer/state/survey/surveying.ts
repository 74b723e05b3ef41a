import type { HoldPoint } from "../../../shared-model/answers/scope.ts";
import type { SurveyProposal } from "../../../shared-model/answers/survey.ts";
import { documentStore, followDocument } from "../document-store.ts";
import { testedByStore } from "../test-record.ts";
import { askSurvey } from "./ask-survey.ts";
import { type SurveyState, surveyStore } from "./survey-store.ts";
import { wording } from "./words.ts";

/** An answer that does not come is asked for again so often: a worker may be starting. */
const TRIES = 20;
const AGAIN_AFTER_MS = 150;

/** Counts what was asked: of two answers the later counts. */
let round = 0;

/** Asks now and after every change of the document, until the returned function is called. */
export function followSurvey(): () => void {
  const stop = followDocument(({ patches }) => patches !== undefined && refresh());
  refresh();
  return () => {
    round += 1;
    stop();
  };
}

/** Asks what the readings of the document tell now. */
export function refresh(): void {
  surveyStore.merge({ stale: true });
  void askUntilAnswered();
}

async function askUntilAnswered(): Promise<void> {
  round += 1;
  const mine = round;
  for (let tries = 0; tries < TRIES; tries += 1) {
    const { about } = surveyStore.get();
    if (about === undefined) return;
    const { revision } = documentStore.get();
    const told = await askSurvey(about);
    if (mine !== round) return;
    if (told !== undefined && documentStore.get().revision === revision) {
      take(told);
      return;
    }
    await new Promise((done) => setTimeout(done, AGAIN_AFTER_MS));
    if (mine !== round) return;
  }
  surveyStore.merge({ trouble: wording.theSurveyCannotBeWorkedOut });
}

function take(told: NonNullable<Awaited<ReturnType<typeof askSurvey>>>): void {
  const before = surveyStore.get();
  if (told.kind === "map") {
    surveyStore.merge({ circuits: { map: told.map, order: told.order }, stale: false, trouble: undefined });
    return;
  }
  if (told.kind === "cannot") {
    surveyStore.merge({ cannot: told.why, answer: undefined, stale: false, trouble: undefined });
    return;
  }
  const { answer } = told;
  // Ticks belong to one test: another is another turning off and proving dead.
  const isOffered = [answer.next, ...answer.others].some((one) => one?.key === before.chosen);
  const chosen = before.goOn || !isOffered ? undefined : before.chosen;
  const same = shownTest({ answer, chosen })?.key === shownTest(before)?.key;
  surveyStore.merge({
    answer,
    cannot: undefined,
    stale: false,
    trouble: undefined,
    chosen,
    goOn: false,
    ...(!same && { ticks: [] }),
  });
}

/** The test that is shown with its steps: the one that tells most, or another that was chosen. */
export function shownTest({ answer, chosen }: Pick<SurveyState, "answer" | "chosen">): SurveyProposal | undefined {
  return answer?.others.find(({ key }) => key === chosen) ?? answer?.next;
}

/** Shows another test; what was ticked for the one before does not hold for it. */
export function chooseTest(key: string | undefined): void {
  surveyStore.merge({ chosen: key, ticks: [] });
}

/** Why the next hold point cannot be ticked; undefined where it can. */
export const whyNotTick = (): string | undefined =>
  testedByStore.get().by.trim() === "" ? wording.writeYourNameFirst : undefined;

/** Ticks the next hold point, in the name of who tests; one at a time and in their order. */
export function tickNext(): void {
  if (whyNotTick() !== undefined) return;
  const { ticks } = surveyStore.get();
  const hold = shownTest(surveyStore.get())?.steps.flatMap((step) => step.hold ?? [])[ticks.length];
  const point = hold === undefined ? String(ticks.length + 1) : numberOf(hold);
  surveyStore.merge({ ticks: [...ticks, { point, by: testedByStore.get().by.trim(), at: Date.now() }] });
}

/** As people call a hold point: "6" of HP6. */
export const numberOf = (hold: HoldPoint): string => hold.replace(/^HP/, "");

/** Takes the last tick back. */
export function untick(): void {
  surveyStore.merge({ ticks: surveyStore.get().ticks.slice(0, -1) });
}
