import { Commissioned, type ToCommission } from "./commissioned.ts";
import { beforeReset, buttons, holding, lineTerminals, ownTests } from "./guard-tests.ts";
import { breakersOff, everythingOn, loadedReadings, switches } from "./outlet-tests.ts";
import type { StepDraft } from "./step-draft.ts";

interface CommissioningSteps {
  readonly steps: readonly StepDraft[];
  /** What the figures rest on, as sentences. */
  readonly assumptions: readonly string[];
}

/**
 * The tests CM1 to CM13 that put the circuits of a section into service, with what the drawing leads to find: every figure is
 * computed from proposed. The section stands by itself with its panels and their supply, so that what runs on other circuits
 * does not enter.
 */
export function commissioningSteps(work: ToCommission): CommissioningSteps {
  const all = new Commissioned(work);
  const parts = [
    beforeReset,
    lineTerminals,
    everythingOn,
    switches,
    ownTests,
    holding,
    buttons,
    loadedReadings,
    breakersOff,
  ];
  return { steps: parts.flatMap((part) => part(all)), assumptions: all.bench.assumptions };
}
