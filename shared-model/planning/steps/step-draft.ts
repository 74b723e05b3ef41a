import type { HoldPoint, ScopeBox, ScopeItem, StepKind, StepReading, WorkStep } from "../../answers/scope.ts";
import type { CautionId } from "../../catalog/cautions.ts";
import type { EnclosureId } from "../../model/ids.ts";

/** An instruction before it has its number. */
export interface StepDraft {
  readonly id: string;
  readonly stage: number;
  readonly kind: StepKind;
  readonly text: string;
  readonly hold?: HoldPoint;
  readonly box?: { readonly id: EnclosureId; readonly name: string };
  readonly items?: readonly ScopeItem[];
  readonly details?: readonly string[];
  readonly readings?: readonly StepReading[];
  readonly ifNot?: string;
  readonly test?: string;
  readonly cautions?: readonly CautionId[];
  readonly sign?: boolean;
}

/** Numbers instructions in the order given; those about the same thing keep their ids. */
export const numbered = (drafts: readonly StepDraft[]): readonly WorkStep[] =>
  drafts.map((draft, index) => ({
    ...draft,
    number: index + 1,
    items: draft.items ?? [],
    details: draft.details ?? [],
    readings: draft.readings ?? [],
    cautions: draft.cautions ?? [],
    sign: draft.sign ?? draft.hold !== undefined,
  }));

/** Where an instruction is done. */
export const inBox = ({ enclosure, name }: Pick<ScopeBox, "enclosure" | "name">): Required<Pick<StepDraft, "box">> => ({
  box: { id: enclosure, name },
});
