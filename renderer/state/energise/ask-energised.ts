import type { EnergiseAsk, Energised, Operated } from "../../../shared-model/answers/energised.ts";
import type { StateName } from "../../../shared-model/model/project.ts";

/** Asks the worker; undefined when nobody can answer now. */
type AskEnergised = (
  state: StateName,
  setting: Operated,
  ask: EnergiseAsk,
) => Promise<{ readonly revision: number; readonly answer: Energised } | undefined>;

let ask: AskEnergised | undefined;

/** Says who is to be asked; the state folder does not know the worker. */
export function energiseBy(asked: AskEnergised): void {
  ask = asked;
}

/** What the circuit does when it is energised so. */
export const askEnergised: AskEnergised = async (state, setting, wanted) => ask?.(state, setting, wanted);
