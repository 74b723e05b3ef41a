import type { FitAnswer, LeftOnLine, MakeUpAnswer } from "../../../shared-model/answers/make-up.ts";
import type { MakeUpIntent } from "../../../shared-model/answers/make-up-intent.ts";
import type { CableId, EnclosureId, OutletKey } from "../../../shared-model/model/ids.ts";
import { createStore, type Store } from "../store.ts";

/** A make-up that a person is at: what was answered until now. Nothing of it is in the document. */
export type MakeUpJob =
  | {
      readonly kind: "make-up";
      readonly box: EnclosureId;
      /** Absent until something was changed: what the drawing knows. */
      readonly intent?: MakeUpIntent;
      /** Title of the way to give the box room, or false: it stays as it is. */
      readonly room?: string | false;
      readonly left: readonly LeftOnLine[];
    }
  | {
      readonly kind: "fit";
      readonly outlet: OutletKey;
      readonly type?: string;
      readonly decided: readonly (readonly [CableId, boolean])[];
      readonly room?: string;
      readonly left: readonly LeftOnLine[];
    };

export type MakeUpTold =
  | { readonly kind: "make-up"; readonly answer: MakeUpAnswer }
  | { readonly kind: "fit"; readonly answer: FitAnswer };

export interface MakeUpState {
  readonly job: MakeUpJob | undefined;
  /** The last answer; it stays in sight while the next one is on its way. */
  readonly told: MakeUpTold | undefined;
  /** What was told is not of the job as it stands. */
  readonly busy: boolean;
  /** Nobody can answer. */
  readonly trouble: string | undefined;
  /** What would move is drawn on the sheet. */
  readonly preview: boolean;
}

export const NO_MAKE_UP: MakeUpState = {
  job: undefined,
  told: undefined,
  busy: false,
  trouble: undefined,
  preview: false,
};

export const makeUpStore: Store<MakeUpState> = createStore(NO_MAKE_UP);

/** Selector: whether a make-up is under way. */
export const isMakingUp = ({ job }: MakeUpState): boolean => job !== undefined;

/** Selector: the make-up that would be run, where there is one. */
export function madeOf({ told }: MakeUpState) {
  const result = told?.answer.result;
  return result !== undefined && "made" in result ? result.made : undefined;
}
