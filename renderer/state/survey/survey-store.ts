import type { CircuitMap, CircuitOrder, SurveyAnswer } from "../../../shared-model/answers/survey.ts";
import type { EnclosureId } from "../../../shared-model/model/ids.ts";
import { followDocument } from "../document-store.ts";
import { sessionStore, showPane, turnTo } from "../session-store.ts";
import { createStore, type Store } from "../store.ts";

/** What is surveyed: the cables of one box, or the circuits of the house. */
export type SurveyAbout = { readonly kind: "box"; readonly box: EnclosureId } | { readonly kind: "map" };

/** A hold point that somebody has ticked. */
export interface Tick {
  /** Its number: "6" of HP6. */
  readonly point: string;
  readonly by: string;
  /** Milliseconds since 1970. */
  readonly at: number;
}

/** The survey that this window shows. Readings are in the document; what is here is gone with the window. */
export interface SurveyState {
  readonly about: SurveyAbout | undefined;
  /** Counts how often one was opened: the pane takes the focus then, and not when its tab is come back to. */
  readonly opened: number;
  readonly answer: SurveyAnswer | undefined;
  readonly circuits: { readonly map: CircuitMap; readonly order: CircuitOrder } | undefined;
  /** The answer is about an older state of the drawing. */
  readonly stale: boolean;
  readonly trouble: string | undefined;
  /** Why the box cannot be surveyed. */
  readonly cannot: string | undefined;
  /** Test that is to be done in place of the one that tells most; by its key. */
  readonly chosen: string | undefined;
  /** What came of the test was written down: the next answer shows what tells most then. */
  readonly goOn: boolean;
  /** Hold points of the test that is being done, in the order of ticking. They are void once it is written down. */
  readonly ticks: readonly Tick[];
}

const NO_SURVEY: SurveyState = {
  about: undefined,
  opened: 0,
  answer: undefined,
  circuits: undefined,
  stale: false,
  trouble: undefined,
  cannot: undefined,
  chosen: undefined,
  goOn: false,
  ticks: [],
};

export const surveyStore: Store<SurveyState> = createStore(NO_SURVEY);

export const isSurveying = ({ about }: SurveyState): boolean => about !== undefined;

let stop: (() => void) | undefined;

/** Opens the assistant that finds out which cable of a box is which. What works it out comes with its pane. */
export const surveyBox = (box: EnclosureId): void => open({ kind: "box", box });

/** Opens the map of circuits: one breaker off at a time. */
export const mapCircuits = (): void => open({ kind: "map" });

function open(about: SurveyAbout): void {
  surveyStore.set({ ...NO_SURVEY, about, opened: surveyStore.get().opened + 1 });
  showPane("survey");
  // A survey belongs to its document.
  stop ??= followDocument(({ patches }) => {
    if (patches === undefined) leaveSurvey();
  });
}

/** Closes the survey; its readings stay in the document. */
export function leaveSurvey(): void {
  stop?.();
  stop = undefined;
  surveyStore.set({ ...NO_SURVEY, opened: surveyStore.get().opened });
  if (sessionStore.get().pane === "survey") turnTo("details");
}
