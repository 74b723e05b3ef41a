import type { SurveyCaution, SurveyProposal, SurveyStep } from "../../../shared-model/answers/survey.ts";

/** A step of a test as it is shown; one that must be ticked has the name of its hold point. */
export type ShownStep = Pick<SurveyStep, "arrangement" | "words"> & { readonly hold?: string };

/** The hold point where the power is off again after a test. */
const OFF_AGAIN = "HP3";

/**
 * The steps of a test with all hold points of the survey among them, each a tick of its own. A test that begins with the
 * power being turned off begins with the first hold point, and others follow at once, before anything is parted; the one
 * of the power being off again stands at the last step that must be ticked.
 */
export function stepsToTick(
  { steps }: Pick<SurveyProposal, "steps">,
  holdPoints: readonly SurveyCaution[],
): readonly ShownStep[] {
  const lastHold = steps.findLast(({ hold }) => hold);
  const offAgain = holdPoints.find(({ id }) => id === OFF_AGAIN);
  const [first, ...more] = holdPoints.filter((point) => point !== offAgain);
  return steps.flatMap((step): readonly ShownStep[] => {
    const { arrangement, words } = step;
    if (!step.hold) return [{ arrangement, words }];
    if (step === steps[0])
      return [
        { arrangement, words, hold: first?.id ?? "" },
        ...more.map((point) => ({ arrangement, words: point.words, hold: point.id })),
      ];
    if (step !== lastHold || offAgain === undefined) return [{ arrangement, words, hold: "" }];
    return [{ arrangement, words: `${words} ${offAgain.words}`, hold: offAgain.id }];
  });
}
