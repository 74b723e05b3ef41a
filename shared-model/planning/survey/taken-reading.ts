import type { ReadingId } from "../../model/ids.ts";
import type { SurveyedReading, SurveyInstrument, SurveyTest } from "../../model/survey.ts";

/** What a fit says of a reading: which one it is, and how it is called. */
export type NotedReading = Pick<TakenReading, "index" | "id" | "words">;

/** A reading of a survey as it comes in: with an id where the document keeps it. */
export interface TakenReading {
  readonly index: number;
  readonly id?: ReadingId;
  readonly instrument: SurveyInstrument;
  readonly value: string;
  readonly survey: Omit<SurveyedReading, "test"> & { readonly test: SurveyTest };
  /** "0 V black to white by low-impedance meter in A2", made when it is sorted. */
  readonly words: string;
}
