import type { MakeUpAnswer } from "../../../shared-model/answers/make-up.ts";
import type { MakeUpIntent } from "../../../shared-model/answers/make-up-intent.ts";
import type { MakeUpJob } from "../../state/make-up/make-up-store.ts";

export type BoxJob = Extract<MakeUpJob, { readonly kind: "make-up" }>;

/** What each part of the form works on. */
export interface BoxForm {
  readonly job: BoxJob;
  readonly answer: MakeUpAnswer;
  readonly intent: MakeUpIntent;
  /** There is a ground-fault device here, or there will be. */
  readonly hasGuard: boolean;
  readonly change: (intent: MakeUpIntent) => void;
}
